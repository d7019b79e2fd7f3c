import {
  Color,
  GreaterDepth,
  Group,
  InstancedInterleavedBuffer,
  InterleavedBufferAttribute,
  LessEqualDepth,
} from 'three';
import { LineMaterial } from 'three/examples/jsm/lines/LineMaterial.js';
import { LineSegments2 } from 'three/examples/jsm/lines/LineSegments2.js';
import { LineSegmentsGeometry } from 'three/examples/jsm/lines/LineSegmentsGeometry.js';
import type { Vec3 } from '../../math/vec3.ts';

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
const CASING = '#0e0b0a';
const CASING_PX = 1.6;
const FIRST_CAPACITY = 64;
const ORDER = { hidden: 10, casing: 11, line: 12 };

const noRay = () => undefined;

/** A growing set of straight pieces of one style: refilled in place, drawn in at most three calls. */
export class LineBatch {
  readonly object = new Group();
  private geometry = new LineSegmentsGeometry();
  private readonly meshes: LineSegments2[] = [];
  private readonly materials: LineMaterial[] = [];
  private ends = new InstancedInterleavedBuffer(new Float32Array(0), 6, 1);
  private colours = new InstancedInterleavedBuffer(new Float32Array(0), 6, 1);
  private distances = new InstancedInterleavedBuffer(new Float32Array(0), 2, 1);
  private capacity = 0;
  private count = 0;
  private run = 0;
  private readonly colour = new Color();

  constructor({ widthPx, opacity = 1, dashM, casing = false, hidden = 0.3 }: LineStyle) {
    this.reserve(FIRST_CAPACITY);
    if (hidden > 0) {
      this.addPass({ linewidth: widthPx, opacity: opacity * hidden, dashed: true }, HIDDEN_DASH_M, ORDER.hidden);
      this.materials[0].depthFunc = GreaterDepth;
    }
    if (casing) {
      const dark = {
        linewidth: widthPx + CASING_PX,
        opacity: opacity * 0.5,
        color: new Color(CASING),
        vertexColors: false,
      };
      this.addPass({ ...dark, dashed: dashM !== undefined }, dashM, ORDER.casing);
    }
    this.addPass({ linewidth: widthPx, opacity, dashed: dashM !== undefined }, dashM, ORDER.line);
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
    this.geometry.instanceCount = this.count;
    this.object.visible = this.count > 0;
    for (const buffer of [this.ends, this.colours, this.distances]) buffer.needsUpdate = true;
  }

  dispose(): void {
    this.geometry.dispose();
    for (const material of this.materials) material.dispose();
  }

  private piece(a: Vec3, b: Vec3): void {
    if (this.count === this.capacity) this.reserve(this.capacity * 2);
    const at = this.count * 6;
    this.ends.array.set(a, at);
    this.ends.array.set(b, at + 3);
    const { r, g, b: blue } = this.colour;
    for (let end = 0; end < 2; end++) {
      this.colours.array[at + end * 3] = r;
      this.colours.array[at + end * 3 + 1] = g;
      this.colours.array[at + end * 3 + 2] = blue;
    }
    this.distances.array[this.count * 2] = this.run;
    this.run += Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
    this.distances.array[this.count * 2 + 1] = this.run;
    this.count += 1;
  }

  /** A buffer's size is fixed on the graphics side, so more room is a new geometry; what was filled is kept. */
  private reserve(capacity: number): void {
    const grown = (stride: number, from: ArrayLike<number>) => {
      const array = new Float32Array(capacity * stride);
      array.set(from);
      return new InstancedInterleavedBuffer(array, stride, 1);
    };
    this.ends = grown(6, this.ends.array);
    this.colours = grown(6, this.colours.array);
    this.distances = grown(2, this.distances.array);
    const geometry = new LineSegmentsGeometry();
    geometry.setAttribute('instanceStart', new InterleavedBufferAttribute(this.ends, 3, 0));
    geometry.setAttribute('instanceEnd', new InterleavedBufferAttribute(this.ends, 3, 3));
    geometry.setAttribute('instanceColorStart', new InterleavedBufferAttribute(this.colours, 3, 0));
    geometry.setAttribute('instanceColorEnd', new InterleavedBufferAttribute(this.colours, 3, 3));
    geometry.setAttribute('instanceDistanceStart', new InterleavedBufferAttribute(this.distances, 1, 0));
    geometry.setAttribute('instanceDistanceEnd', new InterleavedBufferAttribute(this.distances, 1, 1));
    this.geometry.dispose();
    this.geometry = geometry;
    for (const mesh of this.meshes) mesh.geometry = geometry;
    this.capacity = capacity;
  }

  private addPass(
    options: ConstructorParameters<typeof LineMaterial>[0],
    dashM: readonly [number, number] | undefined,
    order: number,
  ): void {
    const material = new LineMaterial({
      vertexColors: true,
      transparent: true,
      depthWrite: false,
      depthFunc: LessEqualDepth,
      toneMapped: false,
      dashSize: dashM?.[0] ?? 1,
      gapSize: dashM?.[1] ?? 1,
      ...options,
    });
    const mesh = new LineSegments2(this.geometry, material);
    mesh.frustumCulled = false;
    mesh.renderOrder = order;
    mesh.raycast = noRay;
    this.materials.push(material);
    this.meshes.push(mesh);
    this.object.add(mesh);
  }
}
