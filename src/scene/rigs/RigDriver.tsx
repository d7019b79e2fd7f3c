import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useMemo } from 'react';
import { PerspectiveCamera } from 'three';
import { timesSmaller } from '../../engines/movement/framing.ts';
import { radiansOf } from '../../math/angles.ts';
import { requestFrame } from '../../state/frames.ts';
import { shotStore } from '../../state/shot.ts';
import { useView } from '../../state/view.tsx';
import { useKit } from '../kit.ts';
import { createResolution } from './resolution.ts';
import type { Shot } from './rig.ts';
import { showMe } from './show-me.ts';
import { pictureCorners, surroundings } from './surroundings.ts';

/** The longest first step after a rest: an animation begins where it was, however long nothing was drawn. */
const FIRST_STEP_S = 0.1;
const NEAR_OVERLOOK_M = 0.1;
const NEAR_SIT_M = 0.03;
const FAR_M = 80;

const applyShot = (camera: PerspectiveCamera, shot: Shot, width: number, height: number, nearM: number): void => {
  const { pose } = shot;
  camera.position.set(pose.atM[0], pose.atM[1], pose.atM[2]);
  camera.rotation.set(radiansOf(pose.pitchDeg), -radiansOf(pose.yawDeg), 0, 'YXZ');
  camera.fov = pose.fovYDeg;
  camera.aspect = width / height;
  camera.near = nearM;
  camera.far = FAR_M;
  camera.setViewOffset(width, height, width / 2 - shot.axisX, height / 2 - shot.axisY, width, height);
  camera.updateMatrixWorld();
};

/** Moves the camera, alone and first in each frame, and asks for the next frame while it is on its way. */
export const RigDriver = () => {
  const kit = useKit();
  const view = useView();
  const size = useThree((state) => state.size);
  const setDpr = useThree((state) => state.setDpr);
  const resolution = useMemo(() => createResolution(setDpr, window.devicePixelRatio), [setDpr]);

  useEffect(() => {
    kit.resolution = resolution;
    const look = () => {
      kit.stale = true;
    };
    const stop = [
      view.document.subscribe(look),
      view.session.subscribe((next, last) => {
        look();
        if (!next.spotlight || next.spotlight === last.spotlight) return;
        const showing = showMe(view.document.getState().project, next.spotlight.items);
        if (showing) kit.rig.frame(showing.points, showing.yawDeg, showing.pitchDeg);
      }),
    ];
    return () => {
      for (const end of stop) end();
      resolution.dispose();
    };
  }, [kit, view, resolution]);

  useEffect(() => {
    kit.stale = size.width > 0;
    requestFrame('resize');
  }, [kit, size]);

  useFrame((state, delta) => {
    const { camera } = state;
    if (!(camera instanceof PerspectiveCamera) || size.width === 0) return;
    kit.frames += 1;
    const session = view.session.getState();
    if (kit.stale) {
      kit.stale = false;
      // A wall that is being moved must not move the view it is moved in.
      if (!session.dragging) {
        const { project } = view.document.getState();
        kit.rig.read(surroundings(project, session, size.width, size.height));
        kit.pictureCorners = pictureCorners(project);
      }
    }
    const underWay = kit.moving;
    const stepS = underWay ? delta : Math.min(delta, FIRST_STEP_S);
    kit.moving = kit.rig.step(stepS);
    const { shot } = kit.rig;
    const sitting = !kit.rig.overlooking;
    applyShot(camera, shot, size.width, size.height, sitting ? NEAR_SIT_M : NEAR_OVERLOOK_M);
    if (kit.veil) kit.veil.style.opacity = String(shot.fade);
    if (kit.moving || session.dragging) resolution.lower(underWay && kit.moving ? delta : 0);
    if (kit.moving) requestFrame('transition');
    else {
      const smaller = sitting ? timesSmaller(shot.pose.fovYDeg, size.height) : null;
      if (shotStore.getState().timesSmaller !== smaller) shotStore.setState({ timesSmaller: smaller });
    }
  }, -10);
  return null;
};
