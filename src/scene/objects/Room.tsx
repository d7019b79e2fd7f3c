import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useRef } from 'react';
import type { Group } from 'three';
import { roomSolids } from '../../shapes/index.ts';
import { requestFrame } from '../../state/frames.ts';
import { useView } from '../../state/view.tsx';
import { useKit } from '../kit.ts';
import { RoomScene } from './room-scene.ts';

const LONGEST_STEP_S = 0.1;
const PICTURE_ANISOTROPY = 4;

/** The room and everything that stands in it. Draws nothing by itself: it follows the stores and asks for frames. */
export const Room = () => {
  const root = useRef<Group>(null);
  const scene = useRef<RoomScene | null>(null);
  const kit = useKit();
  const gl = useThree((state) => state.gl);
  const { document, session } = useView();

  useEffect(() => {
    const made = new RoomScene(
      document.getState().project,
      Math.min(PICTURE_ANISOTROPY, gl.capabilities.getMaxAnisotropy()),
    );
    const follow = () => {
      const { project, gestureOpen } = document.getState();
      made.setProject(project, roomSolids(project), !gestureOpen);
      // Until a frame has been drawn nobody knows whether the change's light takes more of them.
      kit.changing = true;
      made.setSession(session.getState());
      requestFrame('document');
    };
    const attend = () => {
      made.setSession(session.getState());
      kit.changing = true;
      requestFrame('session');
    };
    follow();
    root.current?.add(made.group);
    scene.current = made;
    const stop = [document.subscribe(follow), session.subscribe(attend)];
    return () => {
      for (const end of stop) end();
      scene.current = null;
      kit.changing = false;
      made.group.removeFromParent();
      made.dispose();
    };
  }, [document, session, gl, kit]);

  useFrame(({ camera, size }, delta) => {
    const { current } = scene;
    const stepS = Math.min(delta, LONGEST_STEP_S);
    kit.changing =
      current?.frame(camera.position, size.width, size.height, stepS, session.getState().reducedMotion) ?? false;
    if (kit.changing) requestFrame('transition');
  }, -5);

  return <group ref={root} />;
};
