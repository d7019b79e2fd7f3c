/** Plans named after their trouble; every one is a simple polygon, in metres. */
export const PLANS: Readonly<Record<string, readonly [number, number][]>> = {
  rectangle: [
    [0, 0],
    [6, 0],
    [6, 4],
    [0, 4],
  ],
  'the other sense': [
    [0, 4],
    [6, 4],
    [6, 0],
    [0, 0],
  ],
  'L of 40 m2': [
    [0, 0],
    [8, 0],
    [8, 6],
    [4, 6],
    [4, 4],
    [0, 4],
  ],
  T: [
    [0, 0],
    [6, 0],
    [6, 2],
    [4, 2],
    [4, 5],
    [2, 5],
    [2, 2],
    [0, 2],
  ],
  'bay window': [
    [0, 0],
    [5, 0],
    [5, 4],
    [3.5, 4],
    [3, 4.6],
    [2, 4.6],
    [1.5, 4],
    [0, 4],
  ],
  'cut corner': [
    [0, 0],
    [6, 0],
    [6, 3.8],
    [4.8, 5],
    [0, 5],
  ],
  'alcove 1 cm wide': [
    [0, 0],
    [5, 0],
    [5, 2],
    [5.4, 2],
    [5.4, 2.01],
    [5, 2.01],
    [5, 4],
    [0, 4],
  ],
  'slot of 5 cm': [
    [0, 0],
    [5, 0],
    [5, 2],
    [8, 2],
    [8, 2.05],
    [5, 2.05],
    [5, 4],
    [0, 4],
  ],
  'wall 1 cm thick': [
    [0, 0],
    [6, 0],
    [6, 5],
    [3.01, 5],
    [3.01, 0.5],
    [3, 0.5],
    [3, 5],
    [0, 5],
  ],
  'a corner 1 mm from a wall': [
    [0, 0],
    [6, 0],
    [6, 5],
    [3, 0.001],
    [0, 5],
  ],
  'needle of 8 degrees': [
    [0, 0],
    [7, 0.5],
    [0, 1],
  ],
  'corners on one line': [
    [0, 0],
    [2, 0],
    [4, 0],
    [4, 3],
    [2, 3],
    [0, 3],
  ],
  spiral: [
    [0, 0],
    [7, 0],
    [7, 7],
    [1, 7],
    [1, 2],
    [5, 2],
    [5, 5],
    [3, 5],
    [3, 4],
    [4, 4],
    [4, 3],
    [2, 3],
    [2, 6],
    [6, 6],
    [6, 1],
    [0, 1],
  ],
  'round, 64 corners': Array.from({ length: 64 }, (_, i): [number, number] => [
    3 + 3 * Math.cos((i * Math.PI) / 32),
    3 + 3 * Math.sin((i * Math.PI) / 32),
  ]),
  sawtooth: [
    ...Array.from({ length: 31 }, (_, i): [number, number] => [0.2 * i, i % 2 === 0 ? 0 : 0.3]),
    [6, 4],
    [0, 4],
  ],
};

export const perimeterOf = (corners: readonly (readonly [number, number])[]): number =>
  corners.reduce((sum, [u, v], i) => {
    const [nextU, nextV] = corners[(i + 1) % corners.length];
    return sum + Math.hypot(nextU - u, nextV - v);
  }, 0);

export const areaOf = (corners: readonly (readonly [number, number])[]): number =>
  Math.abs(
    corners.reduce((sum, [u, v], i) => {
      const [nextU, nextV] = corners[(i + 1) % corners.length];
      return sum + u * nextV - v * nextU;
    }, 0),
  ) / 2;
