import { describe, expect, it } from 'vitest';
import { findings } from '../../../src/analysis/findings.ts';
import { geometryReadout } from '../../../src/analysis/geometry.ts';
import { honestDecimals } from '../../../src/analysis/rules/speak.ts';
import { ruleIds } from '../../../src/analysis/rules/table.ts';
import type { Finding } from '../../../src/analysis/types.ts';
import { findingSentence } from '../../../src/words/findings.ts';
import { ruleTitle, sourceText, whyText } from '../../../src/words/rules.ts';
import { demo } from '../analysis/rooms.ts';

const project = demo();
const list = findings(project, geometryReadout(project), null);
const find = (rule: string, seat: string | null): Finding =>
  list.find((one) => one.rule === rule && (seat === null || one.seat === seat))!;

describe('findings in words', () => {
  it('in metric are the report’s own text', () => {
    for (const finding of list) expect(findingSentence(finding, 'metric')).toBe(finding.text);
  });

  it('call seats and rows by their place where a person reads, and hold no id', () => {
    const ids = project.rows.flatMap(({ id, seats }) => [id, ...seats.map((seat) => seat.id)]);
    for (const finding of list) {
      const text = findingSentence(finding, 'metric', project);
      for (const id of ids) expect(text).not.toMatch(new RegExp(`\\b(?:seat|row|chair) ${id}\\b`, 'i'));
      if (finding.seat !== null) expect(text).toMatch(/\b[Rr]ow [12], seat [1-4]\b/);
    }
    expect(findingSentence(find('back-wall', 'back-1'), 'metric', project)).toMatch(
      /^The ears of row 2, seat 1 are 1\.05 m/,
    );
    expect(findingSentence(find('picture-in-view', 'back-1'), 'metric', project)).toMatch(
      /^Row 2, seat 1 sees .* In the way: who sits in row 1, seat 1\./,
    );
  });

  it('speak in the person’s units', () => {
    const wall = find('back-wall', 'back-1');
    expect(findingSentence(wall, 'metric')).toContain('1.05 m from the wall behind. Wanted: at least 1.20 m.');
    // 1.05 m = 41.34 in = 3 ft 5 1/4 in; 1.2 m = 47.24 in = 3 ft 11 1/4 in, to the quarter inch.
    expect(findingSentence(wall, 'imperial')).toContain(
      '3 ft 5 1/4 in from the wall behind. Wanted: at least 3 ft 11 1/4 in.',
    );
    // 197 mm is the code's 7 3/4 in.
    expect(findingSentence(find('riser-step', null), 'imperial')).toContain('7 3/4 in');
  });

  it('hold no length in the other system', () => {
    for (const finding of list) {
      expect(findingSentence(finding, 'imperial')).not.toMatch(/\d (c?m)\b/);
      expect(findingSentence(finding, 'metric')).not.toMatch(/\d (ft|in)\b/);
    }
  });

  it('use none of the words that blame', () => {
    for (const finding of list) expect(finding.text).not.toMatch(/error|invalid|N\/A|fail|violat/i);
  });

  it('say whole degrees, and a decimal only where the verdict would not show without it', () => {
    const base = find('front-azimuth', 'front-2');
    const at = (value: number, verdict: Finding['verdict']): string =>
      findingSentence({ ...base, value, verdict }, 'metric');
    expect(at(23.4, 'met')).toContain('23 degrees');
    expect(at(21.8, 'close')).toContain('21.8 degrees');
    expect(at(21.97, 'close')).toContain('21.97 degrees');
    expect(honestDecimals({ ...base, value: 21.2, verdict: 'close' })).toBe(0);
    expect(at(21.2, 'close')).toContain('Wanted: 22 to 32 degrees.');
  });

  it('say the millimetre where a centimetre would hide the verdict', () => {
    const wall = find('back-wall', 'back-1');
    const at = (value: number, units: 'metric' | 'imperial') =>
      findingSentence({ ...wall, value, verdict: 'close' }, units);
    expect(at(1.198, 'metric')).toContain('are 1.198 m from');
    expect(at(1.194, 'metric')).toContain('are 1.19 m from');
    expect(at(0.996, 'metric')).toContain('are 1.00 m from');
    // 1.198 m = 47.165 in = 3 ft 11 3/16 in to the sixteenth.
    expect(at(1.198, 'imperial')).toContain('are 3 ft 11 3/16 in from');
    const whole = find('picture-in-view', 'front-2');
    expect(findingSentence({ ...whole, value: 0.9876, verdict: 'close' }, 'metric')).toContain('98.8 %');
  });

  it('say up and down in words', () => {
    const centre = find('centre-elevation', 'front-2');
    const low = { ...centre, value: -17.2, verdict: 'close' as const };
    expect(findingSentence(low, 'metric')).toBe(
      'From seat front-2, C is 17 degrees below the ears. Wanted: between 15 degrees below and 10 degrees above. Raise it.',
    );
    expect(findingSentence({ ...centre, value: 12, verdict: 'close' }, 'metric')).toMatch(
      /12 degrees above the ears.*Lower it\.$/,
    );
  });

  it('never calls all what is not quite all', () => {
    const base = find('picture-in-view', 'front-2');
    expect(findingSentence({ ...base, value: 0.997 }, 'metric')).toContain('nearly all');
    expect(findingSentence({ ...base, value: 1 }, 'metric')).toContain('the whole picture');
    expect(findingSentence({ ...base, value: 0.004, verdict: 'missed' }, 'metric')).toContain('under 1 %');
  });

  it('give every rule a name and a reason, every finding a source with its standing', () => {
    for (const id of ruleIds) {
      expect(ruleTitle(id)).toMatch(/^[A-Z]/);
      expect(whyText(id)).toMatch(/^[A-Z].{20,}\.$/);
    }
    const standings = /\((read|read in a quotation|remembered|derived|common practice, no source)\)$/;
    for (const { source } of list) expect(sourceText(source)).toMatch(standings);
    expect([ruleTitle('later-rule'), whyText('later-rule'), sourceText('later')]).toEqual(['later-rule', '', 'later']);
  });
});
