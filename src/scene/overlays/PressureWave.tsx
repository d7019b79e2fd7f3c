import { useFrame } from '@react-three/fiber';
import { useEffect, useRef } from 'react';
import { requestFrame } from '../../state/frames.ts';
import { useSession } from '../../state/view.tsx';
import type { FloorMap } from './floor-shader.ts';
import { sliceTurn } from './slice-turn.ts';

const CYCLE_S = 2;
/** The first step after a rest, and the longest: a picture that was away for a while goes on where it was. */
const LONGEST_STEP_S = 0.1;

/**
 * Moves a signed pressure through its cycle, slowly and in phase, and asks for the next frame only while it does: not when
 * less motion is wanted, not while the page is hidden.
 */
export const PressureWave = ({ map }: { readonly map: FloorMap }) => {
  const still = useSession((state) => state.reducedMotion);
  const passedS = useRef(0);
  useEffect(() => {
    passedS.current = 0;
    sliceTurn.radians = map.turnTo(0);
    requestFrame('wave');
    if (still) return;
    const wake = () => {
      if (!document.hidden) requestFrame('wave');
    };
    document.addEventListener('visibilitychange', wake);
    return () => document.removeEventListener('visibilitychange', wake);
  }, [map, still]);
  useFrame((_, delta) => {
    if (still || document.hidden) return;
    passedS.current = (passedS.current + Math.min(delta, LONGEST_STEP_S)) % CYCLE_S;
    sliceTurn.radians = map.turnTo((2 * Math.PI * passedS.current) / CYCLE_S);
    requestFrame('wave');
  }, -3);
  return null;
};
