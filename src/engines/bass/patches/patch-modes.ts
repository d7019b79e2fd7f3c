import { type RigidBoxMode, rigidBoxModes } from '../box-modes.ts';
import { AXES } from '../box-state.ts';
import { freeDecay } from '../free-decay.ts';
import type { BoxMode } from '../room-field.ts';
import { TIED_HZ } from './free-roots.ts';
import type { PatchLayout } from './patch-layout.ts';
import { type PatchRoot, patchRoots } from './patch-roots.ts';
import { assignRoots } from './root-assignment.ts';
import type { Order, PatchedBox } from './tied-modes.ts';
import { ABOVE_HZ, tiesToHz } from './tied-reach.ts';

/**
 * The rigid modes of a box with patches above 0 Hz up to `maxHz`, each with the decay of a free oscillation of the patched room
 * (patch-roots.ts), the one it takes most part in; no two have the same one. Where none is left (walls that absorb nearly everything) and
 * above what there is time for (tied-reach.ts) the first-order estimate stands in. In portions, each some milliseconds.
 */
export function* patchModes(
  box: PatchedBox,
  layoutFor: (kRe: number) => PatchLayout,
  maxHz: number,
): Generator<void, BoxMode[]> {
  const { geometry } = box;
  const still: RigidBoxMode = { hz: 0, order: [0, 0, 0] };
  const tiedHz = tiesToHz({ ...geometry, patches: box.patches }, maxHz);
  const lookedHz = tiedHz + ABOVE_HZ;
  const near = rigidBoxModes(geometry, Math.max(maxHz, lookedHz + 2 * TIED_HZ));
  const losses = new Map(near.map((mode) => [mode, firstOrderPerS(box, mode.order)]));
  const taken = new Map<RigidBoxMode, PatchRoot>();
  if (tiedHz > 0) {
    const tied = near.filter(({ hz }) => hz <= lookedHz + 2 * TIED_HZ);
    const modes = tied.filter(({ hz }) => hz <= lookedHz);
    const usual = modes.reduce((sum, mode) => sum + (losses.get(mode) ?? 0), 0) / Math.max(1, modes.length);
    const roots = yield* patchRoots(box, layoutFor, [still, ...tied], lookedHz, usual / geometry.soundSpeed);
    for (const [mode, root] of assignRoots(roots, modes, partOf, hzOf, geometry.soundSpeed / (2 * Math.PI)))
      if (mode.hz <= tiedHz) taken.set(mode, root);
  }
  return near
    .filter(({ hz }) => hz <= maxHz)
    .map((mode) => ({
      ...mode,
      ...freeDecay(taken.get(mode)?.k ?? null, losses.get(mode) ?? 0, mode.hz, geometry.soundSpeed),
    }));
}

const partOf = ({ order }: RigidBoxMode): Order => order;
const hzOf = ({ hz }: RigidBoxMode): number => hz;

/** delta of a mode in first order: (c / 2 V) times the sum of Re beta eps cos^2 cos^2 over walls and patches, derived. */
const firstOrderPerS = ({ geometry, patches }: PatchedBox, order: Order): number => {
  const { sizeM, soundSpeed, beta } = geometry;
  const eps = order.map((n) => (n === 0 ? 1 : 2));
  let sum = 0;
  for (const axis of AXES) sum += (eps[axis] * (beta[axis][0] + beta[axis][2])) / sizeM[axis];
  for (const { normal, axes, fromM, toM, delta } of patches) {
    const [u, v] = axes.map((axis, i) => {
      const rate = (2 * order[axis] * Math.PI) / sizeM[axis];
      const even = toM[i] - fromM[i];
      const mean = rate === 0 ? even : (even + (Math.sin(rate * toM[i]) - Math.sin(rate * fromM[i])) / rate) / 2;
      return (eps[axis] * mean) / sizeM[axis];
    });
    sum += (delta[0] * u * v * eps[normal]) / sizeM[normal];
  }
  return (soundSpeed / 2) * sum;
};
