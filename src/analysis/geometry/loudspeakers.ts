import { arrivalMs, directionFrom, offAxisDeg } from '../../engines/loudspeakers/angles.ts';
import { levelDb, maxLevelDb } from '../../engines/loudspeakers/levels.ts';
import type { Vec3 } from '../../math/vec3.ts';
import type { Loudspeaker } from '../../model/project.ts';
import type { LoudspeakerReadout } from '../types.ts';

/** One loudspeaker as one ear point gets it. `aim` is the unit vector along its front lobe. */
export const loudspeakerReadout = (
  loudspeaker: Loudspeaker,
  aim: Vec3,
  earM: Vec3,
  soundSpeed: number,
  visibleFraction: number,
): LoudspeakerReadout => {
  const { id, atM, pattern, sensitivityDb, maxWatts } = loudspeaker;
  const { azimuthDeg, elevationDeg, distanceM } = directionFrom(earM, atM);
  const offAxis = offAxisDeg(atM, aim, earM);
  const level = levelDb(distanceM, pattern, offAxis);
  return {
    id,
    azimuthDeg,
    elevationDeg,
    distanceM,
    arrivalMs: arrivalMs(distanceM, soundSpeed),
    offAxisDeg: offAxis,
    levelDb: level,
    maxLevelDb: maxLevelDb(level, sensitivityDb, maxWatts),
    visibleFraction,
  };
};
