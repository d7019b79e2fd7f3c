import type { UnitResponses } from './room-field.ts';
import type { Drive } from './superpose.ts';

/** What a search of drives may change, and how far. */
export interface DriveBounds {
  readonly leastGainDb: number;
  readonly mostGainDb: number;
  readonly mostDelayMs: number;
  /** The mean level may fall by this, dB, before it counts against a solution: evenness by silence is none. */
  readonly lostLevelDb: number;
}

export const USUAL_BOUNDS: DriveBounds = { leastGainDb: -6, mostGainDb: 0, mostDelayMs: 15, lostLevelDb: 3 };

export interface DriveSearchInput {
  readonly unit: UnitResponses;
  readonly frequenciesHz: ArrayLike<number>;
  /** Drives to start from, one a source. */
  readonly start: readonly Drive[];
  /** Sources whose drive stays as it is (locked ones). */
  readonly held: readonly boolean[];
  readonly bounds: DriveBounds;
  readonly random: () => number;
}

export interface DriveSearch {
  /** Share of the work done, 0 to 1. */
  readonly share: number;
  /** Works through one more generation; true when all are done. */
  step(): boolean;
  /** Best so far: mean spread in dB and the drives, rounded as a fitter types them. */
  best(): { readonly spreadDb: number; readonly drives: Drive[] };
}

const GENERATIONS = 90;
/** A dB of level lost beyond what is allowed costs this many dB of spread. */
const LOSS_COST = 0.5;

/**
 * Differential evolution (Storn and Price, J. Global Optimization 11, 1997, from memory: rand/1/bin with F drawn per trial,
 * crossover 0.9) over gain, delay and polarity of every subwoofer that is not held: a population over the whole allowed
 * range, so that no start decides the outcome. Where nothing is held only differences between subwoofers make a difference
 * to the spread: the first free one keeps its polarity, and in the end the earliest has no delay and the loudest full gain.
 */
export const createDriveSearch = (input: DriveSearchInput): DriveSearch => {
  const { unit, frequenciesHz, start, held, bounds, random } = input;
  const { sources, receivers: seats, frequencies } = unit;
  const free = start.map((_, s) => s).filter((s) => !held[s]);
  const anchored = !held.some(Boolean);
  const size = 3 * free.length;
  const population = Math.max(12, Math.min(48, 5 * size));

  const gain = new Float64Array(sources);
  const delay = new Float64Array(sources);
  const sign = new Float64Array(sources);
  const wRe = new Float64Array(sources);
  const wIm = new Float64Array(sources);
  const level = new Float64Array(seats);

  const evaluate = (): { spreadDb: number; levelDb: number } => {
    let spreads = 0;
    let levels = 0;
    for (let f = 0; f < frequencies; f++) {
      const omega = (2 * Math.PI * frequenciesHz[f]) / 1000;
      for (let s = 0; s < sources; s++) {
        wRe[s] = sign[s] * gain[s] * Math.cos(omega * delay[s]);
        wIm[s] = -sign[s] * gain[s] * Math.sin(omega * delay[s]);
      }
      let sum = 0;
      for (let r = 0; r < seats; r++) {
        let re = 0;
        let im = 0;
        for (let s = 0; s < sources; s++) {
          const at = (s * seats + r) * frequencies + f;
          re += unit.re[at] * wRe[s] - unit.im[at] * wIm[s];
          im += unit.re[at] * wIm[s] + unit.im[at] * wRe[s];
        }
        level[r] = 10 * Math.log10(Math.max(1e-30, re * re + im * im));
        sum += level[r];
      }
      const mean = sum / seats;
      let squares = 0;
      for (let r = 0; r < seats; r++) squares += (level[r] - mean) ** 2;
      spreads += Math.sqrt(squares / (seats - 1));
      levels += mean;
    }
    return { spreadDb: spreads / frequencies, levelDb: levels / frequencies };
  };

  const take = (drives: readonly Drive[]): void => {
    for (const [s, drive] of drives.entries()) {
      gain[s] = 10 ** (drive.gainDb / 20);
      delay[s] = drive.delayMs;
      sign[s] = drive.inverted ? -1 : 1;
    }
  };
  const drivesOf = (genes: Float64Array, from: number): Drive[] => {
    const drives = [...start];
    for (const [i, s] of free.entries()) {
      const span = bounds.mostGainDb - bounds.leastGainDb;
      const fixed = anchored && i === 0;
      drives[s] = {
        gainDb: Math.round((bounds.leastGainDb + span * genes[from + 3 * i]) * 2) / 2,
        delayMs: Math.round(bounds.mostDelayMs * genes[from + 3 * i + 1] * 10) / 10,
        inverted: fixed ? start[s].inverted : genes[from + 3 * i + 2] > 0.5,
      };
    }
    return drives;
  };
  take(start);
  const first = evaluate();
  const cost = (drives: readonly Drive[]): number => {
    take(drives);
    const { spreadDb, levelDb } = evaluate();
    return spreadDb + LOSS_COST * Math.max(0, first.levelDb - levelDb - bounds.lostLevelDb);
  };

  let bestCost = first.spreadDb;
  let bestDrives: readonly Drive[] = start;
  const genes = new Float64Array(population * size);
  const costs = new Float64Array(population);
  const trial = new Float64Array(size);
  const note = (drives: Drive[], value: number): void => {
    if (value >= bestCost) return;
    bestCost = value;
    bestDrives = drives;
  };
  for (let i = 0; i < genes.length; i++) genes[i] = random();
  let filled = 0;
  let generation = 0;

  const fold = (value: number): number => {
    const there = Math.abs(value) % 2;
    return there > 1 ? 2 - there : there;
  };
  const other = (not: number): number => (not + 1 + Math.floor(random() * (population - 1))) % population;

  return {
    get share() {
      return Math.min(1, generation / GENERATIONS);
    },
    step: () => {
      if (free.length === 0 || seats < 2) {
        generation = GENERATIONS;
        return true;
      }
      if (filled === 0) {
        for (; filled < population; filled++) {
          const drives = drivesOf(genes, filled * size);
          costs[filled] = cost(drives);
          note(drives, costs[filled]);
        }
        return false;
      }
      for (let p = 0; p < population; p++) {
        const [a, b, c] = [other(p), other(p), other(p)];
        const weight = 0.4 + 0.5 * random();
        const sure = Math.floor(random() * size);
        for (let g = 0; g < size; g++) {
          const mixed = genes[a * size + g] + weight * (genes[b * size + g] - genes[c * size + g]);
          trial[g] = g === sure || random() < 0.9 ? fold(mixed) : genes[p * size + g];
        }
        const drives = drivesOf(trial, 0);
        const value = cost(drives);
        if (value > costs[p]) continue;
        genes.set(trial, p * size);
        costs[p] = value;
        note(drives, value);
      }
      generation++;
      return generation >= GENERATIONS;
    },
    best: () => {
      take(bestDrives);
      const { spreadDb } = evaluate();
      if (!anchored || bestDrives === start) return { spreadDb, drives: [...bestDrives] };
      const lessDb = Math.max(...bestDrives.map(({ gainDb }) => gainDb)) - bounds.mostGainDb;
      const lessMs = Math.min(...bestDrives.map(({ delayMs }) => delayMs));
      const drives = bestDrives.map(({ gainDb, delayMs, inverted }) => ({
        gainDb: gainDb - lessDb,
        delayMs: Math.round((delayMs - lessMs) * 10) / 10,
        inverted,
      }));
      return { spreadDb, drives };
    },
  };
};
