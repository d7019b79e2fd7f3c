import type { Finding, Verdict } from '../../analysis/types.ts';

const RANK: Readonly<Record<Verdict, number>> = { missed: 0, close: 1, met: 2 };

export const worseFirst = (a: Finding, b: Finding): number => RANK[a.verdict] - RANK[b.verdict] || b.weight - a.weight;

/** One rule with one verdict, at as many seats or things as it may be: one thing to look at. */
export interface Alike {
  /** The one farthest from what is asked for. */
  readonly worst: Finding;
  readonly others: readonly Finding[];
}

export interface OrderedFindings {
  /** Three different rules, whatever is missed before whatever is close. */
  readonly first: readonly Alike[];
  readonly rest: readonly Alike[];
  readonly met: readonly Finding[];
}

/** How far a finding is outside its range, in its own unit. */
const outside = ({ value, range: [low, high] }: Finding): number =>
  value === null ? 0 : Math.max(low === null ? 0 : low - value, high === null ? 0 : value - high, 0);

const alike = (findings: readonly Finding[]): Alike => {
  const worst = findings.reduce((a, b) => (outside(b) > outside(a) ? b : a));
  return { worst, others: findings.filter((one) => one !== worst) };
};

/** Findings in the order they are read: three things to fix first, what else is missed or close, what is met. */
export const orderFindings = (findings: readonly Finding[]): OrderedFindings => {
  const sorted = [...findings].sort(worseFirst);
  const groups = new Map<string, Finding[]>();
  for (const finding of sorted) {
    if (finding.verdict === 'met') continue;
    const key = `${finding.verdict} ${finding.rule}`;
    const group = groups.get(key);
    if (group) group.push(finding);
    else groups.set(key, [finding]);
  }
  const open = [...groups.values()].map(alike);
  const first: Alike[] = [];
  for (const one of open) {
    if (first.length < 3 && !first.some(({ worst }) => worst.rule === one.worst.rule)) first.push(one);
  }
  return {
    first,
    rest: open.filter((one) => !first.includes(one)),
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
