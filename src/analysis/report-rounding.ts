/**
 * How finely the report states numbers: nine decimals of the unit in the field's name. That is far finer than anything is
 * known; it is chosen so that a figure on a card (one decimal of a degree or decibel, centimetres) is the report's figure
 * rounded, which coarser steps would now and then break by rounding twice (six decimals: one length in ten thousand). Not finite is null.
 */
const DECIMALS = 9;

export const rounded = (value: number): number | null => {
  if (!Number.isFinite(value)) return null;
  const near = Number(value.toFixed(DECIMALS));
  return near === 0 ? 0 : near;
};

type Rounded<T> = T extends number
  ? number | null
  : T extends Float64Array
    ? (number | null)[]
    : T extends readonly (infer Entry)[]
      ? Rounded<Entry>[]
      : T extends object
        ? { [Key in keyof T]: Rounded<T[Key]> }
        : T;

/** The same value with every number in it rounded and every typed array a plain one. */
export const roundedDeep = <T>(value: T): Rounded<T> => roundAny(value) as Rounded<T>;

const roundAny = (value: unknown): unknown => {
  if (typeof value === 'number') return rounded(value);
  if (value instanceof Float64Array) return Array.from(value, rounded);
  if (Array.isArray(value)) return value.map(roundAny);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, roundAny(inner)]));
};
