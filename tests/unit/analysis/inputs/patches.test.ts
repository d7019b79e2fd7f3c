import { describe, expect, it } from 'vitest';
import { openingApproximation, patchesApproximation, roomPatches } from '../../../../src/analysis/inputs/patches.ts';
import { disjoint } from '../../../../src/analysis/inputs/rectangles.ts';
import { roomSpec } from '../../../../src/analysis/inputs/room-spec.ts';
import { admittanceFromDiffuse } from '../../../../src/engines/acoustics/admittance.ts';
import type { WallPatch } from '../../../../src/engines/bass/room-field.ts';
import { seededRandom } from '../../../../src/math/random.ts';
import type { Project } from '../../../../src/model/project.ts';
import { plain } from '../rooms.ts';

const BOX = {
  plan: { shape: 'rectangle', widthM: 4, lengthM: 6 },
  ceiling: { shape: 'flat', heightM: 2.5 },
  surfaces: { left: { admittance: [0.03, 0.01] }, back: { admittance: [0.03, 0.01] } },
};
const patchesOf = (project: Project, damping?: 'low' | 'high'): WallPatch[] =>
  roomPatches(project, roomSpec(project), damping);
const boxed = (over: object): WallPatch[] => patchesOf(plain({ room: { ...BOX, ...over } }));
const panel = (id: string, over: object) => ({
  id,
  surface: 'left',
  fromM: 1,
  widthM: 1.2,
  bottomM: 0.4,
  heightM: 1.5,
  admittance: [0.4, 0.1],
  ...over,
});

/** One line a patch, sorted: wall, from, to, admittance. */
const lines = (patches: readonly WallPatch[]): string[] =>
  patches
    .map(({ wall, fromM, toM, admittance }) =>
      [wall, ...fromM, ...toM, ...admittance].map((value) => Number(value.toFixed(9))).join(' '),
    )
    .sort();

describe('where patches and openings lie on the walls of a box', () => {
  it('each surface by hand: box 4 wide, 2.5 high, 6 long, walls x-, x+, y-, y+, z-, z+', () => {
    const on = (surface: string) => lines(boxed({ patches: [panel('p', { surface })] }));
    // side walls: fromM runs back (z), bottomM up (y), so [y, z]
    expect(on('left')).toEqual(['0 0.4 1 1.9 2.2 0.4 0.1']);
    expect(on('right')).toEqual(['1 0.4 1 1.9 2.2 0.4 0.1']);
    // front and back: fromM from the left wall (x), so [x, y]
    expect(on('front')).toEqual(['4 1 0.4 2.2 1.9 0.4 0.1']);
    expect(on('back')).toEqual(['5 1 0.4 2.2 1.9 0.4 0.1']);
    // floor and ceiling: fromM from the left (x), bottomM from the front (z)
    expect(on('floor')).toEqual(['2 1 0.4 2.2 1.9 0.4 0.1']);
    expect(on('ceiling')).toEqual(['3 1 0.4 2.2 1.9 0.4 0.1']);
  });

  it('what says nothing, or says what its wall is, is no patch', () => {
    const silent = panel('p', { admittance: undefined });
    const same = panel('q', { admittance: [0.03, 0.01] });
    expect(boxed({ patches: [silent, same] })).toEqual([]);
  });

  it('finishes and absorption are turned into admittance as for whole walls', () => {
    const [patch] = boxed({ patches: [panel('p', { admittance: undefined, absorption: { '63': 0.3, '125': 0.6 } })] });
    expect(patch.admittance[0]).toBe(admittanceFromDiffuse(0.3).admittance);
    expect(patch.admittance[1]).toBe(0);
  });

  it('a later patch lies over an earlier one, an opening over both, and the rest stays in few pieces', () => {
    const over = [panel('p', {}), panel('q', { fromM: 1.6, widthM: 1.2, admittance: [0.1, 0] })];
    expect(lines(boxed({ patches: over }))).toEqual(['0 0.4 1 1.9 1.6 0.4 0.1', '0 0.4 1.6 1.9 2.8 0.1 0']);
    const hole = { id: 'w', kind: 'opening', surface: 'left', fromM: 1.3, widthM: 0.3, bottomM: 0.8, heightM: 0.5 };
    const left = boxed({ patches: [panel('p', {})], openings: [hole] });
    expect(left.length).toBe(5);
    expect(left.filter(({ admittance }) => admittance[0] === 1).length).toBe(1);
    const area = left.reduce((sum, { fromM, toM }) => sum + (toM[0] - fromM[0]) * (toM[1] - fromM[1]), 0);
    expect(area).toBeCloseTo(1.2 * 1.5, 9);
  });
});

describe('openings and the damping band', () => {
  const door = { id: 'd', kind: 'door', surface: 'back', fromM: 1, widthM: 0.9, bottomM: 0, heightM: 2 };

  it('closed ones take what they absorb at 125 Hz: window glass 0.35, boards on joists 0.15 (handbook table 27.1, read)', () => {
    const closed = boxed({
      openings: [door, { ...door, id: 'w', kind: 'window', fromM: 2.5, bottomM: 1, heightM: 1 }],
    });
    expect(lines(closed)).toEqual(
      [
        `5 1 0 1.9 2 ${Number(admittanceFromDiffuse(0.15).admittance.toFixed(9))} 0`,
        `5 2.5 1 3.4 2 ${Number(admittanceFromDiffuse(0.35).admittance.toFixed(9))} 0`,
      ].sort(),
    );
  });

  it.each([
    [{ leaf: 'open' }],
    [{ leaf: 'none' }],
    [{ kind: 'opening' }],
    [{ leaf: 'open', opensTo: 'outside' }],
    [{ kind: 'opening', opensTo: 'openPlan' }],
  ])('open, %j: rho c, and a sentence that says so', (over) => {
    const project = plain({ room: { ...BOX, openings: [{ ...door, ...over }] } });
    expect(patchesOf(project).map(({ admittance }) => admittance)).toEqual([[1, 0]]);
    expect(openingApproximation(project)).toMatch(/open doorway .*1\.8 m²/);
  });

  it('closed, nothing is said', () => {
    expect(openingApproximation(plain({ room: { ...BOX, openings: [door] } }))).toBeNull();
  });

  it('low and high damping: the real part by sqrt 3 either way, never that of what is open', () => {
    const project = plain({
      room: { ...BOX, patches: [panel('p', {})], openings: [{ ...door, kind: 'opening' }] },
    });
    const re = (damping: 'low' | 'high') => patchesOf(project, damping).map(({ admittance }) => admittance);
    for (const [damping, factor] of [
      ['low', 1 / Math.sqrt(3)],
      ['high', Math.sqrt(3)],
    ] as const) {
      const [back, left] = re(damping).sort((a, b) => b[0] - a[0]);
      expect(back).toEqual([1, 0]);
      expect(Math.abs(left[0] - 0.4 * factor)).toBeLessThan(1e-12);
      expect(left[1]).toBe(0.1);
    }
  });

  it('more patches than are worked out one by one: a sentence', () => {
    const spec = roomSpec(plain({ room: BOX }));
    const many = Array.from(
      { length: 161 },
      (): WallPatch => ({ wall: 0, fromM: [0, 0], toM: [1, 1], admittance: [1, 0] }),
    );
    expect(patchesApproximation({ ...spec, patches: many })).toMatch(/160 of 161/);
    expect(patchesApproximation({ ...spec, patches: many.slice(1) })).toBeNull();
  });
});

describe('prisms', () => {
  it('in an L, on an edge that is named: metres from the edge’s first corner, then up; floor on the first end', () => {
    const project = plain({
      room: {
        plan: {
          shape: 'polygon',
          cornersM: [
            [-2, 0],
            [3, 0],
            [3, 4],
            [1, 4],
            [1, 6],
            [-2, 6],
          ],
        },
        ceiling: { shape: 'flat', heightM: 2.5 },
        patches: [
          panel('p', { surface: 'right', wall: 3, fromM: 0.5 }),
          panel('q', { surface: 'front', fromM: 0.5 }),
          panel('r', { surface: 'floor', fromM: 0.5 }),
          panel('s', { surface: 'left', fromM: 0.5 }),
        ],
      },
    });
    const spec = roomSpec(project);
    // edge 3 runs from (1, 4) to (1, 6), edge 0 from (-2, 0) to (3, 0), edge 5 from (-2, 6) to (-2, 0): from its far end
    expect(lines(roomPatches(project, spec))).toEqual(
      [
        '3 0.5 0.4 1.7 1.9 0.4 0.1',
        '0 0.5 0.4 1.7 1.9 0.4 0.1',
        '6 0.5 0.4 1.7 1.9 0.4 0.1',
        '5 4.3 0.4 5.5 1.9 0.4 0.1',
      ].sort(),
    );
  });

  it('under a ridge: a panel across it is folded into one a slope, measured along the slope', () => {
    const project = plain({
      room: {
        plan: { shape: 'rectangle', widthM: 4, lengthM: 6 },
        // both slopes rise 1.5 m over 2 m: 2.5 m long
        ceiling: {
          shape: 'profile',
          across: 'x',
          pointsM: [
            [-2, 1],
            [0, 2.5],
            [2, 1],
          ],
        },
        patches: [panel('p', { surface: 'ceiling', fromM: 1, widthM: 1.8, bottomM: 2, heightM: 1 })],
      },
    });
    const spec = roomSpec(project);
    const patches = roomPatches(project, spec);
    expect(patches.length).toBe(2);
    const widths = patches.map(({ fromM, toM }) => toM[0] - fromM[0]).sort((a, b) => a - b);
    expect(widths[0]).toBeCloseTo(0.8 * 1.25, 9);
    expect(widths[1]).toBeCloseTo(1 * 1.25, 9);
    for (const { fromM, toM } of patches) expect([fromM[1], toM[1]]).toEqual([2, 3]);
    expect(new Set(patches.map(({ wall }) => wall)).size).toBe(2);
  });
});

describe('rectangles made disjoint', () => {
  it('two crossing strips make three pieces, equal owners join, cuts stay', () => {
    const strip = (fromM: [number, number], toM: [number, number], owner: number) => ({ fromM, toM, owner });
    const cross = disjoint([strip([0, 1], [3, 2], 1), strip([1, 0], [2, 3], 2)]);
    expect(cross.length).toBe(3);
    expect(disjoint([strip([0, 0], [1, 1], 1), strip([1, 0], [2, 1], 1)]).length).toBe(1);
    expect(disjoint([strip([0, 0], [2, 1], 1)], Object.is, [[0.5], []]).length).toBe(2);
  });

  it('200 random sets, seed 8311: disjoint, and every point keeps the last rectangle over it', () => {
    const random = seededRandom(8311);
    for (let round = 0; round < 200; round += 1) {
      const rectangles = Array.from({ length: 1 + Math.floor(7 * random()) }, () => {
        const [x, y] = [Math.floor(8 * random()), Math.floor(6 * random())];
        const to: [number, number] = [x + 1 + Math.floor(4 * random()), y + 1 + Math.floor(3 * random())];
        return { fromM: [x, y] as const, toM: to, owner: Math.floor(3 * random()) };
      });
      const made = disjoint(rectangles);
      for (let i = 0; i < 13; i += 1)
        for (let j = 0; j < 10; j += 1) {
          const over = <T extends { fromM: readonly number[]; toM: readonly number[] }>(list: readonly T[]): T[] =>
            list.filter(
              ({ fromM, toM }) => i + 0.5 > fromM[0] && i + 0.5 < toM[0] && j + 0.5 > fromM[1] && j + 0.5 < toM[1],
            );
          const kept = over(made);
          expect(kept.length).toBeLessThanOrEqual(1);
          expect(kept[0]?.owner).toBe(over(rectangles).at(-1)?.owner);
        }
    }
  });
});
