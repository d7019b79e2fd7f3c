import { METRIC_FREQUENCIES_HZ } from '../analysis/inputs.ts';
import { figuresOf } from '../engines/bass/arrangement-figures.ts';
import type { UnitResponses } from '../engines/bass/room-field.ts';
import { levelsDb, superpose } from '../engines/bass/superpose.ts';
import type { Vec3 } from '../math/vec3.ts';
import type { Project } from '../model/project.ts';
import { referenceSeatId, seatPoses } from '../model/seating.ts';
import { CHAIN_FREQUENCIES_HZ, headroomOf } from './chain.ts';
import { type RoomResponses, type StudyProgress, warmUp } from './responses.ts';
import { joined } from './subwoofers/arrangements.ts';
import type { FiguresBand } from './subwoofers/proposal.ts';

/** One document to be compared: the present one ('now') or a stored alternative in its place. */
export interface Compared {
  readonly id: string;
  readonly project: Project;
}

/** What a document does to the bass, over CHAIN_FREQUENCIES_HZ and by the figures of 20 to 80 Hz. */
export interface AlternativeLine {
  readonly id: string;
  readonly subwoofers: number;
  /** Null without subwoofers. */
  readonly figures: FiguresBand | null;
  readonly seats: readonly { readonly id: string; readonly levelDb: Float64Array }[];
  /** Least margin over the level asked for at the reference seat, dB, and its band; null where output is not stated. */
  readonly leastMargin: { readonly hz: number; readonly db: number } | null;
}

/** The first frequencies of the chain's grid are the fixed grid of the figures. */
const opening = (levels: Float64Array, seats: number): Float64Array => {
  const to = METRIC_FREQUENCIES_HZ.length;
  const from = CHAIN_FREQUENCIES_HZ.length;
  const out = new Float64Array(seats * to);
  for (let s = 0; s < seats; s += 1) out.set(levels.subarray(s * from, s * from + to), s * to);
  return out;
};

const leastMarginOf = (project: Project, unit: UnitResponses): AlternativeLine['leastMargin'] => {
  const headroom = headroomOf(project, unit);
  const margins = headroom?.seats.find(({ id }) => id === referenceSeatId(project))?.marginDb;
  if (!headroom || !margins) return null;
  const least = margins.reduce((at, db, index) => (db < margins[at] ? index : at), 0);
  return { hz: headroom.bandsHz[least], db: margins[least] };
};

/** Figures and curves of several documents side by side. `responsesOf` gives each its own room. */
export function* compareAlternatives(
  documents: readonly Compared[],
  responsesOf: (project: Project) => RoomResponses,
): Generator<StudyProgress, AlternativeLine[]> {
  const lines: AlternativeLine[] = [];
  for (const { id, project } of documents) {
    const { subwoofers } = project;
    const poses = seatPoses(project);
    const responses = responsesOf(project);
    const share = lines.length / documents.length;
    yield* warmUp(responses, CHAIN_FREQUENCIES_HZ, ['nominal', 'low', 'high'], share, share);
    const solved = { nominal: [] as UnitResponses[], low: [] as UnitResponses[], high: [] as UnitResponses[] };
    for (const damping of ['nominal', 'low', 'high'] as const) {
      for (const { atM } of subwoofers) {
        solved[damping].push(responses([atM as Vec3], CHAIN_FREQUENCIES_HZ, damping));
        yield { share, doing: 'places' };
      }
    }
    if (subwoofers.length === 0) {
      lines.push({ id, subwoofers: 0, figures: null, seats: [], leastMargin: null });
      continue;
    }
    const levelsOf = (damping: 'nominal' | 'low' | 'high') =>
      levelsDb(superpose(joined(solved[damping]), subwoofers, CHAIN_FREQUENCIES_HZ));
    const figures = (levels: Float64Array) =>
      figuresOf(opening(levels, poses.length), poses.length, METRIC_FREQUENCIES_HZ.length, subwoofers.length);
    const levels = levelsOf('nominal');
    const count = CHAIN_FREQUENCIES_HZ.length;
    lines.push({
      id,
      subwoofers: subwoofers.length,
      figures: { nominal: figures(levels), low: figures(levelsOf('low')), high: figures(levelsOf('high')) },
      seats: poses.map(({ seat }, s) => ({ id: seat.id, levelDb: levels.slice(s * count, (s + 1) * count) })),
      leastMargin: leastMarginOf(project, joined(solved.nominal)),
    });
  }
  return lines;
}
