import { BackSide, BufferAttribute, BufferGeometry, Color, Group, Mesh, ShaderMaterial, Vector2 } from 'three';
import type { MeshGeometry } from '../../shapes/solid.ts';
import { hold, release } from '../gpu/ledger.ts';
import type { Part } from './parts.ts';

/** Back faces pushed outwards by a constant number of pixels: a drawn rim that follows the silhouette. */
const VERTEX = /* glsl */ `
uniform float uPixels;
uniform vec2 uViewport;
void main() {
  vec4 at = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
  vec3 n = normalize(normalMatrix * normal);
  vec2 across = (projectionMatrix * vec4(n, 0.0)).xy;
  float far = length(across);
  if (far > 1e-5) at.xy += across / far * (2.0 * uPixels / uViewport) * at.w;
  gl_Position = at;
}`;
const FRAGMENT = /* glsl */ `
uniform vec3 uColour;
uniform float uStrength;
void main() {
  gl_FragColor = vec4(uColour, uStrength);
  #include <colorspace_fragment>
}`;

const STRONG = new Color('#f0ce86');
const QUIET = new Color('#d2ae68');

/** Normals averaged over all vertices at one place, so that the rim does not tear at hard edges. */
const weldedNormals = ({ positions, normals }: MeshGeometry): Float32Array => {
  const sums = new Map<string, [number, number, number]>();
  const keys: string[] = [];
  for (let i = 0; i < positions.length; i += 3) {
    const key = `${Math.round(positions[i] * 2000)},${Math.round(positions[i + 1] * 2000)},${Math.round(positions[i + 2] * 2000)}`;
    keys.push(key);
    const sum = sums.get(key) ?? [0, 0, 0];
    for (let axis = 0; axis < 3; axis++) sum[axis] += normals[i + axis];
    sums.set(key, sum);
  }
  const out = new Float32Array(positions.length);
  keys.forEach((key, index) => {
    const sum = sums.get(key) ?? [0, 1, 0];
    const long = Math.hypot(...sum) || 1;
    for (let axis = 0; axis < 3; axis++) out[index * 3 + axis] = sum[axis] / long;
  });
  return out;
};

interface Outline {
  readonly mesh: Mesh<BufferGeometry, ShaderMaterial>;
  readonly source: MeshGeometry;
}

/** Rims of the chosen, the pointed-at and the spotlit, made for those parts only. */
export class Outlines {
  readonly group = new Group();
  private readonly made = new Map<Part, Outline>();
  private readonly viewport = new Vector2(1280, 800);
  private readonly chosen = this.material(STRONG, 1.75, 1);
  private readonly hovered = this.material(QUIET, 1.25, 0.7);

  constructor() {
    hold('material', 2);
  }

  private material(colour: Color, pixels: number, strength: number): ShaderMaterial {
    return new ShaderMaterial({
      vertexShader: VERTEX,
      fragmentShader: FRAGMENT,
      side: BackSide,
      transparent: strength < 1,
      toneMapped: false,
      uniforms: {
        uColour: { value: colour },
        uPixels: { value: pixels },
        uStrength: { value: strength },
        uViewport: { value: this.viewport },
      },
    });
  }

  /** Canvas size in CSS pixels. */
  resize(width: number, height: number): void {
    this.viewport.set(Math.max(1, width), Math.max(1, height));
  }

  sync(parts: Iterable<Part>): void {
    const wanted = new Set<Part>();
    for (const part of parts) {
      if (part.glow === 0 || !part.mesh.visible) continue;
      if (part.solid.kind === 'surface' || part.solid.kind === 'shell') continue;
      wanted.add(part);
      let outline = this.made.get(part);
      if (!outline || outline.source !== part.solid.geometry) {
        if (outline) this.drop(part, outline);
        outline = this.make(part);
      }
      outline.mesh.material = part.glow >= 0.75 ? this.chosen : this.hovered;
      outline.mesh.matrix.copy(part.mesh.matrix);
      outline.mesh.matrixWorldNeedsUpdate = true;
    }
    for (const [part, outline] of this.made) if (!wanted.has(part)) this.drop(part, outline);
  }

  private make(part: Part): Outline {
    const source = part.solid.geometry;
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new BufferAttribute(source.positions, 3));
    geometry.setAttribute('normal', new BufferAttribute(weldedNormals(source), 3));
    geometry.setIndex(new BufferAttribute(source.indices, 1));
    const mesh = new Mesh(geometry, this.chosen);
    mesh.matrixAutoUpdate = false;
    mesh.raycast = () => {};
    mesh.renderOrder = 2;
    this.group.add(mesh);
    hold('geometry');
    const outline: Outline = { mesh, source };
    this.made.set(part, outline);
    return outline;
  }

  private drop(part: Part, { mesh }: Outline): void {
    mesh.removeFromParent();
    mesh.geometry.dispose();
    release('geometry');
    this.made.delete(part);
  }

  dispose(): void {
    for (const [part, outline] of [...this.made]) this.drop(part, outline);
    this.chosen.dispose();
    this.hovered.dispose();
    release('material', 2);
  }
}
