import { describe, expect, it } from 'vitest';
import { compareAlternatives } from '../../../src/proposals/alternatives.ts';
import { CHAIN_FREQUENCIES_HZ, studyChain } from '../../../src/proposals/chain.ts';
import { boxRoom, engineResponses, finish } from './rooms.ts';

const output = { bandsDb: { '20': 98, '31.5': 106, '50': 111, '80': 112 }, space: 'half', kind: 'peak' };
const subwoofers = [
  { id: 'S1', atM: [-1.2, 0.2, 0.25], maxOutput: output },
  { id: 'S2', atM: [1.2, 0.2, 0.25], maxOutput: output },
];
const chain = (over: Readonly<Record<string, unknown>> = {}) => {
  const project = boxRoom({ subwoofers, ...over });
  return finish(studyChain(project, 3, [], engineResponses(project))).result;
};

describe('behind the room', () => {
  const { crossover, headroom, equaliser, revision } = chain();

  it('every seat gets centre and subwoofers together, and the cure makes the loss less', () => {
    if (!crossover) throw new Error('there is a centre');
    expect(revision).toBe(3);
    expect(crossover.loudspeaker).toBe('C');
    expect(crossover.seats.map(({ id }) => id)).toEqual(['a1', 'a2', 'a3', 'b1', 'b2', 'b3']);
    expect(crossover.cure.afterDb).toBeGreaterThanOrEqual(crossover.cure.beforeDb);
    expect(crossover.cure.delayMs).toBeGreaterThanOrEqual(0);
    const meanOf = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
    expect(meanOf(crossover.seats.map(({ lossDb }) => lossDb))).toBeCloseTo(crossover.cure.beforeDb, 9);
    expect(meanOf(crossover.seats.map(({ lossAfterDb }) => lossAfterDb))).toBeCloseTo(crossover.cure.afterDb, 9);
    for (const { dip, dipAfter, beforeDb, lossDb } of crossover.seats) {
      for (const { hz } of [dip, dipAfter]) expect(Math.abs(Math.log2(hz / 80))).toBeLessThanOrEqual(0.5);
      expect(lossDb).toBeLessThanOrEqual(0);
      expect(beforeDb).toHaveLength(CHAIN_FREQUENCIES_HZ.length);
    }
  });

  it('a delay that is there already may be taken back, but not beyond nothing', () => {
    const late = chain({ subwoofers: subwoofers.map((one) => ({ ...one, delayMs: 6 })) }).crossover;
    if (!late || !crossover) throw new Error('there is a centre');
    expect(late.cure.delayMs).toBeGreaterThanOrEqual(-6);
    expect(late.cure.afterDb).toBeGreaterThanOrEqual(crossover.cure.afterDb - 1e-9);
  });

  it('headroom in the bands that are stated, against the peak asked for; a dB more asked is a dB less margin', () => {
    if (!headroom) throw new Error('outputs are stated');
    expect(headroom.askedDb).toBe(105);
    expect(headroom.bandsHz).toEqual([20, 25, 31.5, 40, 50, 63, 80]);
    const louder = chain({ listening: { reReferenceDb: -9 } }).headroom;
    for (const [s, { marginDb }] of headroom.seats.entries())
      for (const [b, margin] of marginDb.entries()) expect(louder?.seats[s].marginDb[b]).toBeCloseTo(margin - 1, 9);
    expect(chain({ subwoofers: [subwoofers[0], { id: 'S2', atM: [1, 0.2, 0.3] }] }).headroom).toBeNull();
  });

  it('the equaliser lowers the rms about its target and stays within the band', () => {
    if (!equaliser) throw new Error('there are subwoofers');
    expect(equaliser.frequenciesHz[0]).toBe(20);
    expect(equaliser.frequenciesHz.at(-1)).toBeLessThanOrEqual(120.2);
    expect(equaliser.fit.afterDb).toBeLessThan(equaliser.fit.beforeDb);
    expect([...equaliser.storedDb]).toEqual([...equaliser.plainDb]);
  });

  it('without subwoofers there is nothing, without a centre no crossover', () => {
    expect(chain({ subwoofers: [] })).toEqual({ revision: 3, crossover: null, headroom: null, equaliser: null });
    expect(chain({ loudspeakers: [] }).crossover).toBeNull();
  });
});

describe('alternatives in numbers', () => {
  it('each document with its own figures; the same one twice is the same', () => {
    const now = boxRoom({ subwoofers });
    const other = boxRoom({ subwoofers: [...subwoofers, { id: 'S3', atM: [0, 0.2, 6.5], maxOutput: output }] });
    const { result } = finish(
      compareAlternatives(
        [
          { id: 'now', project: now },
          { id: 'more', project: other },
          { id: 'again', project: now },
          { id: 'none', project: boxRoom({ subwoofers: [] }) },
        ],
        engineResponses,
      ),
    );
    expect(result.map(({ id }) => id)).toEqual(['now', 'more', 'again', 'none']);
    expect(result[2]).toEqual({ ...result[0], id: 'again' });
    expect(result[1].figures?.nominal.spreadDb).not.toBeCloseTo(result[0].figures?.nominal.spreadDb ?? 0, 2);
    expect(result[0].leastMargin?.hz).toBeGreaterThanOrEqual(20);
    expect(result[3].figures).toBeNull();
  });
});
