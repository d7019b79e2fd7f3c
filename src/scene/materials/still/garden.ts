import { seededRandom } from '../../../math/random.ts';
import { WINDOW_LIGHT } from './house.ts';
import { blend, css, fillPlane, glow, hazed, type Rgb, type StillView } from './view.ts';

const LEAF: Rgb = [30, 58, 44];
const LEAF_LIT: Rgb = [116, 120, 66];
const FAR_M = 92;
const NEAR_M = 3.2;

const band = (view: StillView, fromX: number, toX: number, fromZ: number, toZ: number, fill: string | CanvasGradient) =>
  fillPlane(
    view,
    [
      [fromX, 0, fromZ],
      [toX, 0, fromZ],
      [toX, 0, toZ],
      [fromX, 0, toZ],
    ],
    fill,
  );

const downTo = (view: StillView, stops: readonly (readonly [number, string])[]): CanvasGradient => {
  const fill = view.context.createLinearGradient(0, view.at(0, 0, FAR_M)[1], 0, view.height);
  for (const [at, colour] of stops) fill.addColorStop(at, colour);
  return fill;
};

/** Lawn, gravel and the long basin that holds the sky. */
export const paintGround = (view: StillView): void => {
  const lawn = downTo(view, [
    [0, '#7d8478'],
    [0.12, '#4f6a5a'],
    [0.5, '#2c4a38'],
    [1, '#14291f'],
  ]);
  band(view, -200, 200, FAR_M + 8, 1.2, lawn);
  const gravel = downTo(view, [
    [0, '#c4aa90'],
    [0.3, '#7f838a'],
    [1, '#454f5e'],
  ]);
  for (const side of [-1, 1]) band(view, side * 3.6, side * 6.6, FAR_M, 1.6, gravel);
  const water = downTo(view, [
    [0, '#ffd596'],
    [0.1, '#b8a09c'],
    [0.34, '#5f87ae'],
    [0.75, '#2c5f92'],
    [1, '#1c3a5c'],
  ]);
  band(view, -2.6, 2.6, FAR_M - 8, 4.6, water);
  paintReflections(view);
  const kerb = '#8b8a8e';
  for (const side of [-1, 1]) band(view, side * 2.6, side * 2.95, FAR_M - 8, 4.6, kerb);
  band(view, -2.95, 2.95, 4.6, 4.25, '#7d7c80');
};

const paintReflections = (view: StillView): void => {
  const random = seededRandom(19);
  for (let k = 0; k < 260; k++) {
    const z = 5 + 75 * random() ** 2.2;
    const x = (random() - 0.5) * 5;
    const [px, py] = view.at(x, 0, z);
    const scale = view.scaleAt(z);
    const long = scale * (0.15 + 0.5 * random());
    view.context.fillStyle = css(random() < 0.55 ? WINDOW_LIGHT : [150, 182, 210], 0.05 + 0.2 * random());
    view.context.fillRect(px - long / 2, py, long, Math.max(1, scale * 0.012));
  }
};

/** Clipped hedges, cones of yew and old limes down both sides, from the far end forwards. */
export const paintPlanting = (view: StillView): void => {
  for (let z = FAR_M - 6; z > NEAR_M; z -= z > 30 ? 7 : 4.4)
    for (const side of [-1, 1]) {
      lime(view, side * 17, z + 1.5);
      hedge(view, side, z);
      cone(view, side * 7.5, z);
      if (z < 80) lantern(view, side * 3.3, z - 1.2);
    }
};

const hedge = (view: StillView, side: number, z: number): void => {
  const near = Math.max(2.4, z - (z > 30 ? 5.6 : 3.4));
  const inner = side * 8.7;
  const outer = side * 10.6;
  const high = 2.35;
  fillPlane(
    view,
    [
      [inner, 0, near],
      [outer, 0, near],
      [outer, high, near],
      [inner, high, near],
    ],
    css(hazed(LEAF, near)),
  );
  const lit = view.context.createLinearGradient(0, view.at(0, high, near)[1], 0, view.at(0, 0, near)[1]);
  lit.addColorStop(0, css(hazed(blend(LEAF, LEAF_LIT, 0.75), z)));
  lit.addColorStop(1, css(hazed(blend(LEAF, [16, 30, 26], 0.5), z)));
  fillPlane(
    view,
    [
      [inner, 0, z],
      [inner, 0, near],
      [inner, high, near],
      [inner, high, z],
    ],
    lit,
  );
};

const cone = (view: StillView, x: number, z: number): void => {
  const { context } = view;
  const scale = view.scaleAt(z);
  const [px, py] = view.at(x, 0, z);
  const wide = scale * 0.85;
  const high = scale * 2.9;
  context.fillStyle = css([18, 28, 24], 0.4);
  context.beginPath();
  context.ellipse(px, py, wide * 1.3, wide * 0.28, 0, 0, Math.PI * 2);
  context.fill();
  const toHouse = -Math.sign(x);
  const fill = context.createLinearGradient(px + toHouse * wide, 0, px - toHouse * wide, 0);
  fill.addColorStop(0, css(hazed(LEAF_LIT, z)));
  fill.addColorStop(0.4, css(hazed(LEAF, z)));
  fill.addColorStop(1, css(hazed([15, 30, 28], z)));
  context.fillStyle = fill;
  context.beginPath();
  context.moveTo(px, py - high);
  context.quadraticCurveTo(px + wide * 0.62, py - high * 0.5, px + wide, py);
  context.lineTo(px - wide, py);
  context.quadraticCurveTo(px - wide * 0.62, py - high * 0.5, px, py - high);
  context.fill();
};

const lime = (view: StillView, x: number, z: number): void => {
  const random = seededRandom(Math.round(z * 13 + x));
  const { context } = view;
  const scale = view.scaleAt(z);
  for (let k = 0; k < 16; k++) {
    const up = 4.6 + 6.5 * random();
    const [px, py] = view.at(x + (random() - 0.5) * 6, up, z);
    const radius = scale * (1.2 + 1.5 * random());
    context.fillStyle = css(hazed(blend([20, 40, 40], LEAF_LIT, 0.22 * random()), z), 0.92);
    context.beginPath();
    context.arc(px, py, radius, 0, Math.PI * 2);
    context.fill();
  }
};

const lantern = (view: StillView, x: number, z: number): void => {
  if (z < 5) return;
  glow(view, x, 0.45, z, 1.9, [255, 178, 88], 0.55);
  glow(view, x, 0.45, z, 0.22, [255, 240, 205], 1);
};
