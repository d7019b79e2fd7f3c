import { createStore } from 'zustand/vanilla';
import type {
  BassCurves,
  BassReadout,
  BassSlice,
  DecayReadout,
  Finding,
  GeometryReadout,
  HeardModes,
  ModeReadout,
} from '../analysis/types.ts';
import type { LevelScale } from '../math/level-scale.ts';
import { type ChoiceState, initialChoice } from './choice.ts';

/** Whose answer this is. A result is current when its revision is the document's; an older one is shown dimmed. */
export interface Keyed<T> {
  readonly variant: string;
  readonly revision: number;
  readonly inputsKey: string;
  readonly value: T;
}

export interface ResultsState {
  readonly geometry: Keyed<GeometryReadout> | null;
  readonly bass: Keyed<BassReadout> | null;
  readonly curves: Keyed<BassCurves> | null;
  readonly modes: Keyed<readonly ModeReadout[]> | null;
  /** The chosen seat's. */
  readonly heard: Keyed<HeardModes> | null;
  /** The chosen seat's, while it is looked at. */
  readonly decay: Keyed<DecayReadout> | null;
  readonly slice: Keyed<BassSlice> | null;
  /** What a level's colour means, of slice and seats alike. */
  readonly scale: LevelScale | null;
  readonly findings: Keyed<readonly Finding[]> | null;
  readonly choice: ChoiceState;
  /** What is shown of the bass is a first picture, or one that takes a while is on its way. */
  readonly refining: boolean;
  /** A sentence when the numbers cannot be had just now, with what is being done about it. */
  readonly trouble: string | null;
}

export const createResultsStore = () =>
  createStore<ResultsState>()(() => ({
    geometry: null,
    bass: null,
    curves: null,
    modes: null,
    heard: null,
    decay: null,
    refining: false,
    slice: null,
    scale: null,
    findings: null,
    choice: initialChoice,
    trouble: null,
  }));
export type ResultsStore = ReturnType<typeof createResultsStore>;
