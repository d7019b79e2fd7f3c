import { useEffect, useLayoutEffect, useMemo } from 'react';
import {
  BufferAttribute,
  BufferGeometry,
  Color,
  DoubleSide,
  DynamicDrawUsage,
  Mesh,
  MeshBasicMaterial,
  NotEqualStencilFunc,
  SRGBColorSpace,
} from 'three';
import type { Vec3 } from '../../math/vec3.ts';
import { MAP_STENCIL } from './floor-shader.ts';
import { TONE } from './tones.ts';

export interface Cone {
  readonly fromM: Vec3;
  readonly earM: Vec3;
  readonly tone: keyof typeof TONE;
  readonly strong: boolean;
}

/** Half the distance between the ears. */
const HALF_HEAD_M = 0.0875;
/** How solid a cone is at its loudspeaker and at the ears, and how much more when it is the chosen one. */
const FROM_ALPHA = 0.34;
const EAR_ALPHA = 0.05;
const STRONG = 1.9;
const MOST = 64;

export const earsOf = ([x, y, z]: Vec3): readonly [Vec3, Vec3] => [
  [x - HALF_HEAD_M, y, z],
  [x + HALF_HEAD_M, y, z],
];

const createMesh = (): Mesh<BufferGeometry, MeshBasicMaterial> => {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(new Float32Array(MOST * 9), 3).setUsage(DynamicDrawUsage));
  geometry.setAttribute('color', new BufferAttribute(new Float32Array(MOST * 12), 4).setUsage(DynamicDrawUsage));
  const material = new MeshBasicMaterial({
    vertexColors: true,
    transparent: true,
    depthWrite: false,
    side: DoubleSide,
    toneMapped: false,
    // Nothing tints the bass floor: a colour read there is the legend's. Over it a wedge is its two edges.
    stencilWrite: true,
    stencilFunc: NotEqualStencilFunc,
    stencilRef: MAP_STENCIL,
  });
  const mesh = new Mesh(geometry, material);
  mesh.frustumCulled = false;
  mesh.renderOrder = 8;
  mesh.raycast = () => undefined;
  return mesh;
};

const colour = new Color();

const fill = (geometry: BufferGeometry, cones: readonly Cone[]): void => {
  const position = geometry.getAttribute('position');
  const tint = geometry.getAttribute('color');
  const count = Math.min(MOST, cones.length);
  for (let i = 0; i < count; i++) {
    const { fromM, earM, tone, strong } = cones[i];
    colour.setStyle(TONE[tone], SRGBColorSpace);
    const more = strong ? STRONG : 1;
    position.setXYZ(i * 3, fromM[0], fromM[1], fromM[2]);
    const [left, right] = earsOf(earM);
    position.setXYZ(i * 3 + 1, left[0], left[1], left[2]);
    position.setXYZ(i * 3 + 2, right[0], right[1], right[2]);
    tint.setXYZW(i * 3, colour.r, colour.g, colour.b, FROM_ALPHA * more);
    tint.setXYZW(i * 3 + 1, colour.r, colour.g, colour.b, EAR_ALPHA * more);
    tint.setXYZW(i * 3 + 2, colour.r, colour.g, colour.b, EAR_ALPHA * more);
  }
  position.needsUpdate = true;
  tint.needsUpdate = true;
  geometry.setDrawRange(0, count * 3);
};

/** Thin wedges of light from each loudspeaker to the two ears. */
export const Cones = ({ cones }: { readonly cones: readonly Cone[] }) => {
  const mesh = useMemo(createMesh, []);
  useLayoutEffect(() => fill(mesh.geometry, cones), [mesh, cones]);
  useEffect(
    () => () => {
      mesh.geometry.dispose();
      mesh.material.dispose();
    },
    [mesh],
  );
  return <primitive object={mesh} />;
};
