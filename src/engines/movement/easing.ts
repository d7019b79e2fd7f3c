export const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

/** 0 to 1 with no speed at either end: 3 t^2 - 2 t^3. */
export const smoothstep = (t: number): number => {
  const at = clamp(t, 0, 1);
  return at * at * (3 - 2 * at);
};

/** How much of the way to its goal a damped value goes in `stepS`: the rest shrinks by e every `timeConstantS`. */
export const dampedShare = (stepS: number, timeConstantS: number): number =>
  timeConstantS > 0 ? 1 - Math.exp(-stepS / timeConstantS) : 1;
