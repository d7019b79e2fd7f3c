import { describe, expect, it } from 'vitest';
import { homeGroupOf, homeRange } from '../../../../src/engines/loudspeakers/home-ranges.ts';
import {
  azimuthFromItu,
  ituSystems,
  nominalOf,
  positionIn,
  systemOf,
  systemsWith,
} from '../../../../src/engines/loudspeakers/itu-layout.ts';
import { degreesOutside, matchLayout, rangeOf } from '../../../../src/engines/loudspeakers/layout-match.ts';

describe('layout data', () => {
  it('has as many loudspeakers a layer as the name of each system says', () => {
    for (const { letter, layers, positions } of ituSystems) {
      const count = (layer: RegExp): number => positions.filter((p) => layer.test(p.label)).length;
      expect([count(/^(U|UH|T)/), count(/^M/), count(/^B/)].join('+'), letter).toBe(layers);
    }
  });

  it('holds every nominal position inside its own range, and every label once', () => {
    for (const { letter, positions, lfe } of ituSystems) {
      const all = [...positions, ...lfe];
      expect(new Set(all.map((p) => p.label)).size, letter).toBe(all.length);
      for (const p of all) {
        if (p.azimuthDeg !== null && p.azimuthRangeDeg) {
          expect(degreesOutside(p.azimuthDeg, p.azimuthRangeDeg), `${letter} ${p.label}`).toBe(0);
        }
        expect(degreesOutside(p.elevationDeg, p.elevationRangeDeg), `${letter} ${p.label}`).toBe(0);
      }
    }
  });

  it('is symmetrical: every left label has its right one with the signs turned', () => {
    for (const { letter, positions } of ituSystems) {
      for (const p of positions.filter((q) => /\+(?!000|180)/.test(q.label))) {
        const right = positionIn(letter, p.label.replace('+', '-'));
        expect(right?.azimuthRangeDeg, `${letter} ${p.label}`).toEqual(p.azimuthRangeDeg?.map((a) => -a).reverse());
        expect(right?.elevationRangeDeg).toEqual(p.elevationRangeDeg);
      }
    }
  });

  it('gives a label the same nominal direction in every system', () => {
    for (const { positions } of ituSystems) {
      for (const p of positions) {
        expect(nominalOf(p.label)).toEqual({ azimuthDeg: p.azimuthDeg, elevationDeg: p.elevationDeg });
      }
    }
    expect(nominalOf('Z+999')).toBeNull();
  });

  it('finds labels and refuses a letter that is none', () => {
    expect(systemsWith('U+045')).toEqual(['F', 'G', 'H', 'J']);
    expect(systemsWith('LFE1')).toEqual(['F', 'H']);
    expect(() => systemOf('K' as 'J')).toThrow(/"K"/);
  });

  it('turns azimuths between left and right positive, straight behind staying 180', () => {
    expect(azimuthFromItu(30)).toBe(-30);
    expect(azimuthFromItu(-110)).toBe(110);
    expect(azimuthFromItu(180)).toBe(180);
    expect(Object.is(azimuthFromItu(0), 0)).toBe(true);
  });
});

describe('which system a set of labels is', () => {
  const bed = ['M+000', 'M+030', 'M-030'];
  it.each<[string, string[], string]>([
    ['stereo', ['M+030', 'M-030'], 'A'],
    ['5.1', [...bed, 'M+110', 'M-110', 'LFE1'], 'B'],
    ['5.1.2', [...bed, 'M+110', 'M-110', 'U+030', 'U-030'], 'C'],
    ['5.1.4', [...bed, 'M+110', 'M-110', 'U+030', 'U-030', 'U+110', 'U-110'], 'D'],
    ['7.1', [...bed, 'M+090', 'M-090', 'M+135', 'M-135'], 'I'],
    ['7.1.4', [...bed, 'M+090', 'M-090', 'M+135', 'M-135', 'U+045', 'U-045', 'U+135', 'U-135'], 'J'],
    [
      '7.1.4 less its centre',
      ['M+030', 'M-030', 'M+090', 'M-090', 'M+135', 'M-135', 'U+045', 'U-045', 'U+135', 'U-135'],
      'J',
    ],
  ])('%s', (_name, labels, letter) => {
    expect(matchLayout(labels)?.letter).toBe(letter);
  });

  it('says what is missing and what is over', () => {
    expect(matchLayout([...bed, 'M+110', 'T+000'])).toEqual({ letter: 'B', missing: ['M-110'], extra: ['T+000'] });
  });

  it('is null where nothing fits', () => {
    expect(matchLayout(['X', 'LFE1'])).toBeNull();
    expect(matchLayout([])).toBeNull();
  });

  it('judges an extra loudspeaker by the first system that has it', () => {
    expect(rangeOf('J', 'M+110')?.letter).toBe('B');
    expect(rangeOf('J', 'M+090')?.letter).toBe('J');
    expect(rangeOf('J', 'X')).toBeNull();
  });
});

describe('distance from a range', () => {
  it.each<[number, readonly [number, number], number]>([
    [100, [85, 110], 0],
    [110, [85, 110], 0],
    [112, [85, 110], 2],
    [80, [85, 110], -5],
    [-178, [180, 180], 2],
    [178, [180, 180], -2],
    [-170, [150, 180], 10],
  ])('%d in %j', (angle, range, expected) => {
    expect(degreesOutside(angle, range)).toBeCloseTo(expected, 9);
  });
});

describe('home ranges (common practice, no source: the numbers of the product description)', () => {
  it('puts labels in groups', () => {
    expect(['M+000', 'M-030', 'M+090', 'M-110', 'M+135', 'U-045', 'T+000', 'M+180'].map(homeGroupOf)).toEqual([
      'centre',
      'front',
      'side',
      'surround',
      'rear',
      'height',
      null,
      null,
    ]);
  });

  it('brings the ear layer down under heights in the living set, not in the diffuse one', () => {
    expect(homeRange('living', 'side', true)).toEqual({ azimuthSizeDeg: [90, 110], elevationDeg: [0, 20] });
    expect(homeRange('living', 'rear', false)).toEqual({ azimuthSizeDeg: [135, 157], elevationDeg: [15, 35] });
    expect(homeRange('diffuse', 'side', true).elevationDeg).toEqual([15, 35]);
    expect(homeRange('living', 'front', true)).toEqual({ azimuthSizeDeg: [22, 32], elevationDeg: [-15, 10] });
    expect(homeRange('living', 'height', true).elevationDeg).toEqual([30, 55]);
  });

  it('never calls a five-channel pair wrong that the standard allows', () => {
    const standard = positionIn('B', 'M+110')?.azimuthRangeDeg ?? [0, 0];
    for (const set of ['living', 'diffuse'] as const) {
      const [low, high] = homeRange(set, 'surround', false).azimuthSizeDeg ?? [0, 0];
      expect(low).toBeLessThanOrEqual(standard[0]);
      expect(high).toBeGreaterThanOrEqual(standard[1]);
    }
  });

  it('accepts fronts at 30 and rears at 150 by home habit and by the standard alike', () => {
    for (const [label, group, angle] of [
      ['M+030', 'front', 30],
      ['M+135', 'rear', 150],
    ] as const) {
      expect(degreesOutside(angle, homeRange('living', group, true).azimuthSizeDeg ?? [0, 0])).toBe(0);
      expect(degreesOutside(angle, positionIn('J', label)?.azimuthRangeDeg ?? [0, 0])).toBe(0);
    }
  });
});
