import { requestFrame } from '../../state/frames.ts';
import type { View } from '../../state/view.tsx';
import type { StageKit } from '../kit.ts';
import type { CanvasPoint } from './camera-hand.ts';
import { hasBody } from './footprints.ts';
import { hover } from './hover.ts';
import type { Hit } from './pick.ts';

/** What a pointer that presses nothing is over: at most one look a frame, told by the handle's light, the cursor and the session. */
export class HandHover {
  private at: CanvasPoint | null = null;
  private frame = 0;
  private readonly kit: StageKit;
  private readonly view: View;
  private readonly canvas: HTMLCanvasElement;
  private readonly hitAt: (point: CanvasPoint) => Hit | null;
  private readonly pressed: () => boolean;

  constructor(
    kit: StageKit,
    view: View,
    canvas: HTMLCanvasElement,
    hitAt: (point: CanvasPoint) => Hit | null,
    pressed: () => boolean,
  ) {
    this.kit = kit;
    this.view = view;
    this.canvas = canvas;
    this.hitAt = hitAt;
    this.pressed = pressed;
  }

  /** The pointer is here now, or has left the canvas. */
  over(point: CanvasPoint | null): void {
    this.at = point;
    if (this.frame === 0) this.frame = requestAnimationFrame(this.look);
  }

  dispose(): void {
    cancelAnimationFrame(this.frame);
  }

  private readonly look = (): void => {
    this.frame = 0;
    const { handles, rig } = this.kit;
    const at = this.pressed() ? null : this.at;
    const held = at && rig.overlooking ? handles.at(at.x, at.y) : null;
    const hot = held?.handle.id ?? null;
    if (hot !== handles.hot) {
      handles.hot = hot;
      requestFrame('session');
    }
    hover(this.view, at && !held ? this.hitAt(at) : null);
    const { session, document } = this.view;
    const { hovered, tool } = session.getState();
    const takes = hovered && rig.overlooking && hasBody(document.getState().project, hovered);
    const cursor = held || takes ? 'grab' : tool && rig.overlooking ? 'crosshair' : hovered ? 'pointer' : '';
    if (this.canvas.style.cursor !== cursor) this.canvas.style.cursor = cursor;
  };
}
