/** Kelvin at 0 degrees Celsius. */
const kelvin = 273.15;
/** Reference temperature 20 degrees Celsius, K, and reference pressure, kPa (ISO 9613-1). */
const referenceK = 293.15;
const referenceKPa = 101.325;
const triplePointK = 273.16;

/** Speed of sound in metres a second: 343.2 sqrt(T / 293.15), T in kelvin (ISO 9613-1; remembered). */
export const speedOfSound = (temperatureC: number): number => 343.2 * Math.sqrt((temperatureC + kelvin) / referenceK);

/** The state of the air that sound passes through. */
export interface Air {
  readonly temperatureC: number;
  /** 0 to 100. */
  readonly relativeHumidityPercent: number;
  /** Kilopascals; 101.325 when left out. */
  readonly pressureKPa?: number;
}

/**
 * Attenuation of a pure tone in still air, decibels a metre, ISO 9613-1 (remembered; reproduces table 2 of ISO 9613-2 to
 * its rounding at exact midbands): classical loss and the relaxation of oxygen and nitrogen. The standard states
 * 10 % accuracy from -20 to 50 degrees Celsius, 10 to 100 % humidity, 50 Hz to 10 kHz.
 */
export const airAttenuationDbPerM = (frequencyHz: number, air: Air): number => {
  const t = air.temperatureC + kelvin;
  const pressure = (air.pressureKPa ?? referenceKPa) / referenceKPa;
  const warmth = t / referenceK;
  const saturation = 10 ** (4.6151 - 6.8346 * (triplePointK / t) ** 1.261);
  const vapour = (air.relativeHumidityPercent * saturation) / pressure;
  const oxygenHz = pressure * (24 + (4.04e4 * vapour * (0.02 + vapour)) / (0.391 + vapour));
  const nitrogenHz = (pressure / Math.sqrt(warmth)) * (9 + 280 * vapour * Math.exp(-4.17 * (warmth ** (-1 / 3) - 1)));
  const squared = frequencyHz ** 2;
  const classical = (1.84e-11 / pressure) * Math.sqrt(warmth);
  const oxygen = (0.01275 * Math.exp(-2239.1 / t)) / (oxygenHz + squared / oxygenHz);
  const nitrogen = (0.1068 * Math.exp(-3352 / t)) / (nitrogenHz + squared / nitrogenHz);
  return 8.686 * squared * (classical + warmth ** -2.5 * (oxygen + nitrogen));
};

/** The energy attenuation constant m in 1/m of the reverberation formulas, from decibels a metre: m = a / (10 log10 e). */
export const energyAttenuationPerM = (dbPerM: number): number => dbPerM / (10 * Math.LOG10E);
