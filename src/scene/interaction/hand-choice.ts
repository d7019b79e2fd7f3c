import type { Camera } from 'three';
import { handlesFor } from '../../model/handles/handles.ts';
import { bodyHandle } from '../../model/handles/pull.ts';
import type { ItemRef } from '../../model/project.ts';
import { chosenItems, chosenOnly, sameItem } from '../../state/chosen.ts';
import type { View } from '../../state/view.tsx';
import { boxBetween, inBox } from './box-choice.ts';
import type { CanvasPoint } from './camera-hand.ts';
import { choose, surfaceRef } from './choosing.ts';
import { hasBody } from './footprints.ts';
import type { HeldHandle } from './handle-board.ts';
import { itemAt } from './hover.ts';
import { aimedRay } from './pick.ts';
import type { Press } from './press.ts';
import { surfaceUnder } from './surface-aim.ts';

export const chosenIn = ({ document, session }: View): readonly ItemRef[] =>
  chosenItems(document.getState().project, session.getState());

/** A click chooses what is under it, from above a surface of the room too; the ray must be aimed there. */
export const clickOn = (view: View, press: Press, overlooking: boolean, shift: boolean): void => {
  const { project } = view.document.getState();
  const shell = press.hit?.shell && overlooking ? surfaceUnder(project, aimedRay()) : null;
  const ref = itemAt(view, press.hit) ?? (shell && surfaceRef(project, shell));
  choose(view, ref, shift || view.session.getState().gathering);
};

/** Chooses what stands in the rectangle from the press to here; with `add` it joins what is chosen. */
export const chooseIn = (
  view: View,
  press: Press,
  to: CanvasPoint,
  add: boolean,
  camera: Camera,
  { clientWidth, clientHeight }: HTMLCanvasElement,
): void => {
  const found = inBox(view.document.getState().project, boxBetween(press, to), camera, clientWidth, clientHeight);
  const before = add ? chosenIn(view) : [];
  const refs = [...before, ...found.filter((ref) => !before.some((one) => sameItem(one, ref)))];
  view.session.setState(chosenOnly(refs));
};

/** A long press begins to gather: it adds the thing under it, and so do taps from then on. */
export const beginGathering = (view: View, press: Press): void => {
  const ref = itemAt(view, press.hit);
  if (press.moved || !ref) return;
  press.done = true;
  view.session.setState({ gathering: true });
  if (!sameItem(view.session.getState().selection, ref)) choose(view, ref, true);
};

/** The handle a mouse takes hold of by a thing's body: the group's where the thing is one of several chosen. */
export const heldByBody = (
  view: View,
  { hit, pans, touch, x, y }: Press,
  camera: Camera,
  canvasHeight: number,
): HeldHandle | null => {
  const { project } = view.document.getState();
  const ref = itemAt(view, hit);
  if (!ref || !hit || pans || touch || !hasBody(project, ref)) return null;
  const chosen = chosenIn(view);
  const group = chosen.length > 1 && chosen.some((one) => sameItem(one, ref));
  const place = group ? handlesFor(project, chosen)[0] : bodyHandle(project, ref, hit.atM);
  if (!place) return null;
  const metresPerPx = camera.position.distanceTo({ x: hit.atM[0], y: hit.atM[1], z: hit.atM[2] }) / canvasHeight;
  return { handle: { ...place, atM: hit.atM }, anchorX: x, anchorY: y, metresPerPx };
};
