import type { Vec3 } from '../math/vec3.ts';
import type { ItemRef, TargetSet } from '../model/project.ts';
import type { Cut, SliceAs } from './slice/wish.ts';

/** Definitions of every field: the report's contract (design/contract.md, "Report"), repeated in public/report.md for users. */
export interface PictureReadout {
  readonly distanceM: number;
  readonly distanceHeights: number;
  readonly horizontalDeg: number;
  readonly verticalDeg: number;
  readonly offAxisDeg: number;
  readonly topElevationDeg: number;
  readonly centreElevationDeg: number;
  readonly pixelsPerDegree: number;
  readonly visibleFraction: number;
  /** C-value in millimetres; null when no row is in front. */
  readonly clearanceMm: number | null;
  readonly worstCase: { readonly visibleFraction: number; readonly clearanceMm: number | null };
}

export interface LoudspeakerReadout {
  readonly id: string;
  /** Measured at the ear from straight ahead (-z), positive to the right. */
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
  readonly distanceM: number;
  readonly arrivalMs: number;
  readonly offAxisDeg: number;
  readonly levelDb: number;
  readonly maxLevelDb: number;
  readonly visibleFraction: number;
}

export interface SeatReadout {
  readonly id: string;
  readonly eyeM: Vec3;
  readonly earM: Vec3;
  readonly picture: PictureReadout;
  readonly loudspeakers: readonly LoudspeakerReadout[];
}

export interface RoomReadout {
  readonly volumeM3: number;
  readonly surfaceM2: number;
  /** Eyring reverberation time by octave centre in hertz. */
  readonly rt60S: Readonly<Record<string, number>>;
  readonly schroederHz: number;
}

/** Everything that is cheap enough to follow the hand: computed in the frame of the edit. */
export interface GeometryReadout {
  readonly room: RoomReadout;
  readonly picture: { readonly widthM: number; readonly heightM: number; readonly diagonalM: number };
  readonly seats: readonly SeatReadout[];
}

/** Levels are dB against the free field at 1 m of one subwoofer at 0 dB. */
export interface SeatBass {
  readonly id: string;
  readonly levelDb: Float64Array;
  /** Bounds of the damping uncertainty; null until the background has computed them. */
  readonly lowDb: Float64Array | null;
  readonly highDb: Float64Array | null;
}

export interface BassReadout {
  readonly frequenciesHz: Float64Array;
  readonly seats: readonly SeatBass[];
  /** Standard deviation over seats at each frequency, divisor n - 1; null for one seat. */
  readonly spreadDb: Float64Array | null;
  readonly meanSpreadDb: number | null;
  readonly meanVarianceDb2: number | null;
  readonly maxMinDb: number | null;
}

export interface ModeReadout {
  readonly hz: number;
  readonly order: readonly [nx: number, nz: number, ny: number] | null;
  readonly decayS: number;
}

/** The seats' levels as they are drawn: every 96th of an octave from 20 Hz, or on the report's frequencies until that is had. */
export interface BassCurves {
  readonly frequenciesHz: Float64Array;
  readonly seats: readonly SeatBass[];
  /** Every 96th of an octave. */
  readonly fine: boolean;
}

/** A mode as one seat hears it. */
export interface HeardMode {
  readonly hz: number;
  readonly order: readonly [nx: number, nz: number, ny: number] | null;
  readonly decayS: number;
  /** The level this mode alone would have at the seat at its own frequency, all subwoofers as driven. */
  readonly levelDb: number;
}

export interface HeardModes {
  readonly seatId: string;
  /** Loudest first. */
  readonly modes: readonly HeardMode[];
  /** Decay time by third octave from the modes in it, 20 to 200 Hz; null where there are none. */
  readonly thirds: readonly { readonly hz: number; readonly decayS: number | null; readonly modes: number }[];
}

/** How tones die away at a seat: index time * frequencies + frequency, dB as levels are. */
export interface DecayReadout {
  readonly seatId: string;
  readonly frequenciesHz: Float64Array;
  readonly timesS: Float64Array;
  readonly levelDb: Float32Array;
}

/** The bass floor: the field over a level or standing slice of the room, at one frequency or over a band. */
export interface BassSlice {
  readonly cut: Cut;
  /** What its colours say. */
  readonly as: SliceAs;
  /** The cursor's frequency, and the band where the levels are means over one. */
  readonly frequencyHz: number;
  readonly bandHz: readonly [number, number] | null;
  /**
   * Grid coordinates in the document's axes: u is x (z where the slice runs along the room), v is z (the height where it
   * stands); the value at column i, row j is levelDb[j * uM.length + i]. NaN outside the room.
   */
  readonly uM: Float64Array;
  readonly vM: Float64Array;
  readonly levelDb: Float32Array;
  /** The complex pressure against the free field of one subwoofer at 1 m; null over a band. */
  readonly pressure: { readonly re: Float32Array; readonly im: Float32Array } | null;
  /** The seats' mean level; null where it was not asked for. */
  readonly meanDb: number | null;
}

export type Verdict = 'met' | 'close' | 'missed';

export interface Finding {
  readonly id: string;
  readonly rule: string;
  readonly set: TargetSet;
  readonly seat: string | null;
  readonly item: string | null;
  readonly value: number | null;
  readonly unit: string;
  /** An open end is null. */
  readonly range: readonly [number | null, number | null];
  readonly closeRange: readonly [number | null, number | null];
  readonly verdict: Verdict;
  readonly weight: number;
  /** English, SI. The app renders its own words from rule and values. */
  readonly text: string;
  readonly source: string;
  /** What "show me" lights; not part of the report. */
  readonly causes: readonly ItemRef[];
  /** Further values that the sentence needs (names, rises, bands), in SI; not part of the report. */
  readonly facts: Readonly<Record<string, number | string>>;
}
