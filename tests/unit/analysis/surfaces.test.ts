import { describe, expect, it } from 'vitest';
import { openingAbsorption } from '../../../src/analysis/inputs/areas.ts';
import { reverberationInput } from '../../../src/analysis/inputs/surfaces.ts';
import { plain } from './rooms.ts';

const room = (over: object) => ({
  room: {
    plan: { shape: 'rectangle', widthM: 4, lengthM: 6 },
    ceiling: { shape: 'flat', heightM: 2.5 },
    surfaces: { left: { absorption: { '125': 0.1 } } },
    ...over,
  },
});

const patch = (id: string, fromM: number, widthM: number, absorption: number) => ({
  id,
  surface: 'left',
  fromM,
  widthM,
  bottomM: 0.5,
  heightM: 1,
  absorption: { '125': absorption },
});

/** Absorbing area at 125 Hz, m2. */
const total = (over: object): number =>
  reverberationInput(plain(room(over))).areas.reduce((sum, { areaM2, absorption }) => sum + areaM2 * absorption[0], 0);

describe('areas of the boundary', () => {
  const bare = total({});

  it('adds up to the box whatever lies on it', () => {
    const { areas, volumeM3 } = reverberationInput(
      plain(room({ patches: [patch('a', 1, 2, 0.9), patch('b', 2, 2, 0.5)] })),
    );
    expect(areas.reduce((sum, { areaM2 }) => sum + areaM2, 0)).toBeCloseTo(2 * (24 + 10 + 15), 9);
    expect(volumeM3).toBeCloseTo(60, 9);
  });

  it('a patch replaces its area of the wall', () => {
    expect(total({ patches: [patch('a', 1, 2, 0.9)] }) - bare).toBeCloseTo(2 * (0.9 - 0.1), 9);
  });

  it('where two patches overlap the later one counts, once', () => {
    const both = total({ patches: [patch('a', 1, 2, 0.9), patch('b', 2, 2, 0.5)] });
    expect(both - bare).toBeCloseTo(1 * (0.9 - 0.1) + 2 * (0.5 - 0.1), 9);
  });

  it('a patch that says nothing is of the wall’s own making', () => {
    const { absorption: _, ...silent } = patch('a', 1, 2, 0.9);
    expect(total({ patches: [silent] })).toBeCloseTo(bare, 9);
  });

  it('an opening lies over a patch; open or without a leaf it takes everything', () => {
    const door = { id: 'd', kind: 'door', surface: 'left', fromM: 1, widthM: 1, bottomM: 0, heightM: 2 };
    const open = total({ openings: [{ ...door, leaf: 'open' }] });
    expect(open - bare).toBeCloseTo(2 * (1 - 0.1), 9);
    const over = total({ openings: [{ ...door, leaf: 'none' }], patches: [patch('a', 1, 1, 0.4)] });
    expect(over - bare).toBeCloseTo(2 * (1 - 0.1), 9);
    // Boards on joists at 125 Hz: 0.15 (handbook table 27.1, read).
    expect(total({ openings: [{ ...door, leaf: 'closed' }] }) - bare).toBeCloseTo(2 * (0.15 - 0.1), 9);
  });

  it('an opening without a leaf of its own kind is always open; a window is glass (0.35 at 125 Hz, read)', () => {
    expect(openingAbsorption({ kind: 'opening', leaf: 'closed' })).toEqual([1, 1, 1, 1, 1, 1]);
    expect(openingAbsorption({ kind: 'window', leaf: 'closed' })[0]).toBe(0.35);
  });
});
