import { type PerspectiveCamera, Vector3 } from 'three';
import type { FreeArea } from '../../engines/movement/framing.ts';
import type { Vec3 } from '../../math/vec3.ts';
import { type Box, type LabelWish, placeLabels } from './place-labels.ts';

export interface Label {
  readonly key: string;
  readonly atM: Vec3;
  /** Quiet words before the value, the value itself, quiet words after it. */
  readonly before?: string;
  readonly value: string;
  readonly after?: string;
  readonly priority: number;
  readonly tone?: 'plain' | 'chosen' | 'caution';
}

const SVG = 'http://www.w3.org/2000/svg';
/** Labels keep this far from the edge of the free area. */
const EDGE_PX = 6;
/** A label this near its anchor needs no leader. */
const LEADER_FROM_PX = 13;

const CARD =
  'position:absolute;left:0;top:0;visibility:hidden;white-space:nowrap;padding:1px 7px 2px;border-radius:3px;' +
  'font-size:13px;line-height:17px;font-variant-numeric:tabular-nums;color:#efe8dc;background:rgb(20 17 15/88%);';
const TONES = { plain: 'rgb(210 174 104/30%)', chosen: '#f0ce86', caution: '#e0a94a' } as const;

class Card implements LabelWish {
  readonly element = document.createElement('div');
  readonly leader = document.createElementNS(SVG, 'line');
  private readonly parts = [0, 1, 2].map(() => document.createElement('span'));
  private text = '';
  label: Label;
  x = 0;
  y = 0;
  width = 0;
  height = 0;
  depthM = 0;
  lastPlace = -1;
  left = 0;
  top = 0;
  shown = false;

  constructor(label: Label) {
    this.label = label;
    this.element.style.cssText = CARD;
    this.parts[1].style.fontWeight = '600';
    for (const quiet of [this.parts[0], this.parts[2]]) quiet.style.color = '#b9ad9b';
    this.element.append(...this.parts);
    this.leader.setAttribute('stroke', '#d2ae68');
    this.leader.setAttribute('stroke-opacity', '0.75');
  }

  get priority(): number {
    return this.label.priority;
  }

  take(label: Label): void {
    this.label = label;
    const { before = '', value, after = '', tone = 'plain' } = label;
    this.element.style.boxShadow = `0 0 0 1px ${TONES[tone]}`;
    const text = `${before}|${value}|${after}`;
    if (text === this.text) return;
    this.text = text;
    this.parts[0].textContent = before === '' ? '' : `${before}\u2002`;
    this.parts[1].textContent = value;
    this.parts[2].textContent = after === '' ? '' : `\u2002${after}`;
    this.width = 0;
  }

  measure(): void {
    if (this.width > 0) return;
    this.width = this.element.offsetWidth;
    this.height = this.element.offsetHeight;
  }

  draw(): void {
    const { element, leader, left, top, width, height, x, y } = this;
    element.style.visibility = this.shown ? 'visible' : 'hidden';
    const nearX = Math.min(left + width, Math.max(left, x));
    const nearY = Math.min(top + height, Math.max(top, y));
    const led = this.shown && Math.hypot(nearX - x, nearY - y) > LEADER_FROM_PX;
    leader.style.visibility = led ? 'visible' : 'hidden';
    if (this.shown) element.style.transform = `translate(${left}px,${top}px)`;
    if (!led) return;
    leader.setAttribute('x1', String(x));
    leader.setAttribute('y1', String(y));
    leader.setAttribute('x2', String(nearX));
    leader.setAttribute('y2', String(nearY));
  }
}

/** All words over the scene: who hands in labels, where they end up. No React below this. */
export class LabelBoard {
  private readonly groups = new Map<string, readonly Label[]>();
  private readonly cards = new Map<string, Card>();
  private host: HTMLElement | null = null;
  private leaders: SVGSVGElement | null = null;
  private changed = false;
  private readonly point = new Vector3();
  private readonly wishes: Card[] = [];

  attach(host: HTMLElement | null, leaders: SVGSVGElement | null): void {
    this.host = host;
    this.leaders = leaders;
    this.cards.clear();
    this.changed = true;
  }

  /** A group's labels from now on; none takes the group away. */
  set(group: string, labels: readonly Label[]): void {
    if (labels.length === 0 && !this.groups.has(group)) return;
    if (labels.length === 0) this.groups.delete(group);
    else this.groups.set(group, labels);
    this.changed = true;
  }

  /** Puts every label where this camera sees its anchor, clear of the others and of `clear`. */
  draw(camera: PerspectiveCamera, area: FreeArea, clear: readonly Box[]): void {
    if (!this.host) return;
    if (this.changed) this.reconcile();
    this.wishes.length = 0;
    const free = {
      left: area.left + EDGE_PX,
      top: area.top + EDGE_PX,
      width: area.width - 2 * EDGE_PX,
      height: area.height - 2 * EDGE_PX,
    };
    for (const card of this.cards.values()) {
      const [x, y, z] = card.label.atM;
      this.point.set(x, y, z).applyMatrix4(camera.matrixWorldInverse);
      card.depthM = -this.point.z;
      card.shown = false;
      if (card.depthM <= camera.near) continue;
      this.point.applyMatrix4(camera.projectionMatrix);
      card.x = ((this.point.x + 1) / 2) * area.canvasWidth;
      card.y = ((1 - this.point.y) / 2) * area.canvasHeight;
      if (within(free, card.x, card.y)) this.wishes.push(card);
    }
    placeLabels(this.wishes, free, clear);
    for (const card of this.cards.values()) card.draw();
  }

  /** The labels that show, as rectangles on the canvas. */
  boxes(): readonly (Box & { readonly key: string })[] {
    return [...this.cards.entries()]
      .filter(([, card]) => card.shown)
      .map(([key, { left, top, width, height }]) => ({ key, left, top, width, height }));
  }

  private reconcile(): void {
    this.changed = false;
    const wanted = new Map<string, Label>();
    for (const [group, labels] of this.groups) for (const label of labels) wanted.set(`${group}:${label.key}`, label);
    for (const [key, card] of this.cards) {
      if (wanted.has(key)) continue;
      card.element.remove();
      card.leader.remove();
      this.cards.delete(key);
    }
    for (const [key, label] of wanted) {
      let card = this.cards.get(key);
      if (!card) {
        card = new Card(label);
        this.cards.set(key, card);
        this.host?.append(card.element);
        this.leaders?.append(card.leader);
      }
      card.take(label);
    }
    for (const card of this.cards.values()) card.measure();
  }
}

const within = (box: Box, x: number, y: number): boolean =>
  x >= box.left && x <= box.left + box.width && y >= box.top && y <= box.top + box.height;
