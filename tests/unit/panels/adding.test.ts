import { describe, expect, it } from 'vitest';
import { OFFERED_CHANNELS } from '../../../src/model/commands/add-source.ts';
import { emptyRoom } from '../../../src/model/presets/empty-room.ts';
import { additionsFor } from '../../../src/panels/outline/adding.ts';

describe('the menu of what can be added', () => {
  const groups = additionsFor(emptyRoom({ widthM: 4.2, lengthM: 5.5, heightM: 2.5 }), null);
  const loudspeakers = groups.find(({ title }) => title === 'Loudspeakers one by one')?.additions ?? [];

  it('says where each loudspeaker stands in words of its own, and no label with a sign', () => {
    const notes = loudspeakers.map(({ note }) => note);
    expect(loudspeakers.map(({ id }) => id)).toEqual(OFFERED_CHANNELS);
    expect(new Set(notes).size).toBe(OFFERED_CHANNELS.length);
    const at = (channel: string) => loudspeakers.find(({ id }) => id === channel)?.note;
    // ITU-R BS.2051 counts azimuths positive to the left.
    expect(['M+030', 'M+000', 'M-090', 'M+110', 'M-135', 'M+060'].map(at)).toEqual([
      'left front',
      'front centre',
      'right side',
      'left surround',
      'right rear',
      'left wide',
    ]);
    expect(['U+045', 'U-135', 'U+090', 'T+000'].map(at)).toEqual([
      'top front left',
      'top rear right',
      'top side left',
      'overhead',
    ]);
    for (const { additions } of groups) for (const { note } of additions) expect(note ?? '').not.toMatch(/[+-]\d{3}/);
  });
});
