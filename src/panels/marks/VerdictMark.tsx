import type { Verdict } from '../../analysis/types.ts';
import './marks.css';

const DRAWING: Readonly<Record<Verdict, string>> = {
  met: 'M8 2.2a5.8 5.8 0 1 0 0 11.6a5.8 5.8 0 1 0 0-11.6z',
  close: 'M8 2.2a5.8 5.8 0 1 0 0 11.6z',
  missed: 'M8 1.6a6.4 6.4 0 1 0 0 12.8a6.4 6.4 0 1 0 0-12.8z',
};

/** Ring, half disc or solid disc: the shape alone tells the verdict. The word always stands beside it or in the name. */
export const VerdictMark = ({ verdict }: { verdict: Verdict }) => (
  <svg className={`mark is-${verdict}`} viewBox="0 0 16 16" aria-hidden="true" focusable="false">
    {verdict === 'close' && <circle cx="8" cy="8" r="5.8" className="mark-ring" />}
    <path d={DRAWING[verdict]} />
  </svg>
);

export const VerdictWord = ({ verdict }: { verdict: Verdict }) => (
  <span className={`verdict is-${verdict}`}>
    <VerdictMark verdict={verdict} />
    {verdict}
  </span>
);
