import type { OctaveValues } from '../../engines/acoustics/bands.ts';
import type { AbsorbingArea } from '../../engines/acoustics/reverberation.ts';
import type { Opening, Patch, Project, SurfaceTreatment } from '../../model/project.ts';
import { type AreaOf, type Face, facesOf, liesOn } from './boundary.ts';
import { absorptionAt, defaultFinish, octaveAbsorption } from './treatment.ts';

const everything: OctaveValues = [1, 1, 1, 1, 1, 1];

/**
 * What an opening takes from the room's sound: all of it where nothing closes it; else what a window of ordinary glass or,
 * for a door, boards over an air space take (no table read has a row for doors).
 */
export const openingAbsorption = ({ kind, leaf }: Pick<Opening, 'kind' | 'leaf'>): OctaveValues => {
  if (kind === 'opening' || leaf !== 'closed') return everything;
  return octaveAbsorption({ finish: kind === 'window' ? 'glass-window' : 'wood-floor-on-joists' }, '');
};

/** Part of the boundary and how its absorption is known. */
export interface TreatedArea extends AbsorbingArea {
  /** Absorption in the octave of 63 Hz: what is stated there, else that of 125 Hz. */
  readonly lowest: number;
  /** Whether it is what it is: an opening, or an admittance as stated. Other absorption is a table's or a guess. */
  readonly held: boolean;
}

type Absorbing = Omit<TreatedArea, 'areaM2'>;

interface Piece extends Absorbing {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
}

const absorbing = (treatment: SurfaceTreatment | undefined, fallback: string): Absorbing => {
  const absorption = octaveAbsorption(treatment, fallback);
  const bands = treatment?.absorption;
  return {
    absorption,
    lowest: bands && '63' in bands ? absorptionAt(bands, 63) : absorption[0],
    held: treatment?.admittance !== undefined,
  };
};

const ofOpening = (opening: Opening): Absorbing => {
  const absorption = openingAbsorption(opening);
  return { absorption, lowest: absorption[0], held: true };
};

const pieceOf = (item: Opening | Patch, absorbs: Absorbing): Piece => ({
  from: [item.fromM, item.bottomM],
  to: [item.fromM + item.widthM, item.bottomM + item.heightM],
  ...absorbs,
});

const cuts = (pieces: readonly Piece[], axis: 0 | 1): number[] =>
  [...new Set(pieces.flatMap(({ from, to }) => [from[axis], to[axis]]))].sort((a, b) => a - b);

/**
 * The area each piece keeps when later ones lie over earlier ones: the surface is cut along every edge and each cell goes
 * to the last piece over it. Exact.
 */
const keptAreas = (pieces: readonly Piece[], areaOf: AreaOf): Float64Array => {
  const along = cuts(pieces, 0);
  const up = cuts(pieces, 1);
  const columns = along.length;
  const owner = new Int32Array(columns * up.length).fill(-1);
  pieces.forEach(({ from, to }, index) => {
    const first = along.indexOf(from[0]);
    const last = along.indexOf(to[0]);
    for (let j = up.indexOf(from[1]); j < up.indexOf(to[1]); j += 1)
      owner.fill(index, j * columns + first, j * columns + Math.max(first, last));
  });
  const kept = new Float64Array(pieces.length);
  for (let j = 0; j + 1 < up.length; j += 1)
    for (let i = 0; i + 1 < columns; i += 1) {
      const index = owner[j * columns + i];
      if (index >= 0) kept[index] += areaOf(along[i], along[i + 1], up[j], up[j + 1]);
    }
  return kept;
};

/** Whether a patch says what it is made of; one that does not is like the surface under it. */
export const saysSomething = ({ finish, absorption, admittance }: Patch): boolean =>
  finish !== undefined || absorption !== undefined || admittance !== undefined;

/** One face as areas: its patches, its openings (which lie over patches) and what is left of it. */
const areasOf = (project: Project, face: Face): TreatedArea[] => {
  const { patches, openings } = project.room;
  const own = absorbing(face.treatment, defaultFinish(face.surface));
  const pieces = [
    ...patches
      .filter((patch) => liesOn(project, face, patch))
      .map((patch) => pieceOf(patch, saysSomething(patch) ? absorbing(patch, '') : own)),
    ...openings
      .filter((opening) => liesOn(project, face, opening))
      .map((opening) => pieceOf(opening, ofOpening(opening))),
  ];
  const kept = keptAreas(pieces, face.areaOf);
  const covered = kept.reduce((sum, area) => sum + area, 0);
  return [
    { areaM2: Math.max(0, face.areaM2 - covered), ...own },
    ...pieces.map(({ absorption, lowest, held }, index) => ({ areaM2: kept[index], absorption, lowest, held })),
  ];
};

/** The whole boundary: a patch replaces its area of the surface under it, an opening replaces both. */
export const treatedAreas = (project: Project): TreatedArea[] =>
  facesOf(project).flatMap((face) => areasOf(project, face));
