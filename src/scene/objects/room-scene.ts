import { Group, type Mesh, type Vector3 } from 'three';
import type { Project } from '../../model/project.ts';
import type { Solid } from '../../shapes/solid.ts';
import type { SessionState } from '../../state/session.ts';
import { lightRoom } from '../light/light-room.ts';
import { exposureOf, type LightLevels, levelsOf, type MeanLight, mixLevels } from '../light/presets.ts';
import { addToSums, type RoomLight } from '../light/room-light.ts';
import { disposeStill, mirrorTexture, stillImage, stillTexture } from '../materials/still-texture.ts';
import { SurfaceMaterials } from '../materials/surface-materials.ts';
import { accentsOf } from './accents.ts';
import { ContactShadows } from './contact-shadows.ts';
import { wallOf } from './cut-faces.ts';
import { Fixtures } from './fixtures.ts';
import { GeometryShelf } from './geometry-shelf.ts';
import { Outlines } from './outlines.ts';
import { type Part, Parts, relight } from './parts.ts';
import { Walls } from './walls.ts';

const EASE_S = 1.5;
/** Longest time in one frame spent on light that may come a little later. */
const LIGHT_BUDGET_MS = 10;

/** The room as drawn: parts, their light, walls that make way. Below React; one instance a mounted stage. */
export class RoomScene {
  readonly group = new Group();
  readonly parts: Parts;
  private readonly materials = new SurfaceMaterials();
  private readonly walls: Walls;
  private readonly still;
  private readonly mirror = mirrorTexture();
  private readonly contacts = new ContactShadows();
  private readonly fixtures = new Fixtures();
  private readonly outlines = new Outlines();
  private project: Project | null = null;
  private light: RoomLight | null = null;
  private readonly unlit = new Set<Part>();
  private readonly lit = new WeakSet<Part>();
  private levels: LightLevels | null = null;
  private ease: { from: LightLevels; to: LightLevels; elapsedS: number } | null = null;
  private shadesStale = false;
  private mean: MeanLight = { picture: 0.02, lamps: 0.2, general: 0.7 };
  private readonly sums = new Float64Array(4);

  constructor(project: Project, anisotropy: number) {
    this.parts = new Parts(new GeometryShelf(), this.materials, (mesh: Mesh) => this.group.add(mesh));
    this.walls = new Walls(project);
    this.group.add(this.walls.group, this.contacts.group, this.fixtures.group, this.outlines.group);
    this.still = stillTexture(anisotropy);
    this.parts.picture.setPicture(this.still);
  }

  /** Brings the meshes in line with the document; light that the change makes stale is worked out. */
  setProject(project: Project, solids: readonly Solid[], settled: boolean): void {
    const last = this.project;
    this.project = project;
    const changed = this.parts.sync(solids, wallOf(project));
    this.contacts.sync(project, solids);
    const newRoom = !last || last.room !== project.room || last.picture !== project.picture;
    const newRows = last !== null && last.rows !== project.rows;
    if (newRoom) {
      const first = this.light === null;
      this.light = lightRoom(project, solids, stillImage().radiance);
      this.materials.setPicture(this.light.picture, this.mirror);
      this.walls.draw(project);
      this.fixtures.draw(this.light.lamps);
      for (const part of this.parts.byKey.values()) this.unlit.add(part);
      if (first) {
        this.relightSome(Number.POSITIVE_INFINITY);
        this.measure();
      }
    } else if (changed.length > 0 || newRows) this.shadesStale = true;
    // Under a moving hand a thing keeps the light it had; what has none yet gets it, the rest comes when it is let go.
    for (const part of changed) if (settled || !this.lit.has(part)) this.lightUp(part);
    if (settled && this.shadesStale) {
      this.shadesStale = false;
      this.light = lightRoom(project, solids, stillImage().radiance);
      for (const part of this.parts.byKey.values()) this.unlit.add(part);
    }
  }

  /** Levels of light for a preset: eased, or at once on the first frame and where motion is unwanted. */
  setSession(session: SessionState): void {
    const to = levelsOf(session.light, session.mode === 'overlook');
    if (!this.levels || session.reducedMotion) {
      this.levels = to;
      this.ease = null;
      this.showLevels();
    } else if ((this.ease?.to ?? this.levels) !== to) this.ease = { from: this.levels, to, elapsedS: 0 };
    if (this.project) accentsOf(this.project, session, this.parts.byKey.values());
    this.outlines.sync(this.parts.byKey.values());
  }

  /** One frame's work before drawing; true while another frame is wanted. */
  frame(camera: Vector3, width: number, height: number, deltaS: number, reducedMotion: boolean): boolean {
    this.outlines.resize(width, height);
    let more = this.stepLevels(deltaS);
    if (this.walls.step(camera, deltaS, reducedMotion)) more = true;
    for (const wall of this.walls.all) this.showWall(wall.face.key, wall.shown);
    if (this.unlit.size > 0) {
      this.relightSome(LIGHT_BUDGET_MS);
      if (this.unlit.size > 0) more = true;
      else this.measure();
    }
    return more;
  }

  private stepLevels(deltaS: number): boolean {
    if (!this.ease) return false;
    this.ease.elapsedS += deltaS;
    const t = Math.min(1, this.ease.elapsedS / EASE_S);
    this.levels = t === 1 ? this.ease.to : mixLevels(this.ease.from, this.ease.to, t * t * (3 - 2 * t));
    this.showLevels();
    if (t === 1) this.ease = null;
    return t < 1;
  }

  /** Mean light on the shell, from which the exposure follows. */
  private measure(): void {
    this.sums.fill(0);
    for (const { solid, lit } of this.parts.byKey.values())
      if (solid.kind === 'surface' || solid.kind === 'shell') addToSums(lit.light, this.sums);
    const [picture, lamps, general, count] = this.sums;
    if (count === 0) return;
    this.mean = { picture: picture / count, lamps: lamps / count, general: general / count };
    this.showLevels();
  }

  private showLevels(): void {
    if (!this.levels) return;
    const exposure = exposureOf(this.levels, this.mean);
    this.materials.setLevels(this.levels, exposure);
    this.fixtures.setLevel(this.levels.lamps * exposure);
    this.parts.picture.setWash(this.levels.wash);
  }

  private showWall(name: string, shown: number): void {
    this.fixtures.showWall(name, shown);
    for (const part of this.parts.byKey.values()) {
      if (part.wall !== name) continue;
      part.mesh.visible = shown > 0;
      const { material } = part.mesh;
      if (Array.isArray(material) || !('uniforms' in material)) continue;
      material.transparent = shown < 1;
      (material.uniforms as Record<string, { value: number }>).uFade.value = shown;
    }
  }

  private relightSome(budgetMs: number): void {
    if (!this.light) return;
    const until = performance.now() + budgetMs;
    for (const part of this.unlit) {
      this.lightUp(part);
      this.unlit.delete(part);
      if (performance.now() > until) return;
    }
  }

  private lightUp(part: Part): void {
    if (!this.light) return;
    relight(part, this.light);
    this.lit.add(part);
  }

  dispose(): void {
    this.parts.dispose();
    this.walls.dispose();
    this.contacts.dispose();
    this.fixtures.dispose();
    this.outlines.dispose();
    this.materials.dispose();
    disposeStill(this.still);
    disposeStill(this.mirror);
    this.group.clear();
  }
}
