import { useCallback, useState } from 'react';

/**
 * What is being written over a value. It counts only as long as that value stands: whatever else changes the value, an undo
 * or a drag in the scene, puts the writing away in the same moment and for good.
 */
export const useDraft = (written: string): readonly [text: string, write: (text: string) => void] => {
  const [draft, setDraft] = useState<string | null>(null);
  const [over, setOver] = useState(written);
  const stale = over !== written;
  if (stale) {
    setOver(written);
    setDraft(null);
  }
  const write = useCallback((next: string) => setDraft(next === written ? null : next), [written]);
  return [stale ? written : (draft ?? written), write];
};
