import { describe, expect, it } from 'vitest';
import { METRIC_FREQUENCIES_HZ } from '../../../src/analysis/inputs.ts';
import type { UnitResponses } from '../../../src/engines/bass/room-field.ts';
import type { Vec3 } from '../../../src/math/vec3.ts';
import type { Project } from '../../../src/model/project.ts';
import { applyProposal } from '../../../src/proposals/apply.ts';
import { compareArrangements } from '../../../src/proposals/subwoofers/arrangements.ts';
import {
  AIMS,
  type Aim,
  EVEN_FIRST,
  type ImproveGoal,
  improveSubwoofers,
} from '../../../src/proposals/subwoofers/improve.ts';
import { placesAlongWalls } from '../../../src/proposals/subwoofers/places.ts';
import { changesOf } from '../../../src/proposals/subwoofers/proposal.ts';
import { farthestMoveM } from '../../../src/proposals/subwoofers/ranking.ts';
import { standingRoom } from '../../../src/proposals/subwoofers/standing.ts';
import { boxRoom, engineResponses, finish } from './rooms.ts';

const PLACES_ONLY: ImproveGoal = { counts: [2], flatnessWeight: 0, levelWeight: 0, drives: false, perCount: 1 };
const improve = (project: Project, goal: ImproveGoal) =>
  finish(improveSubwoofers(project, 5, goal, 1, engineResponses(project)));
const places = (subwoofers: readonly { readonly atM: readonly number[] }[]) =>
  subwoofers.map(({ atM }) => atM.map((v) => Math.round(v * 1000) / 1000).join()).sort();

/** Mean spread of subwoofers alike, each with the responses of its own place, summed apart from the searching code. */
const spreadOfColumns = (columns: readonly UnitResponses[]): number => {
  const { receivers, frequencies } = columns[0];
  let spreads = 0;
  for (let f = 0; f < frequencies; f++) {
    const levels = Array.from({ length: receivers }, (_, r) => {
      const at = r * frequencies + f;
      const re = columns.reduce((sum, column) => sum + column.re[at], 0);
      const im = columns.reduce((sum, column) => sum + column.im[at], 0);
      return 20 * Math.log10(Math.hypot(re, im));
    });
    const mean = levels.reduce((sum, level) => sum + level, 0) / receivers;
    spreads += Math.sqrt(levels.reduce((sum, level) => sum + (level - mean) ** 2, 0) / (receivers - 1));
  }
  return spreads / frequencies;
};
const columnsAt = (project: Project, atM: readonly Vec3[]): UnitResponses[] => {
  const responses = engineResponses(project);
  return atM.map((place) => responses([place], METRIC_FREQUENCIES_HZ));
};

describe('improve', () => {
  const project = boxRoom();

  it('finds what trying every pair finds', () => {
    const { result, shares } = improve(project, PLACES_ONLY);
    const { placesM } = placesAlongWalls(standingRoom(project, [0.4, 0.4, 0.4], new Set()));
    const columns = columnsAt(project, placesM);
    let best = Number.POSITIVE_INFINITY;
    for (let a = 0; a < columns.length; a++)
      for (let b = a + 1; b < columns.length; b++) best = Math.min(best, spreadOfColumns([columns[a], columns[b]]));
    const [found] = result.proposals;
    expect(found.figures.nominal.spreadDb).toBeCloseTo(best, 4);
    expect(result.combinations).toBe((placesM.length * (placesM.length - 1)) / 2);
    expect(found.revision).toBe(5);
    for (const [i, share] of shares.entries()) expect(share).toBeGreaterThanOrEqual(shares[i - 1] ?? 0);
    expect(shares.at(-1)).toBeLessThanOrEqual(1);
  });

  it('does not ask in which order the file names the subwoofers', () => {
    const turned = boxRoom({ subwoofers: [...project.subwoofers].reverse() });
    const [a] = improve(project, PLACES_ONLY).result.proposals;
    const [b] = improve(turned, PLACES_ONLY).result.proposals;
    expect(places(a.subwoofers)).toEqual(places(b.subwoofers));
  });

  it('keeps a locked one where it is and counts it', () => {
    const held = boxRoom({
      subwoofers: [
        { id: 'S1', atM: [-2.3, 0.2, 0.3], locked: true, gainDb: -2 },
        { id: 'S2', atM: [1, 0.2, 0.25] },
      ],
    });
    const { result } = improve(held, { ...PLACES_ONLY, counts: [1, 2, 3] });
    expect(result.proposals.map(({ subwoofers }) => subwoofers.length)).toEqual([2, 3]);
    for (const { subwoofers } of result.proposals) expect(subwoofers[0]).toEqual(held.subwoofers[0]);
    const applied = applyProposal(held, result.proposals[1]);
    expect(applied.ok && applied.project.subwoofers).toHaveLength(3);
    // more to choose from than with none held: the best pair with S1 locked is no better than the best pair
    const [free] = improve(boxRoom(), PLACES_ONLY).result.proposals;
    expect(result.proposals[0].figures.nominal.spreadDb ?? 0).toBeGreaterThanOrEqual(
      free.figures.nominal.spreadDb ?? 9,
    );
  });

  it('is the same again with the same seed, offers what truly differs, and is one edit', () => {
    const goal = { ...EVEN_FIRST, counts: [2] };
    const { result } = improve(project, goal);
    expect(improve(project, goal).result).toEqual(result);
    const [first, second] = result.proposals;
    const at = (index: number) => result.proposals[index].subwoofers.map(({ atM }) => atM as Vec3);
    expect(result.proposals).toHaveLength(2);
    expect(farthestMoveM(at(0), at(1))).toBeGreaterThanOrEqual(1);
    expect(first.score).toBeLessThanOrEqual(second.score);
    for (const { drivesGainDb } of result.proposals)
      if (drivesGainDb !== null) expect(drivesGainDb).toBeGreaterThanOrEqual(0.5);
    const edit = applyProposal(project, first);
    if (!edit.ok) throw new Error('the proposal applies');
    expect(edit.project.subwoofers).toEqual(first.subwoofers);
    expect(project.subwoofers[0].atM).toEqual([-1.2, 0.2, 0.25]);
    expect(changesOf(project.subwoofers, first.subwoofers).length).toBeGreaterThan(0);
  });

  it('weighs flatness and level as it is told: who asks for more of one gets no less of it', () => {
    const best = (aim: Aim) =>
      improve(project, { ...PLACES_ONLY, ...AIMS[aim], counts: [2] }).result.proposals[0].figures.nominal;
    const [even, flat, loud] = (['even', 'flat', 'loud'] as const).map(best);
    expect(flat.flatnessDb).toBeLessThanOrEqual(even.flatnessDb);
    expect(loud.perSubwooferDb).toBeGreaterThanOrEqual(even.perSubwooferDb);
    // At least one of the two is a real choice in this room.
    expect(even.flatnessDb - flat.flatnessDb + loud.perSubwooferDb - even.perSubwooferDb).toBeGreaterThan(0.1);
  });

  it('never has two cabinets stand in one another, however near the places lie', () => {
    // three in a niche of places 0.3 m apart: without the rule two of them would share a corner of the room
    const small = boxRoom({
      room: { plan: { shape: 'rectangle', widthM: 3, lengthM: 3.4 }, ceiling: { shape: 'flat', heightM: 2.4 } },
      picture: { kind: 'screen', widthM: 1.2, bottomM: 0.9, acousticallyTransparent: true },
      rows: [{ id: 'r', eyeZM: 1.9, seats: [-0.4, 0.4].map((xM, i) => ({ id: `a${i}`, xM })) }],
      loudspeakers: [],
      subwoofers: [{ id: 'S1', atM: [-1, 0.2, 0.25] }],
    });
    const { result } = improve(small, { ...PLACES_ONLY, counts: [3], perCount: 3 });
    expect(result.spacingM).toBeLessThan(0.4);
    for (const { subwoofers } of result.proposals)
      for (const [i, a] of subwoofers.entries())
        for (const b of subwoofers.slice(i + 1))
          expect(Math.max(Math.abs(a.atM[0] - b.atM[0]), Math.abs(a.atM[2] - b.atM[2]))).toBeGreaterThan(0.4);
  });

  it('turns from evenness to flatness where there is one seat, and says so', () => {
    const lone = boxRoom({ rows: [{ id: 'only', eyeZM: 3.3, seats: [{ id: 'a', xM: 0 }] }] });
    const { result } = improve(lone, { ...PLACES_ONLY, counts: [1, 2] });
    expect(result.note).toBe('one-seat');
    expect(result.proposals).toHaveLength(2);
    for (const { figures } of result.proposals) expect(figures.nominal.spreadDb).toBeNull();
    expect(result.proposals[1].figures.nominal.flatnessDb).toBeLessThan(result.now?.nominal.flatnessDb ?? 0);
  });

  it('has nothing to offer where all are locked or nowhere is free', () => {
    const locked = boxRoom({
      subwoofers: [1, 2, 3, 4].map((i) => ({ id: `S${i}`, atM: [i - 2.5, 0.2, 0.3], locked: true })),
    });
    expect(improve(locked, EVEN_FIRST).result).toMatchObject({ proposals: [], note: 'all-locked' });
    const huge = boxRoom({ subwoofers: [{ id: 'S1', atM: [0, 0.2, 0.3], sizeM: [6, 0.4, 0.4] }] });
    expect(improve(huge, EVEN_FIRST).result).toMatchObject({ proposals: [], note: 'no-place' });
  });
});

describe('table of arrangements', () => {
  it('holds every arrangement and what there is now, each with its band', () => {
    const project = boxRoom();
    const { result } = finish(compareArrangements(project, engineResponses(project)));
    expect(result).toHaveLength(12);
    expect(result[0].id).toBe('now');
    const now = spreadOfColumns(
      columnsAt(
        project,
        project.subwoofers.map(({ atM }) => atM as Vec3),
      ),
    );
    expect(result[0].figures?.nominal.spreadDb).toBeCloseTo(now, 6);
    for (const { figures, places: at } of result) {
      if (!figures) throw new Error('all of them fit this room');
      expect(figures.nominal.perSubwooferDb).toBeCloseTo(figures.nominal.levelDb - 20 * Math.log10(at.length), 9);
      for (const one of [figures.low, figures.high]) expect(one.spreadDb).toBeGreaterThan(0.2);
      expect(figures.high.levelDb).not.toBeCloseTo(figures.low.levelDb, 2);
    }
  });

  it('without subwoofers compares all the same and has nothing for now', () => {
    const project = boxRoom({ subwoofers: [] });
    const { result } = finish(compareArrangements(project, engineResponses(project)));
    expect(result[0].figures).toBeNull();
    expect(result[1].figures?.nominal.spreadDb).toBeGreaterThan(0);
  });
});
