import { useEffect, useLayoutEffect, useMemo } from 'react';
import { DoubleSide, ShaderMaterial } from 'three';
import { roomBox } from '../../model/room.ts';
import { floorLegend } from '../../state/floor-legend.ts';
import { useDocument, useResults, useSession } from '../../state/view.tsx';
import { FloorMap } from './floor-shader.ts';

/** The map ends this far from the walls, so that its rim is seen against them. */
export const RIM_M = 0.02;
/** A map lying on the carpet stands this much above it. */
const LYING_M = 0.008;
const SHADOW_FROM_M = 0.2;
const FLOOR = { kind: 'floor', id: 'floor' };
const noRay = () => undefined;
const TURN_LEVEL = -Math.PI / 2;

/** At how many metres a floor is drawn: where it was computed, or just above the carpet. */
export const drawnHeightM = (heightM: number): number => Math.max(LYING_M, heightM);

const createShadow = () =>
  new ShaderMaterial({
    transparent: true,
    depthWrite: false,
    vertexShader:
      'varying vec2 at; void main() { at = uv; gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0); }',
    fragmentShader:
      'varying vec2 at; void main() { vec2 edge = min(at, 1.0 - at); gl_FragColor = vec4(0.0, 0.0, 0.0, 0.34 * smoothstep(0.0, 0.12, edge.x) * smoothstep(0.0, 0.09, edge.y)); }',
  });

/** Whether a floor answers for the document and frequency of just now. */
const useFloorStale = (): boolean => {
  const revision = useDocument((state) => state.revision);
  const variant = useDocument((state) => state.variant);
  const frequencyHz = useSession((state) => state.frequencyHz);
  return useResults(({ floor }) =>
    floor === null
      ? false
      : floor.revision !== revision ||
        floor.variant !== variant ||
        Math.abs(floor.value.frequencyHz - frequencyHz) > 0.01 * frequencyHz,
  );
};

/** The level over the floor as a coloured slice with contours; while sitting it is kept out of the view of the picture. */
export const BassFloor = () => {
  const floor = useResults((state) => state.floor?.value ?? null);
  const room = useDocument((state) => state.project);
  const wanted = useSession((state) => state.floor.shown && state.mode === 'overlook');
  const stale = useFloorStale();
  const map = useMemo(() => new FloorMap(), []);
  const shadow = useMemo(createShadow, []);
  useEffect(
    () => () => {
      map.dispose();
      shadow.dispose();
    },
    [map, shadow],
  );
  useLayoutEffect(() => {
    if (floor) map.show(floor, floorLegend(floor));
  }, [map, floor]);
  useLayoutEffect(() => map.dim(stale), [map, stale]);
  if (!floor || !wanted) return null;
  const { widthM, lengthM } = roomBox(room);
  const heightM = drawnHeightM(floor.heightM);
  return (
    <group userData={FLOOR}>
      <mesh
        userData={FLOOR}
        material={map.material}
        position={[0, heightM, lengthM / 2]}
        rotation-x={TURN_LEVEL}
        scale={[widthM - 2 * RIM_M, lengthM - 2 * RIM_M, 1]}
        material-side={DoubleSide}
      >
        <planeGeometry />
      </mesh>
      {heightM > SHADOW_FROM_M && (
        <mesh
          raycast={noRay}
          material={shadow}
          position={[0, 0.004, lengthM / 2]}
          rotation-x={TURN_LEVEL}
          scale={[widthM, lengthM, 1]}
        >
          <planeGeometry />
        </mesh>
      )}
    </group>
  );
};
