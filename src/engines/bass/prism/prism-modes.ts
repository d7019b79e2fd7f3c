import { freeDecay } from '../free-decay.ts';
import type { RoomMode } from '../room-field.ts';
import { evenModes, rigidModes } from './even-modes.ts';
import type { PrismPatch } from './patch-division.ts';
import { patchedModes } from './patched-modes.ts';
import type { Section } from './section.ts';

/** Modes of the even room to this far above take part in those of the patched one. */
const ABOVE_HZ = 30;

/**
 * Rigid eigenfrequencies of a prism above 0 Hz up to `maxHz` from the rigid plan modes, each with the decay of its damped mode:
 * the complex k with mu_i(k) + w_q(k) / L^2 = k^2 (derived), mu_i(k) the eigenvalue of Lambda + j k B that continues plan mode i;
 * with patches that stand out, the mode of the patched room that continues it (patched-modes.ts).
 * `rigid` must be complete to maxHz. In portions.
 */
export function* prismModes(
  section: Section,
  patches: readonly PrismPatch[],
  rigid: Float64Array,
  maxHz: number,
): Generator<void, RoomMode[]> {
  const { geometry } = section;
  const { soundSpeed } = geometry;
  const scale = soundSpeed / (2 * Math.PI);
  if (geometry.rigid && patches.length === 0)
    return rigidModes(geometry, rigid, maxHz).map(({ k }) => ({
      hz: k * scale,
      order: null,
      dampedHz: k * scale,
      decayS: Number.POSITIVE_INFINITY,
    }));
  // patches tie the highest modes to some above them
  const completeHz = Math.sqrt(rigid[rigid.length - 1]) * scale;
  const even = yield* evenModes(
    section,
    rigid,
    patches.length === 0 ? maxHz : Math.max(maxHz, Math.min(maxHz + ABOVE_HZ, completeHz)),
  );
  const damped = patches.length === 0 ? even.modes : yield* patchedModes(section, even, patches, maxHz);
  const wanted = even.modes.filter(({ k }) => k * scale <= maxHz);
  return wanted.map(({ k }, i) => ({
    hz: k * scale,
    order: null,
    ...freeDecay(damped[i].damped, damped[i].firstOrderPerS, k * scale, soundSpeed),
  }));
}

/** The rigid shapes of `prismModes` at points (section and place along the axis, triples), index mode * points + point. */
export const prismShapes = (
  section: Section,
  rigid: Float64Array,
  maxHz: number,
  points: Float64Array,
): Float64Array => {
  const { geometry, basis, size } = section;
  const count = points.length / 3;
  const values = basis.valuesAt(points.filter((_, i) => i % 3 !== 2));
  const modes = rigidModes(geometry, rigid, maxHz);
  const shapes = new Float64Array(modes.length * count);
  for (const [m, { plan, order }] of modes.entries()) {
    const norm = Math.sqrt((order === 0 ? 1 : 2) / geometry.lengthM);
    for (let p = 0; p < count; p++) {
      const along = Math.cos((order * Math.PI * points[3 * p + 2]) / geometry.lengthM);
      shapes[m * count + p] = norm * values[p * size + plan] * along;
    }
  }
  return shapes;
};
