import { createContext, useContext } from 'react';
import { Rig } from './rigs/rig.ts';

/** What one stage's parts share below React: the rig, the veil over the canvas, and what is counted. */
export class StageKit {
  readonly rig = new Rig();
  /** Something around the camera changed: the rig reads its surroundings before the next frame. */
  stale = true;
  frames = 0;
  /** The camera moved in the last frame. */
  moving = false;
  /** The dark sheet a cut from seat to seat fades through. */
  veil: HTMLElement | null = null;
}

const KitContext = createContext<StageKit | null>(null);
export const KitProvider = KitContext.Provider;

export const useKit = (): StageKit => {
  const kit = useContext(KitContext);
  if (!kit) throw new Error('a part of the stage was mounted outside it');
  return kit;
};
