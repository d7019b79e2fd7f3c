import { createStore } from 'zustand/vanilla';

/** What the camera at rest says about the view. */
export interface ShotState {
  /** How many times smaller than life things are shown while sitting; null while not. */
  readonly timesSmaller: number | null;
}

export const shotStore = createStore<ShotState>()(() => ({ timesSmaller: null }));
