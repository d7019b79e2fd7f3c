import { describe, expect, it } from 'vitest';
import { distanceOutside, type Interval, judge, type Ranges } from '../../../src/analysis/rules/rule.ts';
import { sources } from '../../../src/analysis/rules/sources.ts';
import { ruleIds, ruleOf } from '../../../src/analysis/rules/table.ts';
import { homeRange } from '../../../src/engines/loudspeakers/home-ranges.ts';
import { TARGET_SETS } from '../../../src/model/schema/project.ts';

const cases = ruleIds.flatMap((id) =>
  TARGET_SETS.flatMap((set) => {
    const ranges = ruleOf(id).ranges?.[set];
    return ranges ? [{ id, set, ...ranges }] : [];
  }),
);

/** Far less than anybody can see, far more than the judge's own slack for sums of decimals (1e-9). */
const hair = 1e-6;

/** Each closed end of an interval with the value a hair inside and a hair outside it. */
const edges = ([low, high]: Interval) => [
  ...(low === null ? [] : [{ end: 'low', on: low, inside: low + hair, outside: low - hair }]),
  ...(high === null ? [] : [{ end: 'high', on: high, inside: high - hair, outside: high + hair }]),
];

const sameEnd = (ranges: Ranges, end: string): boolean =>
  end === 'low' ? ranges.range[0] === ranges.closeRange[0] : ranges.range[1] === ranges.closeRange[1];

describe('the rule table', () => {
  it.each(cases)('$id in $set: the verdict turns at each edge', ({ range, closeRange }) => {
    const ranges = { range, closeRange };
    for (const { end, on, inside, outside } of edges(range)) {
      expect(judge(on, ranges)).toBe('met');
      expect(judge(inside, ranges)).toBe('met');
      expect(judge(outside, ranges)).toBe(sameEnd(ranges, end) ? 'missed' : 'close');
    }
    for (const { end, on, outside } of edges(closeRange)) {
      expect(judge(on, ranges)).toBe(sameEnd(ranges, end) ? 'met' : 'close');
      expect(judge(outside, ranges)).toBe('missed');
    }
  });

  it('covers every rule, or leaves its ranges to the layout', () => {
    const fromLayout = ruleIds.filter((id) => ruleOf(id).ranges === null);
    expect(fromLayout.every((id) => /-(azimuth|elevation)$/.test(id))).toBe(true);
    expect(new Set(cases.map(({ id }) => id)).size + fromLayout.length).toBe(ruleIds.length);
    expect(ruleIds.length).toBeGreaterThan(35);
  });

  it('keeps every range inside its close range, and open ends open', () => {
    for (const { id, range, closeRange } of cases) {
      const wider = (closeRange[0] ?? -Infinity) <= (range[0] ?? -Infinity);
      const higher = (closeRange[1] ?? Infinity) >= (range[1] ?? Infinity);
      expect([id, wider && higher]).toEqual([id, true]);
    }
  });

  it('weighs the blocked centre most, and information nothing', () => {
    const heaviest = ruleIds.reduce((best, id) => (ruleOf(id).weight > ruleOf(best).weight ? id : best));
    expect(heaviest).toBe('centre-in-view');
    for (const { id, range } of cases.filter(({ range }) => range[0] === null && range[1] === null))
      expect([id, ruleOf(id).weight, range]).toEqual([id, 0, [null, null]]);
  });

  it('names a source with its standing for each', () => {
    for (const id of ruleIds) expect(sources[ruleOf(id).source].standing.length).toBeGreaterThan(3);
  });

  // design/product.md "How it judges" (the trade's own numbers; common practice, no source).
  it('holds the home set to the trade’s numbers', () => {
    expect(homeRange('living', 'front', true).azimuthSizeDeg).toEqual([22, 32]);
    expect(homeRange('living', 'side', true).azimuthSizeDeg).toEqual([90, 110]);
    expect(homeRange('living', 'rear', true).azimuthSizeDeg).toEqual([135, 157]);
    expect(ruleOf('sightline').ranges?.living.range).toEqual([120, null]);
    expect(ruleOf('back-wall').ranges?.living).toEqual({ range: [1.2, null], closeRange: [0.6, null] });
    expect(ruleOf('nearest-loudspeaker').ranges?.living.range).toEqual([1, null]);
    expect(ruleOf('riser-headroom').ranges?.living.range).toEqual([2.03, null]);
    expect(ruleOf('riser-step').ranges?.living.range).toEqual([null, 0.197]);
    expect(ruleOf('picture-top').ranges?.living).toEqual({ range: [null, 15], closeRange: [null, 35] });
  });
});

describe('judging', () => {
  it('lets a sum of decimals that lies on an edge be met', () => {
    expect(0.1 + 0.2).not.toBe(0.3);
    expect(judge(0.1 + 0.2, { range: [null, 0.3], closeRange: [null, 0.3] })).toBe('met');
  });

  it('calls what has no value no fault', () => {
    expect(judge(null, { range: [1, 2], closeRange: [1, 2] })).toBe('met');
  });

  it('measures the distance outside a range', () => {
    expect(distanceOutside(20, [22, 32])).toBe(2);
    expect(distanceOutside(35, [22, 32])).toBe(3);
    expect(distanceOutside(25, [22, 32])).toBe(0);
    expect(distanceOutside(5, [null, 10])).toBe(0);
  });
});
