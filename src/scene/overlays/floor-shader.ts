import {
  DataTexture,
  FloatType,
  GLSL3,
  NearestFilter,
  NoColorSpace,
  RedFormat,
  ReplaceStencilOp,
  RGBAFormat,
  ShaderMaterial,
  Vector2,
} from 'three';
import type { BassFloor } from '../../analysis/types.ts';
import { CIVIDIS_BYTES } from '../../math/cividis.ts';
import type { LevelScale } from '../../math/level-scale.ts';

const VERTEX = /* glsl */ `
  out vec2 planM;
  void main() {
    vec4 world = modelMatrix * vec4(position, 1.0);
    planM = world.xz;
    gl_Position = projectionMatrix * viewMatrix * world;
  }
`;

// Written straight to the canvas: the table's entries are display bytes already, so no tone mapping, no light, no
// colour conversion may follow. Interpolated here because linear filtering of float textures is an extension.
const FRAGMENT = /* glsl */ `
  precision highp float;
  precision highp sampler2D;
  uniform sampler2D levels;
  uniform sampler2D table;
  uniform vec2 cells;
  uniform vec2 originM;
  uniform vec2 spanM;
  uniform vec2 rangeDb;
  uniform float stepDb;
  uniform float light;
  in vec2 planM;
  out vec4 colour;

  float cell(ivec2 at) {
    return texelFetch(levels, min(at, ivec2(cells) - 1), 0).r;
  }

  float levelAt(vec2 plan) {
    vec2 grid = clamp((plan - originM) / spanM, 0.0, 1.0) * (cells - 1.0);
    vec2 low = min(floor(grid), max(cells - 2.0, 0.0));
    vec2 share = grid - low;
    ivec2 at = ivec2(low);
    return mix(
      mix(cell(at), cell(at + ivec2(1, 0)), share.x),
      mix(cell(at + ivec2(0, 1)), cell(at + ivec2(1, 1)), share.x),
      share.y);
  }

  // How much of this pixel a contour every 'every' decibels covers; none where contours would run together.
  float contour(float level, float slope, float every, float halfWidthPx) {
    float away = abs(fract(level / every - 0.5) - 0.5) * every;
    float covered = 1.0 - smoothstep(halfWidthPx - 0.5, halfWidthPx + 0.5, away / max(slope, 1e-6));
    return covered * (1.0 - smoothstep(every * 0.1, every * 0.24, slope));
  }

  void main() {
    float level = levelAt(planM);
    float share = clamp((level - rangeDb.x) / (rangeDb.y - rangeDb.x), 0.0, 1.0);
    vec3 map = texelFetch(table, ivec2(int(floor(share * 255.0 + 0.5)), 0), 0).rgb;
    float slope = fwidth(level);
    // Under the scale's low end all is one colour: contours there would trace the grid inside a null.
    float line = step(rangeDb.x, level) * max(
      0.34 * contour(level, slope, stepDb, 0.5),
      0.62 * contour(level, slope, 2.0 * stepDb, 0.8));
    vec3 ink = share < 0.42 ? vec3(0.94, 0.91, 0.86) : vec3(0.08, 0.067, 0.06);
    colour = vec4(mix(map, ink, line * (share < 0.42 ? 0.7 : 1.0)) * light, 1.0);
  }
`;

/** Marks the pixels of the map, for what must not tint them. */
export const MAP_STENCIL = 1;
/** A stale floor is drawn at this share of its light. */
const STALE_LIGHT = 0.55;

const tableTexture = (): DataTexture => {
  const rgba = new Uint8Array((CIVIDIS_BYTES.length / 3) * 4).fill(255);
  for (let entry = 0; entry < rgba.length / 4; entry++) {
    rgba.set(CIVIDIS_BYTES.subarray(entry * 3, entry * 3 + 3), entry * 4);
  }
  const texture = new DataTexture(rgba, rgba.length / 4, 1, RGBAFormat);
  texture.colorSpace = NoColorSpace;
  texture.needsUpdate = true;
  return texture;
};

/** The bass floor's material and the textures it reads. */
export class FloorMap {
  readonly material: ShaderMaterial;
  private readonly table = tableTexture();
  private levels: DataTexture | null = null;

  constructor() {
    this.material = new ShaderMaterial({
      glslVersion: GLSL3,
      vertexShader: VERTEX,
      fragmentShader: FRAGMENT,
      toneMapped: false,
      fog: false,
      stencilWrite: true,
      stencilRef: MAP_STENCIL,
      stencilZPass: ReplaceStencilOp,
      polygonOffset: true,
      polygonOffsetFactor: 1,
      polygonOffsetUnits: 1,
      uniforms: {
        levels: { value: null },
        table: { value: this.table },
        cells: { value: new Vector2(1, 1) },
        originM: { value: new Vector2() },
        spanM: { value: new Vector2(1, 1) },
        rangeDb: { value: new Vector2(-36, 0) },
        stepDb: { value: 3 },
        light: { value: 1 },
      },
    });
  }

  show({ xM, zM, levelDb }: BassFloor, scale: LevelScale): void {
    const { uniforms } = this.material;
    const columns = xM.length;
    const rows = zM.length;
    if (!this.levels || this.levels.image.width !== columns || this.levels.image.height !== rows) {
      this.levels?.dispose();
      this.levels = new DataTexture(levelDb, columns, rows, RedFormat, FloatType);
      this.levels.magFilter = NearestFilter;
      this.levels.minFilter = NearestFilter;
      uniforms.levels.value = this.levels;
    }
    this.levels.image.data = levelDb;
    this.levels.needsUpdate = true;
    uniforms.cells.value.set(columns, rows);
    uniforms.originM.value.set(xM[0], zM[0]);
    uniforms.spanM.value.set(Math.max(1e-6, xM[columns - 1] - xM[0]), Math.max(1e-6, zM[rows - 1] - zM[0]));
    uniforms.rangeDb.value.set(scale.lowDb, scale.highDb);
    uniforms.stepDb.value = scale.stepDb;
  }

  dim(stale: boolean): void {
    this.material.uniforms.light.value = stale ? STALE_LIGHT : 1;
  }

  dispose(): void {
    this.material.dispose();
    this.table.dispose();
    this.levels?.dispose();
  }
}
