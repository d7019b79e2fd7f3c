import type { ReverberationInput } from '../../engines/acoustics/reverberation.ts';
import type { Project } from '../../model/project.ts';
import { roomShape } from '../../model/room/shape.ts';
import { soundSpeedOf } from '../../model/room.ts';
import { treatedAreas } from './areas.ts';
import { asStated } from './stated-times.ts';

/**
 * The room's volume and boundary for the reverberation formulas, with the damping a person has stated. People, furniture and
 * the air's own absorption are left out.
 */
export const reverberationInput = (project: Project): ReverberationInput => ({
  volumeM3: roomShape(project).volumeM3,
  areas: treatedAreas(asStated(project)),
  speedMS: soundSpeedOf(project),
});
