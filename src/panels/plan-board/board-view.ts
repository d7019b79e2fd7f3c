import type { Point2 } from '../../math/polyline.ts';

/** How the board shows the plan: pixels a metre, and where the document's origin lies on it. */
export interface BoardView {
  readonly scale: number;
  readonly originX: number;
  readonly originY: number;
}

const LEAST_M = 6;
const ROUND_M = 1.1;

/** A view that holds these corners with room to draw on all sides. */
export const viewOf = (corners: readonly Point2[], width: number, height: number): BoardView => {
  const [xs, zs] = [corners.map(([x]) => x), corners.map(([, z]) => z)];
  const span = (values: readonly number[], usual: readonly [number, number]) =>
    values.length === 0 ? usual : ([Math.min(...values), Math.max(...values)] as const);
  const [minX, maxX] = span(xs, [-LEAST_M / 2, LEAST_M / 2]);
  const [minZ, maxZ] = span(zs, [0, LEAST_M]);
  const across = Math.max(LEAST_M, maxX - minX) + 2 * ROUND_M;
  const along = Math.max(LEAST_M, maxZ - minZ) + 2 * ROUND_M;
  const scale = Math.min(width / across, height / along);
  return {
    scale,
    originX: width / 2 - ((minX + maxX) / 2) * scale,
    originY: height / 2 - ((minZ + maxZ) / 2) * scale,
  };
};

export const toPx = ({ scale, originX, originY }: BoardView, [x, z]: Point2): Point2 => [
  originX + x * scale,
  originY + z * scale,
];

export const toM = ({ scale, originX, originY }: BoardView, [x, y]: Point2): Point2 => [
  (x - originX) / scale,
  (y - originY) / scale,
];

/** Lines of the squared paper, every half metre, whole metres stronger; nothing finer than the eye parts. */
export const gridLines = ({ scale, originX, originY }: BoardView, width: number, height: number) => {
  const step = scale > 26 ? 0.5 : 1;
  const lines: { readonly key: string; readonly d: string; readonly whole: boolean }[] = [];
  for (let k = Math.ceil(-originX / scale / step); k * step * scale + originX <= width; k++) {
    const x = originX + k * step * scale;
    lines.push({ key: `x${k}`, d: `M${x} 0V${height}`, whole: (k * step) % 1 === 0 });
  }
  for (let k = Math.ceil(-originY / scale / step); k * step * scale + originY <= height; k++) {
    const y = originY + k * step * scale;
    lines.push({ key: `z${k}`, d: `M0 ${y}H${width}`, whole: (k * step) % 1 === 0 });
  }
  return lines;
};
