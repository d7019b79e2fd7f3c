import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fieldOf } from '../../src/model/fields/registry.ts';
import {
  formatQuantity,
  type NumberQuantity,
  parseQuantity,
  readInput,
  shownStep,
} from '../../src/words/quantities.ts';
import { formatImperial, parseLength } from '../../src/words/quantities-length.ts';

const UNITS = ['metric', 'imperial'] as const;
const QUANTITIES: readonly NumberQuantity[] = [
  'length',
  'angle',
  'decibel',
  'time',
  'frequency',
  'ratio',
  'admittance',
  'temperature',
  'power',
  'light',
  'count',
];
const values = fc.double({ min: -1000, max: 1000, noNaN: true });
const units = fc.constantFrom(...UNITS);

/** Half the last place shown, and no more than the rounding of a double at 1000 beyond it. */
const TOLERANCE = 1e-9;

/** A minus may be any of the dashes a keyboard or a program puts in. */
const pickSign = (n: number): string => ['-', '\u2212', '\u2013'][n % 3];

describe('quantities', () => {
  it.each(QUANTITIES)('reading what is shown gives %s back to half its last place', (quantity) => {
    fc.assert(
      fc.property(values, units, (value, system) => {
        const shown = formatQuantity(value, quantity, system);
        const parsed = parseQuantity(shown, quantity, system);
        expect(parsed, shown).toBeDefined();
        expect(Math.abs(parsed! - value)).toBeLessThanOrEqual(shownStep(quantity, system) / 2 + TOLERANCE);
      }),
      { numRuns: 1000 },
    );
  });

  it.each(QUANTITIES)('showing what was read from what is shown shows the same: %s', (quantity) => {
    fc.assert(
      fc.property(values, units, (value, system) => {
        const shown = formatQuantity(value, quantity, system);
        expect(formatQuantity(parseQuantity(shown, quantity, system)!, quantity, system)).toBe(shown);
      }),
      { numRuns: 1000 },
    );
  });

  it.each(QUANTITIES)(
    'every value of the grid that is shown is read back as itself, in both systems: %s',
    (quantity) => {
      fc.assert(
        fc.property(fc.integer({ min: -20_000, max: 20_000 }), units, (steps, system) => {
          const value = steps * shownStep(quantity, system);
          const parsed = parseQuantity(formatQuantity(value, quantity, system), quantity, system);
          expect(parsed).toBeDefined();
          expect(Math.abs(parsed! - value)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(value)));
        }),
        { numRuns: 2000 },
      );
    },
  );

  it('a length is read whatever trade spelling it is given', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 30_000 }), fc.boolean(), (mm, minus) => {
        const sign = minus ? pickSign(mm) : '';
        const metres = (minus ? -1 : 1) * (mm / 1000);
        const whole = Math.floor(mm / 1000);
        const spellings = [
          `${sign}${mm} mm`,
          `${sign}${mm}mm`,
          `${sign}${mm / 10} cm`,
          `${sign}${mm / 1000} m`,
          `${sign}${mm / 1000}`,
          `${sign}${String(mm / 10).replace('.', ',')} cm`,
          `${sign}${whole} m ${mm - whole * 1000} mm`,
        ];
        for (const text of spellings) expect(parseLength(text, 'metric'), text).toBeCloseTo(metres + 0, 9);
      }),
    );
  });

  it('inches may be cut as finely as one likes', () => {
    fc.assert(
      fc.property(values, fc.constantFrom(1, 2, 4, 8, 16, 32, 64), (value, perInch) => {
        const parsed = parseLength(formatImperial(value, perInch), 'metric');
        expect(Math.abs(parsed! - value)).toBeLessThanOrEqual(0.0254 / perInch / 2 + TOLERANCE);
      }),
      { numRuns: 2000 },
    );
  });

  it('reads feet and inches as the sum of feet and inches', () => {
    fc.assert(
      fc.property(fc.nat(99), fc.nat(11), fc.nat(7), (feet, inches, eighths) => {
        const metres = (feet * 12 + inches + eighths / 8) * 0.0254;
        const spellings = [
          `${feet}'${inches} ${eighths}/8"`,
          `${feet} ft ${inches} ${eighths}/8 in`,
          `${feet}' ${inches}-${eighths}/8`,
        ];
        for (const text of spellings) expect(parseLength(text, 'metric')).toBeCloseTo(metres, 9);
      }),
    );
  });

  it('whatever is typed is read to a finite number or not at all', () => {
    const piece = fc.constantFrom(
      '1',
      '0',
      '.',
      ',',
      "'",
      '"',
      '½',
      '/',
      ' ',
      '-',
      '−',
      'ft',
      'in',
      'm',
      'cm',
      '°',
      ':',
      'e',
      '9'.repeat(20),
    );
    const typed = fc.oneof(
      fc.string({ maxLength: 80 }),
      fc.array(piece, { maxLength: 12 }).map((pieces) => pieces.join('')),
    );
    const width = fieldOf('room.plan.widthM');
    fc.assert(
      fc.property(typed, units, fc.constantFrom(...QUANTITIES), (text, system, quantity) => {
        const value = parseQuantity(text, quantity, system);
        expect(value === undefined || Number.isFinite(value)).toBe(true);
        const input = readInput(text, width, system);
        if (input.ok) expect(input.value >= 1.5 && input.value <= 30).toBe(true);
        else expect(input.says).toMatch(/Allowed: /);
      }),
      { numRuns: 5000 },
    );
  });
});
