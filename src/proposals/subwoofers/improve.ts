import { METRIC_FREQUENCIES_HZ } from '../../analysis/inputs.ts';
import { drivenFigures, pickSources } from '../../engines/bass/arrangement-figures.ts';
import { createDriveSearch, USUAL_BOUNDS } from '../../engines/bass/drive-search.ts';
import { createPlacementSearch, type PlacementSearch } from '../../engines/bass/placement-search.ts';
import type { UnitResponses } from '../../engines/bass/room-field.ts';
import { type Drive, superpose } from '../../engines/bass/superpose.ts';
import { seededRandom } from '../../math/random.ts';
import type { Vec3 } from '../../math/vec3.ts';
import type { Project } from '../../model/project.ts';
import { type RoomResponses, type StudyProgress, warmUp } from '../responses.ts';
import { joined } from './arrangements.ts';
import { MOST_PLACES, placesAlongWalls } from './places.ts';
import { type FiguresBand, type Proposal, placedSubwoofers } from './proposal.ts';
import { type Ranked, rankedDifferent } from './ranking.ts';
import { standingRoom, subwooferLike, WALL_GAP_M } from './standing.ts';

export interface ImproveGoal {
  /** How many subwoofers in all, locked ones included, from 1 to 4. */
  readonly counts: readonly number[];
  /** How many dB of evenness one dB of flatness and one dB of level per subwoofer are worth. */
  readonly flatnessWeight: number;
  readonly levelWeight: number;
  /** Whether gain, delay and polarity may be set. */
  readonly drives: boolean;
  readonly perCount: number;
}

/** What is looked for besides evenness, and how much it counts against it: dB of evenness for a dB of each. Ours. */
export const AIMS = {
  even: { flatnessWeight: 0.15, levelWeight: 0.05 },
  flat: { flatnessWeight: 0.6, levelWeight: 0.05 },
  loud: { flatnessWeight: 0.15, levelWeight: 0.4 },
} as const;
export type Aim = keyof typeof AIMS;

/** Evenness first. */
export const EVEN_FIRST: ImproveGoal = {
  counts: [1, 2, 3, 4],
  ...AIMS.even,
  drives: true,
  perCount: 2,
};

/** Gain, delay and polarity are not proposed for less than this. */
export const DRIVES_WORTH_DB = 0.5;

export interface Improvement extends Proposal {
  readonly kind: 'improve';
  readonly subwoofers: NonNullable<Proposal['subwoofers']>;
  readonly figures: FiguresBand;
  /** What gain, delay and polarity add, dB of evenness; null where they are left alone. */
  readonly drivesGainDb: number | null;
  /** The goal's one number, lower is better: spread + weights x flatness - weight x level per subwoofer. */
  readonly score: number;
}

export interface ImproveResult {
  readonly revision: number;
  /** Best first within a number of subwoofers, numbers rising. */
  readonly proposals: readonly Improvement[];
  readonly now: FiguresBand | null;
  /** What was searched: places, their spacing, combinations tried. */
  readonly places: number;
  readonly spacingM: number;
  readonly combinations: number;
  /** 'one-seat': evenness has no meaning there, flatness took its place. 'no-place': nothing is free along the walls. */
  readonly note: 'one-seat' | 'no-place' | 'all-locked' | null;
}

const PLAIN: Drive = { gainDb: 0, delayMs: 0, inverted: false };
const COMBINATIONS_A_SLICE = 3000;
/** So many of the most even combinations are weighed against flatness and level. */
const SHORTLIST = 400;

/** One seat: frequencies take the seats' place, so that the search evens the response over frequency instead. */
const overFrequency = (unit: UnitResponses): UnitResponses => ({
  ...unit,
  receivers: unit.frequencies,
  frequencies: 1,
});

const judge = (unit: UnitResponses, drives: readonly Drive[], goal: ImproveGoal): number => {
  const figures = drivenFigures(unit, drives, METRIC_FREQUENCIES_HZ);
  const even = figures.spreadDb ?? figures.flatnessDb;
  return even + goal.flatnessWeight * figures.flatnessDb - goal.levelWeight * figures.perSubwooferDb;
};

/** Whether two cabinets of a size would stand in one another. */
const collide = (sizeM: Vec3, a: Vec3, b: Vec3): boolean =>
  Math.abs(a[0] - b[0]) < sizeM[0] + WALL_GAP_M && Math.abs(a[2] - b[2]) < sizeM[2] + WALL_GAP_M;

/** The most even choices whose cabinets have room beside one another, best first. */
const shortlisted = (search: PlacementSearch, placesM: readonly Vec3[], sizeM: Vec3): number[][] => {
  const { spreadDb } = search;
  const order = Array.from(spreadDb.keys());
  order.sort((a, b) => spreadDb[a] - spreadDb[b] || a - b);
  const kept: number[][] = [];
  for (const index of order) {
    if (kept.length >= SHORTLIST) break;
    const chosen = search.combination(index);
    const apart = chosen.every((c, i) =>
      chosen.slice(i + 1).every((other) => !collide(sizeM, placesM[c], placesM[other])),
    );
    if (apart) kept.push(chosen);
  }
  return kept;
};

/**
 * Where one to four subwoofers stand best: every choice among places along the walls is tried (locked ones stay and sound
 * with them), the most even are weighed against flatness and level by the goal's stated weights, the best that truly differ
 * are kept. Then gain, delay and polarity are searched over their whole range, and kept only where they gain 0.5 dB. A
 * generator: whoever runs it stops it between slices. The same document, goal and seed give the same answer.
 */
export function* improveSubwoofers(
  project: Project,
  revision: number,
  goal: ImproveGoal,
  seed: number,
  responses: RoomResponses,
): Generator<StudyProgress, ImproveResult> {
  const held = project.subwoofers.filter(({ locked }) => locked === true);
  const sizeM = subwooferLike(project).sizeM as Vec3;
  const room = standingRoom(project, sizeM, new Set(held.map(({ id }) => id)));
  const { placesM, spacingM } = placesAlongWalls(room, MOST_PLACES);
  const grid = METRIC_FREQUENCIES_HZ;
  yield* warmUp(responses, grid, ['nominal', 'low', 'high'], 0, 0.3);
  const columns: UnitResponses[] = [];
  for (const [index, place] of placesM.entries()) {
    columns.push(responses([place], grid));
    yield { share: 0.3 + (0.2 * (index + 1)) / placesM.length, doing: 'places' };
  }
  const heldUnit =
    held.length > 0
      ? responses(
          held.map(({ atM }) => atM as Vec3),
          grid,
        )
      : null;
  const nowUnit =
    project.subwoofers.length > 0
      ? responses(
          project.subwoofers.map(({ atM }) => atM as Vec3),
          grid,
        )
      : null;
  const counts = [...new Set(goal.counts)].filter(
    (count) => count > held.length && count - held.length <= placesM.length,
  );
  const empty = placesM.length === 0 || counts.length === 0;
  const oneSeat = !empty && columns[0].receivers < 2;
  const proposals: Improvement[] = [];
  let combinations = 0;
  if (!empty) {
    const unit = joined(columns);
    const base = heldUnit && superpose(heldUnit, held, grid);
    for (const [turn, count] of counts.sort((a, b) => a - b).entries()) {
      const search = createPlacementSearch({
        candidates: oneSeat ? overFrequency(unit) : unit,
        base,
        choose: count - held.length,
      });
      for (let finished = false; !finished; ) {
        finished = search.step(COMBINATIONS_A_SLICE);
        yield { share: 0.5 + (0.2 * (turn + search.done / search.total)) / counts.length, doing: 'search' };
      }
      combinations += search.total;
      const whole = (chosen: readonly number[]): UnitResponses => {
        const picked = pickSources(unit, chosen);
        return heldUnit ? joinedWith(heldUnit, picked) : picked;
      };
      const heldDrives: Drive[] = held.map(({ gainDb, delayMs, inverted }) => ({ gainDb, delayMs, inverted }));
      const ranked = rankedDifferent(
        shortlisted(search, placesM, sizeM).map((chosen): Ranked => {
          const drives = [...heldDrives, ...chosen.map(() => PLAIN)];
          return { chosen, placesM: chosen.map((c) => placesM[c]), score: judge(whole(chosen), drives, goal) };
        }),
        goal.perCount,
      );
      for (const [rank, { chosen, placesM: at }] of ranked.entries()) {
        const picked = whole(chosen);
        let drives: Drive[] = [...heldDrives, ...chosen.map(() => PLAIN)];
        let drivesGainDb: number | null = null;
        if (goal.drives && !oneSeat && picked.sources > 1) {
          const before = drivenFigures(picked, drives, grid).spreadDb ?? 0;
          const tuning = createDriveSearch({
            unit: picked,
            frequenciesHz: grid,
            start: drives,
            held: drives.map((_, s) => s < held.length),
            bounds: USUAL_BOUNDS,
            random: seededRandom(seed + 97 * count + rank),
          });
          for (let finished = false; !finished; ) {
            finished = tuning.step();
            const part = (rank + tuning.share) / ranked.length;
            yield { share: 0.7 + (0.28 * (turn + part)) / counts.length, doing: 'drives' };
          }
          const tuned = tuning.best();
          if (before - tuned.spreadDb >= DRIVES_WORTH_DB) {
            drivesGainDb = before - tuned.spreadDb;
            drives = tuned.drives;
          }
        }
        const freeDrives = drives.slice(held.length);
        const spots = [...held.map(({ atM }) => atM as Vec3), ...at];
        const figures: FiguresBand = {
          nominal: drivenFigures(picked, drives, grid),
          low: drivenFigures(responses(spots, grid, 'low'), drives, grid),
          high: drivenFigures(responses(spots, grid, 'high'), drives, grid),
        };
        proposals.push({
          id: `improve-${count}-${rank + 1}`,
          kind: 'improve',
          revision,
          subwoofers: placedSubwoofers(
            project,
            at.map((atM, i) => ({ atM, ...freeDrives[i] })),
          ),
          figures,
          drivesGainDb,
          score: judge(picked, drives, goal),
        });
        yield { share: 0.7 + (0.28 * (turn + (rank + 1) / ranked.length)) / counts.length, doing: 'figures' };
      }
    }
  }
  const allPlaces = project.subwoofers.map(({ atM }) => atM as Vec3);
  return {
    revision,
    proposals: proposals.sort((a, b) => a.subwoofers.length - b.subwoofers.length || a.score - b.score),
    now: nowUnit && {
      nominal: drivenFigures(nowUnit, project.subwoofers, grid),
      low: drivenFigures(responses(allPlaces, grid, 'low'), project.subwoofers, grid),
      high: drivenFigures(responses(allPlaces, grid, 'high'), project.subwoofers, grid),
    },
    places: placesM.length,
    spacingM,
    combinations,
    note: placesM.length === 0 ? 'no-place' : counts.length === 0 ? 'all-locked' : oneSeat ? 'one-seat' : null,
  };
}

const joinedWith = (a: UnitResponses, b: UnitResponses): UnitResponses =>
  joined([
    ...Array.from({ length: a.sources }, (_, s) => pickSources(a, [s])),
    ...Array.from({ length: b.sources }, (_, s) => pickSources(b, [s])),
  ]);
