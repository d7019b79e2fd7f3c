import type { Vec3 } from '../../math/vec3.ts';
import type { ItemRef, Project } from '../../model/project.ts';
import { axesOf } from '../../shapes/placement.ts';
import { cabinetPlacement, mountingOf } from '../../shapes/sources/standing.ts';

/** A thing of the room as an upright box, metres. */
export interface NamedBox {
  readonly ref: ItemRef;
  readonly name: string;
  readonly minM: Vec3;
  readonly maxM: Vec3;
}

const about = (centre: Vec3, half: Vec3): Pick<NamedBox, 'minM' | 'maxM'> => ({
  minM: [centre[0] - half[0], centre[1] - half[1], centre[2] - half[2]],
  maxM: [centre[0] + half[0], centre[1] + half[1], centre[2] + half[2]],
});

/** The upright box round a turned cabinet. */
const cabinetBox = (project: Project, index: number): NamedBox[] => {
  const loudspeaker = project.loudspeakers[index];
  const mounting = mountingOf(loudspeaker);
  if (mounting === 'in-wall' || mounting === 'in-ceiling') return [];
  const placement = cabinetPlacement(project, loudspeaker);
  const { right, up, back } = axesOf(placement);
  const [width, height, depth] = loudspeaker.sizeM;
  const half = (axis: 0 | 1 | 2): number =>
    (Math.abs(right[axis]) * width + Math.abs(up[axis]) * height + Math.abs(back[axis]) * depth) / 2;
  const ref = { kind: 'loudspeaker', id: loudspeaker.id } as const;
  return [{ ref, name: loudspeaker.id, ...about(placement.positionM, [half(0), half(1), half(2)]) }];
};

/** Everything that stands or hangs as a body of its own: objects, cabinets that are not let into a surface, subwoofers. */
export const bodyBoxes = (project: Project): NamedBox[] => [
  ...project.room.objects.map(
    ({ id, name, minM, maxM }): NamedBox => ({ ref: { kind: 'object', id }, name: name || id, minM, maxM }),
  ),
  ...project.loudspeakers.flatMap((_, index) => cabinetBox(project, index)),
  ...project.subwoofers.map(({ id, atM, sizeM }): NamedBox => {
    const ref = { kind: 'subwoofer', id } as const;
    return { ref, name: id, ...about(atM, [sizeM[0] / 2, sizeM[1] / 2, sizeM[2] / 2]) };
  }),
];

/** How deep two boxes lie in one another: the least of the three overlaps; 0 or less when they are apart. */
export const depthInto = (a: NamedBox, b: NamedBox): number =>
  Math.min(
    ...([0, 1, 2] as const).map((axis) => Math.min(a.maxM[axis], b.maxM[axis]) - Math.max(a.minM[axis], b.minM[axis])),
  );
