import { describe, expect, it } from 'vitest';
import { moveSubwoofer } from '../../../src/model/commands/move.ts';
import { setField } from '../../../src/model/commands/set-field.ts';
import type { Refusal } from '../../../src/model/refusal.ts';
import { faultLine, faultOf, held } from '../../../src/words/faults.ts';
import { noticeLine } from '../../../src/words/notices.ts';
import { refusalText } from '../../../src/words/refusals.ts';
import { sampleProject } from '../model/sample.ts';

describe('a value on one short line', () => {
  it.each([
    [undefined, 'nothing'],
    [null, 'null'],
    [0.4, '0.4'],
    [Number.POSITIVE_INFINITY, 'a number beyond 1.8e308'],
    [Number.NaN, 'what is no number'],
    [true, 'true'],
    ['L', '"L"'],
    [[1, 'a', null], '[1, "a", null]'],
    [[1, 2, 3, 4, 5], 'a list of 5'],
    [[[1]], 'a list of 1'],
    [{}, 'an object'],
  ])('%j', (value, text) => {
    expect(held(value)).toBe(text);
  });

  it('is at most 60 characters long before it is cut', () => {
    expect(held('é'.repeat(1000))).toHaveLength(60);
    expect(held(['a'.repeat(50), 'b'.repeat(50)])).toHaveLength(60);
  });
});

describe('refusals in words', () => {
  const why = (edit: { ok: true } | { ok: false; reason: Refusal }): Refusal => {
    if (edit.ok) throw new Error('accepted');
    return edit.reason;
  };

  it('in the file’s terms for a file', () => {
    const reason = why(setField(sampleProject(), 'picture.widthM', 40));
    expect(faultLine(faultOf(reason))).toBe('picture.widthM: holds 40; allowed: 0.3 to 12');
  });

  it('in the person’s units on the screen', () => {
    const reason = why(setField(sampleProject(), 'picture.widthM', 40));
    expect(refusalText(reason, 'metric', sampleProject())).toBe('Picture width: 40.00 m. Allowed: 0.30 m to 12.00 m.');
    expect(refusalText(reason, 'imperial', sampleProject())).toBe(
      'Picture width: 131 ft 2 3/4 in. Allowed: 11 3/4 in to 39 ft 4 1/2 in.',
    );
  });

  it('a place outside the room names the room', () => {
    const reason = why(moveSubwoofer(sampleProject(), 'S1', [3, 0.2, 1]));
    expect(refusalText(reason, 'metric', sampleProject())).toBe(
      'S1: 3.00 m, 0.20 m, 1.00 m is outside the room. Inside is \u22122.15 m to 2.15 m across, 0.00 m to 2.70 m up, 0.00 m to 6.10 m from the front wall.',
    );
  });

  it('names the thing and the field', () => {
    const reason = why(setField(sampleProject(), 'subwoofers[1].gainDb', 90));
    expect(refusalText(reason, 'metric', sampleProject())).toBe(
      'S2, Gain: 90.0 dB. Allowed: \u221260.0 dB to 20.0 dB.',
    );
  });

  it('without the project, by the field alone', () => {
    const reason = why(setField(sampleProject(), 'subwoofers[1].gainDb', 90));
    expect(refusalText(reason, 'metric')).toBe('Gain: 90.0 dB. Allowed: \u221260.0 dB to 20.0 dB.');
  });

  it('never with words that blame', () => {
    const reasons = [
      why(setField(sampleProject(), 'picture.widthM', Number.NaN)),
      why(setField(sampleProject(), 'loudspeakers[0].channel', 'Left')),
      why(setField(sampleProject(), 'referenceSeat', 'x')),
    ];
    for (const reason of reasons) {
      expect(refusalText(reason, 'imperial', sampleProject())).toMatch(/^[A-Z].+\.$/);
      expect(refusalText(reason, 'imperial', sampleProject())).not.toMatch(/error|invalid|N\/A/i);
    }
  });
});

describe('notices', () => {
  it('name what was kept', () => {
    expect(noticeLine({ kind: 'unknown-keys', paths: ['a', 'rows[0].b'], more: 0 })).toMatch(/: a, rows\[0\]\.b$/);
    expect(noticeLine({ kind: 'unknown-keys', paths: ['a'], more: 3 })).toMatch(/: a and 3 more$/);
    expect(noticeLine({ kind: 'walls-without-polygon' })).toMatch(/^room\.surfaces\.walls /);
  });
});
