import { chosenOnly, sameItem } from '../../state/chosen.ts';
import { requestFrame } from '../../state/frames.ts';
import type { View } from '../../state/view.tsx';
import type { StageKit } from '../kit.ts';
import { boxBetween } from './box-choice.ts';
import { type CanvasPoint, dragView, pinchView, wheelView } from './camera-hand.ts';
import { beginGathering, chooseIn, chosenIn, clickOn, heldByBody } from './hand-choice.ts';
import { HandHover } from './hand-hover.ts';
import { HandleDrag } from './handle-drag.ts';
import { pulledBy, shifted } from './handle-motion.ts';
import { steerByKey } from './keys.ts';
import { aimedRay, aimRay, type Hit, pick } from './pick.ts';
import { type HandScene, isDrag, type Press } from './press.ts';
import { surfaceUnder } from './surface-aim.ts';
import { SurfaceDraw } from './surface-draw.ts';

const LONG_PRESS_MS = 500;

/** Pointer, wheel and keys on the canvas: takes hold of handles, chooses, draws on surfaces, and steers the camera. */
export class Hand {
  private readonly pointers = new Map<number, CanvasPoint>();
  private press: Press | null = null;
  private drag: HandleDrag | null = null;
  private draw: SurfaceDraw | null = null;
  private longPress: ReturnType<typeof setTimeout> | undefined;
  private readonly hovering: HandHover;
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
    this.hovering = new HandHover(
      kit,
      view,
      canvas,
      (point) => this.hitAt(point),
      () => this.pointers.size > 0,
    );
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
    this.hovering.dispose();
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
      this.hovering.over(point);
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
      if (!isDrag(press, point)) return;
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
    const body = this.kit.rig.overlooking;
    const held =
      press.held ?? (body ? heldByBody(this.view, press, this.get().camera, this.canvas.clientHeight) : null);
    if (!held) return;
    const { handle, metresPerPx } = held;
    const chosen = chosenIn(this.view);
    const among = chosen.some((ref) => sameItem(ref, handle.ref));
    if (!among) this.view.session.setState({ ...chosenOnly([handle.ref]), probe: null });
    this.kit.handles.held = handle.id;
    this.kit.hand.setState({ held: handle.id });
    this.drag = new HandleDrag(this.view, handle, among ? chosen : [handle.ref], metresPerPx, (shown) => {
      this.kit.hand.setState({ reasons: shown.reasons, stopped: shown.stopped });
      this.kit.rig.carry(shown.carriedM);
    });
  }

  /** The handle follows the hand from where it belongs, not from where it had to stand aside to. */
  private pull(drag: HandleDrag, press: Press, point: CanvasPoint, free: boolean): void {
    const anchorX = press.held?.anchorX ?? press.x;
    const anchorY = press.held?.anchorY ?? press.y;
    this.aim({ x: anchorX + point.x - press.x, y: anchorY + point.y - press.y });
    // The view may have gone along with the document's axes: the pull counts from where the handle was.
    const byM = pulledBy(shifted(aimedRay(), this.kit.rig.carriedM), drag.handle.atM, drag.handle.axis);
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
    else if (drag) {
      drag.commit();
      this.kit.rig.keepCarried();
    } else if (press?.boxes && press.moved)
      chooseIn(this.view, press, this.at(event), event.ctrlKey, this.get().camera, this.canvas);
    else if (press && !press.moved && !press.done && !press.held && event.button === 0)
      this.click(press, event.shiftKey);
    requestFrame('session');
  };

  private click(press: Press, shift: boolean): void {
    this.aim(press);
    clickOn(this.view, press, this.kit.rig.overlooking, shift);
  }

  private readonly gather = (): void => {
    if (this.press) beginGathering(this.view, this.press);
  };

  /** What is in hand goes back to its mark. */
  private drop(): void {
    clearTimeout(this.longPress);
    this.press = null;
    this.drag?.cancel();
    this.drag = null;
    this.kit.rig.carry([0, 0, 0]);
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

  private readonly leave = (): void => this.hovering.over(null);

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
