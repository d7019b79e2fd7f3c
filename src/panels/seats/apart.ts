/** A place on a drawing, pixels. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

interface Board {
  readonly width: number;
  readonly height: number;
}

/** Spots as near as rounding tells count as far enough. */
const SLACK_PX = 1e-6;
/** So often pushes are handed on: a row of spots against an edge needs about as many as there are spots. */
const ROUNDS = 200;

const clamped = (value: number, least: number, most: number): number => Math.min(Math.max(value, least), most);

/** Whether squares of this size round the spots keep clear of each other. */
export const areApart = (spots: readonly Spot[], leastPx: number): boolean =>
  spots.every((a, i) =>
    spots.slice(i + 1).every((b) => Math.max(Math.abs(a.x - b.x), Math.abs(a.y - b.y)) >= leastPx - SLACK_PX),
  );

/** Where a square of this size round a spot may stand: inside the board, or as far out as the spot itself wished. */
const rangeOf = (wish: number, size: number, leastPx: number): readonly [number, number] => {
  const edge = Math.min(leastPx, size) / 2;
  return [Math.min(edge, wish), Math.max(size - edge, wish)];
};

type Way = 'x' | 'y';
interface Pushed {
  readonly at: { x: number; y: number };
  readonly range: Readonly<Record<Way, readonly [number, number]>>;
}

/** Half of what two spots lack goes to each, as far as it may go. */
const push = (a: Pushed, b: Pushed, way: Way, leastPx: number): void => {
  const d = b.at[way] - a.at[way];
  const lacks = leastPx - Math.abs(d);
  const by = ((d < 0 ? -1 : 1) * lacks) / 2;
  a.at[way] = clamped(a.at[way] - by, ...a.range[way]);
  b.at[way] = clamped(b.at[way] + by, ...b.range[way]);
};

/** Pushes near spots away from each other along the way that takes the least until none is pushed, late also the other way. */
const pushed = (wishes: readonly Spot[], { width, height }: Board, leastPx: number): readonly Spot[] => {
  const all = wishes.map(({ x, y }): Pushed => {
    return { at: { x, y }, range: { x: rangeOf(x, width, leastPx), y: rangeOf(y, height, leastPx) } };
  });
  for (let round = 0; round < ROUNDS; round += 1) {
    let moved = false;
    for (const [i, a] of all.entries())
      for (const b of all.slice(i + 1)) {
        const [dx, dy] = [Math.abs(b.at.x - a.at.x), Math.abs(b.at.y - a.at.y)];
        if (Math.max(dx, dy) >= leastPx - SLACK_PX) continue;
        moved = true;
        const [way, other] = dx >= dy ? (['x', 'y'] as const) : (['y', 'x'] as const);
        push(a, b, way, leastPx);
        const still = Math.abs(b.at[way] - a.at[way]) < leastPx - SLACK_PX;
        if (still && round >= ROUNDS / 2) push(a, b, other, leastPx);
      }
    if (!moved) break;
  }
  return all.map(({ at }) => at);
};

/** Every spot in the nearest free cell of a grid, in their order; null where there are more spots than cells. */
const gridded = (wishes: readonly Spot[], { width, height }: Board, leastPx: number): readonly Spot[] | null => {
  const [columns, rows] = [Math.floor(width / leastPx), Math.floor(height / leastPx)];
  if (columns * rows < wishes.length) return null;
  const free = Array.from({ length: columns * rows }, (_, cell) => ({
    x: (((cell % columns) + 0.5) * width) / columns,
    y: ((Math.floor(cell / columns) + 0.5) * height) / rows,
  }));
  return wishes.map(({ x, y }) => {
    const away = free.map((cell) => Math.hypot(cell.x - x, cell.y - y));
    return free.splice(away.indexOf(Math.min(...away)), 1)[0];
  });
};

/**
 * Spots on a board moved apart as little as need be, so that a square of `leastPx` round each keeps clear of all others.
 * What already does stays where it is. Where the board has no room for that they come as far apart as pushing brings them.
 */
export const spotsApart = (wishes: readonly Spot[], board: Board, leastPx: number): readonly Spot[] => {
  if (areApart(wishes, leastPx)) return wishes;
  const near = pushed(wishes, board, leastPx);
  return areApart(near, leastPx) ? near : (gridded(wishes, board, leastPx) ?? near);
};
