import { useState } from 'react';

/**
 * What is being written over a value. It counts only as long as that value stands: whatever else changes the value, an undo
 * or a drag in the scene, puts the writing away in the same moment.
 */
export const useDraft = (written: string): readonly [text: string, write: (text: string) => void] => {
  const [draft, setDraft] = useState<{ readonly text: string; readonly over: string } | null>(null);
  const text = draft?.over === written ? draft.text : written;
  return [text, (next) => setDraft(next === written ? null : { text: next, over: written })];
};
