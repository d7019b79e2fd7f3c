import {
  DataTexture,
  DoubleSide,
  FloatType,
  GLSL3,
  NearestFilter,
  NoColorSpace,
  ReplaceStencilOp,
  RGBAFormat,
  RGFormat,
  ShaderMaterial,
  Vector2,
} from 'three';
import type { BassSlice } from '../../analysis/types.ts';
import { CIVIDIS_BYTES } from '../../math/cividis.ts';
import { DIVERGING_BYTES } from '../../math/diverging.ts';
import type { SliceLegend } from '../../state/slice-legend.ts';
import { FRAGMENT, VERTEX } from './floor-glsl.ts';
import { fullestTurn, sliceValues } from './slice-values.ts';

/** Marks the pixels of the map, for what must not tint them. */
export const MAP_STENCIL = 1;
/** A stale floor is drawn at this share of its light. */
const STALE_LIGHT = 0.55;

const tableTexture = (bytes: Uint8Array): DataTexture => {
  const rgba = new Uint8Array((bytes.length / 3) * 4).fill(255);
  for (let entry = 0; entry < rgba.length / 4; entry++) {
    rgba.set(bytes.subarray(entry * 3, entry * 3 + 3), entry * 4);
  }
  const texture = new DataTexture(rgba, rgba.length / 4, 1, RGBAFormat);
  texture.colorSpace = NoColorSpace;
  texture.needsUpdate = true;
  return texture;
};

/** The bass floor's material and the textures it reads. */
export class FloorMap {
  readonly material: ShaderMaterial;
  private readonly sequential = tableTexture(CIVIDIS_BYTES);
  private readonly twoSided = tableTexture(DIVERGING_BYTES);
  private values: DataTexture | null = null;
  /** The turn in radians a signed pressure is drawn at while it is still. */
  private stillTurn = 0;
  private kind: SliceLegend['kind'] = 'level';

  constructor() {
    this.material = new ShaderMaterial({
      glslVersion: GLSL3,
      vertexShader: VERTEX,
      fragmentShader: FRAGMENT,
      side: DoubleSide,
      toneMapped: false,
      fog: false,
      stencilWrite: true,
      stencilRef: MAP_STENCIL,
      stencilZPass: ReplaceStencilOp,
      polygonOffset: true,
      polygonOffsetFactor: 1,
      polygonOffsetUnits: 1,
      uniforms: {
        values: { value: null },
        table: { value: this.sequential },
        cells: { value: new Vector2(1, 1) },
        originM: { value: new Vector2() },
        spanM: { value: new Vector2(1, 1) },
        range: { value: new Vector2(-24, 0) },
        turn: { value: new Vector2(1, 0) },
        stepBetween: { value: 3 },
        light: { value: 1 },
      },
    });
  }

  show(slice: BassSlice, legend: SliceLegend): void {
    const { uniforms } = this.material;
    const { uM, vM } = slice;
    const columns = uM.length;
    const rows = vM.length;
    const values = sliceValues(slice);
    if (!this.values || this.values.image.width !== columns || this.values.image.height !== rows) {
      this.values?.dispose();
      this.values = new DataTexture(values, columns, rows, RGFormat, FloatType);
      this.values.magFilter = NearestFilter;
      this.values.minFilter = NearestFilter;
      uniforms.values.value = this.values;
    }
    this.values.image.data = values;
    this.values.needsUpdate = true;
    uniforms.cells.value.set(columns, rows);
    uniforms.originM.value.set(uM[0], vM[0]);
    uniforms.spanM.value.set(Math.max(1e-6, uM[columns - 1] - uM[0]), Math.max(1e-6, vM[rows - 1] - vM[0]));
    uniforms.range.value.set(legend.low, legend.high);
    uniforms.stepBetween.value = legend.step;
    uniforms.table.value = legend.kind === 'level' ? this.sequential : this.twoSided;
    this.choose(legend.kind);
    this.stillTurn = slice.as === 'pressure' && slice.pressure ? fullestTurn(slice.pressure) : 0;
    this.turnTo(0);
  }

  /** The program that draws this kind of map. */
  private choose(kind: SliceLegend['kind']): void {
    if (kind === this.kind) return;
    this.kind = kind;
    this.material.defines = {
      ...(kind === 'level' ? {} : { SIGNED: 1 }),
      ...(kind === 'pressure' ? { PRESSURE: 1 } : {}),
    };
    this.material.needsUpdate = true;
  }

  /** Turns a signed pressure on from where it is fullest, by so many radians; returns the turn as drawn. */
  turnTo(radians: number): number {
    const turn = this.stillTurn + radians;
    this.material.uniforms.turn.value.set(Math.cos(turn), Math.sin(turn));
    return turn;
  }

  dim(stale: boolean): void {
    this.material.uniforms.light.value = stale ? STALE_LIGHT : 1;
  }

  dispose(): void {
    this.material.dispose();
    this.sequential.dispose();
    this.twoSided.dispose();
    this.values?.dispose();
  }
}
