/**
 * A map for values with a sign: purple below, orange above, dark in the middle, so that what stands out is what differs from
 * zero. Even steps of lightness either way in Ottosson's OKLab (2020, matrices from memory); the hues are ours, far apart
 * for every kind of colour sight.
 */
const ENTRIES = 256;
const LOW_HUE_DEG = 302;
const HIGH_HUE_DEG = 66;
const DARKEST = 0.23;
const LIGHTEST = 0.8;
const CHROMA = 0.135;

const display = (linear: number): number => {
  const v = Math.min(1, Math.max(0, linear));
  return Math.round(255 * (v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055));
};

/** The colour of a sign and a size 0 to 1, sRGB 0 to 255. */
const mixed = (signed: number): readonly [number, number, number] => {
  const size = Math.abs(signed);
  const lightness = DARKEST + (LIGHTEST - DARKEST) * size;
  const hue = ((signed < 0 ? LOW_HUE_DEG : HIGH_HUE_DEG) * Math.PI) / 180;
  const a = CHROMA * Math.sqrt(size) * Math.cos(hue);
  const b = CHROMA * Math.sqrt(size) * Math.sin(hue);
  const l = (lightness + 0.3963377774 * a + 0.2158037573 * b) ** 3;
  const m = (lightness - 0.1055613458 * a - 0.0638541728 * b) ** 3;
  const s = (lightness - 0.0894841775 * a - 1.291485548 * b) ** 3;
  return [
    display(4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s),
    display(-1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s),
    display(-0.0041960863 * l - 0.7034186147 * m + 1.707614701 * s),
  ];
};

/** The table as sRGB bytes, red, green, blue, entry after entry: 256 x 3. */
export const DIVERGING_BYTES: Uint8Array = Uint8Array.from(
  Array.from({ length: ENTRIES }, (_, i) => mixed((2 * i) / (ENTRIES - 1) - 1)).flat(),
);

/** The colour at a share of the range: 0 the most negative, 0.5 zero, 1 the most positive; clamped. */
export const diverging = (share: number): readonly [number, number, number] => {
  const at = 3 * Math.min(ENTRIES - 1, Math.max(0, Math.round(share * (ENTRIES - 1))));
  return [DIVERGING_BYTES[at], DIVERGING_BYTES[at + 1], DIVERGING_BYTES[at + 2]];
};

/** The same colour for a style sheet or a canvas. */
export const divergingCss = (share: number): string => {
  const [red, green, blue] = diverging(share);
  return `rgb(${red} ${green} ${blue})`;
};
