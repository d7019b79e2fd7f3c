import type { ItemRef, TargetSet } from '../../model/project.ts';
import type { Verdict } from '../types.ts';
import type { SourceId } from './sources.ts';

/** From and to, both included; null where that end is open. */
export type Interval = readonly [low: number | null, high: number | null];

/** What is wanted of a quantity, and what is still close to it; `closeRange` holds `range`. */
export interface Ranges {
  readonly range: Interval;
  readonly closeRange: Interval;
}

export type Unit = 'deg' | 'dB' | 'm' | 'mm' | 'share' | 'px/deg' | '';

/** A rule of the trade as one line of the table. */
export interface Rule {
  /** A short name in sentence case. */
  readonly title: string;
  readonly unit: Unit;
  /** How much it matters against the other rules, 100 the most; 0 marks information that is never a fault. */
  readonly weight: number;
  readonly source: SourceId;
  /** By target set; null where the ranges depend on the layout and come with each measurement. */
  readonly ranges: Readonly<Record<TargetSet, Ranges>> | null;
}

export type Facts = Readonly<Record<string, number | string>>;

/** One quantity, measured for one rule: what a finding is made from. */
export interface Measurement<Id extends string = string> {
  readonly rule: Id;
  readonly seat: string | null;
  readonly item: string | null;
  /** Tells apart several findings of one rule about the same seat and item. */
  readonly part?: string;
  /** Null where the rule only tells something. */
  readonly value: number | null;
  /** Where the layout, not only the target set, decides. */
  readonly ranges?: Ranges;
  readonly source?: SourceId;
  readonly causes: readonly ItemRef[];
  /** Further values that the sentence needs. */
  readonly facts?: Facts;
}

/** Sums of decimals must not turn a value that lies on an edge into a miss. */
const SLACK = 1e-9;

const within = (value: number, [low, high]: Interval): boolean =>
  (low === null || value >= low - SLACK) && (high === null || value <= high + SLACK);

/** Met inside the range, close inside the close range, else missed. A quantity without a value is no fault. */
export const judge = (value: number | null, { range, closeRange }: Ranges): Verdict => {
  if (value === null || within(value, range)) return 'met';
  return within(value, closeRange) ? 'close' : 'missed';
};

/** How far a value lies outside a range, in the range's unit; 0 inside. */
export const distanceOutside = (value: number | null, [low, high]: Interval): number => {
  if (value === null) return 0;
  if (low !== null && value < low) return low - value;
  return high !== null && value > high ? value - high : 0;
};

/** A range widened by `allowance` at its closed ends. */
export const widened = ([low, high]: Interval, allowance: number): Interval => [
  low === null ? null : low - allowance,
  high === null ? null : high + allowance,
];

/** The same ranges in all three target sets. */
export const inEverySet = (range: Interval, closeRange: Interval): Readonly<Record<TargetSet, Ranges>> => {
  const ranges = { range, closeRange };
  return { living: ranges, standard: ranges, diffuse: ranges };
};
