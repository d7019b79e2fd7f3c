import { describe, expect, it } from 'vitest';
import { earTriples, roomSpec, sourceTriples } from '../../../../src/analysis/inputs.ts';
import { bassSlice, type SliceQuestion, seatsMeanDb } from '../../../../src/analysis/slice/field.ts';
import { enginePlane, sliceGrid } from '../../../../src/analysis/slice/grid.ts';
import { type Cut, cutOf, type SliceWish, sliceFrequenciesHz } from '../../../../src/analysis/slice/wish.ts';
import { createRoomField } from '../../../../src/engines/bass/create-room-field.ts';
import type { Project } from '../../../../src/model/project.ts';
import { initialSlice } from '../../../../src/state/slice.ts';
import { demo } from '../rooms.ts';

const project = demo();
const ONE = Float64Array.of(1, 0);

const question = (wish: SliceWish, frequencyHz = 63, of = project): SliceQuestion => ({
  wish,
  cut: cutOf(of, wish, 'front-2'),
  frequencyHz,
  frequenciesHz: sliceFrequenciesHz(wish, frequencyHz),
});

const solved = (of: Project, asked: SliceQuestion, meanDb: number | null = null) => {
  const field = createRoomField(roomSpec(of), 'fine');
  const sources = sourceTriples(of);
  const plane = enginePlane(of, asked.cut);
  const fields = [...asked.frequenciesHz].map((hz) =>
    of.subwoofers.map((_, s) => field.slice(plane, sources.slice(3 * s, 3 * s + 3), ONE, hz)),
  );
  return bassSlice(of, asked, fields, meanDb);
};

describe('where a slice lies', () => {
  it('is at the ears of a seat, on the carpet, at a height, or through that seat', () => {
    const at = (wish: Partial<SliceWish>, seat = 'back-1'): Cut => cutOf(project, { ...initialSlice, ...wish }, seat);
    expect(at({}).normal).toBe('y');
    expect(at({}).atM).toBeCloseTo(1.47, 9);
    expect(at({ height: 'carpet' }).atM).toBeLessThan(0.05);
    expect(at({ height: 1.8 })).toEqual({ normal: 'y', atM: 1.8 });
    expect(at({ height: 99 }).atM).toBeLessThan(10);
    const [x, , z] = [project.rows[0].seats[1].xM, 0, project.rows[0].eyeZM + project.people.earBehindEyeM];
    expect(at({ plane: 'across' }, 'front-2').atM).toBeCloseTo(z, 9);
    expect(at({ plane: 'along' }, 'front-2').atM).toBeCloseTo(x, 9);
    expect(at({ plane: 'across', acrossZM: 2.5 })).toEqual({ normal: 'z', atM: 2.5 });
  });
});

describe('a band', () => {
  it('is taken at the middles of twelve equal parts of its octaves', () => {
    const wish: SliceWish = { ...initialSlice, span: 'band', bandHz: [20, 80] };
    const hz = sliceFrequenciesHz(wish, 40);
    expect(hz.length).toBe(12);
    // Two octaves in twelve parts: a sixth of an octave apart, the first half a part above 20 Hz (by hand).
    expect(hz[0]).toBeCloseTo(20 * 2 ** (1 / 12), 9);
    expect(hz[11] / hz[10]).toBeCloseTo(2 ** (1 / 6), 9);
    expect([...sliceFrequenciesHz({ ...wish, as: 'pressure' }, 40)]).toEqual([40]);
  });

  it('is the mean of the energies', () => {
    const alone = { ...project, subwoofers: project.subwoofers.slice(0, 1) };
    const asked = question({ ...initialSlice, span: 'band' }, 40, alone);
    const count = sliceGrid(alone, asked.cut).uM.length * sliceGrid(alone, asked.cut).vM.length;
    const fields = [...asked.frequenciesHz].map((_, f) => [
      { re: new Float64Array(count).fill(f < 6 ? 3 : 0), im: new Float64Array(count).fill(f < 6 ? 0 : 1) },
    ]);
    // Six energies of 9 and six of 1: the mean is 5.
    expect(bassSlice(alone, asked, fields, null).levelDb[7]).toBeCloseTo(10 * Math.log10(5), 4);
    expect(bassSlice(alone, asked, fields, null).pressure).toBeNull();
  });
});

describe('the field over a slice', () => {
  it.each([
    ['level', { plane: 'level' }],
    ['across', { plane: 'across', acrossZM: 2.9 }],
    ['along', { plane: 'along', alongXM: -0.4 }],
  ] as const)('standing or lying (%s) has at a point what a listener there gets, with the drive', (_, wish) => {
    const [first] = project.subwoofers;
    const alone = { ...project, subwoofers: [{ ...first, gainDb: -3, inverted: true, delayMs: 7 }] };
    const asked = question({ ...initialSlice, ...wish });
    const slice = solved(alone, asked);
    const plane = enginePlane(alone, asked.cut);
    const [i, j] = [20, 17];
    const point = new Float64Array(3);
    point[plane.normal] = plane.atM;
    point[plane.uAxis] = plane.uM[i];
    point[plane.vAxis] = plane.vM[j];
    const unit = createRoomField(roomSpec(alone), 'fine').unitResponses(
      sourceTriples(alone),
      point,
      Float64Array.of(63),
    );
    const expected = 20 * Math.log10(Math.hypot(unit.re[0], unit.im[0])) - 3;
    const at = j * slice.uM.length + i;
    // The slice's own stated error against the point formula is a hundredth of a decibel (engine.md 6: 1.7e-4 relative).
    expect(Math.abs(slice.levelDb[at] - expected)).toBeLessThan(0.02);
    const { re = [], im = [] } = slice.pressure ?? {};
    expect(20 * Math.log10(Math.hypot(re[at], im[at]))).toBeCloseTo(slice.levelDb[at], 3);
  });

  it('is outside the room where the engine says so', () => {
    const asked = question(initialSlice);
    const { uM, vM } = sliceGrid(project, asked.cut);
    const none = new Float64Array(uM.length * vM.length).fill(Number.NaN);
    const slice = bassSlice(project, asked, [project.subwoofers.map(() => ({ re: none, im: none }))], null);
    expect(slice.levelDb.every(Number.isNaN)).toBe(true);
  });
});

describe('the seats’ mean', () => {
  it('is the mean over the seats of their levels, each a mean of energies', () => {
    const alone = { ...project, subwoofers: project.subwoofers.slice(0, 1) };
    const units = {
      sources: 1,
      receivers: 2,
      frequencies: 2,
      re: Float64Array.of(1, 3, 0.1, 0),
      im: Float64Array.of(0, 0, 0, 0.1),
      moved: new Uint8Array(2),
    };
    // Energies (1 + 9) / 2 = 5 and 0.01: 6.9897 dB and -20 dB (by hand).
    expect(seatsMeanDb(alone, units, Float64Array.of(30, 60))).toBeCloseTo((6.9897 - 20) / 2, 4);
  });

  it('agrees with the slice at the ears: over the seats the differences sum to nothing', () => {
    const asked = question({ ...initialSlice, as: 'difference', height: 'ear' }, 50);
    const ears = earTriples(project);
    const field = createRoomField(roomSpec(project), 'fine');
    const meanDb = seatsMeanDb(
      project,
      field.unitResponses(sourceTriples(project), ears, asked.frequenciesHz),
      asked.frequenciesHz,
    );
    if (meanDb === null) throw new Error('no seats');
    const seats = ears.length / 3;
    let sum = 0;
    for (let seat = 0; seat < seats; seat += 1) {
      const units = field.unitResponses(
        sourceTriples(project),
        ears.slice(3 * seat, 3 * seat + 3),
        asked.frequenciesHz,
      );
      sum += (seatsMeanDb(project, units, asked.frequenciesHz) ?? Number.NaN) - meanDb;
    }
    expect(Math.abs(sum)).toBeLessThan(1e-9);
  });
});
