import type { Vec3 } from '../../math/vec3.ts';

/** 0 = x, 1 = y (up), 2 = z, in the document's order; a field's origin is its corner of least x, y and z. */
export type Axis = 0 | 1 | 2;

/** A rectangular room with locally reacting walls. */
export interface BoxSpec {
  readonly sizeM: Vec3;
  readonly soundSpeed: number;
  /** Normalised specific admittance rho c / Z as [re, im] per wall, in the order x-, x+, y-, y+, z-, z+; re >= 0. */
  readonly admittance: readonly (readonly [number, number])[];
}

export interface RoomMode {
  /** Rigid-wall eigenfrequency. */
  readonly hz: number;
  /** Order along x, y and z. */
  readonly order: readonly [number, number, number];
  /** Frequency of the damped mode, Re(omega) / 2 pi. */
  readonly dampedHz: number;
  /** Reverberation time 3 ln 10 / delta of the damped mode, delta = Im(omega); Infinity where nothing absorbs. */
  readonly decayS: number;
}

/**
 * Complex responses H = 4 pi G (free field: 1 at one metre), time convention e^(+j omega t), indexed
 * (source * receivers + receiver) * frequencies + frequency.
 */
export interface UnitResponses {
  readonly sources: number;
  readonly receivers: number;
  readonly frequencies: number;
  readonly re: Float64Array;
  readonly im: Float64Array;
  /** Per source * receivers + receiver: 1 where the receiver lay within 0.1 m and was moved out to 0.1 m. */
  readonly moved: Uint8Array;
}

/** Grid points over two axes, the third (`normal`) held at `atM`. */
export interface SlicePlane {
  readonly normal: Axis;
  readonly atM: number;
  readonly uAxis: Axis;
  readonly vAxis: Axis;
  readonly uM: Float64Array;
  readonly vM: Float64Array;
}

/** Complex field over a grid, index iv * uM.length + iu. */
export interface SliceField {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

export interface RoomField {
  /** Eigenfrequencies above 0 Hz up to `maxHz`, ascending. */
  modes(maxHz: number): RoomMode[];
  /**
   * One response per source, receiver and frequency; positions are x, y, z triples in metres from the origin corner,
   * frequencies above 0 and at most 600 Hz, else a RangeError. `growthPerS` = s > 0 evaluates at omega = 2 pi f - j s (impulse responses).
   */
  unitResponses(
    sourcesM: Float64Array,
    receiversM: Float64Array,
    frequenciesHz: Float64Array,
    growthPerS?: number,
  ): UnitResponses;
  /** Field of all sources together over a grid; `weights` holds re, im per source. Cost hardly depends on how many. */
  slice(plane: SlicePlane, sourcesM: Float64Array, weights: Float64Array, frequencyHz: number): SliceField;
  /** Prepares what depends only on room and frequency, so that a drag pays only for what moved. */
  warmUp(frequenciesHz: Float64Array): void;
}
