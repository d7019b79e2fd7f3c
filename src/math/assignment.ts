/**
 * The cheapest way to give each row a column of its own: the Hungarian method in the form of shortest augmenting paths
 * (Jonker and Volgenant, Computing 38 (1987) 325; from memory), of the order of rows^2 columns steps. `costs[row * columns + column]`, finite, no
 * more rows than columns. Returns the column of each row.
 */
export const cheapestAssignment = (rows: number, columns: number, costs: Float64Array): Int32Array => {
  const rowPrice = new Float64Array(rows);
  const columnPrice = new Float64Array(columns);
  const rowOf = new Int32Array(columns).fill(-1);
  const columnOf = new Int32Array(rows).fill(-1);
  const distance = new Float64Array(columns);
  const from = new Int32Array(columns);
  for (let start = 0; start < rows; start++) {
    distance.fill(Number.POSITIVE_INFINITY);
    const done = new Uint8Array(columns);
    let row = start;
    let reached = 0;
    let last = -1;
    while (row >= 0) {
      let nearest = -1;
      for (let column = 0; column < columns; column++) {
        if (done[column] === 1) continue;
        const through = reached + costs[row * columns + column] - rowPrice[row] - columnPrice[column];
        if (through < distance[column]) {
          distance[column] = through;
          from[column] = row;
        }
        if (nearest < 0 || distance[column] < distance[nearest]) nearest = column;
      }
      reached = distance[nearest];
      done[nearest] = 1;
      last = nearest;
      row = rowOf[nearest];
    }
    for (let column = 0; column < columns; column++) {
      if (done[column] === 0 || column === last) continue;
      columnPrice[column] += distance[column] - reached;
      rowPrice[rowOf[column]] += reached - distance[column];
    }
    rowPrice[start] += reached;
    // the free column goes to the row it was reached from, that row's own column to the one before, back to the start
    for (let column = last; column >= 0; ) {
      const owner = from[column];
      const before = columnOf[owner];
      rowOf[column] = owner;
      columnOf[owner] = column;
      column = owner === start ? -1 : before;
    }
  }
  return columnOf;
};
