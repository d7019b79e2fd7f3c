import { blend, css, fillPlane, glow, hazed, type Rgb, type StillView } from './view.ts';

const AT_Z_M = 100;
const HALF_WIDTH_M = 21;
const EAVES_M = 9;
const WALL: Rgb = [96, 84, 92];
const ROOF: Rgb = [44, 46, 62];
export const WINDOW_LIGHT: Rgb = [255, 206, 122];

/** A long house at the end of the walk, dusk behind it and most of its windows lit. */
export const paintHouse = (view: StillView): void => {
  paintWoods(view);
  const wall = hazed(WALL, 36);
  const roof = hazed(ROOF, 30);
  wing(view, -HALF_WIDTH_M, HALF_WIDTH_M, EAVES_M, AT_Z_M, wall);
  roofOver(view, -HALF_WIDTH_M - 0.6, HALF_WIDTH_M + 0.6, EAVES_M, 5.4, roof);
  wing(view, -6, 6, EAVES_M + 1.6, AT_Z_M - 2, blend(wall, [120, 104, 104], 0.5));
  fillPlane(
    view,
    [
      [-6.6, EAVES_M + 1.6, AT_Z_M - 2],
      [6.6, EAVES_M + 1.6, AT_Z_M - 2],
      [0, EAVES_M + 4.8, AT_Z_M - 2],
    ],
    css(blend(roof, wall, 0.35)),
  );
  for (const x of [-15, -9, 9, 15]) wing(view, x - 0.7, x + 0.7, EAVES_M + 8, AT_Z_M, roof, EAVES_M + 3);
  for (let column = -9; column <= 9; column++) {
    const x = column * 2.15;
    const front = Math.abs(x) < 6 ? AT_Z_M - 2 : AT_Z_M;
    lamplit(view, x, 1.2, 3.6, front, (column * 7) % 5 !== 2);
    lamplit(view, x, 5.4, 2.5, front, (column * 5 + 20) % 4 !== 1);
  }
  glow(view, 0, 3, AT_Z_M - 4, 30, WINDOW_LIGHT, 0.3);
};

const wing = (view: StillView, from: number, to: number, top: number, z: number, colour: Rgb, bottom = 0) =>
  fillPlane(
    view,
    [
      [from, bottom, z],
      [to, bottom, z],
      [to, top, z],
      [from, top, z],
    ],
    css(colour),
  );

const roofOver = (view: StillView, from: number, to: number, eaves: number, rise: number, colour: Rgb) =>
  fillPlane(
    view,
    [
      [from, eaves, AT_Z_M],
      [to, eaves, AT_Z_M],
      [to - 4, eaves + rise, AT_Z_M],
      [from + 4, eaves + rise, AT_Z_M],
    ],
    css(colour),
  );

const lamplit = (view: StillView, x: number, sill: number, high: number, z: number, lit: boolean): void => {
  wing(view, x - 0.48, x + 0.48, sill + high, z, lit ? WINDOW_LIGHT : [70, 76, 96], sill);
  if (lit) glow(view, x, sill + high / 2, z, 2.6, [255, 190, 100], 0.35);
};

const paintWoods = (view: StillView): void => {
  const { context, at, width } = view;
  for (let layer = 0; layer < 2; layer++) {
    context.beginPath();
    context.moveTo(...at(-90, 0, 130));
    for (let x = -90; x <= 90; x += 0.9) {
      const bumps = Math.sin(x * 0.41 + layer * 2) + Math.sin(x * 0.97 + 1) * 0.6 + Math.abs(Math.sin(x * 0.2)) * 2.6;
      const dip = Math.exp(-(x * x) / 900);
      context.lineTo(...at(x, 10 - layer * 2 + bumps * 1.3 + (1 - dip) * 9, 130 - layer * 15));
    }
    context.lineTo(...at(90, 0, 130));
    context.lineTo(width, view.height * 0.6);
    context.closePath();
    context.fillStyle = css(hazed([38, 54, 58], 60 - layer * 25));
    context.fill();
  }
};
