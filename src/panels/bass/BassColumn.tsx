import type { BassSheet } from '../../state/session.ts';
import { useSession, useView } from '../../state/view.tsx';
import { BassNotes } from './BassNotes.tsx';
import { BassTrust } from './BassTrust.tsx';
import { ModeList } from './ModeList.tsx';
import { SliceControls } from './SliceControls.tsx';
import { ThirdsTable } from './ThirdsTable.tsx';
import './bass.css';

const SHEETS: readonly { readonly value: BassSheet; readonly word: string }[] = [
  { value: 'curves', word: 'Curves of the seats' },
  { value: 'decay', word: 'Picture of the decay' },
];

/** The bass as one looks into it: the slice, what rises over the band, the modes and their decay. */
export const BassColumn = () => {
  const { session } = useView();
  const open = useSession((state) => state.bassSheet);
  return (
    <article className="bass-column">
      <SliceControls />
      <p className="bass-sheets">
        {SHEETS.map(({ value, word }) => (
          <button
            key={value}
            type="button"
            className="word-button is-brass"
            aria-expanded={open === value}
            aria-keyshortcuts={value === 'curves' ? 'k' : 'd'}
            onClick={() => session.setState({ bassSheet: open === value ? null : value })}
          >
            {word}
          </button>
        ))}
      </p>
      <ModeList />
      <ThirdsTable />
      <BassTrust />
      <BassNotes />
    </article>
  );
};
