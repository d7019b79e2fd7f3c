import {
  type BufferGeometry,
  Color,
  GreaterDepth,
  Group,
  InterleavedBuffer,
  LessEqualDepth,
  Mesh,
  type ShaderMaterial,
  Vector4,
} from 'three';
import type { Vec3 } from '../../math/vec3.ts';
import { CORNER_STRIDE, fitLines, type LinePass, lineMaterial, piecesGeometry } from './line-material.ts';

export interface LineStyle {
  readonly widthPx: number;
  readonly opacity?: number;
  /** Lengths of dash and gap in metres; solid without. */
  readonly dashM?: readonly [number, number];
  /** A dark edge that keeps the line legible over the map. */
  readonly casing?: boolean;
  /** How strongly, and dashed, the line shows through what hides it; 0 for not at all. */
  readonly hidden?: number;
}

const HIDDEN_DASH_M = [0.05, 0.045] as const;
const CASING = new Color('#0e0b0a');
const CASING_PX = 1.6;
const FIRST_CAPACITY = 64;
const ORDER = { hidden: 10, casing: 11, line: 12 };

const noRay = () => undefined;
const viewport = new Vector4();

/** A growing set of straight pieces of one style: refilled in place, drawn in at most three calls. */
export class LineBatch {
  readonly object = new Group();
  private corners = new InterleavedBuffer(new Float32Array(0), CORNER_STRIDE);
  private geometry: BufferGeometry = piecesGeometry(0, this.corners);
  private readonly meshes: Mesh<BufferGeometry, ShaderMaterial>[] = [];
  private capacity = 0;
  private count = 0;
  private run = 0;
  private readonly colour = new Color();

  constructor({ widthPx, opacity = 1, dashM, casing = false, hidden = 0.3 }: LineStyle) {
    this.reserve(FIRST_CAPACITY);
    if (hidden > 0)
      this.addPass(ORDER.hidden, {
        widthPx,
        opacity: opacity * hidden,
        dashM: HIDDEN_DASH_M,
        depthFunc: GreaterDepth,
      });
    const plain = { dashM, depthFunc: LessEqualDepth };
    if (casing)
      this.addPass(ORDER.casing, { ...plain, widthPx: widthPx + CASING_PX, opacity: opacity * 0.5, colour: CASING });
    this.addPass(ORDER.line, { ...plain, widthPx, opacity });
  }

  begin(): void {
    this.count = 0;
  }

  /** One line through the points; dashes run on round its corners. */
  line(points: readonly Vec3[], colour: string): void {
    this.colour.set(colour);
    this.run = 0;
    for (let i = 1; i < points.length; i++) this.piece(points[i - 1], points[i]);
  }

  /** Pieces between pairs of points. */
  pieces(points: readonly Vec3[], colour: string): void {
    this.colour.set(colour);
    for (let i = 1; i < points.length; i += 2) {
      this.run = 0;
      this.piece(points[i - 1], points[i]);
    }
  }

  end(): void {
    this.geometry.setDrawRange(0, this.count * 6);
    this.object.visible = this.count > 0;
    this.corners.clearUpdateRanges();
    this.corners.addUpdateRange(0, this.count * 4 * CORNER_STRIDE);
    this.corners.needsUpdate = true;
  }

  dispose(): void {
    this.geometry.dispose();
    for (const { material } of this.meshes) material.dispose();
  }

  private piece(a: Vec3, b: Vec3): void {
    if (this.count === this.capacity) this.reserve(this.capacity * 2);
    const { array } = this.corners;
    const to = this.run + Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
    for (let corner = 0; corner < 4; corner++) {
      const at = (this.count * 4 + corner) * CORNER_STRIDE;
      array.set(a, at);
      array.set(b, at + 3);
      this.colour.toArray(array, at + 6);
      array[at + 9] = this.run;
      array[at + 10] = to;
    }
    this.run = to;
    this.count += 1;
  }

  /** A buffer's size is fixed on the graphics side, so more room is a new geometry; what was filled is kept. */
  private reserve(capacity: number): void {
    const array = new Float32Array(capacity * 4 * CORNER_STRIDE);
    array.set(this.corners.array);
    this.corners = new InterleavedBuffer(array, CORNER_STRIDE);
    this.geometry.dispose();
    this.geometry = piecesGeometry(capacity, this.corners);
    for (const mesh of this.meshes) mesh.geometry = this.geometry;
    this.capacity = capacity;
  }

  private addPass(order: number, pass: LinePass): void {
    const material = lineMaterial(pass);
    const mesh = new Mesh(this.geometry, material);
    mesh.frustumCulled = false;
    mesh.renderOrder = order;
    mesh.raycast = noRay;
    mesh.onBeforeRender = (renderer) => {
      renderer.getViewport(viewport);
      fitLines(material, viewport.z, viewport.w, renderer.getPixelRatio());
      material.uniformsNeedUpdate = true;
    };
    this.meshes.push(mesh);
    this.object.add(mesh);
  }
}
