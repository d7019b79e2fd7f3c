import { type PerspectiveCamera, Vector3 } from 'three';
import type { FreeArea } from '../../engines/movement/framing.ts';
import type { Handle } from '../../model/handles/handle.ts';
import type { Box } from '../overlays/place-labels.ts';
import { GLYPHS } from './handle-glyphs.ts';
import { HANDLE_TARGET_PX, layHandles } from './handle-layout.ts';
import { HandleMark, STRONG, SVG } from './handle-mark.ts';

/** Where a metre of an axis is seen shorter than this the view looks along it, and the handle is left out. */
const LEAST_AXIS_PX = 9;
const STEP_M = 0.1;
/** What is held may be led anywhere. */
const ANYWHERE: Box = { left: -1e4, top: -1e4, width: 3e4, height: 3e4 };

/** A handle under the hand: where it stands and belongs on the canvas, and how much a pixel is there. */
export interface HeldHandle {
  readonly handle: Handle;
  readonly anchorX: number;
  readonly anchorY: number;
  readonly metresPerPx: number;
}

/** All handles over the scene: which there are, and where this camera sees them. No React below this. */
export class HandleBoard {
  private handles: readonly Handle[] = [];
  private readonly marks = new Map<string, HandleMark>();
  /** The same marks in their order, and those of them that are shown: filled anew without a new list. */
  private readonly order: HandleMark[] = [];
  private readonly standing: HandleMark[] = [];
  private readonly clear: Box[] = [];
  private host: SVGSVGElement | null = null;
  private rectangle: SVGRectElement | null = null;
  private changed = false;
  private readonly point = new Vector3();
  private depthM = 0;
  /** The handle under the pointer, and the one that is held: while one is held the others are put away. */
  hot: string | null = null;
  held: string | null = null;

  attach(host: SVGSVGElement | null): void {
    this.host = host;
    this.marks.clear();
    this.order.length = 0;
    this.standing.length = 0;
    this.clear.length = 0;
    this.rectangle = null;
    this.changed = true;
  }

  set(handles: readonly Handle[]): void {
    this.handles = handles;
    this.changed = true;
  }

  /** The rectangle being drawn to choose what lies in it; null when none is. */
  box(box: Box | null): void {
    if (!this.host) return;
    if (!this.rectangle) {
      this.rectangle = document.createElementNS(SVG, 'rect');
      this.rectangle.setAttribute('fill', 'rgb(210 174 104 / 12%)');
      this.rectangle.setAttribute('stroke', STRONG);
      this.rectangle.setAttribute('stroke-width', '1.5');
      this.rectangle.setAttribute('stroke-dasharray', '5 4');
      this.host.append(this.rectangle);
    }
    this.rectangle.style.display = box ? 'block' : 'none';
    if (!box) return;
    this.rectangle.setAttribute('x', String(box.left));
    this.rectangle.setAttribute('y', String(box.top));
    this.rectangle.setAttribute('width', String(box.width));
    this.rectangle.setAttribute('height', String(box.height));
  }

  draw(camera: PerspectiveCamera, area: FreeArea): void {
    if (!this.host) return;
    if (this.changed) this.reconcile();
    const { order, standing, clear, held } = this;
    for (let i = 0; i < order.length; i++) {
      const mark = order[i];
      mark.shown = (held === null || mark.handle.id === held) && this.wish(mark, camera, area);
    }
    layHandles(order, held === null ? area : ANYWHERE);
    standing.length = 0;
    clear.length = 0;
    for (let i = 0; i < order.length; i++) {
      const mark = order[i];
      mark.draw(mark.handle.id === this.hot || mark.handle.id === held);
      if (!mark.shown) continue;
      standing.push(mark);
      clear.push(mark.box);
    }
  }

  /** The handle a finger or pointer at this point of the canvas takes hold of. */
  at(x: number, y: number): HeldHandle | null {
    let best: HandleMark | null = null;
    let nearest = HANDLE_TARGET_PX / 2;
    for (const mark of this.standing) {
      const away = Math.hypot(mark.x - x, mark.y - y);
      if (away > nearest) continue;
      nearest = away;
      best = mark;
    }
    return best && this.heldBy(best);
  }

  /** What is shown, for the bar that keeps clear of it and for tests. */
  shown(): readonly HandleMark[] {
    return this.standing;
  }

  /** What words keep clear of: the handles as drawn. */
  boxes(): readonly Box[] {
    return this.clear;
  }

  private heldBy({ handle, anchorX, anchorY, metresPerPx }: HandleMark): HeldHandle {
    return { handle, anchorX, anchorY, metresPerPx };
  }

  private screen(x: number, y: number, z: number, camera: PerspectiveCamera, area: FreeArea): boolean {
    const { point } = this;
    point.set(x, y, z).applyMatrix4(camera.matrixWorldInverse);
    this.depthM = -point.z;
    if (this.depthM <= camera.near) return false;
    point.applyMatrix4(camera.projectionMatrix);
    point.x = ((point.x + 1) / 2) * area.canvasWidth;
    point.y = ((1 - point.y) / 2) * area.canvasHeight;
    return true;
  }

  /** Where this camera sees the handle and its axis; false where it is not to be seen. */
  private wish(mark: HandleMark, camera: PerspectiveCamera, area: FreeArea): boolean {
    const { atM, axis, kind } = mark.handle;
    if (!this.screen(atM[0], atM[1], atM[2], camera, area)) return false;
    const { x, y } = this.point;
    const outside = x < area.left || y < area.top || x > area.left + area.width || y > area.top + area.height;
    if (outside && this.held === null) return false;
    mark.anchorX = x;
    mark.anchorY = y;
    mark.axisX = 0;
    mark.axisY = 0;
    mark.turnDeg = 0;
    mark.metresPerPx = (2 * this.depthM * Math.tan((camera.fov * Math.PI) / 360)) / area.canvasHeight;
    if (axis.kind !== 'line') return true;
    const way = axis.direction;
    const toX = atM[0] + way[0] * STEP_M;
    const toY = atM[1] + way[1] * STEP_M;
    const toZ = atM[2] + way[2] * STEP_M;
    if (!this.screen(toX, toY, toZ, camera, area)) return false;
    const alongX = this.point.x - x;
    const alongY = this.point.y - y;
    const long = Math.hypot(alongX, alongY);
    if (long / STEP_M < LEAST_AXIS_PX && this.held === null) return false;
    if (long === 0) return true;
    mark.axisX = alongX / long;
    mark.axisY = alongY / long;
    mark.turnDeg = GLYPHS[kind].turns ? (Math.atan2(alongY, alongX) * 180) / Math.PI : 0;
    return true;
  }

  private reconcile(): void {
    this.changed = false;
    const wanted = new Map(this.handles.map((handle) => [handle.id, handle]));
    for (const [id, mark] of this.marks) {
      if (wanted.get(id)?.kind === mark.handle.kind) continue;
      mark.group.remove();
      mark.leader.remove();
      this.marks.delete(id);
    }
    for (const [id, handle] of wanted) {
      const known = this.marks.get(id);
      if (known) {
        known.take(handle);
        continue;
      }
      const mark = new HandleMark(handle);
      this.marks.set(id, mark);
      this.host?.prepend(mark.leader);
      this.host?.append(mark.group);
    }
    this.order.length = 0;
    this.order.push(...this.marks.values());
  }
}
