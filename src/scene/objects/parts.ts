import { type Material, Mesh } from 'three';
import { radiansOf } from '../../math/angles.ts';
import type { MaterialName, Placement, Solid } from '../../shapes/solid.ts';
import { lightPart, type RoomLight } from '../light/room-light.ts';
import { PictureMaterial } from '../materials/picture-material.ts';
import type { SurfaceMaterials, SurfaceName } from '../materials/surface-materials.ts';
import type { GeometryShelf, LitGeometry } from './geometry-shelf.ts';

/** What a picking ray or an id render learns from a mesh. */
export interface PartName {
  readonly kind: Solid['kind'];
  readonly id: string;
  readonly part: string;
}

/** One solid as drawn. `glow` and `dim` are read just before it is drawn. */
export interface Part {
  solid: Solid;
  readonly mesh: Mesh;
  readonly lit: LitGeometry;
  /** The wall it fades with; '' for things that stay. */
  readonly wall: string;
  glow: number;
  dim: number;
}

/** What lies behind other things is drawn after them, so that what is hidden is never worked out; all before the overlays. */
const ORDER: Readonly<Partial<Record<Solid['kind'], number>>> = { riser: 0.3, opening: 0.4, patch: 0.4, shell: 0.5 };

const samePlace = (a: Placement, b: Placement): boolean =>
  a === b ||
  (a.yawDeg === b.yawDeg &&
    a.pitchDeg === b.pitchDeg &&
    a.positionM[0] === b.positionM[0] &&
    a.positionM[1] === b.positionM[1] &&
    a.positionM[2] === b.positionM[2]);

/** Every solid of the room as a mesh: made once per shape, moved when only its place changes. */
export class Parts {
  readonly byKey = new Map<string, Part>();
  readonly picture = new PictureMaterial();
  private readonly add: (mesh: Mesh) => void;
  private readonly shelf: GeometryShelf;
  private readonly materials: SurfaceMaterials;

  constructor(shelf: GeometryShelf, materials: SurfaceMaterials, add: (mesh: Mesh) => void) {
    this.shelf = shelf;
    this.materials = materials;
    this.add = add;
  }

  /** Brings the meshes in line with the solids; answers the parts that are new or have moved. */
  sync(solids: readonly Solid[], wallOf: (solid: Solid) => string): Part[] {
    const changed: Part[] = [];
    const seen = new Set<string>();
    for (const solid of solids) {
      const key = keyOf(solid, seen);
      seen.add(key);
      const part = this.byKey.get(key);
      const wall = wallOf(solid);
      if (part && part.wall === wall && part.lit.source === solid.geometry && part.solid.material === solid.material) {
        if (!samePlace(part.solid.placement, solid.placement)) {
          setPlace(part.mesh, solid.placement);
          changed.push(part);
        }
        part.solid = solid;
        continue;
      }
      if (part) this.drop(key, part);
      const made = this.make(solid, wall);
      this.byKey.set(key, made);
      changed.push(made);
    }
    for (const [key, part] of this.byKey) if (!seen.has(key)) this.drop(key, part);
    return changed;
  }

  private make(solid: Solid, wall: string): Part {
    const lit = this.shelf.take(solid.geometry, solid.kind === 'shell');
    const mesh = new Mesh(lit.geometry, this.materialOf(solid.material, wall));
    const part: Part = { solid, mesh, lit, wall, glow: 0, dim: 1 };
    mesh.userData = { kind: solid.kind, id: solid.id, part: solid.part } satisfies PartName;
    mesh.name = `${solid.kind} ${solid.id} ${solid.part}`;
    mesh.matrixAutoUpdate = false;
    mesh.renderOrder = ORDER[solid.kind] ?? 0;
    mesh.onBeforeRender = (_renderer, _scene, _camera, _geometry, material) => setAccent(material, part);
    setPlace(mesh, solid.placement);
    this.add(mesh);
    return part;
  }

  private materialOf(name: MaterialName, wall: string): Material {
    return name === 'picture' ? this.picture.material : this.materials.take(name as SurfaceName, wall);
  }

  private drop(key: string, part: Part): void {
    part.mesh.removeFromParent();
    this.shelf.give(part.lit);
    this.byKey.delete(key);
  }

  dispose(): void {
    for (const [key, part] of [...this.byKey]) this.drop(key, part);
    this.picture.dispose();
  }
}

/** Two solids of one name and part are told apart by their order. */
const keyOf = ({ kind, id, part }: Solid, seen: ReadonlySet<string>): string => {
  const name = `${kind}:${id}:${part}`;
  let key = name;
  for (let again = 2; seen.has(key); again++) key = `${name}#${again}`;
  return key;
};

const setPlace = (mesh: Mesh, { positionM, yawDeg, pitchDeg }: Placement): void => {
  mesh.position.set(positionM[0], positionM[1], positionM[2]);
  mesh.rotation.set(radiansOf(pitchDeg), -radiansOf(yawDeg), 0, 'YXZ');
  mesh.updateMatrix();
  mesh.updateMatrixWorld(true);
};

const setAccent = (material: Material, part: Part): void => {
  if (!('uniforms' in material)) return;
  const shader = material as Material & { uniforms: Record<string, { value: number }>; uniformsNeedUpdate: boolean };
  if (shader.uniforms.uGlow.value === part.glow && shader.uniforms.uDim.value === part.dim) return;
  shader.uniforms.uGlow.value = part.glow;
  shader.uniforms.uDim.value = part.dim;
  shader.uniformsNeedUpdate = true;
};

/** Works out the light on a part where it stands now. */
export const relight = (part: Part, light: RoomLight): void => {
  if (part.solid.material === 'picture') return;
  lightPart(light, part.solid, part.lit.fine, part.solid.placement, part.lit.light);
  part.lit.lightBuffer.needsUpdate = true;
};
