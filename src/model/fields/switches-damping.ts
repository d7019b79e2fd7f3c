import { setValue } from '../commands/edit.ts';
import type { Switch } from './switch.ts';

/** How the room's damping is stated: by what its surfaces are made of, or by reverberation times that all of them are made to fit. */
export const DAMPING_SWITCHES: readonly Switch[] = [
  {
    pattern: 'room.reverberationS',
    label: 'Damping',
    help: 'From what the surfaces are made of; or from reverberation times by octave, measured or wanted, which they are made to fit.',
    ways: [
      { id: 'surfaces', word: 'by its surfaces' },
      { id: 'times', word: 'by reverberation time' },
    ],
    read: ({ room }) => (room.reverberationS ? 'times' : 'surfaces'),
    set(project, keys, way, acoustics) {
      if ((way === 'times') === (project.room.reverberationS !== undefined)) return { ok: true, project };
      return setValue(project, keys, way === 'times' ? acoustics.times(project) : undefined);
    },
  },
];
