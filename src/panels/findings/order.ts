import type { Finding, Verdict } from '../../analysis/types.ts';

const RANK: Readonly<Record<Verdict, number>> = { missed: 0, close: 1, met: 2 };

export const worseFirst = (a: Finding, b: Finding): number => RANK[a.verdict] - RANK[b.verdict] || b.weight - a.weight;

export interface OrderedFindings {
  /** The worst finding of each of the three worst rules: three seats with one fault are one thing to fix. */
  readonly first: readonly Finding[];
  readonly rest: readonly Finding[];
  readonly met: readonly Finding[];
}

/** Findings in the order they are read: three things to fix first, what else is missed or close, what is met. */
export const orderFindings = (findings: readonly Finding[]): OrderedFindings => {
  const sorted = [...findings].sort(worseFirst);
  const open = sorted.filter(({ verdict }) => verdict !== 'met');
  const first: Finding[] = [];
  for (const finding of open) {
    if (first.length < 3 && !first.some(({ rule }) => rule === finding.rule)) first.push(finding);
  }
  return {
    first,
    rest: open.filter((finding) => !first.includes(finding)),
    met: sorted.filter(({ verdict }) => verdict === 'met'),
  };
};

/** The worst verdict on a seat, null when nothing about it has been judged. */
export const worstAtSeat = (findings: readonly Finding[], seatId: string): Verdict | null => {
  let worst: Verdict | null = null;
  for (const { seat, verdict } of findings) {
    if (seat === seatId && (worst === null || RANK[verdict] < RANK[worst])) worst = verdict;
  }
  return worst;
};
