import { curveFrequenciesHz } from '../../../analysis/curves.ts';
import { decayGrid, playedDrives, shownS } from '../../../analysis/decay.ts';
import { earTriples, roomSpec, seatIdsInOrder, sourceTriples } from '../../../analysis/inputs.ts';
import type { Lane } from '../../../compute/lane.ts';
import type { Answers } from '../../../compute/protocol.ts';
import { isExactAtOnce } from '../../../engines/bass/create-room-field.ts';
import { type Detail, isPrism } from '../../../engines/bass/room-field.ts';
import type { Kept } from './kept.ts';
import { answered, type Errand, FREQUENCIES_HZ, type Wanted } from './wanted.ts';

const MODES_TO_HZ = 250;

const NOTHING = new Float64Array(0);

/** One thing worked out while the hand rests. */
interface Part {
  readonly name: string;
  /** How finely the seats must have been answered before. */
  readonly after: Detail;
  /** Given where it asks for modes, and to where. */
  readonly modesToHz?: number;
  /** Those modes themselves are worked out in portions too. */
  readonly decays?: boolean;
  /** What it depends on; null where it is not wanted. */
  key(wanted: Wanted, kept: Kept): string | null;
  kept(kept: Kept, key: string): boolean;
  errand(wanted: Wanted, kept: Kept, key: string): Errand;
}

/** The modes first as a first picture has them, then exactly: their decay in a room with patches takes a while. */
const modesTo = (name: string, detail: Detail): Part => ({
  name,
  after: detail,
  modesToHz: MODES_TO_HZ,
  decays: detail === 'fine',
  key: ({ fieldKey }) => fieldKey,
  kept: (kept, key) => kept.modes.has(key, detail),
  errand: ({ project }, kept, key) => ({
    jobs: [{ kind: 'modes', spec: roomSpec(project), detail, maxHz: MODES_TO_HZ }],
    take: ([found]) => kept.modes.put(key, found as Answers['modes'], detail),
  }),
});

const band: Part = {
  name: 'band',
  after: 'fine',
  key: ({ responsesKey }) => responsesKey,
  kept: (kept, key) => kept.band.key === key,
  errand: ({ project }, kept, key) => {
    const common = {
      sourcesM: sourceTriples(project),
      receiversM: earTriples(project),
      frequenciesHz: FREQUENCIES_HZ,
    };
    return {
      jobs: [
        { kind: 'responses', spec: roomSpec(project, 'low'), ...common },
        { kind: 'responses', spec: roomSpec(project, 'high'), ...common },
      ],
      take: ([low, high]) =>
        kept.band.put(key, { low: low as Answers['responses'], high: high as Answers['responses'] }),
    };
  },
};

const CURVE_HZ = curveFrequenciesHz();

const fine: Part = {
  name: 'fine',
  after: 'fine',
  key: ({ responsesKey }) => responsesKey,
  kept: (kept, key) => kept.fine.key === key,
  errand: ({ project }, kept, key) => ({
    jobs: [
      {
        kind: 'responses',
        spec: roomSpec(project),
        sourcesM: sourceTriples(project),
        receiversM: earTriples(project),
        frequenciesHz: CURVE_HZ,
      },
    ],
    take: ([found]) => kept.fine.put(key, found as Answers['responses']),
  }),
};

const shapes: Part = {
  name: 'shapes',
  after: 'first',
  modesToHz: MODES_TO_HZ,
  key: ({ responsesKey }) => responsesKey,
  kept: (kept, key) => kept.shapes.key === key,
  errand: ({ project }, kept, key) => ({
    jobs: [
      {
        kind: 'shapes',
        spec: roomSpec(project),
        maxHz: MODES_TO_HZ,
        pointsM: Float64Array.from([...sourceTriples(project), ...earTriples(project)]),
      },
    ],
    take: ([found]) => kept.shapes.put(key, found as Answers['shapes']),
  }),
};

const decay: Part = {
  name: 'decay',
  after: 'fine',
  key: ({ decayKey, fieldKey }, kept) => (kept.modes.of(fieldKey) ? decayKey : null),
  kept: (kept, key) => kept.decay.key === key,
  errand: ({ project, seatId, fieldKey }, kept, key) => {
    const showsS = shownS(kept.modes.of(fieldKey) ?? []);
    const { frequenciesHz, growthPerS } = decayGrid(showsS);
    const ears = earTriples(project);
    const seat = Math.max(0, seatIdsInOrder(project).indexOf(seatId));
    return {
      jobs: [
        {
          kind: 'responses',
          spec: roomSpec(project),
          sourcesM: sourceTriples(project),
          receiversM: ears.slice(3 * seat, 3 * seat + 3),
          frequenciesHz,
          growthPerS,
        },
      ],
      take: ([units]) => kept.decay.put(key, { units: units as Answers['responses'], showsS }),
    };
  },
};

const decayPicture: Part = {
  name: 'decay picture',
  after: 'fine',
  key: ({ decayKey, pictureKey }, kept) => (kept.decay.of(decayKey) ? pictureKey : null),
  kept: (kept, key) => kept.decayPicture.key === key,
  errand: ({ project, seatId, decayKey }, kept, key) => {
    const given = kept.decay.of(decayKey);
    return {
      jobs: given ? [{ kind: 'decay', drives: playedDrives(project), ...given }] : [],
      take: ([picture]) => kept.decayPicture.put(key, { seatId, ...(picture as Answers['decay']) }),
    };
  },
};

const PARTS: readonly Part[] = [
  modesTo('modes at first', 'first'),
  shapes,
  decay,
  decayPicture,
  band,
  fine,
  modesTo('modes', 'fine'),
];

/**
 * Does one part after the other while the hand rests, the most wanted first; after each it looks anew at what is wanted. A
 * part that failed is not tried again until what it depends on has changed.
 */
export const createBackground = (
  lane: Lane,
  kept: Kept,
  wantedNow: () => Wanted | null,
  onAnswer: () => void,
): { rest(): void } => {
  const failed = new Map<string, string>();
  let busy = false;

  const rest = () => {
    const wanted = busy ? null : wantedNow();
    if (!wanted) return;
    for (const part of PARTS) {
      const key = part.key(wanted, kept);
      if (key === null || !answered(wanted, kept, part.after) || part.kept(kept, key) || failed.get(part.name) === key)
        continue;
      void fetch(part, wanted, key);
      return;
    }
  };

  /** A prism's own preparation, and the decays of rooms that take a while, in portions: a stop or another room is heard in between. */
  const prepare = async (
    { modesToHz, decays }: Part,
    { project, fieldKey }: Wanted,
  ): Promise<'ready' | 'failed' | 'dropped'> => {
    const spec = roomSpec(project);
    if (isExactAtOnce(spec) || (!isPrism(spec) && decays !== true)) return 'ready';
    for (;;) {
      const outcome = await lane.ask([{ kind: 'warm', spec, frequenciesHz: NOTHING, modesToHz, decays }]);
      if (outcome.status !== 'done') return outcome.status === 'failed' ? 'failed' : 'dropped';
      if (outcome.answers[0] === true) return 'ready';
      if (wantedNow()?.fieldKey !== fieldKey) return 'dropped';
    }
  };

  const fetch = async (part: Part, wanted: Wanted, key: string) => {
    busy = true;
    const ready = await prepare(part, wanted);
    if (ready === 'dropped') {
      busy = false;
      rest();
      return;
    }
    const errand = part.errand(wanted, kept, key);
    const outcome = ready === 'failed' ? ({ status: 'failed' } as const) : await lane.ask(errand.jobs);
    busy = false;
    if (outcome.status === 'done') {
      errand.take(outcome.answers);
      onAnswer();
    } else if (outcome.status === 'failed') failed.set(part.name, key);
    rest();
  };

  return { rest };
};
