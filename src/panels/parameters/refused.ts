import { useEffect } from 'react';
import { useView, type View } from '../../state/view.tsx';

/** What was written into a field and not taken, while it still stands there. */
interface Refused {
  readonly view: View;
  /** The document it was refused for: once that has changed, the entry is not the last thing that was done. */
  readonly revision: number;
  putBack(): void;
}

const standing = new Set<Refused>();

/** Keeps a refused entry for as long as it stands in its field; null where none does. */
export const useRefused = (written: string | null, putBack: () => void): void => {
  const view = useView();
  useEffect(() => {
    if (written === null) return;
    const entry = { view, revision: view.document.getState().revision, putBack };
    standing.add(entry);
    return () => void standing.delete(entry);
  }, [view, written, putBack]);
};

/** Takes back the last refused entry, if that was the last thing done; false where there is none. */
export const takeBackRefused = (view: View): boolean => {
  const { revision } = view.document.getState();
  const last = [...standing].findLast((one) => one.view === view && one.revision === revision);
  last?.putBack();
  return last !== undefined;
};
