import type { Vec3 } from '../../math/vec3.ts';
import type { Project, Subwoofer } from '../../model/project.ts';
import { roomShape } from '../../model/room/shape.ts';
import { partsOf, type RawPart } from '../geometries.ts';
import { revolved } from '../mesh/loft.ts';
import { joined, mirrored, moved } from '../mesh/raw.ts';
import { standing } from '../placement.ts';
import type { Solid } from '../solid.ts';
import { fronted, wellOf } from './cabinet.ts';
import { driverParts, WELL_M } from './driver.ts';

const FEET_M = 0.018;

/** A low solid cube on short feet with one large cone. Bounds are its size, feet included. */
const subwooferParts = ([width, height, depth]: Vec3): RawPart[] => {
  const low = Math.min(FEET_M, height / 8);
  const well = wellOf(depth);
  const front = -depth / 2;
  const radiusM = Math.min(0.018, width / 10, height / 10, depth / 10);
  const face = height - low;
  const lift: Vec3 = [0, low / 2, 0];
  const holes = [{ x: 0, y: 0, radiusM: Math.min(width, face) * 0.405 }];
  const body = fronted([width, face, depth], radiusM, well, holes);
  const glide = (z: number) =>
    moved(
      revolved(
        [
          [0.018, 0],
          [0.021, low + 0.004],
        ],
        12,
      ),
      [width / 2 - 0.05, -height / 2, z],
    );
  const glides = joined(glide(front + 0.06), glide(depth / 2 - 0.05));
  return [
    { part: 'cabinet', material: 'cabinet', mesh: moved(body, lift) },
    ...(well < WELL_M ? [] : driverParts(holes, front).map((p) => ({ ...p, mesh: moved(p.mesh, lift) }))),
    { part: 'feet', material: 'rubber', mesh: joined(glides, mirrored(glides)) },
  ];
};

/** One subwoofer, square to the room as its size is, its cone looking into the longer part of the room. */
export const subwooferSolids = (project: Project, { id, atM, sizeM }: Subwoofer): Solid[] => {
  const { minM, maxM } = roomShape(project);
  const placement = standing(atM, atM[2] < (minM[2] + maxM[2]) / 2 ? 180 : 0);
  return partsOf('subwoofer', sizeM, () => subwooferParts(sizeM)).map((part) => ({
    kind: 'subwoofer',
    id,
    ...part,
    placement,
  }));
};
