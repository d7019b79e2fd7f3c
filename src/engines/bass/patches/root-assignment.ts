import { cheapestAssignment } from '../../../math/assignment.ts';
import type { FreeRoot } from './free-roots.ts';

/** To have all of an oscillation weighs as much as to be this much nearer to it, Hz, ... */
const PER_SHARE_HZ = 20;
/** ... and one this far from where the mode is between rigid walls is as good as none. Above an opening modes move by tens of hertz. */
const FAR_HZ = 60;

/**
 * Gives each mode a root of its own, so that the shares they have in them, less how far they lie away, are largest in all. `toHz` is
 * Hz per 1/m.
 */
export const assignRoots = <Mode extends object, Part extends object>(
  roots: readonly FreeRoot<Part>[],
  modes: readonly Mode[],
  partOf: (mode: Mode) => Part,
  hzOf: (mode: Mode) => number,
  toHz: number,
): Map<Mode, FreeRoot<Part>> => {
  const rows = new Map(modes.map((mode, row) => [partOf(mode), row]));
  const columns = roots.length + modes.length;
  // columns beyond the roots: no root
  const costs = new Float64Array(modes.length * columns).fill(FAR_HZ / PER_SHARE_HZ);
  for (const [column, { k, parts, x }] of roots.entries()) {
    for (const [row, mode] of modes.entries())
      costs[row * columns + column] = Math.abs(k[0] * toHz - hzOf(mode)) / PER_SHARE_HZ;
    for (const [i, part] of parts.entries()) {
      const row = rows.get(part);
      if (row !== undefined) costs[row * columns + column] -= x[2 * i] * x[2 * i] + x[2 * i + 1] * x[2 * i + 1];
    }
  }
  const columnOf = cheapestAssignment(modes.length, columns, costs);
  return new Map(modes.flatMap((mode, row) => (columnOf[row] < roots.length ? [[mode, roots[columnOf[row]]]] : [])));
};
