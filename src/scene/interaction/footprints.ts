import { extentOf } from '../../model/extents.ts';
import { isLocked } from '../../model/items.ts';
import type { ItemKind, ItemRef, Project } from '../../model/project.ts';

/** A thing's outline on the floor. */
export interface Footprint {
  readonly minXM: number;
  readonly maxXM: number;
  readonly minZM: number;
  readonly maxZM: number;
  /** From here up it stands. */
  readonly baseM: number;
}

export const footprintOf = (project: Project, ref: ItemRef): Footprint | null => {
  const extent = ref.kind === 'picture' ? null : extentOf(project, ref);
  if (!extent) return null;
  const { minM, maxM } = extent;
  return { minXM: minM[0], maxXM: maxM[0], minZM: minM[2], maxZM: maxM[2], baseM: minM[1] };
};

export const covers = ({ minXM, maxXM, minZM, maxZM }: Footprint, xM: number, zM: number): boolean =>
  xM >= minXM && xM <= maxXM && zM >= minZM && zM <= maxZM;

/** What the bass floor hides and shows by its outline: subwoofers and seats. */
export const floorThings = (project: Project): ItemRef[] => [
  ...project.subwoofers.map(({ id }): ItemRef => ({ kind: 'subwoofer', id })),
  ...project.rows.flatMap(({ seats }) => seats.map(({ id }): ItemRef => ({ kind: 'seat', id }))),
];

/** What a mouse moves by its body: things that stand about, not walls or what hangs in them. */
const BODIES: ReadonlySet<ItemKind> = new Set(['subwoofer', 'seat', 'loudspeaker', 'object']);

export const hasBody = (project: Project, ref: ItemRef): boolean =>
  BODIES.has(ref.kind) && !isLocked(project, ref) && extentOf(project, ref) !== null;
