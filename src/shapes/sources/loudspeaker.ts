import { radiansOf } from '../../math/angles.ts';
import type { Loudspeaker, Project } from '../../model/project.ts';
import { nearestWallTo } from '../../model/room/places.ts';
import { partsOf, type RawPart } from '../geometries.ts';
import { revolved } from '../mesh/loft.ts';
import { joined, moved } from '../mesh/raw.ts';
import { roundedBox } from '../mesh/rounded-box.ts';
import { standing } from '../placement.ts';
import { floorHeightAt } from '../room/riser-boxes.ts';
import type { Solid } from '../solid.ts';
import { angledCabinet, boxCabinet, flushCabinet, roundCabinet } from './cabinet.ts';
import { cabinetPlacement, mountingOf, RIM_M } from './standing.ts';

/** Below this clear height a cabinet stands on the floor by itself. */
const LEAST_STAND_M = 0.08;

const cabinetOf = (loudspeaker: Loudspeaker): RawPart[] => {
  const { sizeM, pattern } = loudspeaker;
  const mounting = mountingOf(loudspeaker);
  if (mounting === 'in-wall' || mounting === 'in-ceiling') return flushCabinet(sizeM, RIM_M);
  if (pattern === 'dipole' || pattern === 'bipole') return angledCabinet(sizeM);
  return pattern === 'omni' ? roundCabinet(sizeM) : boxCabinet(sizeM);
};

/** A pole on a base plate with a small top plate, `heightM` from floor to cabinet; origin on the floor. */
const standParts = (heightM: number, width: number, depth: number): RawPart[] => {
  const base = Math.min(0.34, Math.max(0.2, width * 1.1));
  const deep = Math.min(0.36, Math.max(0.22, depth * 0.95));
  const plate = moved(roundedBox([base, 0.014, deep], { radiusM: 0.006 }), [0, 0.007, 0]);
  const top = moved(roundedBox([Math.min(0.16, width * 0.8), 0.008, Math.min(0.16, depth * 0.7)], { radiusM: 0 }), [
    0,
    heightM - 0.004,
    0,
  ]);
  const pole = revolved(
    [
      [0.024, 0.013],
      [0.024, heightM - 0.006],
    ],
    16,
  );
  return [{ part: 'stand', material: 'metal', mesh: joined(plate, pole, top) }];
};

/** How far the lowest point under a tilted cabinet's middle lies below the middle. */
const underM = ([, height, depth]: readonly [number, number, number], pitchDeg: number): number => {
  const pitch = Math.abs(radiansOf(pitchDeg));
  const steep = Math.tan(pitch) > depth / height;
  return steep ? depth / 2 / Math.sin(pitch) : height / 2 / Math.cos(pitch);
};

/** One loudspeaker: cabinet with drivers, grille or baffles by its pattern, and its stand or spacer by its mount. */
export const loudspeakerSolids = (project: Project, loudspeaker: Loudspeaker): Solid[] => {
  const { id, sizeM, pattern, atM } = loudspeaker;
  const mounting = mountingOf(loudspeaker);
  const placement = cabinetPlacement(project, loudspeaker);
  const item = { kind: 'loudspeaker', id } as const;
  const cabinet = partsOf('loudspeaker', [mounting.startsWith('in-'), pattern, ...sizeM], () => cabinetOf(loudspeaker));
  const solids = cabinet.map((part): Solid => ({ ...item, ...part, placement }));
  if (mounting === 'stand') {
    const floorM = floorHeightAt(project, atM[0], atM[2]);
    const heightM = atM[1] - underM(sizeM, placement.pitchDeg) - floorM;
    if (heightM < LEAST_STAND_M) return solids;
    const foot = standing([atM[0], floorM, atM[2]], placement.yawDeg);
    const parts = partsOf('stand', [heightM, sizeM[0], sizeM[2]], () => standParts(heightM, sizeM[0], sizeM[2]));
    return [...solids, ...parts.map((part): Solid => ({ ...item, ...part, placement: foot }))];
  }
  if (mounting !== 'wall') return solids;
  const gapM = wallGap(project, loudspeaker);
  if (gapM < 0.002) return solids;
  const [width, height, depth] = sizeM;
  const parts = partsOf('spacer', [gapM, ...sizeM], () => [
    {
      part: 'spacer',
      material: 'metal',
      mesh: moved(roundedBox([width * 0.4, height * 0.4, gapM], { radiusM: 0.002 }), [0, 0, (depth + gapM) / 2]),
    },
  ]);
  return [...solids, ...parts.map((part): Solid => ({ ...item, ...part, placement }))];
};

/** The clear depth between a wall-hung cabinet's back and its wall, metres. */
const wallGap = (project: Project, { atM, sizeM }: Loudspeaker): number =>
  nearestWallTo(project, atM).gapM - sizeM[2] / 2;
