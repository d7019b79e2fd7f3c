/** Unmeasured rounds: the compiler has settled after these. */
const WARM_UP = 12;

/** Interleaved timing: every candidate once a round, medians over the rounds. */
export interface Timed {
  label: string;
  run: (round: number) => void;
}

export const interleave = (rounds: number, candidates: readonly Timed[], warmUp = WARM_UP): number[] => {
  for (let round = 0; round < warmUp; round++) for (const { run } of candidates) run(round);
  const times = candidates.map(() => new Float64Array(rounds));
  for (let round = 0; round < rounds; round++) {
    for (const [i, { run }] of candidates.entries()) {
      const start = performance.now();
      run(warmUp + round);
      times[i][round] = performance.now() - start;
    }
  }
  return times.map((list) => list.sort()[rounds >> 1]);
};

export interface Outcome {
  what: string;
  met: boolean;
}

/** Prints one line and remembers whether the aim was met. */
export const createLedger = (): {
  ratio(what: string, engineMs: number, baselineMs: number, least: number, note?: string): void;
  time(what: string, ms: number, note: string): void;
  bound(what: string, value: number, most: number): void;
  memory(what: string, mb: number, mostMb: number): void;
  outcomes: Outcome[];
} => {
  const outcomes: Outcome[] = [];
  const say = (what: string, met: boolean, text: string): void => {
    outcomes.push({ what, met });
    console.log(`${met ? 'ok    ' : 'MISSED'}  ${what}: ${text}`);
  };
  return {
    outcomes,
    ratio: (what, engineMs, baselineMs, least, note = '') => {
      const ratio = baselineMs / engineMs;
      const times = `${engineMs.toFixed(2)} ms against ${baselineMs.toFixed(baselineMs < 100 ? 2 : 0)} ms`;
      say(what, ratio >= least, `${ratio.toFixed(ratio < 100 ? 1 : 0)} x (at least ${least} x), ${times}${note}`);
    },
    time: (what, ms, note) => console.log(`        ${what}: ${ms.toFixed(2)} ms${note}`),
    memory: (what, mb, mostMb) => say(what, mb <= mostMb, `${mb.toFixed(0)} MB (at most ${mostMb} MB)`),
    bound: (what, value, most) =>
      say(what, value <= most, `${value.toExponential(1)} (at most ${most.toExponential(1)})`),
  };
};
