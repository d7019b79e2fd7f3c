/**
 * Numbers for the nodes of a connected graph that keep neighbours close (Cuthill and McKee, 1969, reversed as by George, 1971;
 * the start is found by walking to the far end twice, Gibbs, Poole and Stockmeyer, 1976). Returns the new number of every node.
 */
export const reverseCuthillMcKee = (rowStart: Uint32Array, column: Uint32Array): Uint32Array => {
  const size = rowStart.length - 1;
  const degree = (node: number): number => rowStart[node + 1] - rowStart[node];
  const seen = new Int32Array(size).fill(-1);
  const order = new Uint32Array(size);
  let pass = 0;

  /** Breadth first from `start`, neighbours of least degree first; returns the node of least degree in the last level. */
  const walk = (start: number): number => {
    pass++;
    let filled = 1;
    let levelStart = 0;
    order[0] = start;
    seen[start] = pass;
    while (filled < size) {
      const levelEnd = filled;
      for (let at = levelStart; at < levelEnd; at++) {
        const from = filled;
        for (let k = rowStart[order[at]]; k < rowStart[order[at] + 1]; k++) {
          const node = column[k];
          if (seen[node] === pass) continue;
          seen[node] = pass;
          let to = filled++;
          for (; to > from && degree(order[to - 1]) > degree(node); to--) order[to] = order[to - 1];
          order[to] = node;
        }
      }
      if (filled === levelEnd) throw new Error('The elements of a plan are not connected.');
      levelStart = levelEnd;
    }
    let far = order[levelStart];
    for (let at = levelStart; at < size; at++) if (degree(order[at]) < degree(far)) far = order[at];
    return far;
  };

  walk(walk(walk(0)));
  const place = new Uint32Array(size);
  for (let at = 0; at < size; at++) place[order[at]] = size - 1 - at;
  return place;
};
