import type { PlanRect } from './plan.ts';

export interface PlanName extends PlanRect {
  readonly id: string;
  readonly name: string;
}

interface PlanSize {
  readonly width: number;
  readonly height: number;
}

/** Letters of 12 px: their usual width, generously, and the height of a line. */
const LETTER_PX = 6.4;
const LINE_PX = 15;
const GAP_PX = 3;

const meet = (a: PlanRect, b: PlanRect): boolean =>
  a.left < b.left + b.width && b.left < a.left + a.width && a.top < b.top + b.height && b.top < a.top + a.height;

const kept = (value: number, size: number, within: number): number => Math.min(Math.max(0, value), within - size);

/** The places a name may stand at: in the thing, then beside, under and over it, pushed in from the plan's edges. */
const placesOf = (thing: PlanRect, width: number, plan: PlanSize): readonly PlanRect[] => {
  const size = { width, height: LINE_PX };
  const left = kept(thing.left + (thing.width - width) / 2, width, plan.width);
  const top = kept(thing.top + (thing.height - LINE_PX) / 2, LINE_PX, plan.height);
  return [
    ...(width <= thing.width && LINE_PX <= thing.height ? [{ ...size, left, top }] : []),
    { ...size, left: thing.left + thing.width + GAP_PX, top },
    { ...size, left: thing.left - width - GAP_PX, top },
    { ...size, left, top: thing.top + thing.height + 1 },
    { ...size, left, top: thing.top - LINE_PX - 1 },
  ];
};

/**
 * Names for what stands in a plan, each where it lies inside the plan and over nothing else; a name without such a place is
 * left out. `taken` is what no name may cover besides the named things themselves.
 */
export const placeNames = (
  things: readonly (PlanRect & { readonly id: string; readonly name: string })[],
  taken: readonly PlanRect[],
  plan: PlanSize,
): readonly PlanName[] => {
  const placed: PlanName[] = [];
  for (const thing of things) {
    const others = [...taken, ...things.filter((one) => one !== thing), ...placed];
    const free = placesOf(thing, thing.name.length * LETTER_PX, plan).find(
      (place) =>
        place.left >= 0 &&
        place.top >= 0 &&
        place.left + place.width <= plan.width &&
        place.top + place.height <= plan.height &&
        !others.some((other) => meet(place, other)),
    );
    if (free) placed.push({ ...free, id: thing.id, name: thing.name });
  }
  return placed;
};
