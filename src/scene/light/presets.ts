import type { LightPreset } from '../../state/session.ts';

/** How strongly each kind of light burns, before exposure. The picture itself is always shown as it is. */
export interface LightLevels {
  readonly picture: number;
  readonly lamps: number;
  readonly general: number;
  /** What light falling on the screen adds to the picture's black, as a share of its white. */
  readonly wash: number;
  /** Mean radiance the room's surfaces are exposed to, 1 being the screen's white. */
  readonly key: number;
}

/** Light on the seats the presets stand for, lux: house lights up, sconces low, sconces out. */
export const PRESET_LUX: Readonly<Record<LightPreset, number>> = { clean: 150, dim: 10, dark: 0.5 };

const PRESETS: Readonly<Record<LightPreset, LightLevels>> = {
  clean: { picture: 1, lamps: 0.3, general: 0.8, wash: 0.16, key: 0.105 },
  dim: { picture: 1, lamps: 0.028, general: 0.008, wash: 0.006, key: 0.03 },
  dark: { picture: 1, lamps: 0.002, general: 0.002, wash: 0, key: 0.014 },
};

/** Seen from outside a room must be read as a whole, so the eye is opened a little wider there. */
const OVERLOOK_GAIN = 1.8;
const OUTSIDE = Object.fromEntries(
  Object.entries(PRESETS).map(([name, levels]) => [name, { ...levels, key: levels.key * OVERLOOK_GAIN }]),
) as Record<LightPreset, LightLevels>;

export const levelsOf = (preset: LightPreset, overlooking: boolean): LightLevels =>
  (overlooking ? OUTSIDE : PRESETS)[preset];

export const mixLevels = (from: LightLevels, to: LightLevels, t: number): LightLevels => ({
  picture: from.picture + (to.picture - from.picture) * t,
  lamps: from.lamps + (to.lamps - from.lamps) * t,
  general: from.general + (to.general - from.general) * t,
  wash: from.wash + (to.wash - from.wash) * t,
  key: from.key + (to.key - from.key) * t,
});

/** Mean light on the room's shell by kind, from its lit vertices. */
export interface MeanLight {
  readonly picture: number;
  readonly lamps: number;
  readonly general: number;
}

const MEAN_REFLECTANCE = 0.145;
const EXPOSURE = { least: 0.2, most: 60 };

/** What everything but the picture is multiplied by, so that the mean surface is shown at the preset's key. */
export const exposureOf = (levels: LightLevels, mean: MeanLight): number => {
  const radiance =
    MEAN_REFLECTANCE * (levels.picture * mean.picture + levels.lamps * mean.lamps + levels.general * mean.general);
  return Math.min(EXPOSURE.most, Math.max(EXPOSURE.least, levels.key / Math.max(1e-6, radiance)));
};
