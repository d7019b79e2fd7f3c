import { describe, expect, it } from 'vitest';
import { stripPixels } from '../../../src/panels/ribbon/draw.ts';
import { levelAxis, ribbonLayout, shareOfLevel, xOfHz } from '../../../src/panels/ribbon/layout.ts';
import { frequencyOfStep, hzOfShare, LAST_STEP, levelAt, stepOfFrequency } from '../../../src/panels/ribbon/levels.ts';

const frequenciesHz = Float64Array.of(20, 40, 80, 160);
const levelDb = Float64Array.of(0, -6, 6, 12);

const bassOf = (levels: Float64Array) => ({
  frequenciesHz,
  seats: [{ id: 'a', levelDb: levels, lowDb: null, highDb: null }],
  spreadDb: null,
  meanSpreadDb: null,
  meanVarianceDb2: null,
  maxMinDb: null,
});

describe('levels along the ribbon', () => {
  it('is exact on the table, straight over octaves between and holds its ends beyond', () => {
    expect(levelAt(frequenciesHz, levelDb, 40)).toBe(-6);
    expect(levelAt(frequenciesHz, levelDb, 40 * Math.SQRT2)).toBeCloseTo(0, 9);
    expect(levelAt(frequenciesHz, levelDb, 10)).toBe(0);
    expect(levelAt(frequenciesHz, levelDb, 200)).toBe(12);
  });

  it('stops at 20 x 2^(i/24) from 20 Hz to the last below 200 Hz (the report’s default grid, i = 0..79)', () => {
    expect(LAST_STEP).toBe(79);
    expect(frequencyOfStep(0)).toBe(20);
    expect(frequencyOfStep(24)).toBe(40);
    expect(frequencyOfStep(200)).toBeCloseTo(20 * 2 ** (79 / 24), 9);
    for (let i = 0; i <= LAST_STEP; i++) expect(stepOfFrequency(frequencyOfStep(i))).toBe(i);
  });

  it('lays octaves out evenly', () => {
    const layout = ribbonLayout(1000, 150);
    const octave = xOfHz(layout, 40) - xOfHz(layout, 20);
    expect(xOfHz(layout, 160) - xOfHz(layout, 80)).toBeCloseTo(octave, 9);
    expect(xOfHz(layout, 200)).toBeCloseTo(layout.right, 9);
    expect(hzOfShare(0.5)).toBeCloseTo(Math.sqrt(20 * 200), 9);
  });
});

describe('the curve’s axis', () => {
  it('snaps to 6 dB round the whole curve, 24 dB at least, and takes no notice of silence', () => {
    expect(levelAxis([Float64Array.of(-13, 0, 11, 2)])).toEqual({ lowDb: -18, highDb: 12 });
    expect(levelAxis([Float64Array.of(1, 2, 3, 4)])).toEqual({ lowDb: -18, highDb: 6 });
    expect(levelAxis([Float64Array.of(-57, 0, 6, 6)])).toEqual({ lowDb: -60, highDb: 6 });
    expect(levelAxis([Float64Array.of(1, 2), Float64Array.of(-31, 7)])).toEqual({ lowDb: -36, highDb: 12 });
    expect(levelAxis([Float64Array.of(-300, 0, 6, 6)])).toEqual({ lowDb: -18, highDb: 6 });
    expect(levelAxis([Float64Array.of(-300, -300)])).toEqual({ lowDb: -24, highDb: 0 });
  });

  it('reaches over the whole scale of the colours', () => {
    const colours = { lowDb: -21, highDb: 15 };
    expect(levelAxis([Float64Array.of(-5, 3)], colours)).toEqual({ lowDb: -24, highDb: 18 });
    expect(levelAxis([Float64Array.of(-40, 3)], colours)).toEqual({ lowDb: -42, highDb: 18 });
  });

  it('places a level, clamped', () => {
    expect(shareOfLevel(-3, { lowDb: -18, highDb: 12 })).toBeCloseTo(0.5, 9);
    expect(shareOfLevel(-99, { lowDb: -18, highDb: 12 })).toBe(0);
  });
});

describe('strip colours', () => {
  // First and last entry of the published cividis table (Nunez, Anderton, Renslow 2018), from memory: #00224e, #fee838.
  it('runs from the map’s dark end to its light end over the scale', () => {
    const scale = { lowDb: -18, highDb: 18, stepDb: 3 };
    const low = stripPixels({ bass: bassOf(Float64Array.of(-30, -30, -30, -30)), scale }, 3);
    const high = stripPixels({ bass: bassOf(Float64Array.of(30, 30, 30, 30)), scale }, 3);
    expect([...low.slice(0, 4)]).toEqual([0x00, 0x22, 0x4e, 255]);
    expect([...high.slice(0, 4)]).toEqual([0xfe, 0xe8, 0x38, 255]);
    expect(low.length).toBe(3 * 4);
  });
});
