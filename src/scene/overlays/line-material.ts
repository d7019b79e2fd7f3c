import {
  BufferAttribute,
  BufferGeometry,
  type Color,
  type DepthModes,
  DoubleSide,
  type InterleavedBuffer,
  InterleavedBufferAttribute,
  ShaderMaterial,
  Vector2,
} from 'three';

/**
 * A straight piece as two triangles, as wide as asked in CSS pixels at any distance, with edges softened by how much of a
 * pixel they cover: smooth without multisampling and a third of the corners of the usual fat line. Ends that lie behind
 * the eye are drawn back to just before it. All four corners of a
 * piece carry both its ends: drawn as instances, each piece costs a software renderer as much as a whole draw. `vAcross` is kept times w, so that it comes out straight on the screen.
 */
const VERTEX = /* glsl */ `
attribute vec3 end;
attribute vec3 tint;
attribute vec2 run;
uniform vec2 uViewport;
uniform float uHalf;
uniform float uSoft;
varying vec2 vAcross;
varying vec3 vTint;
varying float vRun;
const float NEAREST = 0.02;
void main() {
  int corner = gl_VertexID % 4;
  mat4 toClip = projectionMatrix * modelViewMatrix;
  vec4 a = toClip * vec4(position, 1.0);
  vec4 b = toClip * vec4(end, 1.0);
  float from = run.x;
  float to = run.y;
  if (a.w < NEAREST && b.w < NEAREST) {
    gl_Position = vec4(2.0, 2.0, 2.0, 1.0);
    return;
  }
  if (a.w < NEAREST) {
    float t = (NEAREST - a.w) / (b.w - a.w);
    a = mix(a, b, t);
    from = mix(from, to, t);
  } else if (b.w < NEAREST) {
    float t = (NEAREST - a.w) / (b.w - a.w);
    b = mix(a, b, t);
    to = mix(from, to, t);
  }
  vec2 along = (b.xy / b.w - a.xy / a.w) * uViewport;
  float far = length(along);
  along = far > 1e-6 ? along / far : vec2(1.0, 0.0);
  bool first = corner < 2;
  float side = corner == 0 || corner == 3 ? -1.0 : 1.0;
  vec4 at = first ? a : b;
  vec2 off = vec2(along.y, -along.x) * (side * (uHalf + uSoft));
  #ifndef DASHED
  off += along * (first ? -uHalf : uHalf) * 0.5;
  #endif
  at.xy += off * (2.0 / uViewport) * at.w;
  vAcross = vec2(side * (uHalf + uSoft), 1.0) * at.w;
  vTint = tint;
  vRun = first ? from : to;
  gl_Position = at;
}`;
const FRAGMENT = /* glsl */ `
uniform float uHalf;
uniform float uSoft;
uniform float uOpacity;
#ifdef DASHED
uniform vec2 uDash;
#endif
varying vec2 vAcross;
varying vec3 vTint;
varying float vRun;
void main() {
  #ifdef DASHED
  if (mod(vRun, uDash.x + uDash.y) > uDash.x) discard;
  #endif
  float outside = abs(vAcross.x / vAcross.y) - uHalf;
  float cover = clamp(0.5 - 0.5 * outside / uSoft, 0.0, 1.0);
  gl_FragColor = vec4(vTint, uOpacity * cover);
  #include <colorspace_fragment>
}`;

export interface LinePass {
  readonly widthPx: number;
  readonly opacity: number;
  /** Lengths of dash and gap in metres; solid without. */
  readonly dashM?: readonly [number, number];
  /** One colour for all pieces instead of their own. */
  readonly colour?: Color;
  readonly depthFunc: DepthModes;
}

/** Half of the width over which an edge fades out, in pixels of the screen. */
const SOFT_PX = 0.5;

export const lineMaterial = ({ widthPx, opacity, dashM, colour, depthFunc }: LinePass): ShaderMaterial => {
  const defines: Record<string, string> = {};
  if (dashM) defines.DASHED = '';
  const uniforms: Record<string, { value: unknown }> = {
    uViewport: { value: new Vector2(1280, 800) },
    uHalf: { value: widthPx / 2 },
    uSoft: { value: SOFT_PX },
    uOpacity: { value: opacity },
  };
  if (dashM) uniforms.uDash = { value: new Vector2(...dashM) };
  const fragmentShader = colour
    ? FRAGMENT.replace('vec4(vTint,', `vec4(vec3(${[colour.r, colour.g, colour.b].map((v) => v.toFixed(5)).join()}),`)
    : FRAGMENT;
  return new ShaderMaterial({
    vertexShader: VERTEX,
    fragmentShader,
    defines,
    uniforms,
    transparent: true,
    depthWrite: false,
    depthFunc,
    side: DoubleSide,
    toneMapped: false,
  });
};

/** Tells a pass how large its canvas is, CSS pixels, and how fine. */
export const fitLines = ({ uniforms }: ShaderMaterial, width: number, height: number, pixelRatio: number): void => {
  (uniforms.uViewport.value as Vector2).set(width, height);
  uniforms.uSoft.value = SOFT_PX / pixelRatio;
};

/** Numbers a corner: start, end, colour, how far along the line start and end lie. */
export const CORNER_STRIDE = 11;

/** Room for so many pieces of four corners, numbered start left, start right, end right, end left. */
export const piecesGeometry = (capacity: number, corners: InterleavedBuffer): BufferGeometry => {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new InterleavedBufferAttribute(corners, 3, 0));
  geometry.setAttribute('end', new InterleavedBufferAttribute(corners, 3, 3));
  geometry.setAttribute('tint', new InterleavedBufferAttribute(corners, 3, 6));
  geometry.setAttribute('run', new InterleavedBufferAttribute(corners, 2, 9));
  const index = new Uint32Array(capacity * 6);
  for (let piece = 0; piece < capacity; piece++)
    [0, 1, 2, 0, 2, 3].forEach((corner, k) => {
      index[piece * 6 + k] = piece * 4 + corner;
    });
  geometry.setIndex(new BufferAttribute(index, 1));
  geometry.setDrawRange(0, 0);
  return geometry;
};
