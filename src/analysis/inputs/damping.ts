/** Which of the three solves a field is for: the walls as described, or with less or more damping than that. */
export type Damping = 'nominal' | 'low' | 'high';

/**
 * How far the damping of a described wall may be off: a factor of sqrt(3) either way. Published tables of one and the same
 * board on studs disagree threefold at 125 Hz (0.29 and 0.10), and below that no handbook table says anything; the band is
 * that factor laid evenly about the nominal value. Derived from the tables' disagreement; the factor is ours.
 */
export const DAMPING_FACTOR = Math.sqrt(3);
