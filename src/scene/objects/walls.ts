import { BufferGeometry, Float32BufferAttribute, Group, LineBasicMaterial, LineSegments, type Vector3 } from 'three';
import { add, dot, scale, subtract, type Vec3 } from '../../math/vec3.ts';
import type { Project } from '../../model/project.ts';
import type { RoomShape } from '../../model/room/shape.ts';
import { roomShape } from '../../model/room/shape.ts';
import { hold, release } from '../gpu/ledger.ts';
import { type CutFace, cutFaces } from './cut-faces.ts';

const FADE_S = 0.28;
const BRASS = '#d2ae68';
const LINE_OPACITY = 0.55;
/** The drawing stands this much outside the room, so that it never lies in a plane that is drawn too. */
const CLEAR_M = 0.006;

export interface Wall {
  readonly face: CutFace;
  /** 1 whole, 0 cut away. */
  shown: number;
  readonly lines: LineSegments<BufferGeometry, LineBasicMaterial>;
}

const loopInto = (out: number[], loop: readonly Vec3[], by: Vec3): void => {
  for (let i = 0; i < loop.length; i++) out.push(...add(loop[i], by), ...add(loop[(i + 1) % loop.length], by));
};

/** Whether a camera looks at a face from outside, and so must see through it. */
export const standsOutside = (camera: Vec3, { atM, outward }: CutFace): boolean =>
  dot(subtract(camera, atM), outward) > 0;

/** Walls and ceiling that make way for the camera, each becoming a thin drawing of itself. None does for an eye in the room. */
export class Walls {
  readonly group = new Group();
  private readonly walls = new Map<string, Wall>();
  private shape: RoomShape;
  private started = false;

  constructor(project: Project) {
    this.shape = roomShape(project);
    this.draw(project);
  }

  get all(): Iterable<Wall> {
    return this.walls.values();
  }

  /** Takes in another room: a wall of the same name keeps how far it is shown. */
  draw(project: Project): void {
    this.shape = roomShape(project);
    const faces = cutFaces(project);
    const before = new Map(this.walls);
    this.walls.clear();
    for (const face of faces) {
      const last = before.get(face.key);
      before.delete(face.key);
      const wall = { face, shown: last?.shown ?? 1, lines: last?.lines ?? this.makeLines() };
      const points: number[] = [];
      for (const loop of face.loopsM) loopInto(points, loop, scale(face.outward, CLEAR_M));
      wall.lines.geometry.dispose();
      wall.lines.geometry.setAttribute('position', new Float32BufferAttribute(points, 3));
      this.walls.set(face.key, wall);
    }
    for (const { lines } of before.values()) this.drop(lines);
  }

  /** Moves each wall towards whole or cut; true while one is still on its way. */
  step({ x, y, z }: Vector3, deltaS: number, instant: boolean): boolean {
    let moving = false;
    const camera: Vec3 = [x, y, z];
    const within = this.shape.contains(camera);
    for (const wall of this.walls.values()) {
      const goal = !within && standsOutside(camera, wall.face) ? 0 : 1;
      const reach = instant || !this.started ? 1 : deltaS / FADE_S;
      wall.shown = goal > wall.shown ? Math.min(goal, wall.shown + reach) : Math.max(goal, wall.shown - reach);
      if (wall.shown !== goal) moving = true;
      wall.lines.visible = wall.shown < 1;
      wall.lines.material.opacity = LINE_OPACITY * (1 - wall.shown);
    }
    this.started = true;
    return moving;
  }

  private makeLines(): Wall['lines'] {
    const material = new LineBasicMaterial({ color: BRASS, transparent: true, depthWrite: false, toneMapped: false });
    const lines = new LineSegments(new BufferGeometry(), material);
    lines.frustumCulled = false;
    lines.visible = false;
    lines.renderOrder = 5;
    this.group.add(lines);
    hold('geometry');
    hold('material');
    return lines;
  }

  private drop(lines: Wall['lines']): void {
    lines.removeFromParent();
    lines.geometry.dispose();
    lines.material.dispose();
    release('geometry');
    release('material');
  }

  dispose(): void {
    for (const { lines } of this.walls.values()) this.drop(lines);
    this.walls.clear();
  }
}
