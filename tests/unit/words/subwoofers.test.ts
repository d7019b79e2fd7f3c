import { describe, expect, it } from 'vitest';
import { arrangementTitle, changeText, countTitle, driveText, placeText } from '../../../src/words/subwoofers.ts';
import { boxRoom } from '../proposals/rooms.ts';

const project = boxRoom();

describe('where a subwoofer stands', () => {
  it.each([
    [[-2.35, 0.2, 0.25], 'front left corner'],
    [[2.35, 0.2, 6.55], 'back right corner'],
    [[0, 0.2, 0.25], 'middle of the front wall'],
    [[-2.35, 0.2, 3.4], 'middle of the left wall'],
    [[-1.3, 0.2, 6.55], 'back wall, 1.30 m from the left wall'],
    [[2.35, 0.2, 1.8], 'right wall, 1.80 m from the front wall'],
  ] as const)('%j: %s', (at, text) => {
    expect(placeText(project, [at[0], at[1], at[2]], 'metric')).toBe(text);
  });

  it('in feet and inches for those who measure so', () => {
    expect(placeText(project, [-1.076, 0.2, 6.55], 'imperial')).toBe('back wall, 5 ft from the left wall');
  });
});

it('says drives, changes and numbers in plain words', () => {
  expect(driveText(0, 0, false, 'metric')).toBe('full gain, no delay, polarity normal');
  expect(driveText(-2, 3.1, true, 'metric')).toBe('−2.0 dB, 3.1 ms later, polarity reversed');
  expect(changeText(project, { what: 'removed', id: 'S2', fromM: [2.35, 0.2, 0.25] }, 'metric')).toBe(
    'S2 goes, from front right corner',
  );
  expect(countTitle(1)).toBe('One subwoofer');
  expect(countTitle(4)).toBe('Four subwoofers');
  expect(arrangementTitle('four-quarters')).toBe('Four, front and back quarters');
});
