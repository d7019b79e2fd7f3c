import { stiffBoxHoldsToHz, stiffPrismHoldsToHz } from '../engines/bass/patches/stiff-reach.ts';
import { boxTiedToHz } from '../engines/bass/patches/tied-reach.ts';
import { prismHoldsToHz } from '../engines/bass/prism/basis-size.ts';
import { prismTiedToHz } from '../engines/bass/prism/tied-reach.ts';
import { isPrism } from '../engines/bass/room-field.ts';
import type { Project } from '../model/project.ts';
import { type Measures, SI } from './inputs/measures.ts';
import { openingApproximation, patchesApproximation } from './inputs/patches.ts';
import { bassApproximation, roomSpec } from './inputs/room-spec.ts';
import { timesApproximation } from './inputs/stated-times.ts';

/** What is listed and judged in the bass ends here. */
const HIGHEST_HZ = 200;

/** How far up a large plan is worked out in full, in a sentence; null where that is to 200 Hz. */
const reachApproximation = (project: Project): string | null => {
  const spec = roomSpec(project);
  if (!isPrism(spec)) return null;
  const hz = prismHoldsToHz(spec);
  if (hz >= HIGHEST_HZ) return null;
  return `For the bass, a room with so large a cross-section is worked out in full to about ${Math.round(hz / 5) * 5} Hz. Above that the levels only show the trend; the list of modes is complete to ${HIGHEST_HZ} Hz all the same.`;
};

/** How far up the decays of modes take a room's patches together, in a sentence; null where to 200 Hz or without any. */
const decaysApproximation = (project: Project): string | null => {
  const spec = roomSpec(project);
  if (!spec.patches?.length) return null;
  const hz = isPrism(spec) ? prismTiedToHz(spec, HIGHEST_HZ) : boxTiedToHz(spec, HIGHEST_HZ);
  if (hz >= HIGHEST_HZ) return null;
  const from = hz > 0 ? `above about ${hz} Hz` : 'in so large a room';
  return `For the bass, decay times ${from} count each absorber and opening by itself, not how they act together; beside an open door they may be a third off. Levels are not concerned.`;
};

/** How far up waves along stiff patches are followed, in a sentence; null where to 200 Hz or where nothing is stiff. */
const stiffApproximation = (project: Project): string | null => {
  const spec = roomSpec(project);
  const hz = isPrism(spec) ? stiffPrismHoldsToHz(spec, HIGHEST_HZ) : stiffBoxHoldsToHz(spec, HIGHEST_HZ);
  if (hz >= HIGHEST_HZ) return null;
  const from = hz > 0 ? `above about ${hz} Hz` : 'here';
  return `For the bass, waves that run along large stiff patches (a positive imaginary admittance) are too short ${from} to be followed in full; levels there may be off by some decibels.`;
};

/** From this admittance on modes die within about a swing, as long as most walls have it. */
const HEAVY = 0.5;

/** What is rougher between walls that take nearly everything, in a sentence; null where none does. */
const heavyApproximation = (project: Project): string | null => {
  const spec = roomSpec(project);
  const walls = isPrism(spec) ? [...spec.edges, ...spec.ends] : spec.admittance;
  if (!walls.some(([re, im]) => Math.hypot(re, im) >= HEAVY)) return null;
  const levels = isPrism(spec)
    ? ' Levels close to such walls are rougher, by some 2 dB for a subwoofer in their corner.'
    : '';
  return `For the bass, walls of an admittance of ${HEAVY} or more let modes die away within a swing or so; the decay times of those are estimates.${levels}`;
};

/**
 * What the bass leaves out in this room, in sentences for the person; none where it leaves out nothing. Lengths and areas
 * are written as `measures` says: as the report does unless told.
 */
export const bassNotes = (project: Project, measures: Measures = SI): readonly string[] =>
  [
    bassApproximation(project, measures),
    reachApproximation(project),
    openingApproximation(project, measures),
    patchesApproximation(roomSpec(project)),
    timesApproximation(project),
    decaysApproximation(project),
    stiffApproximation(project),
    heavyApproximation(project),
  ].filter((note) => note !== null);
