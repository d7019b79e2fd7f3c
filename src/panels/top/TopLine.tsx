import { useDocument, useView } from '../../state/view.tsx';
import { FindingsCount } from '../findings/FindingsCount.tsx';
import { Icon } from '../marks/Icon.tsx';
import { FileButtons } from './FileButtons.tsx';
import { ClearButton, LightChoice, ModeChoice, OverlaySwitches } from './StageControls.tsx';
import './top.css';

export type SheetName = 'keys' | 'cautions' | 'rooms';

interface TopLineProps {
  onSheet(name: SheetName): void;
  onFindings(): void;
}

export const History = () => {
  const { document } = useView();
  const canUndo = useDocument((state) => state.canUndo);
  const canRedo = useDocument((state) => state.canRedo);
  const undoLabel = useDocument((state) => state.undoLabel);
  const redoLabel = useDocument((state) => state.redoLabel);
  return (
    <>
      <button
        type="button"
        className="icon-button"
        disabled={!canUndo}
        aria-label={undoLabel ? `Undo: ${undoLabel}` : 'Undo'}
        title={undoLabel ? `Undo: ${undoLabel}` : 'Undo'}
        onClick={() => document.actions.undo()}
      >
        <Icon name="undo" />
      </button>
      <button
        type="button"
        className="icon-button"
        disabled={!canRedo}
        aria-label={redoLabel ? `Redo: ${redoLabel}` : 'Redo'}
        title={redoLabel ? `Redo: ${redoLabel}` : 'Redo'}
        onClick={() => document.actions.redo()}
      >
        <Icon name="redo" />
      </button>
    </>
  );
};

/** When the browser last kept the project by itself. */
const Kept = () => {
  const savedAtMs = useDocument((state) => state.savedAtMs);
  if (savedAtMs === null) return null;
  const at = new Date(savedAtMs);
  const time = at.toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' });
  return (
    <small>
      kept at <time dateTime={at.toISOString()}>{time}</time>
    </small>
  );
};

/** Word mark and title over the left column, the stage's controls over the stage, the file's over the right column. */
export const TopLine = ({ onSheet, onFindings }: TopLineProps) => {
  const name = useDocument((state) => state.project.name);
  return (
    <header className="top">
      <div className="top-title">
        <p>
          <span className="word-mark">Parterre</span>
          <Kept />
        </p>
        <div className="top-room">
          <h1>{name}</h1>
          <button type="button" className="word-button is-brass" onClick={() => onSheet('rooms')}>
            Rooms
          </button>
        </div>
      </div>
      <div className="top-stage">
        <ModeChoice />
        <ClearButton />
        <div className="top-overlays">
          <OverlaySwitches />
          <LightChoice />
        </div>
      </div>
      <div className="top-file">
        <FindingsCount onOpen={onFindings} />
        <span className="top-gap" />
        <History />
        <FileButtons onSheet={onSheet} />
        <button type="button" className="icon-button" aria-label="Keys" title="Keys" onClick={() => onSheet('keys')}>
          ?
        </button>
      </div>
    </header>
  );
};
