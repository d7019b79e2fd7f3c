import { useMemo } from 'react';
import { useResults } from '../../state/view.tsx';
import { useCurrent } from '../hooks.ts';
import { PictureSeen } from '../seats/PictureSeen.tsx';
import { AlikeItem } from './AlikeItem.tsx';
import { MetList } from './MetList.tsx';
import { type Alike, orderFindings } from './order.ts';
import './findings.css';

/** The same while the worst of them changes, so that what was opened stays open. */
const keyOf = ({ worst }: Alike): string => `${worst.verdict} ${worst.rule}`;

/** The whole room's findings, worst first. */
export const Findings = () => {
  const findings = useResults((state) => state.findings?.value);
  const current = useCurrent('findings');
  const ordered = useMemo(() => findings && orderFindings(findings), [findings]);
  if (!ordered) return <p className="waiting">Judging the room …</p>;
  return (
    <div className={current ? 'findings' : 'findings is-stale'} aria-busy={!current}>
      <PictureSeen as="long" />
      {ordered.first.length > 0 ? (
        <section>
          <h2>{ordered.first.length === 3 ? 'Three things to fix first' : 'To fix first'}</h2>
          <ol>
            {ordered.first.map((alike) => (
              <AlikeItem key={keyOf(alike)} alike={alike} />
            ))}
          </ol>
        </section>
      ) : (
        <p className="waiting">Nothing to fix: every target is met.</p>
      )}
      {ordered.rest.length > 0 && (
        <section>
          <h2>The rest, worst first</h2>
          <ol>
            {ordered.rest.map((alike) => (
              <AlikeItem key={keyOf(alike)} alike={alike} />
            ))}
          </ol>
        </section>
      )}
      <MetList findings={ordered.met} where="" />
    </div>
  );
};
