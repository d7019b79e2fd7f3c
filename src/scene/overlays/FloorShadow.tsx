import { useEffect, useMemo } from 'react';
import { ShaderMaterial } from 'three';
import type { Cut } from '../../analysis/slice/wish.ts';
import type { Point2 } from '../../math/polyline.ts';
import { sliceGeometry } from './slice-geometry.ts';

/** A slice lower than this casts none. */
const SHADOW_FROM_M = 0.2;
const SHADOW_AT_M = 0.004;
/** The shadow of a standing slice on the floor, this far to either side. */
const SKIRT_M = 0.22;
const noRay = () => undefined;

const createShadow = () =>
  new ShaderMaterial({
    transparent: true,
    depthWrite: false,
    uniforms: { low: { value: [0, 0] }, high: { value: [1, 1] }, softM: { value: [0.7, 0.55] } },
    vertexShader:
      'varying vec2 at; void main() { at = uv; gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0); }',
    fragmentShader: `
      varying vec2 at;
      uniform vec2 low, high, softM;
      void main() {
        vec2 edge = smoothstep(vec2(0.0), softM, min(at - low, high - at));
        gl_FragColor = vec4(0.0, 0.0, 0.0, 0.34 * edge.x * edge.y);
      }`,
  });

/** What a slice darkens under it: the plan below a level one, a strip at the foot of a standing one. */
const shadowOf = ({ normal, atM }: Cut, outline: readonly (readonly Point2[])[]): readonly (readonly Point2[])[] => {
  if (normal === 'y') return outline;
  return outline.map((corners) => {
    const along = corners.map(([u]) => u);
    const [from, to] = [Math.min(...along), Math.max(...along)];
    const [before, behind] = [atM - SKIRT_M, atM + SKIRT_M];
    const strip: Point2[] = [
      [from, before],
      [to, before],
      [to, behind],
      [from, behind],
    ];
    return normal === 'z' ? strip : strip.map(([u, v]): Point2 => [v, u]);
  });
};

/** A faint shadow on the floor, by which a slice's height and place are understood. */
export const FloorShadow = ({
  cut,
  outline,
}: {
  readonly cut: Cut;
  readonly outline: readonly (readonly Point2[])[];
}) => {
  const material = useMemo(createShadow, []);
  useEffect(() => () => material.dispose(), [material]);
  const geometry = useMemo(() => {
    const plan = shadowOf(cut, outline);
    const points = plan.flat();
    const least = (axis: 0 | 1) => Math.min(...points.map((point) => point[axis]));
    const most = (axis: 0 | 1) => Math.max(...points.map((point) => point[axis]));
    if (points.length > 0) {
      material.uniforms.low.value = [least(0), least(1)];
      material.uniforms.high.value = [most(0), most(1)];
      const narrow = (axis: 0 | 1) => Math.min(axis === 0 ? 0.7 : 0.55, (most(axis) - least(axis)) / 2);
      material.uniforms.softM.value = [narrow(0), narrow(1)];
    }
    return sliceGeometry({ normal: 'y', atM: SHADOW_AT_M }, plan);
  }, [cut, outline, material]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  if (cut.normal === 'y' && cut.atM < SHADOW_FROM_M) return null;
  return <mesh raycast={noRay} material={material} geometry={geometry} />;
};
