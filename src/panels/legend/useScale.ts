import { useRef } from 'react';
import { type LevelScale, levelScale } from '../../math/level-scale.ts';
import { useResults } from '../../state/view.tsx';

/** The bass floor's colour scale as the floor itself draws it; null while there is no floor. */
export const useFloorScale = (): LevelScale | null => {
  const floor = useResults((state) => state.floor?.value);
  const previous = useRef<LevelScale | null>(null);
  if (!floor) return null;
  previous.current = levelScale(floor.levelDb, previous.current);
  return previous.current;
};
