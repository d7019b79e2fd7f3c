import { useThree } from '@react-three/fiber';
import { useEffect } from 'react';
import { connectFrames, requestFrame } from '../state/frames.ts';
import { useView } from '../state/view.tsx';
import { useKit } from './kit.ts';
import { createStageProbe, setStageProbe } from './probe.ts';

/** Draws when something changed, and only then. */
export const Redraw = () => {
  const invalidate = useThree((state) => state.invalidate);
  const get = useThree((state) => state.get);
  const kit = useKit();
  const view = useView();
  useEffect(() => {
    connectFrames(() => invalidate());
    const stop = [
      view.document.subscribe(() => requestFrame('document')),
      view.session.subscribe(() => requestFrame('session')),
      view.results.subscribe((next, last) => requestFrame(next.slice === last.slice ? 'document' : 'floor-ready')),
    ];
    setStageProbe(createStageProbe(kit, get));
    requestFrame('resize');
    return () => {
      for (const end of stop) end();
      connectFrames(null);
      setStageProbe(null);
    };
  }, [invalidate, get, kit, view]);
  return null;
};
