import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useRef } from 'react';
import type { Group } from 'three';
import { roomSolids } from '../../shapes/index.ts';
import { requestFrame } from '../../state/frames.ts';
import { useView } from '../../state/view.tsx';
import { RoomScene } from './room-scene.ts';

const LONGEST_STEP_S = 0.1;
const PICTURE_ANISOTROPY = 4;

/** The room and everything that stands in it. Draws nothing by itself: it follows the stores and asks for frames. */
export const Room = () => {
  const root = useRef<Group>(null);
  const scene = useRef<RoomScene | null>(null);
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
      made.setSession(session.getState());
      requestFrame('document');
    };
    const attend = () => {
      made.setSession(session.getState());
      requestFrame('session');
    };
    follow();
    root.current?.add(made.group);
    scene.current = made;
    const stop = [document.subscribe(follow), session.subscribe(attend)];
    return () => {
      for (const end of stop) end();
      scene.current = null;
      made.group.removeFromParent();
      made.dispose();
    };
  }, [document, session, gl]);

  useFrame(({ camera, size }, delta) => {
    const more = scene.current?.frame(
      camera.position,
      size.width,
      size.height,
      Math.min(delta, LONGEST_STEP_S),
      session.getState().reducedMotion,
    );
    if (more) requestFrame('transition');
  }, -5);

  return <group ref={root} />;
};
