import { createStore } from 'zustand/vanilla';
import type { BassReadout, BassSlice, Finding, GeometryReadout, ModeReadout } from '../analysis/types.ts';

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
  readonly modes: Keyed<readonly ModeReadout[]> | null;
  readonly slice: Keyed<BassSlice> | null;
  readonly findings: Keyed<readonly Finding[]> | null;
  /** A sentence when the numbers cannot be had just now, with what is being done about it. */
  readonly trouble: string | null;
}

export const createResultsStore = () =>
  createStore<ResultsState>()(() => ({
    geometry: null,
    bass: null,
    modes: null,
    slice: null,
    findings: null,
    trouble: null,
  }));
export type ResultsStore = ReturnType<typeof createResultsStore>;
