import { useMemo } from 'react';
import { useResults } from '../../state/view.tsx';
import { useCurrent } from '../hooks.ts';
import { FindingItem } from './FindingItem.tsx';
import { MetList } from './MetList.tsx';
import { orderFindings } from './order.ts';
import './findings.css';

/** The whole room's findings, worst first. */
export const Findings = () => {
  const findings = useResults((state) => state.findings?.value);
  const current = useCurrent('findings');
  const ordered = useMemo(() => findings && orderFindings(findings), [findings]);
  if (!ordered) return <p className="waiting">Judging the room …</p>;
  return (
    <div className={current ? 'findings' : 'findings is-stale'} aria-busy={!current}>
      {ordered.first.length > 0 ? (
        <section>
          <h2>{ordered.first.length === 3 ? 'Three things to fix first' : 'To fix first'}</h2>
          <ol>
            {ordered.first.map((finding) => (
              <FindingItem key={finding.id} finding={finding} />
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
            {ordered.rest.map((finding) => (
              <FindingItem key={finding.id} finding={finding} />
            ))}
          </ol>
        </section>
      )}
      <MetList findings={ordered.met} where="" />
    </div>
  );
};
