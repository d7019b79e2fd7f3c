import { type PerspectiveCamera, Vector3 } from 'three';
import type { FreeArea } from '../../engines/movement/framing.ts';
import type { Vec3 } from '../../math/vec3.ts';
import type { Handle } from '../../model/handles/handle.ts';
import type { Box } from '../overlays/place-labels.ts';
import { GLYPHS } from './handle-glyphs.ts';
import { HANDLE_TARGET_PX, type HandleWish, layHandles } from './handle-layout.ts';

const SVG = 'http://www.w3.org/2000/svg';
const BRASS = '#d2ae68';
const STRONG = '#f0ce86';
const DARK = '#14110f';
/** Where a metre of an axis is seen shorter than this the view looks along it, and the handle is left out. */
const LEAST_AXIS_PX = 9;
const LEADER_FROM_PX = 8;

/** One handle as drawn: a glyph on a dark disc, its word, and a thin line to where it belongs when it had to stand aside. */
class Mark {
  readonly group = document.createElementNS(SVG, 'g');
  readonly leader = document.createElementNS(SVG, 'path');
  private readonly glyph = document.createElementNS(SVG, 'path');
  private readonly disc = document.createElementNS(SVG, 'circle');
  private readonly word = document.createElementNS(SVG, 'text');
  handle: Handle;
  x = 0;
  y = 0;
  anchorX = 0;
  anchorY = 0;
  metresPerPx = 0;
  shown = false;

  constructor(handle: Handle) {
    this.handle = handle;
    const { path } = GLYPHS[handle.kind];
    this.group.dataset.handle = handle.id;
    this.disc.setAttribute('r', '13');
    this.disc.setAttribute('fill', DARK);
    this.glyph.setAttribute('d', path);
    for (const line of [this.glyph, this.leader]) {
      line.setAttribute('fill', 'none');
      line.setAttribute('stroke-linecap', 'round');
      line.setAttribute('stroke-linejoin', 'round');
    }
    this.leader.setAttribute('stroke', BRASS);
    this.leader.setAttribute('stroke-opacity', '0.8');
    this.word.textContent = handle.label;
    this.word.setAttribute('font-size', '13');
    this.word.setAttribute('fill', '#efe8dc');
    this.word.setAttribute('stroke', DARK);
    this.word.setAttribute('stroke-width', '3');
    this.word.setAttribute('paint-order', 'stroke');
    this.word.setAttribute('text-anchor', 'middle');
    this.word.setAttribute('y', '29');
    this.group.append(this.disc, this.glyph, this.word);
  }

  draw(turnDeg: number, hot: boolean): void {
    const { group, leader, glyph, disc, word, x, y, anchorX, anchorY } = this;
    group.style.visibility = this.shown ? 'visible' : 'hidden';
    const led = this.shown && Math.hypot(anchorX - x, anchorY - y) > LEADER_FROM_PX;
    leader.style.visibility = led ? 'visible' : 'hidden';
    if (!this.shown) return;
    group.setAttribute('transform', `translate(${x.toFixed(1)} ${y.toFixed(1)})`);
    glyph.setAttribute('transform', `rotate(${turnDeg.toFixed(1)})`);
    glyph.setAttribute('stroke', hot ? STRONG : BRASS);
    glyph.setAttribute('stroke-width', hot ? '2' : '1.5');
    disc.setAttribute('fill-opacity', hot ? '0.92' : '0.72');
    disc.setAttribute('stroke', hot ? STRONG : BRASS);
    disc.setAttribute('stroke-opacity', hot ? '1' : '0.45');
    word.style.display = hot ? 'block' : 'none';
    if (led) leader.setAttribute('d', `M${x} ${y}L${anchorX} ${anchorY}m-2 0a2 2 0 1 0 4 0a2 2 0 1 0-4 0`);
  }
}

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
  private readonly marks = new Map<string, Mark>();
  private host: SVGSVGElement | null = null;
  private rectangle: SVGRectElement | null = null;
  private changed = false;
  private readonly point = new Vector3();
  private readonly ahead = new Vector3();
  /** The handle under the pointer, and the one that is held: while one is held the others are put away. */
  hot: string | null = null;
  held: string | null = null;

  attach(host: SVGSVGElement | null): void {
    this.host = host;
    this.marks.clear();
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
    const marks = [...this.marks.values()].filter(({ handle }) => this.held === null || handle.id === this.held);
    const wished: { mark: Mark; wish: HandleWish; turnDeg: number }[] = [];
    for (const mark of this.marks.values()) mark.shown = false;
    for (const mark of marks) {
      const wish = this.wishFor(mark, camera, area);
      if (wish) wished.push({ mark, ...wish });
    }
    const places = layHandles(
      wished.map(({ wish }) => wish),
      this.held === null ? area : { left: -1e4, top: -1e4, width: 3e4, height: 3e4 },
    );
    wished.forEach(({ mark }, i) => {
      const place = places[i];
      if (!place) return;
      mark.x = place.x;
      mark.y = place.y;
      mark.shown = true;
    });
    const turns = new Map(wished.map(({ mark, turnDeg }) => [mark, turnDeg]));
    for (const mark of this.marks.values())
      mark.draw(turns.get(mark) ?? 0, mark.handle.id === this.hot || mark.handle.id === this.held);
  }

  /** The handle a finger or pointer at this point of the canvas takes hold of. */
  at(x: number, y: number): HeldHandle | null {
    let best: Mark | null = null;
    let nearest = HANDLE_TARGET_PX / 2;
    for (const mark of this.marks.values()) {
      const away = Math.hypot(mark.x - x, mark.y - y);
      if (!mark.shown || away > nearest) continue;
      nearest = away;
      best = mark;
    }
    return best && this.heldBy(best);
  }

  /** What is shown, for the bar that keeps clear of it and for tests. */
  shown(): readonly { readonly id: string; readonly x: number; readonly y: number }[] {
    return [...this.marks.values()].filter((mark) => mark.shown).map(({ handle, x, y }) => ({ id: handle.id, x, y }));
  }

  /** What words keep clear of: the handles as drawn. */
  boxes(): Box[] {
    const half = 15;
    return this.shown().map(({ x, y }) => ({ left: x - half, top: y - half, width: 2 * half, height: 2 * half }));
  }

  private heldBy({ handle, anchorX, anchorY, metresPerPx }: Mark): HeldHandle {
    return { handle, anchorX, anchorY, metresPerPx };
  }

  private screen([x, y, z]: Vec3, camera: PerspectiveCamera, area: FreeArea): boolean {
    this.point.set(x, y, z).applyMatrix4(camera.matrixWorldInverse);
    if (-this.point.z <= camera.near) return false;
    this.point.applyMatrix4(camera.projectionMatrix);
    this.point.x = ((this.point.x + 1) / 2) * area.canvasWidth;
    this.point.y = ((1 - this.point.y) / 2) * area.canvasHeight;
    return true;
  }

  private wishFor(mark: Mark, camera: PerspectiveCamera, area: FreeArea): { wish: HandleWish; turnDeg: number } | null {
    const { atM, axis, kind } = mark.handle;
    if (!this.screen(atM, camera, area)) return null;
    const { x, y } = this.point;
    const outside = x < area.left || y < area.top || x > area.left + area.width || y > area.top + area.height;
    if (outside && this.held === null) return null;
    mark.anchorX = x;
    mark.anchorY = y;
    const depthM = -this.ahead.set(atM[0], atM[1], atM[2]).applyMatrix4(camera.matrixWorldInverse).z;
    mark.metresPerPx = (2 * depthM * Math.tan((camera.fov * Math.PI) / 360)) / area.canvasHeight;
    if (axis.kind !== 'line') return { wish: { x, y, axisX: 0, axisY: 0 }, turnDeg: 0 };
    const [dx, dy, dz] = axis.direction;
    const stepM = 0.1;
    if (!this.screen([atM[0] + dx * stepM, atM[1] + dy * stepM, atM[2] + dz * stepM], camera, area)) return null;
    const alongX = this.point.x - x;
    const alongY = this.point.y - y;
    const long = Math.hypot(alongX, alongY);
    if (long / stepM < LEAST_AXIS_PX && this.held === null) return null;
    const unit = long > 0 ? [alongX / long, alongY / long] : [0, 0];
    const turnDeg = GLYPHS[kind].turns ? (Math.atan2(unit[1], unit[0]) * 180) / Math.PI : 0;
    return { wish: { x, y, axisX: unit[0], axisY: unit[1] }, turnDeg };
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
        known.handle = handle;
        continue;
      }
      const mark = new Mark(handle);
      this.marks.set(id, mark);
      this.host?.prepend(mark.leader);
      this.host?.append(mark.group);
    }
  }
}
