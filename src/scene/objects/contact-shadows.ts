import {
  BufferGeometry,
  DataTexture,
  Float32BufferAttribute,
  Group,
  LinearFilter,
  Mesh,
  RedFormat,
  ShaderMaterial,
} from 'three';
import type { Project } from '../../model/project.ts';
import type { MeshGeometry, Solid } from '../../shapes/solid.ts';
import { hold, release } from '../gpu/ledger.ts';
import { toWorld, worldMatrix } from '../light/placing.ts';
import { type ContactMask, contactMask } from './contact-mask.ts';

const CASTS: ReadonlySet<Solid['kind']> = new Set(['row', 'seat', 'loudspeaker', 'subwoofer', 'object']);
/** Above the floor by this much a thing no longer stands on it. */
const STANDS_M = 0.06;
const LIFT_M = 0.004;
const STRENGTH = 0.82;

interface Patch {
  readonly key: string;
  readonly mesh: Mesh<BufferGeometry, ShaderMaterial>;
  readonly texture: DataTexture;
}

const VERTEX = /* glsl */ `
varying vec2 vUv;
void main() {
  vUv = uv;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
}`;
const FRAGMENT = /* glsl */ `
uniform sampler2D uMask;
uniform float uStrength;
varying vec2 vUv;
void main() {
  gl_FragColor = vec4(0.0, 0.0, 0.0, texture2D(uMask, vUv).r * uStrength);
}`;

const identities = new WeakMap<MeshGeometry, number>();
let nextIdentity = 1;
const identityOf = (geometry: MeshGeometry): number => {
  let identity = identities.get(geometry);
  if (identity === undefined) {
    identity = nextIdentity++;
    identities.set(geometry, identity);
  }
  return identity;
};

/** The floor under a point: a riser's top or the room's floor. */
const floorUnder = (project: Project, x: number, z: number): number => {
  let floor = 0;
  for (const { riser, floorM } of project.rows)
    if (riser && x >= riser.fromXM && x <= riser.toXM && z >= riser.fromZM && z <= riser.toZM)
      floor = Math.max(floor, floorM);
  return floor;
};

const corner = new Float64Array(3);

/** Lowest point of a thing and the middle of its plan. */
const footing = (solids: readonly Solid[]): { baseM: number; x: number; z: number } => {
  let base = Number.POSITIVE_INFINITY;
  const [first] = solids;
  for (const { geometry, placement } of solids) {
    const matrix = worldMatrix(placement);
    const { positions } = geometry;
    for (let i = 0; i < positions.length; i += 3) {
      toWorld(matrix, positions[i], positions[i + 1], positions[i + 2], corner);
      base = Math.min(base, corner[1]);
    }
  }
  return { baseM: base, x: first.placement.positionM[0], z: first.placement.positionM[2] };
};

/** Soft patches of dark under everything that stands, each remade only when its thing changes, moves or turns. */
export class ContactShadows {
  readonly group = new Group();
  private readonly patches = new Map<string, Patch>();

  sync(project: Project, solids: readonly Solid[]): void {
    const items = new Map<string, Solid[]>();
    for (const solid of solids) {
      if (!CASTS.has(solid.kind)) continue;
      const name = `${solid.kind}:${solid.id}`;
      const list = items.get(name);
      if (list) list.push(solid);
      else items.set(name, [solid]);
    }
    for (const [name, parts] of items) this.follow(project, name, parts);
    for (const [name, patch] of this.patches) if (!items.has(name)) this.drop(name, patch);
  }

  private follow(project: Project, name: string, solids: readonly Solid[]): void {
    const key = solids
      .map(({ geometry, placement: { positionM, yawDeg, pitchDeg } }) =>
        [identityOf(geometry), ...positionM, yawDeg, pitchDeg].join(),
      )
      .join(';');
    const last = this.patches.get(name);
    if (last?.key === key) return;
    if (last) this.drop(name, last);
    const { baseM, x, z } = footing(solids);
    const floorM = floorUnder(project, x, z);
    if (baseM - floorM > STANDS_M) return;
    const mask = contactMask(solids, Math.max(baseM, floorM));
    if (mask) this.patches.set(name, this.make(name, key, mask, floorM + LIFT_M));
  }

  private make(name: string, key: string, mask: ContactMask, y: number): Patch {
    const bytes = Uint8Array.from(mask.darkness, (value) => Math.round(Math.min(1, value) * 255));
    const texture = new DataTexture(bytes, mask.size, mask.size, RedFormat);
    texture.magFilter = texture.minFilter = LinearFilter;
    texture.needsUpdate = true;
    const { fromXM: x0, fromZM: z0, widthM, depthM } = mask;
    const geometry = new BufferGeometry();
    const at = [x0, y, z0, x0 + widthM, y, z0, x0 + widthM, y, z0 + depthM, x0, y, z0 + depthM];
    geometry.setAttribute('position', new Float32BufferAttribute(at, 3));
    geometry.setAttribute('uv', new Float32BufferAttribute([0, 0, 1, 0, 1, 1, 0, 1], 2));
    geometry.setIndex([0, 2, 1, 0, 3, 2]);
    const material = new ShaderMaterial({
      vertexShader: VERTEX,
      fragmentShader: FRAGMENT,
      uniforms: { uMask: { value: texture }, uStrength: { value: STRENGTH } },
      transparent: true,
      depthWrite: false,
      polygonOffset: true,
      polygonOffsetFactor: -1,
      polygonOffsetUnits: -1,
    });
    const mesh = new Mesh(geometry, material);
    mesh.name = `contact shadow ${name}`;
    mesh.renderOrder = 1;
    mesh.raycast = () => {};
    this.group.add(mesh);
    hold('geometry');
    hold('material');
    hold('texture');
    return { key, mesh, texture };
  }

  private drop(name: string, { mesh, texture }: Patch): void {
    mesh.removeFromParent();
    mesh.geometry.dispose();
    mesh.material.dispose();
    texture.dispose();
    release('geometry');
    release('material');
    release('texture');
    this.patches.delete(name);
  }

  dispose(): void {
    for (const [name, patch] of [...this.patches]) this.drop(name, patch);
  }
}
