import { decayOf } from '../analysis/decay.ts';
import { createRoomField, prepareRoom } from '../engines/bass/create-room-field.ts';
import type { RoomField, RoomMode, UnitResponses } from '../engines/bass/room-field.ts';
import type {
  Answers,
  AnswerTo,
  Job,
  ModesJob,
  ResponsesJob,
  RoomJob,
  ShapesJob,
  SlicesJob,
  UnitSlices,
  WarmJob,
} from './protocol.ts';
import { createRecent } from './recent.ts';

/** Rooms kept with what is solved of them: three dampings of one room, ... */
const FIELDS_KEPT = 3;
/** ... as long as they hold no more: with plans, slices and the program itself a worker stays under 150 MB (npm run bench). */
const FIELDS_BYTES = 66e6;
/** Steps of a room's preparation between two looks at what else is wanted: some 50 ms in a room of 40 m2. */
const STEPS_AT_ONCE = 2;
/** One source's responses are about 12 seats x 80 frequencies x 16 bytes, 15 kB; 256 of them stay under 4 MB. */
const RESPONSES_KEPT = 256;
/** One source's slice is about 70 x 100 points x 8 bytes, 56 kB; 256 of them stay under 15 MB. */
const SLICES_KEPT = 256;

interface Column {
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly moved: Uint8Array;
}

export interface Desk {
  run<J extends Job>(job: J): AnswerTo<J>;
  /** How often the engine was really called, by kind of job; what came from memory is not counted. */
  readonly engineCalls: Readonly<Record<RoomJob['kind'], number>>;
}

/**
 * Does the jobs of one lane and remembers what each source alone sounded like, so that dragging one subwoofer among four
 * costs one subwoofer. Knows nothing of workers: the worker and its inline twin both hold one.
 */
export const createDesk = (): Desk => {
  const fields = createRecent<RoomField>(FIELDS_KEPT);
  const columns = createRecent<Column>(RESPONSES_KEPT);
  const slices = createRecent<UnitSlices['fields'][number]>(SLICES_KEPT);
  /** Rooms whose first preparation is done. */
  const ready = createRecent<true>(FIELDS_KEPT);
  const knownModes = createRecent<RoomMode[]>(FIELDS_KEPT);
  let preparing: { readonly key: string; readonly steps: Generator<void, void> } | null = null;
  const engineCalls = { responses: 0, slices: 0, modes: 0, shapes: 0, warm: 0 };

  const settingOf = ({ spec, detail = 'fine' }: RoomJob): string => `${detail}${JSON.stringify(spec)}`;
  const fieldOf = (job: RoomJob): RoomField =>
    fields.get(settingOf(job), () => createRoomField(job.spec, job.detail ?? 'fine'));

  const responses = (job: ResponsesJob): UnitResponses => {
    const field = fieldOf(job);
    const sources = job.sourcesM.length / 3;
    const receivers = job.receiversM.length / 3;
    const frequencies = job.frequenciesHz.length;
    const re = new Float64Array(sources * receivers * frequencies);
    const im = new Float64Array(re.length);
    const moved = new Uint8Array(sources * receivers);
    const setting = `${settingOf(job)}|${job.receiversM.join()}|${job.frequenciesHz.join()}|${job.growthPerS ?? 0}`;
    for (let source = 0; source < sources; source += 1) {
      const at = job.sourcesM.slice(source * 3, source * 3 + 3);
      const column = columns.get(`${setting}|${at.join()}`, () => {
        engineCalls.responses += 1;
        return field.unitResponses(at, job.receiversM, job.frequenciesHz, job.growthPerS);
      });
      re.set(column.re, source * receivers * frequencies);
      im.set(column.im, source * receivers * frequencies);
      moved.set(column.moved, source * receivers);
    }
    return { sources, receivers, frequencies, re, im, moved };
  };

  const unitSlices = (job: SlicesJob): UnitSlices => {
    const field = fieldOf(job);
    const { plane } = job;
    const setting = `${settingOf(job)}|${plane.normal}|${plane.atM}|${plane.uM.length}|${plane.vM.length}|${job.frequencyHz}`;
    const found = Array.from({ length: job.sourcesM.length / 3 }, (_, source) => {
      const at = job.sourcesM.slice(source * 3, source * 3 + 3);
      return slices.get(`${setting}|${at.join()}`, () => {
        engineCalls.slices += 1;
        const { re, im } = field.slice(plane, at, ONE, job.frequencyHz);
        return { re: Float32Array.from(re), im: Float32Array.from(im) };
      });
    });
    return { frequencyHz: job.frequencyHz, fields: found };
  };

  const keyOfModes = (job: RoomJob, maxHz: number): string => `${maxHz}|${settingOf(job)}`;
  const modes = (job: ModesJob) =>
    knownModes.get(keyOfModes(job, job.maxHz), () => {
      engineCalls.modes += 1;
      return fieldOf(job).modes(job.maxHz);
    });

  /** What a room takes at first, then its modes where they are wanted. */
  function* stepsOf(job: WarmJob): Generator<void, void> {
    const { spec, detail = 'fine', modesToHz, decays } = job;
    yield* prepareRoom(spec, detail, modesToHz);
    const steps = modesToHz === undefined || decays !== true ? undefined : fieldOf(job).modesInSteps?.(modesToHz);
    if (modesToHz === undefined || steps === undefined) return;
    const found = yield* steps;
    engineCalls.modes += 1;
    knownModes.get(keyOfModes(job, modesToHz), () => found);
  }

  const shapes = (job: ShapesJob) => {
    engineCalls.shapes += 1;
    return fieldOf(job).modeShapes(job.maxHz, job.pointsM);
  };

  /** The next steps of what a room takes at first; true once that is done. Another room's beginnings are dropped. */
  const prepared = (job: WarmJob, setting: string): boolean => {
    const key = `${job.modesToHz ?? ''}|${job.decays ?? false}|${setting}`;
    if (ready.has(key)) return true;
    if (preparing?.key !== key) preparing = { key, steps: stepsOf(job) };
    for (let step = 0; step < STEPS_AT_ONCE; step += 1) {
      if (!preparing.steps.next().done) continue;
      preparing = null;
      ready.get(key, () => true);
      return true;
    }
    return false;
  };

  const warm = (job: WarmJob): boolean => {
    engineCalls.warm += 1;
    if (!prepared(job, settingOf(job))) return false;
    if (job.modesToHz === undefined) fieldOf(job).warmUp(job.frequenciesHz);
    return true;
  };

  const answer = (job: Job): Answers[Job['kind']] => {
    if (job.kind === 'responses') return responses(job);
    if (job.kind === 'slices') return unitSlices(job);
    if (job.kind === 'shapes') return shapes(job);
    if (job.kind === 'warm') return warm(job);
    if (job.kind === 'decay') return decayOf(job);
    return modes(job);
  };
  const run = <J extends Job>(job: J): AnswerTo<J> => {
    const answered = answer(job) as AnswerTo<J>;
    fields.trim((field) => field.bytes(), FIELDS_BYTES);
    return answered;
  };
  return { run, engineCalls };
};

const ONE = Float64Array.of(1, 0);
