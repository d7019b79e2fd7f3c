// ITU-R BS.2051: positions in Cartesian form as read in the scene files of a public set of measured room responses (r = 2 m;
// that room hung its upper layer at 40 degrees), reproduced by derivation; ranges as read in the layout data of a public
// broadcasters' renderer derived from BS.2051-1. BS.775-3: surrounds 100 to 120 degrees, delays (read; delays derived).
import { describe, expect, it } from 'vitest';
import { arrivalMs, directionFrom } from '../../src/engines/loudspeakers/angles.ts';
import { azimuthFromItu, nominalOf, pointFromItu, positionIn } from '../../src/engines/loudspeakers/itu-layout.ts';
import { insideRange } from '../../src/engines/loudspeakers/layout-match.ts';
import { alignmentDelaysMs } from '../../src/engines/loudspeakers/levels.ts';

// Columns of the source: x right, y front, z up; document axes are x right, y up, z back.
const measured = `
  M+030  30  0  -1.000  1.732  0
  M+090  90  0  -2.000  0      0
  M+110 110  0  -1.879 -0.684  0
  M+135 135  0  -1.414 -1.414  0
  U+030  30 40  -0.766  1.327  1.286
  U+045  45 40  -1.083  1.083  1.286
  U+110 110 40  -1.440 -0.524  1.286`
  .trim()
  .split('\n')
  .map((row) => row.trim().split(/\s+/))
  .map(([label, ...numbers]) => ({ label, numbers: numbers.map(Number) }));

describe('polar to Cartesian', () => {
  it.each(measured)('$label', ({ label, numbers: [azimuth, elevation, x, front, up] }) => {
    const point = pointFromItu(azimuth, elevation, 2);
    // The source prints millimetres.
    expect(Math.abs(point[0] - x)).toBeLessThanOrEqual(0.001);
    expect(Math.abs(point[1] - up)).toBeLessThanOrEqual(0.001);
    expect(Math.abs(point[2] + front)).toBeLessThanOrEqual(0.001);
    expect(nominalOf(label)?.azimuthDeg).toBe(azimuth);
  });

  it.each(measured)('and back, from an ear anywhere: $label', ({ numbers: [azimuth, elevation, x, front, up] }) => {
    const found = directionFrom([0.4, 1.1, 3.2], [0.4 + x, 1.1 + up, 3.2 - front]);
    // Half a millimetre of print at 2 m is 0.015 degrees a coordinate.
    expect(Math.abs(found.azimuthDeg - azimuthFromItu(azimuth))).toBeLessThanOrEqual(0.04);
    expect(Math.abs(found.elevationDeg - elevation)).toBeLessThanOrEqual(0.04);
    expect(Math.abs(found.distanceM - 2)).toBeLessThanOrEqual(0.001);
  });
});

const allowed = (letter: 'B' | 'D' | 'F' | 'H' | 'I' | 'J', label: string, azimuth: number, elevation = 0): boolean => {
  const position = positionIn(letter, label);
  if (!position) throw new Error(`${letter} has no ${label}`);
  return insideRange(position, azimuth, elevation);
};

describe('the range judges, not the label', () => {
  it('(a) a 7.1 side surround may stand at 100 degrees and not at 80', () => {
    expect(allowed('I', 'M+090', 100)).toBe(true);
    expect(allowed('I', 'M+090', 80)).toBe(false);
    expect(allowed('I', 'M-090', -100)).toBe(true);
    expect(allowed('I', 'M-090', 100)).toBe(false);
  });

  it('(b) 5.1 surrounds and 7.1 rears both pass at 120; 7.1 sides end at 110', () => {
    expect(allowed('B', 'M+110', 120)).toBe(true);
    expect(allowed('I', 'M+135', 120)).toBe(true);
    expect(allowed('I', 'M+090', 110)).toBe(true);
    expect(allowed('I', 'M+090', 110.5)).toBe(false);
    expect(allowed('B', 'M+110', 99)).toBe(false);
  });

  it('(c) 7.1.4 loudspeakers in the ceiling fail above 55 degrees', () => {
    expect(allowed('J', 'U+045', 45, 55)).toBe(true);
    expect(allowed('J', 'U+045', 45, 56)).toBe(false);
    expect(allowed('J', 'U-135', -135, 29)).toBe(false);
  });

  it('a rear centre at 181 degrees either way is out, at 180 in, however 180 is written', () => {
    expect(allowed('H', 'M+180', 180)).toBe(true);
    expect(allowed('H', 'M+180', -180)).toBe(true);
    expect(allowed('H', 'M+180', 179)).toBe(false);
    expect(allowed('H', 'M+180', -179)).toBe(false);
  });

  it('fronts at 22.5 degrees pass in system H alone', () => {
    expect(allowed('H', 'M+030', 22.5)).toBe(true);
    expect(allowed('I', 'M+030', 22.5)).toBe(false);
    expect(allowed('B', 'M+030', 22.5)).toBe(false);
  });

  it('the top loudspeaker has no azimuth; LFE pairs of F and H have', () => {
    expect(allowed('H', 'T+000', 77, 90)).toBe(true);
    expect(allowed('H', 'T+000', 0, 80)).toBe(false);
    expect(allowed('F', 'LFE2', -60, -20)).toBe(true);
    expect(allowed('F', 'LFE2', 60, -20)).toBe(false);
  });

  it('the upper layer at 40 degrees of the measured room is inside 30 to 55', () => {
    expect(allowed('D', 'U+110', 110, 40)).toBe(true);
  });
});

describe('equal arrival (BS.775): 2.915 ms a metre at 343 m/s', () => {
  it('counts time of flight and makes it up', () => {
    expect(Math.abs(arrivalMs(1, 343) - 2.915)).toBeLessThanOrEqual(0.001);
    expect(Math.abs(alignmentDelaysMs([4, 3], 343)[1] - 2.915)).toBeLessThanOrEqual(0.01);
  });
});
