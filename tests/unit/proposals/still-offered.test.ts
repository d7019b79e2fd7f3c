import { describe, expect, it } from 'vitest';
import { setSubwoofers } from '../../../src/model/commands/alternatives.ts';
import type { Subwoofer } from '../../../src/model/project.ts';
import { placedSubwoofers } from '../../../src/proposals/subwoofers/proposal.ts';
import { sameSubwoofers, stillOffered } from '../../../src/proposals/subwoofers/still-offered.ts';
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

  it('is known again by what was made of it in the document, with subwoofers added', () => {
    const places = [-0.9, 0.3, 1.1].map((xM) => ({
      atM: [xM, 0.2, 0.25] as const,
      gainDb: -1,
      delayMs: 2,
      inverted: true,
    }));
    const added = placedSubwoofers(searched, places);
    const used = setSubwoofers(searched, added);
    if (!used.ok) throw new Error('refused');
    expect(used.project.subwoofers).toHaveLength(3);
    expect(sameSubwoofers(added, used.project.subwoofers)).toBe(true);
    expect(stillOffered(searched, used.project, [...proposed, added])).toBe(true);
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
