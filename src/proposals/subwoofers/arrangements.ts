import { METRIC_FREQUENCIES_HZ } from '../../analysis/inputs.ts';
import { drivenFigures } from '../../engines/bass/arrangement-figures.ts';
import type { UnitResponses } from '../../engines/bass/room-field.ts';
import type { Drive } from '../../engines/bass/superpose.ts';
import type { Vec3 } from '../../math/vec3.ts';
import type { Project } from '../../model/project.ts';
import { wallNamed } from '../../model/room/places.ts';
import { type RoomResponses, type StudyProgress, warmUp } from '../responses.ts';
import { finePlaces, nearestFree } from './places.ts';
import type { FiguresBand } from './proposal.ts';
import { type StandingRoom, standingRoom, subwooferLike } from './standing.ts';

/** The trade's arrangements, in the order they are shown. Places as shares of width and length, 0 and 1 being the walls. */
export const TRADE_ARRANGEMENTS = [
  { id: 'front-middle', places: [[0.5, 0]] },
  { id: 'front-quarter', places: [[0.25, 0]] },
  { id: 'front-corner', places: [[0, 0]] },
  {
    id: 'front-corners',
    places: [
      [0, 0],
      [1, 0],
    ],
  },
  {
    id: 'front-quarters',
    places: [
      [0.25, 0],
      [0.75, 0],
    ],
  },
  {
    id: 'front-back-middles',
    places: [
      [0.5, 0],
      [0.5, 1],
    ],
  },
  {
    id: 'side-middles',
    places: [
      [0, 0.5],
      [1, 0.5],
    ],
  },
  {
    id: 'opposite-corners',
    places: [
      [0, 0],
      [1, 1],
    ],
  },
  {
    id: 'four-corners',
    places: [
      [0, 0],
      [1, 0],
      [0, 1],
      [1, 1],
    ],
  },
  {
    id: 'four-middles',
    places: [
      [0.5, 0],
      [0.5, 1],
      [0, 0.5],
      [1, 0.5],
    ],
  },
  {
    id: 'four-quarters',
    places: [
      [0.25, 0],
      [0.75, 0],
      [0.25, 1],
      [0.75, 1],
    ],
  },
] as const satisfies readonly { readonly id: string; readonly places: readonly (readonly [number, number])[] }[];

export type ArrangementId = (typeof TRADE_ARRANGEMENTS)[number]['id'];

/** A place of an arrangement in this room. */
export interface ArrangedPlace {
  readonly atM: Vec3;
  /** How far it had to be shifted to stand clear, metres. */
  readonly shiftedM: number;
}

/** Farther from where the arrangement has it than this, a subwoofer no longer makes that arrangement. Ours. */
export const MOST_SHIFT_M = 0.8;
/** Two of one arrangement nearer than this have become one. */
const TOGETHER_M = 0.3;

type Spot = readonly [number, number];

const between = (a: Spot, b: Spot, share: number): Spot => [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];

/**
 * Where an arrangement means, at the walls: the front wall from its left end to its right for a share of length of 0, the
 * back wall for 1, else the left or right wall from front to back. In a box these are its sides; in any other plan each is the
 * longest wall of its name, and where there is none of it the side of the upright box round the room.
 */
const wallSpot = ({ shape }: StandingRoom, [shareX, shareZ]: Spot): Spot => {
  const { minM, maxM } = shape;
  const boxed: Spot = [minM[0] + shareX * (maxM[0] - minM[0]), minM[2] + shareZ * (maxM[2] - minM[2])];
  const acrossWall = shareZ === 0 || shareZ === 1;
  const wall = wallNamed(shape, acrossWall ? (shareZ === 0 ? 'front' : 'back') : shareX === 0 ? 'left' : 'right');
  if (!wall) return boxed;
  const along = acrossWall ? 0 : 1;
  const [near, far] = wall.from[along] <= wall.to[along] ? [wall.from, wall.to] : [wall.to, wall.from];
  return between(near, far, acrossWall ? shareX : shareZ);
};

/**
 * Where an arrangement's subwoofers stand, moved along the walls (`fine` places) where something is in the way; null where
 * nothing near a place is free.
 */
export const arrangedPlaces = (
  room: StandingRoom,
  fine: readonly Vec3[],
  places: readonly Spot[],
): ArrangedPlace[] | null => {
  const found: ArrangedPlace[] = [];
  for (const place of places) {
    const [x, z] = wallSpot(room, place);
    const atM = nearestFree(room, fine, x, z, MOST_SHIFT_M);
    if (!atM) return null;
    if (found.some((other) => Math.hypot(other.atM[0] - atM[0], other.atM[2] - atM[2]) < TOGETHER_M)) return null;
    const [insideX, insideZ] = room.inside(x, z);
    found.push({ atM, shiftedM: Math.hypot(atM[0] - insideX, atM[2] - insideZ) });
  }
  return found;
};

export interface ArrangementRow {
  /** 'now' is the document as it stands, its own gains, delays and polarities in it. */
  readonly id: ArrangementId | 'now';
  readonly places: readonly ArrangedPlace[];
  /** Null where the arrangement cannot be made in this room, or there is nothing to judge. */
  readonly figures: FiguresBand | null;
}

const PLAIN: Drive = { gainDb: 0, delayMs: 0, inverted: false };

/**
 * Every arrangement of the trade in this room, and what there is now, by the same figures over 20 to 80 Hz: evenness over the
 * seats, flatness, level, level per subwoofer. All subwoofers of an arrangement are driven alike. A generator, so that it
 * can be done in slices.
 */
export function* compareArrangements(
  project: Project,
  responses: RoomResponses,
): Generator<StudyProgress, ArrangementRow[]> {
  const room = standingRoom(project, subwooferLike(project).sizeM as Vec3, new Set());
  const fine = finePlaces(room);
  const sets = TRADE_ARRANGEMENTS.map(({ id, places }) => ({ id, places: arrangedPlaces(room, fine, places) }));
  const spots: Vec3[] = [];
  const spotOf = (atM: Vec3): number => {
    const known = spots.findIndex((spot) => Math.hypot(spot[0] - atM[0], spot[1] - atM[1], spot[2] - atM[2]) < 1e-6);
    if (known >= 0) return known;
    spots.push(atM);
    return spots.length - 1;
  };
  const now = project.subwoofers.map(({ atM }) => spotOf(atM as Vec3));
  const chosen = sets.map(({ places }) => places?.map(({ atM }) => spotOf(atM)) ?? null);
  yield* warmUp(responses, METRIC_FREQUENCIES_HZ, ['nominal', 'low', 'high'], 0, 0.5);
  const unit: Record<'nominal' | 'low' | 'high', UnitResponses[]> = { nominal: [], low: [], high: [] };
  let done = 0;
  for (const damping of ['nominal', 'low', 'high'] as const) {
    for (const spot of spots) {
      unit[damping].push(responses([spot], METRIC_FREQUENCIES_HZ, damping));
      done += 1;
      yield { share: 0.5 + done / (6 * spots.length), doing: 'places' };
    }
  }
  const figures = (sources: readonly number[], drives: readonly Drive[]): FiguresBand | null => {
    if (sources.length === 0) return null;
    const of = (damping: 'nominal' | 'low' | 'high') =>
      drivenFigures(joined(sources.map((source) => unit[damping][source])), drives, METRIC_FREQUENCIES_HZ);
    return { nominal: of('nominal'), low: of('low'), high: of('high') };
  };
  return [
    {
      id: 'now',
      places: project.subwoofers.map(({ atM }) => ({ atM: atM as Vec3, shiftedM: 0 })),
      figures: figures(now, project.subwoofers),
    },
    ...sets.map(({ id, places }, index): ArrangementRow => {
      const sources = chosen[index];
      return {
        id,
        places: places ?? [],
        figures:
          sources &&
          figures(
            sources,
            sources.map(() => PLAIN),
          ),
      };
    }),
  ];
}

/** Single-source responses side by side as those of several sources. */
export const joined = (columns: readonly UnitResponses[]): UnitResponses => {
  const { receivers, frequencies } = columns[0];
  const size = receivers * frequencies;
  const re = new Float64Array(columns.length * size);
  const im = new Float64Array(columns.length * size);
  const moved = new Uint8Array(columns.length * receivers);
  for (const [s, column] of columns.entries()) {
    re.set(column.re, s * size);
    im.set(column.im, s * size);
    moved.set(column.moved, s * receivers);
  }
  return { sources: columns.length, receivers, frequencies, re, im, moved };
};
