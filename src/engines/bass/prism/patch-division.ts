import { MOST_FUNCTIONS, type PatchArea } from '../patches/patch-functions.ts';
import type { Admittance, PrismSpec, WallPatch } from '../room-field.ts';
import type { PrismGeometry } from './prism-geometry.ts';
import type { EdgeStretch } from './section.ts';

/** A patch that stands out from its wall and does not reach over the whole even axis. */
export interface PrismPatch extends PatchArea {
  /** An edge's number, or -1 and -2 for the ends at 0 and at the far side. */
  readonly wall: number;
}

/** A prism as walls that are even along its axis and what stands out from them. */
export interface DividedPrism {
  readonly stretches: readonly EdgeStretch[];
  readonly patches: readonly PrismPatch[];
}

export const NEAR_END = -1;
export const FAR_END = -2;
const SAME_M = 1e-6;

const less = (a: Admittance, b: Admittance): [number, number] => [a[0] - b[0], a[1] - b[1]];

/**
 * Patches over the whole axis become stretches of their edge, the others stand out; one of its wall's own admittance vanishes.
 */
export const dividePrism = (spec: PrismSpec, geometry: PrismGeometry): DividedPrism => {
  const patches: PrismPatch[] = [];
  const stretches: WallPatch[] = [];
  const count = geometry.edges.length;
  for (const patch of spec.patches ?? []) {
    if (patch.wall >= count) {
      const near = patch.wall === count;
      const delta = less(patch.admittance, spec.ends[near ? 0 : 1]);
      if (delta[0] !== 0 || delta[1] !== 0)
        patches.push({ wall: near ? NEAR_END : FAR_END, fromM: patch.fromM, toM: patch.toM, delta });
      continue;
    }
    const { lengthM } = geometry.edges[patch.wall];
    const fromM = [Math.max(0, patch.fromM[0]), Math.max(0, patch.fromM[1])] as const;
    const toM = [Math.min(lengthM, patch.toM[0]), Math.min(geometry.lengthM, patch.toM[1])] as const;
    const delta = less(patch.admittance, spec.edges[patch.wall]);
    if (toM[0] - fromM[0] < SAME_M || toM[1] - fromM[1] < SAME_M || (delta[0] === 0 && delta[1] === 0)) continue;
    if (fromM[1] < SAME_M && toM[1] > geometry.lengthM - SAME_M) stretches.push({ ...patch, fromM, toM });
    else patches.push({ wall: patch.wall, fromM, toM, delta });
  }
  return { stretches: stretchesOf(spec, geometry, stretches), patches };
};

const stretchesOf = (spec: PrismSpec, { edges }: PrismGeometry, whole: readonly WallPatch[]): EdgeStretch[] =>
  edges.flatMap(({ lengthM }, edge): EdgeStretch[] => {
    const stretches: EdgeStretch[] = [];
    let atM = 0;
    const add = (toM: number, [re, im]: Admittance): void => {
      if (toM - atM < SAME_M) return;
      stretches.push({ edge, fromM: atM, toM, re, im });
      atM = toM;
    };
    const own = whole.filter(({ wall }) => wall === edge).sort((a, b) => a.fromM[0] - b.fromM[0]);
    for (const patch of own) {
      add(patch.fromM[0], spec.edges[edge]);
      add(patch.toM[0], patch.admittance);
    }
    add(lengthM, spec.edges[edge]);
    const last = stretches[stretches.length - 1];
    stretches[stretches.length - 1] = { ...last, toM: lengthM };
    return stretches;
  });

const whole = ({ wall, fromM, toM }: WallPatch, { edges, lengthM }: PrismGeometry): boolean =>
  wall < edges.length && fromM[1] < SAME_M && toM[1] > lengthM - SAME_M;

/** A standing-out patch as it was given. */
const given = ({ wall, fromM, toM, delta }: PrismPatch, { edges, ends }: PrismSpec): WallPatch => {
  const [re, im] = wall >= 0 ? edges[wall] : ends[wall === NEAR_END ? 0 : 1];
  const number = wall >= 0 ? wall : edges.length - 1 - wall;
  return { wall: number, fromM, toM, admittance: [re + delta[0], im + delta[1]] };
};

const areaOf = ({ fromM, toM }: PrismPatch): number => (toM[0] - fromM[0]) * (toM[1] - fromM[1]);

/** The prism with these patches spread over their walls by their area and `kept` left as they are. */
const spreadOver = (
  spec: PrismSpec,
  geometry: PrismGeometry,
  patches: readonly PrismPatch[],
  kept: readonly PrismPatch[],
): PrismSpec => {
  const edges = spec.edges.map(([re, im]): [number, number] => [re, im]);
  const ends = spec.ends.map(([re, im]): [number, number] => [re, im]);
  for (const patch of patches) {
    const { wall, delta } = patch;
    const target = wall >= 0 ? edges[wall] : ends[wall === NEAR_END ? 0 : 1];
    const of = wall >= 0 ? geometry.edges[wall].lengthM * geometry.lengthM : geometry.areaM2;
    target[0] += (delta[0] * areaOf(patch)) / of;
    target[1] += (delta[1] * areaOf(patch)) / of;
  }
  const rest = (spec.patches ?? []).filter((patch) => whole(patch, geometry));
  return {
    ...spec,
    edges,
    ends: [ends[0], ends[1]],
    patches: [...rest, ...kept.map((patch) => given(patch, spec))],
  };
};

/** The prism with every standing-out patch spread over its wall by its area: even along the axis, the same absorption. */
export const spreadPatches = (spec: PrismSpec, geometry: PrismGeometry): PrismSpec => {
  const { patches } = dividePrism(spec, geometry);
  return patches.length === 0 ? spec : spreadOver(spec, geometry, patches, []);
};

/**
 * The prism with at most MOST_FUNCTIONS standing-out patches: of more, those that matter least (area times difference) give
 * their wall the mean of what they cover, as a box's do.
 */
export const spreadExcess = (spec: PrismSpec, geometry: PrismGeometry): PrismSpec => {
  const { patches } = dividePrism(spec, geometry);
  if (patches.length <= MOST_FUNCTIONS) return spec;
  const ranked = patches
    .map((patch) => ({ patch, weight: Math.hypot(patch.delta[0], patch.delta[1]) * areaOf(patch) }))
    .sort((a, b) => b.weight - a.weight)
    .map(({ patch }) => patch);
  return spreadOver(spec, geometry, ranked.slice(MOST_FUNCTIONS), ranked.slice(0, MOST_FUNCTIONS));
};
