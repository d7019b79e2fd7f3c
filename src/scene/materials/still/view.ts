/** The still's own little camera: metres in a garden, to pixels on the canvas. X right, Y up, Z away from the eye. */
export interface StillView {
  readonly width: number;
  readonly height: number;
  readonly context: CanvasRenderingContext2D;
  readonly at: (x: number, y: number, z: number) => readonly [number, number];
  /** Pixels a metre at that distance. */
  readonly scaleAt: (z: number) => number;
}

const EYE_M = 2.1;
const HORIZON = 0.5;
const FOCAL = 0.98;

export const stillView = (context: CanvasRenderingContext2D, width: number, height: number): StillView => ({
  width,
  height,
  context,
  at: (x, y, z) => [width / 2 + (FOCAL * width * x) / z, height * HORIZON - (FOCAL * width * (y - EYE_M)) / z],
  scaleAt: (z) => (FOCAL * width) / z,
});

export type Rgb = readonly [number, number, number];

/** Haze of the evening sky that distance fades to. */
const HAZE: Rgb = [112, 124, 158];
const HAZE_FAR_M = 95;

export const css = ([r, g, b]: Rgb, alpha = 1): string =>
  `rgba(${Math.round(r)}, ${Math.round(g)}, ${Math.round(b)}, ${alpha})`;

export const blend = (a: Rgb, b: Rgb, t: number): Rgb => [
  a[0] + (b[0] - a[0]) * t,
  a[1] + (b[1] - a[1]) * t,
  a[2] + (b[2] - a[2]) * t,
];

export const hazed = (colour: Rgb, z: number): Rgb => blend(colour, HAZE, 0.8 * (1 - Math.exp(-z / HAZE_FAR_M)));

/** Fills the polygon through points given in garden metres. */
export const fillPlane = (
  { context, at }: StillView,
  points: readonly (readonly [number, number, number])[],
  fill: string | CanvasGradient,
): void => {
  context.beginPath();
  points.forEach(([x, y, z], index) => {
    const [px, py] = at(x, y, z);
    if (index === 0) context.moveTo(px, py);
    else context.lineTo(px, py);
  });
  context.closePath();
  context.fillStyle = fill;
  context.fill();
};

export const glow = (view: StillView, x: number, y: number, z: number, radiusM: number, colour: Rgb, alpha: number) => {
  const [px, py] = view.at(x, y, z);
  const radius = radiusM * view.scaleAt(z);
  const fill = view.context.createRadialGradient(px, py, 0, px, py, radius);
  fill.addColorStop(0, css(colour, alpha));
  fill.addColorStop(0.25, css(colour, alpha * 0.35));
  fill.addColorStop(1, css(colour, 0));
  view.context.fillStyle = fill;
  view.context.fillRect(px - radius, py - radius, radius * 2, radius * 2);
};
