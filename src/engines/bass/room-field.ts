import type { Vec3 } from '../../math/vec3.ts';

/** 0 = x, 1 = y (up), 2 = z, in the document's order; a field's origin is its corner of least x, y and z. */
export type Axis = 0 | 1 | 2;

/** Normalised specific admittance rho c / Z as [re, im] at low frequency; re >= 0. */
export type Admittance = readonly [number, number];

/**
 * A rectangle of another admittance on a wall: an absorber, a curtain, a door, an opening. Patches of one room never overlap.
 * On a wall of a box and on an end of a prism the two coordinates are those of the wall's two axes, in ascending order of
 * axis; on an edge of a prism they are metres along the edge from its first corner, then metres along the prism's axis.
 */
export interface WallPatch {
  /** Box: index into `admittance`. Prism: the edge's index, then `corners` and `corners + 1` for the ends at 0 and `lengthM`. */
  readonly wall: number;
  readonly fromM: readonly [number, number];
  readonly toM: readonly [number, number];
  readonly admittance: Admittance;
}

/** A rectangular room with locally reacting walls. */
export interface BoxSpec {
  readonly sizeM: Vec3;
  readonly soundSpeed: number;
  /** Per wall, in the order x-, x+, y-, y+, z-, z+. */
  readonly admittance: readonly Admittance[];
  readonly patches?: readonly WallPatch[];
}

/**
 * A room with straight walls and one even direction: a plan of any outline under a flat ceiling (axis 1), or a rectangle under slopes,
 * which is a prism lying on its side (axis 0 or 2). Locally reacting walls.
 */
export interface PrismSpec {
  /** The even direction. */
  readonly axis: Axis;
  /** From one end to the other along `axis`. */
  readonly lengthM: number;
  /** The cross-section: a simple polygon in the two other axes in ascending order, either turning sense, least values 0. */
  readonly cornersM: readonly (readonly [number, number])[];
  readonly soundSpeed: number;
  /** Per edge, from corner i to i + 1. */
  readonly edges: readonly Admittance[];
  /** The ends at 0 and at `lengthM`. */
  readonly ends: readonly [Admittance, Admittance];
  readonly patches?: readonly WallPatch[];
}

export type RoomSpec = BoxSpec | PrismSpec;

export const isPrism = (spec: RoomSpec): spec is PrismSpec => 'cornersM' in spec;

/** How finely a room that needs elements is worked out: `first` for a picture at once, `fine` for the figures. */
export type Detail = 'first' | 'fine';

export interface RoomMode {
  /** Rigid-wall eigenfrequency. */
  readonly hz: number;
  /** Order along x, y and z; null where the room is no box. */
  readonly order: readonly [number, number, number] | null;
  /** Frequency of the damped mode, Re(omega) / 2 pi. */
  readonly dampedHz: number;
  /** Reverberation time 3 ln 10 / delta of the damped mode, delta = Im(omega); Infinity where nothing absorbs. */
  readonly decayS: number;
}

/** A mode of a box, which always has its orders. */
export interface BoxMode extends RoomMode {
  readonly order: readonly [number, number, number];
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
  /** The same bit by bit, some 10 ms each, where it takes a while. */
  modesInSteps?(maxHz: number): Generator<void, RoomMode[]>;
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
  /**
   * Values of the rigid shapes of `modes(maxHz)` at points (x, y, z triples), index mode * points + point; a shape's square
   * has the integral 1 over the room.
   */
  modeShapes(maxHz: number, pointsM: Float64Array): Float64Array;
  /** Prepares what depends only on room and frequency, so that a drag pays only for what moved. */
  warmUp(frequenciesHz: Float64Array): void;
  /** Memory held for the next questions, in bytes. */
  bytes(): number;
}
