import { useResults } from '../../state/view.tsx';
import { VerdictMark } from '../marks/VerdictMark.tsx';

/** How many findings are missed or close, and the way to them. */
export const FindingsCount = ({ onOpen }: { onOpen(): void }) => {
  const findings = useResults((state) => state.findings?.value);
  if (!findings) return null;
  const missed = findings.filter(({ verdict }) => verdict === 'missed').length;
  const close = findings.filter(({ verdict }) => verdict === 'close').length;
  return (
    <button type="button" className="word-button findings-count" onClick={onOpen}>
      {missed > 0 && (
        <span>
          <VerdictMark verdict="missed" /> {missed} missed
        </span>
      )}
      {close > 0 && (
        <span>
          <VerdictMark verdict="close" /> {close} close
        </span>
      )}
      {missed + close === 0 && (
        <span>
          <VerdictMark verdict="met" /> all met
        </span>
      )}
    </button>
  );
};
