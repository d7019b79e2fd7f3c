import {
  AdditiveBlending,
  BufferGeometry,
  Color,
  CylinderGeometry,
  Float32BufferAttribute,
  Group,
  Mesh,
  MeshBasicMaterial,
  ShaderMaterial,
  Vector3,
} from 'three';
import { hold, release } from '../gpu/ledger.ts';
import type { Lamp } from '../light/lamps.ts';
import { SCONCE_STAND_OFF_M } from '../light/sconces.ts';

/** The light a lamp throws on the surface it stands at, as an extra layer: exact per pixel where vertices are too coarse. */
const VERTEX = /* glsl */ `
varying vec3 vFrom;
uniform vec3 uLamp;
void main() {
  vFrom = position - uLamp;
  gl_Position = projectionMatrix * viewMatrix * vec4(position, 1.0);
}`;
const FRAGMENT = /* glsl */ `
uniform vec3 uColour;
uniform vec2 uReach;
uniform vec2 uAlong;
varying vec3 vFrom;
void main() {
  float squared = dot(vFrom, vFrom);
  float far = sqrt(squared);
  #ifdef SCONCE
  float along = abs(vFrom.y) / far;
  float cut = smoothstep(0.5, 0.86, along);
  float light = (cut * along * along * (vFrom.y > 0.0 ? 1.0 : 0.75) + 0.03) * uReach.x / (far * (squared + 0.012));
  light *= 1.0 - smoothstep(0.45, 1.0, abs(vFrom.y) / uReach.y);
  light *= 1.0 - smoothstep(0.35, 0.62, abs(dot(vFrom.xz, uAlong)) / uReach.y);
  #else
  float light = uReach.x / (far * (squared + 0.004)) * 0.02;
  light *= 1.0 - smoothstep(0.3, 1.0, far / uReach.y);
  #endif
  gl_FragColor = vec4(uColour * light, 1.0);
  #include <tonemapping_fragment>
  #include <colorspace_fragment>
}`;

const WARM = new Color('#ffd0a0');
const SHADE = new Color('#b08c58');
const SCONCE_RADIUS_M = 0.05;
const SCONCE_TALL_M = 0.26;
const SCALLOP_REACH_M = 1.15;
const POOL_REACH_M = 0.55;
const OFF_M = 0.006;

/** A quad from four points, turned so that it faces whoever looks from its front. */
const quadOf = (points: readonly (readonly [number, number, number])[]): BufferGeometry => {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new Float32BufferAttribute(points.flat(), 3));
  geometry.setIndex([0, 1, 2, 0, 2, 3]);
  return geometry;
};

/** The lamps as things: two brass sconces with their scallops of light on the wall, small lenses on the risers. */
export class Fixtures {
  readonly group = new Group();
  private readonly shade = new MeshBasicMaterial({ color: SHADE, toneMapped: false });
  private readonly shine = new MeshBasicMaterial({ color: WARM, toneMapped: false });
  private readonly glows: ShaderMaterial[] = [];
  private readonly walls = new Map<string, Group>();

  constructor() {
    hold('material', 2);
  }

  draw(lamps: readonly Lamp[]): void {
    this.clear();
    for (const lamp of lamps) if (lamp.kind === 'sconce') this.sconce(lamp);
    for (const lamp of lamps) if (lamp.kind === 'step') this.stepLight(lamp);
  }

  /** A sconce goes with its wall when that makes way for the camera. */
  showWall(name: string, shown: number): void {
    const wall = this.walls.get(name);
    if (wall) wall.visible = shown > 0.5;
  }

  /** `lamps`: the lamps' level times exposure. Lenses never quite go out: steps stay lit in the dark. */
  setLevel(lamps: number): void {
    for (const glow of this.glows) {
      const level = glow.defines.SCONCE === undefined ? Math.max(0.25, Math.min(1, lamps * 0.5)) : lamps;
      (glow.uniforms.uColour.value as Vector3).set(WARM.r, WARM.g, WARM.b).multiplyScalar(level * 0.22);
    }
    const lit = Math.min(1, 0.15 + lamps * 0.6);
    this.shine.color.copy(WARM).multiplyScalar(lit);
    this.shade.color.copy(SHADE).multiplyScalar(Math.min(0.6, 0.06 + lamps * 0.18));
  }

  private home(wallId: string): Group {
    let wall = this.walls.get(wallId);
    if (!wall) {
      wall = new Group();
      this.walls.set(wallId, wall);
      this.group.add(wall);
    }
    return wall;
  }

  private sconce({ atM: [x, y, z], outward: [ox, , oz], wallId, reachM, topM }: Lamp): void {
    const home = this.home(wallId);
    const body = new CylinderGeometry(SCONCE_RADIUS_M, SCONCE_RADIUS_M * 0.82, SCONCE_TALL_M, 28, 1, true);
    body.translate(x - ox * 0.02, y, z - oz * 0.02);
    this.put(home, body, this.shade);
    for (const end of [1, -1]) {
      const disc = new CylinderGeometry(SCONCE_RADIUS_M * 0.8, SCONCE_RADIUS_M * 0.8, 0.004, 28);
      disc.translate(x - ox * 0.02, y + end * (SCONCE_TALL_M / 2 - 0.012), z - oz * 0.02);
      this.put(home, disc, this.shine);
    }
    const off = OFF_M - SCONCE_STAND_OFF_M;
    const reach = SCALLOP_REACH_M;
    // The wall's own right as one sees it from the room; the scallop ends where the wall does.
    const [rx, rz] = [0 - oz, ox];
    const onward = rx + rz > 0;
    const [less, more] = onward ? reachM : [reachM[1], reachM[0]];
    const left = Math.min(less, reach * 0.62);
    const right = Math.min(more, reach * 0.62);
    const low = Math.max(0, y - reach);
    const top = Math.min(y + reach * 0.85, topM);
    const at = (along: number, up: number): [number, number, number] => [
      x + ox * off + rx * along,
      up,
      z + oz * off + rz * along,
    ];
    const points = [at(right, low), at(-left, low), at(-left, top), at(right, top)];
    this.put(home, quadOf(points), this.glow([x, y, z], SCONCE_STAND_OFF_M, reach, [rx, rz]), 2);
  }

  private stepLight({ atM: [x, y, z] }: Lamp): void {
    const half = 0.03;
    const face = z + 0.024;
    this.put(
      this.group,
      quadOf([
        [x + half, y - 0.012, face],
        [x - half, y - 0.012, face],
        [x - half, y + 0.012, face],
        [x + half, y + 0.012, face],
      ]),
      this.shine,
    );
    const reach = POOL_REACH_M;
    this.put(
      this.group,
      quadOf([
        [x - reach, OFF_M, z],
        [x + reach, OFF_M, z],
        [x + reach, OFF_M, z - reach],
        [x - reach, OFF_M, z - reach],
      ]),
      this.glow([x, y, z], y, reach, null),
      2,
    );
  }

  private glow(
    lamp: readonly [number, number, number],
    standOffM: number,
    reachM: number,
    along: readonly [number, number] | null,
  ) {
    const material = new ShaderMaterial({
      vertexShader: VERTEX,
      fragmentShader: FRAGMENT,
      defines: along ? { SCONCE: '' } : {},
      blending: AdditiveBlending,
      depthWrite: false,
      transparent: true,
      uniforms: {
        uLamp: { value: new Vector3(...lamp) },
        uReach: { value: [standOffM, reachM] },
        uAlong: { value: along ?? [1, 0] },
        uColour: { value: new Vector3() },
      },
    });
    this.glows.push(material);
    hold('material');
    return material;
  }

  private put(home: Group, geometry: BufferGeometry, material: MeshBasicMaterial | ShaderMaterial, order = 0): void {
    const mesh = new Mesh(geometry, material);
    mesh.renderOrder = order;
    mesh.raycast = () => {};
    home.add(mesh);
    hold('geometry');
  }

  private clear(): void {
    this.group.traverse((object) => {
      if (!(object instanceof Mesh)) return;
      object.geometry.dispose();
      release('geometry');
    });
    this.group.clear();
    for (const glow of this.glows) glow.dispose();
    release('material', this.glows.length);
    this.glows.length = 0;
    this.walls.clear();
  }

  dispose(): void {
    this.clear();
    this.shade.dispose();
    this.shine.dispose();
    release('material', 2);
  }
}
