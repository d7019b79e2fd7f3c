import { BufferGeometry, Float32BufferAttribute, LineBasicMaterial, LineSegments, type Vector3 } from 'three';
import type { Vec3 } from '../../math/vec3.ts';
import type { Project } from '../../model/project.ts';
import { SURFACES, type SurfaceName } from '../../model/schema/room.ts';
import type { Solid } from '../../shapes/solid.ts';
import { hold, release } from '../gpu/ledger.ts';
import { type Extent, roomExtent } from '../light/light-room.ts';

const FADE_S = 0.28;
/** Left and right come before front and back in the drawing only; the floor is never cut away. */
const CUTTABLE: readonly SurfaceName[] = SURFACES.filter((name) => name !== 'floor');
const BRASS = '#d2ae68';
const LINE_OPACITY = 0.55;
/** The drawing stands this much outside the room, so that it never lies in a plane that is drawn too. */
const CLEAR_M = 0.006;

/** Which wall a part belongs to, and so fades with: '' for anything that stands free. */
export const wallOf = (project: Project) => {
  const carried = new Map<string, SurfaceName>();
  for (const opening of project.room.openings) carried.set(`opening:${opening.id}`, opening.surface);
  for (const patch of project.room.patches) carried.set(`patch:${patch.id}`, patch.surface);
  const walls = new Set<string>(CUTTABLE);
  return (solid: Pick<Solid, 'kind' | 'id' | 'part'>): string => {
    if (solid.kind === 'surface' || solid.kind === 'shell') {
      const name = [solid.id, ...solid.part.split(/[^a-z]+/)].find((word) => walls.has(word));
      return name ?? '';
    }
    const wall = carried.get(`${solid.kind}:${solid.id}`);
    return wall && walls.has(wall) ? wall : '';
  };
};

export interface Wall {
  readonly name: SurfaceName;
  /** 1 whole, 0 cut away. */
  shown: number;
  readonly lines: LineSegments<BufferGeometry, LineBasicMaterial>;
}

const corner = ({ minM, maxM }: Extent, x: number, y: number, z: number): Vec3 => [
  x ? maxM[0] + CLEAR_M : minM[0] - CLEAR_M,
  y ? maxM[1] + CLEAR_M : minM[1],
  z ? maxM[2] + CLEAR_M : minM[2] - CLEAR_M,
];

/** Outline of an inner face, corner to corner. */
const outline = (extent: Extent, name: SurfaceName): Vec3[] => {
  const loops: Record<SurfaceName, [number, number, number][]> = {
    left: [
      [0, 0, 0],
      [0, 0, 1],
      [0, 1, 1],
      [0, 1, 0],
    ],
    right: [
      [1, 0, 0],
      [1, 0, 1],
      [1, 1, 1],
      [1, 1, 0],
    ],
    front: [
      [0, 0, 0],
      [1, 0, 0],
      [1, 1, 0],
      [0, 1, 0],
    ],
    back: [
      [0, 0, 1],
      [1, 0, 1],
      [1, 1, 1],
      [0, 1, 1],
    ],
    floor: [
      [0, 0, 0],
      [1, 0, 0],
      [1, 0, 1],
      [0, 0, 1],
    ],
    ceiling: [
      [0, 1, 0],
      [1, 1, 0],
      [1, 1, 1],
      [0, 1, 1],
    ],
  };
  return loops[name].map(([x, y, z]) => corner(extent, x, y, z));
};

/** A rectangle on a surface, as openings and patches are given. */
const onSurface = (
  { minM, maxM }: Extent,
  { surface, fromM, widthM, bottomM, heightM }: Project['room']['openings'][number],
): Vec3[] => {
  const at = (along: number, up: number): Vec3 => {
    if (surface === 'left' || surface === 'right')
      return [surface === 'left' ? minM[0] : maxM[0], minM[1] + up, minM[2] + along];
    if (surface === 'front' || surface === 'back')
      return [minM[0] + along, minM[1] + up, surface === 'front' ? minM[2] : maxM[2]];
    return [minM[0] + along, surface === 'floor' ? minM[1] : maxM[1], minM[2] + up];
  };
  return [
    at(fromM, bottomM),
    at(fromM + widthM, bottomM),
    at(fromM + widthM, bottomM + heightM),
    at(fromM, bottomM + heightM),
  ];
};

const loopInto = (out: number[], loop: readonly Vec3[]): void => {
  for (let i = 0; i < loop.length; i++) out.push(...loop[i], ...loop[(i + 1) % loop.length]);
};

/** Whether a camera looks at a face from outside, and so must see through it. */
export const standsOutside = (camera: Vector3, { minM, maxM }: Extent, name: SurfaceName): boolean => {
  if (name === 'left') return camera.x < minM[0];
  if (name === 'right') return camera.x > maxM[0];
  if (name === 'front') return camera.z < minM[2];
  if (name === 'back') return camera.z > maxM[2];
  return name === 'ceiling' && camera.y > maxM[1];
};

/** Walls and ceiling that make way for the camera, each becoming a thin drawing of itself. */
export class Walls {
  readonly all: Wall[];
  private extent: Extent;
  private started = false;

  constructor(project: Project) {
    this.extent = roomExtent(project);
    this.all = CUTTABLE.map((name) => {
      const material = new LineBasicMaterial({ color: BRASS, transparent: true, depthWrite: false, toneMapped: false });
      const lines = new LineSegments(new BufferGeometry(), material);
      lines.frustumCulled = false;
      lines.visible = false;
      lines.renderOrder = 5;
      return { name, shown: 1, lines };
    });
    hold('geometry', this.all.length);
    hold('material', this.all.length);
    this.draw(project);
  }

  draw(project: Project): void {
    this.extent = roomExtent(project);
    for (const { name, lines } of this.all) {
      const points: number[] = [];
      loopInto(points, outline(this.extent, name));
      for (const opening of project.room.openings)
        if (opening.surface === name) loopInto(points, onSurface(this.extent, opening));
      lines.geometry.dispose();
      lines.geometry.setAttribute('position', new Float32BufferAttribute(points, 3));
    }
  }

  /** Moves each wall towards whole or cut; true while one is still on its way. */
  step(camera: Vector3, deltaS: number, instant: boolean): boolean {
    let moving = false;
    for (const wall of this.all) {
      const goal = standsOutside(camera, this.extent, wall.name) ? 0 : 1;
      const reach = instant || !this.started ? 1 : deltaS / FADE_S;
      wall.shown = goal > wall.shown ? Math.min(goal, wall.shown + reach) : Math.max(goal, wall.shown - reach);
      if (wall.shown !== goal) moving = true;
      wall.lines.visible = wall.shown < 1;
      wall.lines.material.opacity = LINE_OPACITY * (1 - wall.shown);
    }
    this.started = true;
    return moving;
  }

  dispose(): void {
    for (const { lines } of this.all) {
      lines.geometry.dispose();
      lines.material.dispose();
    }
    release('geometry', this.all.length);
    release('material', this.all.length);
  }
}
