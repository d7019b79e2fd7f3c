import { useAppActions } from '../actions.ts';
import type { SheetName } from './TopLine.tsx';

/** Opening, saving, and what to know before building. */
export const FileButtons = ({ onSheet }: { readonly onSheet: (sheet: SheetName) => void }) => {
  const actions = useAppActions();
  return (
    <>
      {actions && (
        <>
          <button type="button" className="word-button" onClick={() => actions.openFile()}>
            Open
          </button>
          <button type="button" className="word-button" onClick={() => actions.saveFile()}>
            Save
          </button>
        </>
      )}
      <button type="button" className="word-button" onClick={() => onSheet('cautions')}>
        Before you build
      </button>
    </>
  );
};
