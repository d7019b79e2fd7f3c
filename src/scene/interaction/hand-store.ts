import { createStore } from 'zustand/vanilla';
import type { Refusal } from '../../model/refusal.ts';
import type { SnapReason } from '../../model/snap/reason.ts';
import type { Drawn } from './surface-draw.ts';

/** What the hand is doing, for the marks that show it: why it stopped where it did, and what is being drawn. */
export interface HandState {
  readonly reasons: readonly SnapReason[];
  /** What is in the way of the handle that is held; null when nothing is. */
  readonly stopped: Refusal | null;
  readonly drawn: Drawn | null;
  /** The id of the handle that is held. */
  readonly held: string | null;
}

export const createHandStore = () =>
  createStore<HandState>()(() => ({ reasons: [], stopped: null, drawn: null, held: null }));
export type HandStore = ReturnType<typeof createHandStore>;
