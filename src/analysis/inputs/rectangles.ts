/** A rectangle on a surface, in the surface's own two coordinates, metres. */
export interface Rectangle {
  readonly fromM: readonly [number, number];
  readonly toM: readonly [number, number];
}

/** A rectangle with what it stands for. */
export interface Owned<T> extends Rectangle {
  readonly owner: T;
}

/** Edges nearer than this are one. */
const SAME_M = 1e-6;

/** All edges along one axis, ascending, without doubles. */
const edgesOf = (rectangles: readonly Rectangle[], axis: 0 | 1, more: readonly number[]): number[] => {
  const all = [...rectangles.flatMap(({ fromM, toM }) => [fromM[axis], toM[axis]]), ...more].sort((a, b) => a - b);
  return all.filter((edge, i) => i === 0 || edge - all[i - 1] > SAME_M);
};

/** Owner of every cell between the edges: the last rectangle over its middle; -1 where there is none. */
const ownersOf = (rectangles: readonly Rectangle[], across: readonly number[], up: readonly number[]): Int32Array => {
  const columns = across.length - 1;
  const owners = new Int32Array(columns * (up.length - 1)).fill(-1);
  rectangles.forEach(({ fromM, toM }, index) => {
    for (let j = 0; j + 1 < up.length; j += 1) {
      const y = (up[j] + up[j + 1]) / 2;
      if (y < fromM[1] || y > toM[1]) continue;
      for (let i = 0; i < columns; i += 1) {
        const x = (across[i] + across[i + 1]) / 2;
        if (x >= fromM[0] && x <= toM[0]) owners[j * columns + i] = index;
      }
    }
  });
  return owners;
};

interface Block {
  readonly column: number;
  readonly row: number;
  columns: number;
  rows: number;
  readonly owner: number;
}

/** Cells of one owner joined into blocks: runs along one axis first, equal runs of neighbouring lines then. */
const blocksOf = (owners: Int32Array, columns: number, alongRows: boolean): Block[] => {
  const rows = owners.length / columns;
  const [lines, places] = alongRows ? [rows, columns] : [columns, rows];
  const at = (line: number, place: number): number =>
    owners[alongRows ? line * columns + place : place * columns + line];
  const blocks: Block[] = [];
  let before: Block[] = [];
  for (let line = 0; line < lines; line += 1) {
    const here: Block[] = [];
    for (let place = 0; place < places; place += 1) {
      const owner = at(line, place);
      if (owner < 0) continue;
      let end = place + 1;
      while (end < places && at(line, end) === owner) end += 1;
      const known = before.find((block) =>
        alongRows
          ? block.owner === owner && block.column === place && block.columns === end - place
          : block.owner === owner && block.row === place && block.rows === end - place,
      );
      const block: Block = known ?? {
        column: alongRows ? place : line,
        row: alongRows ? line : place,
        columns: alongRows ? end - place : 0,
        rows: alongRows ? 0 : end - place,
        owner,
      };
      if (alongRows) block.rows += 1;
      else block.columns += 1;
      if (!known) blocks.push(block);
      here.push(block);
      place = end - 1;
    }
    before = here;
  }
  return blocks;
};

/**
 * Rectangles of which later ones lie over earlier ones, as few as two ways of joining give, and disjoint: everything is cut
 * along every edge and along `cuts` (per axis), each cell goes to the last rectangle over it, cells of one owner are joined
 * again (but not over a cut). `same` says which owners may share a rectangle.
 */
export const disjoint = <T>(
  rectangles: readonly Owned<T>[],
  same: (a: T, b: T) => boolean = Object.is,
  cuts: readonly [readonly number[], readonly number[]] = [[], []],
): Owned<T>[] => {
  if (rectangles.length === 0) return [];
  const [acrossAll, upAll] = ([0, 1] as const).map((axis) => {
    const own = edgesOf(rectangles, axis, []);
    const within = cuts[axis].filter((cut) => cut > own[0] + SAME_M && cut < own[own.length - 1] - SAME_M);
    return edgesOf(rectangles, axis, within);
  });
  const first = rectangles.map(({ owner }) => rectangles.findIndex((other) => same(other.owner, owner)));
  const owners = ownersOf(rectangles, acrossAll, upAll).map((index) => (index < 0 ? -1 : first[index]));
  const columns = acrossAll.length - 1;
  // a cell beyond a cut is of another kind
  const beyond = (edge: number, axis: 0 | 1): number => cuts[axis].filter((cut) => edge > cut - SAME_M).length;
  const kinds = owners.map((owner, cell) => {
    if (owner < 0) return -1;
    const part =
      beyond(acrossAll[cell % columns], 0) * (cuts[1].length + 1) + beyond(upAll[Math.floor(cell / columns)], 1);
    return owner + rectangles.length * part;
  });
  const [byRows, byColumns] = [blocksOf(kinds, columns, true), blocksOf(kinds, columns, false)];
  return (byColumns.length < byRows.length ? byColumns : byRows).map((block) => ({
    fromM: [acrossAll[block.column], upAll[block.row]],
    toM: [acrossAll[block.column + block.columns], upAll[block.row + block.rows]],
    owner: rectangles[block.owner % rectangles.length].owner,
  }));
};
