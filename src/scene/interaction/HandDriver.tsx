import { useThree } from '@react-three/fiber';
import { useEffect } from 'react';
import { useView } from '../../state/view.tsx';
import { useKit } from '../kit.ts';
import { Hand } from './hand.ts';

const LABEL =
  'The room in three dimensions. Arrow keys turn the view, plus and minus bring it nearer and farther, Home shows all of it.';

/** Gives the canvas to the hand: pointer, wheel, keys, focus and name. */
export const HandDriver = () => {
  const kit = useKit();
  const view = useView();
  const canvas = useThree((state) => state.gl.domElement);
  const get = useThree((state) => state.get);
  useEffect(() => {
    canvas.tabIndex = 0;
    canvas.setAttribute('role', 'application');
    canvas.setAttribute('aria-label', LABEL);
    canvas.style.touchAction = 'none';
    const hand = new Hand(kit, view, canvas, get);
    return () => hand.dispose();
  }, [kit, view, canvas, get]);
  return null;
};
