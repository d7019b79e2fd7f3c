import { useSyncExternalStore } from 'react';
import type { ItemRef } from '../model/project.ts';
import { useDocument, useResults, useView } from '../state/view.tsx';
import type { UnitSystem } from '../words/quantities-length.ts';

export const useUnits = (): UnitSystem => useDocument((state) => state.project.display.units);

/** Whether answers of this kind are those of the document as it stands. */
export const useCurrent = (
  kind: 'geometry' | 'bass' | 'curves' | 'modes' | 'heard' | 'decay' | 'slice' | 'findings',
): boolean => {
  const revision = useDocument((state) => state.revision);
  return useResults((state) => state[kind]?.revision) === revision;
};

export const sameItem = (a: ItemRef | null, b: ItemRef | null): boolean =>
  a === b || (a !== null && b !== null && a.kind === b.kind && a.id === b.id);

/** Choosing things and places: what several panels do alike. */
export const useChoose = () => {
  const { session } = useView();
  return {
    item: (selection: ItemRef | null) => session.setState({ selection }),
    seat: (seatId: string) => session.setState({ seatId, selection: { kind: 'seat', id: seatId } }),
    sitAt: (seatId: string) => session.setState({ seatId, mode: 'sit' }),
    frequency: (frequencyHz: number) => session.setState({ frequencyHz }),
  };
};

/** Whether a media query holds, following it. */
export const useMedia = (query: string): boolean =>
  useSyncExternalStore(
    (changed) => {
      const list = window.matchMedia(query);
      list.addEventListener('change', changed);
      return () => list.removeEventListener('change', changed);
    },
    () => window.matchMedia(query).matches,
  );
