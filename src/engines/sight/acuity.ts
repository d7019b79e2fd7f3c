import { radiansOf } from '../../math/angles.ts';

/** The angle that normal sight just resolves, degrees: 1 arcminute (the design viewing distance of ITU-R BT.500; read in a quotation). */
export const acuityDeg = 1 / 60;

/** Pixels a degree at which one pixel fills that angle. */
export const acuityPixelsPerDegree = 60;

/**
 * The distance in picture heights at which one line of a picture of `lines` lines fills 1 arcminute; nearer than this the
 * lines can be told apart. D/H = 1 / (N tan(1/60 degree)), derived.
 */
export const acuityDistanceHeights = (lines: number): number => 1 / (lines * Math.tan(radiansOf(acuityDeg)));

/** The number of lines a picture needs so that none can be told apart at a distance in picture heights. */
export const linesForDistance = (heights: number): number => 1 / (heights * Math.tan(radiansOf(acuityDeg)));

/** The angle one line fills at a distance in picture heights, seen square on, in arcminutes. */
export const lineArcminutes = (lines: number, heights: number): number =>
  (Math.atan2(1 / lines, heights) * 180 * 60) / Math.PI;
