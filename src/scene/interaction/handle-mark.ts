import type { Handle } from '../../model/handles/handle.ts';
import { GLYPHS } from './handle-glyphs.ts';
import type { HandleWish } from './handle-layout.ts';

export const SVG = 'http://www.w3.org/2000/svg';
export const STRONG = '#f0ce86';
const BRASS = '#d2ae68';
const DARK = '#14110f';
const LEADER_FROM_PX = 8;
/** Half the side of what words keep clear of. */
const HALF_PX = 15;
/** A tag's letters, generously, and how far below the middle it ends: over the disc of a handle that stands below. */
const LETTER_PX = 7;
const TAG_FOOT_PX = 30;

/** One handle as drawn: a glyph on a dark disc, its word, and a thin line to where it belongs when it had to stand aside. */
export class HandleMark implements HandleWish {
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
  axisX = 0;
  axisY = 0;
  turnDeg = 0;
  metresPerPx = 0;
  shown = false;
  private halfWidthPx = HALF_PX;
  /** What words keep clear of, once it has been drawn. */
  readonly box = { left: 0, top: 0, width: 2 * HALF_PX, height: 2 * HALF_PX };
  /** As drawn last: what stands where it stood is left alone. */
  private was = { shown: true, hot: false, x: Number.NaN, y: 0, anchorX: 0, anchorY: 0, turnDeg: 0 };

  constructor(handle: Handle) {
    this.handle = handle;
    this.take(handle);
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
    this.word.setAttribute('font-size', '13');
    this.word.setAttribute('fill', '#efe8dc');
    this.word.setAttribute('stroke', DARK);
    this.word.setAttribute('stroke-width', '3');
    this.word.setAttribute('paint-order', 'stroke');
    this.word.setAttribute('text-anchor', 'middle');
    this.group.append(this.disc, this.glyph, this.word);
  }

  /** The handle of the same place and kind as the document has it now. */
  take(handle: Handle): void {
    this.handle = handle;
    const { tag } = handle;
    this.word.textContent = tag ?? handle.label;
    this.word.setAttribute('y', tag === undefined ? '29' : '26');
    this.halfWidthPx = tag === undefined ? HALF_PX : Math.max(HALF_PX, (tag.length * LETTER_PX) / 2);
    this.box.width = 2 * this.halfWidthPx;
    this.box.height = HALF_PX + (tag === undefined ? HALF_PX : TAG_FOOT_PX);
    this.was.x = Number.NaN;
  }

  draw(hot: boolean): void {
    const { group, leader, glyph, disc, word, x, y, anchorX, anchorY, shown, turnDeg, was } = this;
    const moved = x !== was.x || y !== was.y || anchorX !== was.anchorX || anchorY !== was.anchorY;
    if (shown === was.shown && (!shown || (!moved && hot === was.hot && turnDeg === was.turnDeg))) return;
    was.shown = shown;
    group.style.visibility = shown ? 'visible' : 'hidden';
    const led = shown && Math.hypot(anchorX - x, anchorY - y) > LEADER_FROM_PX;
    leader.style.visibility = led ? 'visible' : 'hidden';
    if (!shown) return;
    was.hot = hot;
    was.x = x;
    was.y = y;
    was.anchorX = anchorX;
    was.anchorY = anchorY;
    was.turnDeg = turnDeg;
    this.box.left = x - this.halfWidthPx;
    this.box.top = y - HALF_PX;
    group.setAttribute('transform', `translate(${x.toFixed(1)} ${y.toFixed(1)})`);
    glyph.setAttribute('transform', `rotate(${turnDeg.toFixed(1)})`);
    glyph.setAttribute('stroke', hot ? STRONG : BRASS);
    glyph.setAttribute('stroke-width', hot ? '2' : '1.5');
    disc.setAttribute('fill-opacity', hot ? '0.92' : '0.72');
    disc.setAttribute('stroke', hot ? STRONG : BRASS);
    disc.setAttribute('stroke-opacity', hot ? '1' : '0.45');
    word.style.display = hot || this.handle.tag !== undefined ? 'block' : 'none';
    if (led) leader.setAttribute('d', `M${x} ${y}L${anchorX} ${anchorY}m-2 0a2 2 0 1 0 4 0a2 2 0 1 0-4 0`);
  }
}
