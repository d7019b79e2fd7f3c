import { describe, expect, it } from 'vitest';
import type { Subwoofer } from '../../../src/model/project.ts';
import { stillOffered } from '../../../src/proposals/subwoofers/still-offered.ts';
import { boxRoom } from './rooms.ts';

const searched = boxRoom();
const moved = (xM: number): Subwoofer[] =>
  searched.subwoofers.map((one) => ({ ...one, atM: [xM, one.atM[1], one.atM[2]] }));
const proposed = [moved(0.5), moved(0.9)];

describe('proposals of a search', () => {
  it('may be used in the room they were found in, one after another, whatever it is called', () => {
    expect(stillOffered(searched, searched, proposed)).toBe(true);
    for (const subwoofers of proposed) expect(stillOffered(searched, { ...searched, subwoofers }, proposed)).toBe(true);
    expect(stillOffered(searched, { ...searched, name: 'Another', notes: 'A note' }, proposed)).toBe(true);
  });

  it('may not once the room has changed, or a hand has moved a subwoofer or changed one', () => {
    const picture = { ...searched.picture, widthM: searched.picture.widthM + 0.1 };
    expect(stillOffered(searched, { ...searched, picture }, proposed)).toBe(false);
    expect(stillOffered(searched, { ...searched, subwoofers: moved(0.7) }, proposed)).toBe(false);
    const louder = searched.subwoofers.map((one) => ({ ...one, highPassHz: 25 }));
    expect(stillOffered(searched, { ...searched, subwoofers: louder }, proposed)).toBe(false);
    expect(stillOffered(searched, { ...searched, subwoofers: searched.subwoofers.slice(1) }, proposed)).toBe(false);
  });
});
