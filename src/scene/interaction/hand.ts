import type { Camera, Object3D } from 'three';
import { requestFrame } from '../../state/frames.ts';
import type { View } from '../../state/view.tsx';
import type { StageKit } from '../kit.ts';
import { type CanvasPoint, dragView, pinchView, wheelView } from './camera-hand.ts';
import { isHandle } from './drag.ts';
import { FloorDrag } from './floor-drag.ts';
import { hover, itemAt, sameRef } from './hover.ts';
import { steerByKey } from './keys.ts';
import { aimRay, type Hit, onLevel, pick } from './pick.ts';

/** A press that moves less than this is a click. */
const CLICK_PX = 4;
const DOUBLE_MS = 350;

interface Press extends CanvasPoint {
  readonly hit: Hit | null;
  readonly pans: boolean;
  moved: boolean;
}

export interface HandScene {
  readonly scene: Object3D;
  readonly camera: Camera;
}

/** Pointer, wheel and keys on the canvas: chooses, drags what stands on the floor, and steers the camera. */
export class Hand {
  private readonly pointers = new Map<number, CanvasPoint>();
  private press: Press | null = null;
  private drag: FloorDrag | null = null;
  private lastClick: { readonly seatId: string; readonly at: number } | null = null;
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

  private readonly down = (event: PointerEvent): void => {
    const point = this.at(event);
    this.pointers.set(event.pointerId, point);
    this.canvas.setPointerCapture(event.pointerId);
    if (this.pointers.size > 1) {
      this.drag?.cancel();
      this.drag = null;
      this.press = null;
      return;
    }
    this.press = { ...point, hit: this.hitAt(point), pans: event.button !== 0 || event.shiftKey, moved: false };
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
    if (!press) return;
    if (!press.moved) {
      if (Math.hypot(point.x - press.x, point.y - press.y) < CLICK_PX) return;
      press.moved = true;
      this.begin(press);
    }
    if (this.drag) this.pull(this.drag, point);
    else this.steer(press, point.x - last.x, point.y - last.y);
  };

  /** The press became a drag: of the thing under it when that can be moved, else of the view. */
  private begin(press: Press): void {
    const ref = itemAt(this.view, press.hit);
    if (!ref || !press.hit || press.pans || !this.kit.rig.overlooking) return;
    if (!isHandle(this.view.document.getState().project, ref)) return;
    this.view.session.setState({ selection: ref, probe: null });
    this.drag = new FloorDrag(this.view, ref, press.hit.atM);
  }

  private pull(drag: FloorDrag, point: CanvasPoint): void {
    this.aim(point);
    const met = onLevel(drag.heightM);
    if (met) drag.to(met);
  }

  private steer({ pans }: Press, dx: number, dy: number): void {
    if (pans && this.kit.rig.overlooking) this.kit.rig.pan(dx, dy);
    else dragView(this.kit.rig, dx, dy, this.canvas.clientHeight);
    requestFrame('camera');
  }

  private readonly up = (event: PointerEvent): void => {
    this.pointers.delete(event.pointerId);
    const { press, drag } = this;
    this.press = null;
    this.drag = null;
    if (drag) drag.commit();
    else if (press && !press.moved && event.button === 0) this.click(itemAt(this.view, press.hit));
  };

  private click(ref: ReturnType<typeof itemAt>): void {
    const { session } = this.view;
    if (ref?.kind !== 'seat') {
      session.setState({ selection: ref });
      this.lastClick = null;
      return;
    }
    const at = performance.now();
    const again = this.lastClick?.seatId === ref.id && at - this.lastClick.at < DOUBLE_MS;
    this.lastClick = again ? null : { seatId: ref.id, at };
    session.setState({ selection: ref, seatId: ref.id, ...(again ? { mode: 'sit' } : {}) });
  }

  private readonly lose = (): void => {
    this.pointers.clear();
    this.press = null;
    this.drag?.cancel();
    this.drag = null;
  };

  private readonly leave = (): void => {
    this.hoverAt = null;
    if (this.hoverFrame === 0) this.hoverFrame = requestAnimationFrame(this.hoverNow);
  };

  private readonly hoverNow = (): void => {
    this.hoverFrame = 0;
    const hit = this.hoverAt && this.pointers.size === 0 ? this.hitAt(this.hoverAt) : null;
    const { session, document } = this.view;
    const before = session.getState().hovered;
    hover(this.view, hit);
    const { hovered } = session.getState();
    if (sameRef(before, hovered)) return;
    const takes = hovered && this.kit.rig.overlooking && isHandle(document.getState().project, hovered);
    this.canvas.style.cursor = takes ? 'grab' : hovered ? 'pointer' : '';
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

  /** Escape gives a dragged thing back before anything else hears of it. */
  private readonly escape = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || !this.drag) return;
    event.stopPropagation();
    event.preventDefault();
    this.drag.cancel();
    this.drag = null;
    this.press = null;
  };
}
