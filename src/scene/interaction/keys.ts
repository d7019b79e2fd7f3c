import type { Rig } from '../rigs/rig.ts';

const TURN_DEG = 7.5;
const FINE_DEG = 1.5;
const ZOOM = 1.15;

/** What a key does to the camera while the canvas has the focus; false when it is not one of its keys. */
export const steerByKey = (rig: Rig, key: string, fine: boolean): boolean => {
  // From above the arrows move the eye round the room, in a seat they turn the head: opposite ways for the view.
  const step = (fine ? FINE_DEG : TURN_DEG) * (rig.overlooking ? -1 : 1);
  switch (key) {
    case 'ArrowLeft':
      rig.turn(-step, 0);
      return true;
    case 'ArrowRight':
      rig.turn(step, 0);
      return true;
    case 'ArrowUp':
      rig.turn(0, step);
      return true;
    case 'ArrowDown':
      rig.turn(0, -step);
      return true;
    case '+':
    case '=':
      rig.zoom(1 / ZOOM);
      return true;
    case '-':
      rig.zoom(ZOOM);
      return true;
    case 'Home':
      rig.home();
      return true;
    default:
      return false;
  }
};
