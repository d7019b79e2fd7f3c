import type { BassSheet } from '../../state/session.ts';
import { useSession, useView } from '../../state/view.tsx';
import { BassNotes } from './BassNotes.tsx';
import { BassPlots } from './BassPlots.tsx';
import { BassTrust } from './BassTrust.tsx';
import { ModeList } from './ModeList.tsx';
import { SliceControls } from './SliceControls.tsx';
import { SliceLegend } from './SliceLegend.tsx';
import { ThirdsTable } from './ThirdsTable.tsx';
import './bass.css';

/** The bass on a small screen: legend and slice, and behind two lids curves, decay and modes. */
export const BassPocket = () => {
  const { session } = useView();
  const shown = useSession((state) => state.bassSheet);
  const open = (sheet: BassSheet | null) => session.setState({ bassSheet: sheet });
  return (
    <div className="bass-pocket">
      <h2 className="unseen">Bass</h2>
      <SliceLegend />
      <SliceControls />
      <details
        open={shown !== null}
        onToggle={({ currentTarget }) => open(currentTarget.open ? (shown ?? 'curves') : null)}
      >
        <summary>Curves and decay</summary>
        {shown && <BassPlots shown={shown} />}
      </details>
      <details>
        <summary>Modes</summary>
        <ModeList />
        <ThirdsTable />
      </details>
      <BassTrust />
      <BassNotes />
    </div>
  );
};
