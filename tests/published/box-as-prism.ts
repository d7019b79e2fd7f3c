import type { Axis, BoxSpec, PrismSpec, WallPatch } from '../../src/engines/bass/room-field.ts';

/** A box as a prism along `axis`: its section's edges run round from the origin, first along the lower of the two other axes. */
export const asPrism = (box: BoxSpec, axis: Axis): PrismSpec => {
  const { sizeM, admittance, soundSpeed, patches = [] } = box;
  const [u, v] = ([0, 1, 2] as const).filter((other) => other !== axis);
  const walls = [2 * v, 2 * u + 1, 2 * v + 1, 2 * u];
  const turnedTo = (patch: WallPatch): WallPatch => {
    const normal = patch.wall >> 1;
    if (normal === axis) return { ...patch, wall: 4 + (patch.wall & 1) };
    const edge = walls.indexOf(patch.wall);
    const along = normal === v ? u : v;
    const [i, j] = along < axis ? [0, 1] : [1, 0];
    const ends = [patch.fromM[i], patch.toM[i]];
    const [from, to] = edge < 2 ? ends : [sizeM[along] - ends[1], sizeM[along] - ends[0]];
    return { ...patch, wall: edge, fromM: [from, patch.fromM[j]], toM: [to, patch.toM[j]] };
  };
  return {
    axis,
    lengthM: sizeM[axis],
    cornersM: [
      [0, 0],
      [sizeM[u], 0],
      [sizeM[u], sizeM[v]],
      [0, sizeM[v]],
    ],
    soundSpeed,
    edges: walls.map((wall) => admittance[wall]),
    ends: [admittance[2 * axis], admittance[2 * axis + 1]],
    patches: patches.map(turnedTo),
  };
};
