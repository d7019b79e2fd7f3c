import { useDocument, useSession } from './view.tsx';

/** Whether the bass floor is drawn: it is switched on, the room is seen from outside, and there is bass to draw. */
export const useFloorShown = (): boolean => {
  const wanted = useSession((state) => state.slice.shown && state.mode === 'overlook');
  const sounding = useDocument((state) => state.project.subwoofers.length > 0);
  return wanted && sounding;
};
