import type { Camera, Object3D } from 'three';
import { handlesFor } from '../../model/handles/handles.ts';
import { bodyHandle } from '../../model/handles/pull.ts';
import type { ItemRef } from '../../model/project.ts';
import { chosenItems, chosenOnly, sameItem } from '../../state/chosen.ts';
import { requestFrame } from '../../state/frames.ts';
import type { View } from '../../state/view.tsx';
import type { StageKit } from '../kit.ts';
import { boxBetween, inBox } from './box-choice.ts';
import { type CanvasPoint, dragView, pinchView, wheelView } from './camera-hand.ts';
import { choose, surfaceRef } from './choosing.ts';
import { hasBody } from './footprints.ts';
import type { HeldHandle } from './handle-board.ts';
import { HandleDrag } from './handle-drag.ts';
import { pulledBy } from './handle-motion.ts';
import { hover, itemAt } from './hover.ts';
import { steerByKey } from './keys.ts';
import { aimedRay, aimRay, type Hit, pick } from './pick.ts';
import { surfaceUnder } from './surface-aim.ts';
import { SurfaceDraw } from './surface-draw.ts';

/** A press that moves less than this is a click. */
const CLICK_PX = 4;
/** A finger is less steady than a mouse. */
const TAP_PX = 9;
const LONG_PRESS_MS = 500;

interface Press extends CanvasPoint {
  readonly hit: Hit | null;
  readonly held: HeldHandle | null;
  readonly pans: boolean;
  readonly boxes: boolean;
  readonly touch: boolean;
  moved: boolean;
  /** A long press has done its work: letting go does nothing more. */
  done: boolean;
}

export interface HandScene {
  readonly scene: Object3D;
  readonly camera: Camera;
}

/** Pointer, wheel and keys on the canvas: takes hold of handles, chooses, draws on surfaces, and steers the camera. */
export class Hand {
  private readonly pointers = new Map<number, CanvasPoint>();
  private press: Press | null = null;
  private drag: HandleDrag | null = null;
  private draw: SurfaceDraw | null = null;
  private longPress: ReturnType<typeof setTimeout> | undefined;
  private hoverAt: CanvasPoint | null = null;
  private hoverFrame = 0;
  private readonly kit: StageKit;
  private readonly view: View;
  private readonly canvas: HTMLCanvasElement;
  private readonly get: () => HandScene;
  private readonly off = new AbortController();

  constructor(kit: StageKit, view: View, canvas: HTMLCanvasElement, get: () => HandScene) {
    this.kit = kit;
    this.view = view;
    this.canvas = canvas;
    this.get = get;
    const { signal } = this.off;
    canvas.addEventListener('pointerdown', this.down, { signal });
    canvas.addEventListener('pointermove', this.move, { signal });
    canvas.addEventListener('pointerup', this.up, { signal });
    canvas.addEventListener('pointercancel', this.lose, { signal });
    canvas.addEventListener('pointerleave', this.leave, { signal });
    canvas.addEventListener('wheel', this.wheel, { signal, passive: false });
    canvas.addEventListener('contextmenu', (event) => event.preventDefault(), { signal });
    canvas.addEventListener('keydown', this.key, { signal });
    window.addEventListener('keydown', this.escape, { signal, capture: true });
    window.addEventListener('blur', this.lose, { signal });
  }

  dispose(): void {
    this.lose();
    cancelAnimationFrame(this.hoverFrame);
    this.off.abort();
  }

  private at({ offsetX, offsetY }: PointerEvent): CanvasPoint {
    return { x: offsetX, y: offsetY };
  }

  private aim({ x, y }: CanvasPoint): void {
    aimRay(this.get().camera, x, y, this.canvas.clientWidth, this.canvas.clientHeight);
  }

  private hitAt(point: CanvasPoint): Hit | null {
    this.aim(point);
    return pick(this.get().scene);
  }

  private chosen(): readonly ItemRef[] {
    return chosenItems(this.view.document.getState().project, this.view.session.getState());
  }

  private readonly down = (event: PointerEvent): void => {
    const point = this.at(event);
    this.pointers.set(event.pointerId, point);
    this.canvas.setPointerCapture(event.pointerId);
    if (this.pointers.size > 1) {
      this.drop();
      return;
    }
    const overlooking = this.kit.rig.overlooking;
    const primary = event.button === 0;
    const held = overlooking && primary ? this.kit.handles.at(point.x, point.y) : null;
    const hit = this.hitAt(point);
    const touch = event.pointerType === 'touch';
    const boxes = overlooking && primary && event.shiftKey && !held;
    this.press = { ...point, hit, held, pans: !primary, boxes, touch, moved: false, done: false };
    const { tool } = this.view.session.getState();
    if (tool && overlooking && primary && !held) {
      const from = surfaceUnder(this.view.document.getState().project, aimedRay());
      if (from)
        this.draw = new SurfaceDraw(this.view, tool, from, (drawn, reasons) =>
          this.kit.hand.setState({ drawn, reasons }),
        );
      return;
    }
    if (touch && !held) this.longPress = setTimeout(this.gather, LONG_PRESS_MS);
  };

  private readonly move = (event: PointerEvent): void => {
    const point = this.at(event);
    const last = this.pointers.get(event.pointerId);
    if (!last) {
      this.hoverAt = point;
      if (this.hoverFrame === 0) this.hoverFrame = requestAnimationFrame(this.hoverNow);
      return;
    }
    if (this.pointers.size === 2) {
      const before = [...this.pointers.values()] as [CanvasPoint, CanvasPoint];
      this.pointers.set(event.pointerId, point);
      pinchView(this.kit.rig, before, [...this.pointers.values()] as [CanvasPoint, CanvasPoint]);
      requestFrame('camera');
      return;
    }
    this.pointers.set(event.pointerId, point);
    const { press } = this;
    if (!press || press.done) return;
    if (!press.moved) {
      if (Math.hypot(point.x - press.x, point.y - press.y) < (press.touch ? TAP_PX : CLICK_PX)) return;
      press.moved = true;
      clearTimeout(this.longPress);
      if (!this.draw) this.begin(press);
    }
    if (this.draw) {
      this.aim(point);
      this.draw.to(aimedRay(), event.altKey);
    } else if (this.drag) this.pull(this.drag, press, point, event.altKey);
    else if (press.boxes) this.kit.handles.box(boxBetween(press, point));
    else this.steer(press, point.x - last.x, point.y - last.y);
    requestFrame('session');
  };

  /** The press became a drag: of the handle under it, with a mouse of the thing's body, else of the view. */
  private begin(press: Press): void {
    if (press.boxes) return;
    const held = press.held ?? this.bodyAt(press);
    if (!held) return;
    const { handle, metresPerPx } = held;
    const chosen = this.chosen();
    const among = chosen.some((ref) => sameItem(ref, handle.ref));
    if (!among) this.view.session.setState({ ...chosenOnly([handle.ref]), probe: null });
    this.kit.handles.held = handle.id;
    this.kit.hand.setState({ held: handle.id });
    this.drag = new HandleDrag(this.view, handle, among ? chosen : [handle.ref], metresPerPx, (reasons) =>
      this.kit.hand.setState({ reasons }),
    );
  }

  private bodyAt({ hit, pans, touch, x, y }: Press): HeldHandle | null {
    const { project } = this.view.document.getState();
    const ref = itemAt(this.view, hit);
    if (!ref || !hit || pans || touch || !this.kit.rig.overlooking || !hasBody(project, ref)) return null;
    const chosen = this.chosen();
    const group = chosen.length > 1 && chosen.some((one) => sameItem(one, ref));
    const place = group ? handlesFor(project, chosen)[0] : bodyHandle(project, ref, hit.atM);
    if (!place) return null;
    const { camera } = this.get();
    const metresPerPx =
      camera.position.distanceTo({ x: hit.atM[0], y: hit.atM[1], z: hit.atM[2] }) / this.canvas.clientHeight;
    return { handle: { ...place, atM: hit.atM }, anchorX: x, anchorY: y, metresPerPx };
  }

  /** The handle follows the hand from where it belongs, not from where it had to stand aside to. */
  private pull(drag: HandleDrag, press: Press, point: CanvasPoint, free: boolean): void {
    const anchorX = press.held?.anchorX ?? press.x;
    const anchorY = press.held?.anchorY ?? press.y;
    this.aim({ x: anchorX + point.x - press.x, y: anchorY + point.y - press.y });
    const byM = pulledBy(aimedRay(), drag.handle.atM, drag.handle.axis);
    if (byM) drag.to(byM, free);
  }

  private steer({ pans }: Press, dx: number, dy: number): void {
    if (pans && this.kit.rig.overlooking) this.kit.rig.pan(dx, dy);
    else dragView(this.kit.rig, dx, dy, this.canvas.clientHeight);
    requestFrame('camera');
  }

  private readonly up = (event: PointerEvent): void => {
    this.pointers.delete(event.pointerId);
    clearTimeout(this.longPress);
    const { press, drag, draw } = this;
    this.press = null;
    this.drag = null;
    this.draw = null;
    this.letGo();
    if (draw) draw.commit(press?.moved ?? false);
    else if (drag) drag.commit();
    else if (press?.boxes && press.moved) this.chooseIn(press, this.at(event), event.ctrlKey);
    else if (press && !press.moved && !press.done && !press.held && event.button === 0)
      this.click(press, event.shiftKey);
    requestFrame('session');
  };

  private click(press: Press, shift: boolean): void {
    this.aim(press);
    const { project } = this.view.document.getState();
    const shell = press.hit?.shell && this.kit.rig.overlooking ? surfaceUnder(project, aimedRay()) : null;
    const ref = itemAt(this.view, press.hit) ?? (shell && surfaceRef(project, shell));
    choose(this.view.session, ref, shift || this.view.session.getState().gathering);
  }

  private chooseIn(press: Press, to: CanvasPoint, add: boolean): void {
    const { project } = this.view.document.getState();
    const found = inBox(
      project,
      boxBetween(press, to),
      this.get().camera,
      this.canvas.clientWidth,
      this.canvas.clientHeight,
    );
    const before = add ? this.chosen() : [];
    const refs = [...before, ...found.filter((ref) => !before.some((one) => sameItem(one, ref)))];
    this.view.session.setState(chosenOnly(refs));
  }

  /** A long press begins to gather: it adds the thing under it, and so do taps from then on. */
  private readonly gather = (): void => {
    const { press } = this;
    const ref = press && itemAt(this.view, press.hit);
    if (!press || press.moved || !ref) return;
    press.done = true;
    this.view.session.setState({ gathering: true });
    const { selection } = this.view.session.getState();
    if (!sameItem(selection, ref)) choose(this.view.session, ref, true);
  };

  /** What is in hand goes back to its mark. */
  private drop(): void {
    clearTimeout(this.longPress);
    this.press = null;
    this.drag?.cancel();
    this.drag = null;
    this.draw?.cancel();
    this.draw = null;
    this.letGo();
  }

  private letGo(): void {
    this.kit.handles.held = null;
    this.kit.handles.box(null);
    if (this.kit.hand.getState().held !== null) this.kit.hand.setState({ held: null });
  }

  private readonly lose = (): void => {
    this.pointers.clear();
    this.drop();
  };

  private readonly leave = (): void => {
    this.hoverAt = null;
    if (this.hoverFrame === 0) this.hoverFrame = requestAnimationFrame(this.hoverNow);
  };

  private readonly hoverNow = (): void => {
    this.hoverFrame = 0;
    const { handles, rig } = this.kit;
    const free = this.hoverAt !== null && this.pointers.size === 0;
    const held = free && this.hoverAt && rig.overlooking ? handles.at(this.hoverAt.x, this.hoverAt.y) : null;
    const hot = held?.handle.id ?? null;
    if (hot !== handles.hot) {
      handles.hot = hot;
      requestFrame('session');
    }
    hover(this.view, free && this.hoverAt && !held ? this.hitAt(this.hoverAt) : null);
    const { session, document } = this.view;
    const { hovered, tool } = session.getState();
    const takes = hovered && rig.overlooking && hasBody(document.getState().project, hovered);
    const cursor = held || takes ? 'grab' : tool && rig.overlooking ? 'crosshair' : hovered ? 'pointer' : '';
    if (this.canvas.style.cursor !== cursor) this.canvas.style.cursor = cursor;
  };

  private readonly wheel = (event: WheelEvent): void => {
    event.preventDefault();
    wheelView(this.kit.rig, event);
    requestFrame('camera');
  };

  private readonly key = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (!steerByKey(this.kit.rig, event.key, event.shiftKey)) return;
    event.preventDefault();
    requestFrame('camera');
  };

  /** Escape gives back what is in hand, then puts the tool away, before anything else hears of it. */
  private readonly escape = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape') return;
    const { tool, gathering } = this.view.session.getState();
    if (this.drag || this.draw) this.drop();
    else if (tool) this.view.session.setState({ tool: null });
    else if (gathering) this.view.session.setState({ gathering: false });
    else return;
    event.stopPropagation();
    event.preventDefault();
    requestFrame('session');
  };
}
