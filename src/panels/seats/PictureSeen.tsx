import { useMemo } from 'react';
import { useDocument, useResults } from '../../state/view.tsx';
import { useCurrent } from '../hooks.ts';
import { VerdictMark } from '../marks/VerdictMark.tsx';
import { pictureSeen } from './picture-seen.ts';

const RULE = 'picture-in-view';

/** Says outright whether all seats see the whole picture: with the seats' names, or in a line over the plan. */
export const PictureSeen = ({ as }: { readonly as: 'short' | 'long' }) => {
  const project = useDocument((state) => state.project);
  const seats = useResults((state) => state.geometry?.value.seats);
  const findings = useResults((state) => state.findings?.value);
  const current = useCurrent('geometry');
  const seen = useMemo(() => (seats ? pictureSeen(project, seats) : null), [project, seats]);
  if (!seen) return null;
  const mine = findings?.filter(({ rule }) => rule === RULE).map(({ verdict }) => verdict) ?? [];
  const verdict = (['missed', 'close', 'met'] as const).find((one) => mine.includes(one));
  return (
    <p className={`${as === 'short' ? 'plan-said' : 'picture-said'}${current ? '' : ' is-stale'}`}>
      {verdict && <VerdictMark verdict={verdict} />}
      {seen[as]}
    </p>
  );
};
