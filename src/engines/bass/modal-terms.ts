/** One mode as a source excites it and a receiver hears it. */
export interface ModalTerm {
  readonly hz: number;
  /** Reverberation time; Infinity where nothing absorbs. */
  readonly decayS: number;
  /** Sum over the sources of their complex weights times the shape's value at the source and at the receiver, |.|, 1/m^3. */
  readonly coupling: number;
}

/** The damping constant in nepers a second of a reverberation time: 60 dB = e^(-delta T), delta = 3 ln 10 / T. */
export const dampingOf = (decayS: number): number => (3 * Math.LN10) / decayS;

/**
 * |H| of one mode alone at its own frequency, free field of one source at 1 m as 1:
 *
 *   H_n = 4 pi C / (k_n^2 - k^2),   k_n = (omega + j delta) / c, k = omega / c
 *
 * with C the coupling and shapes of integral 1 over the room. Derived from the rigid modes' sum with the damping of each
 * mode (Kuttruff, Room Acoustics, 3.1, from memory); the modes' coupling through the walls is left out. Infinity without damping.
 */
export const resonantSize = ({ hz, decayS, coupling }: ModalTerm, soundSpeed: number): number => {
  const omega = 2 * Math.PI * hz;
  const delta = dampingOf(decayS);
  return (4 * Math.PI * coupling * soundSpeed * soundSpeed) / (delta * Math.hypot(2 * omega, delta));
};

/** Largest and smallest level the decay is read between, under its beginning: the range of a T20 (ISO 3382-2, from memory). */
const FROM_DB = -5;
const TO_DB = -25;

/**
 * The reverberation time of a band from its modes: the energies of the modes' free decays, added,
 *
 *   E(t) = sum of C_n^2 / (omega_n^2 delta_n) e^(-2 delta_n t)
 *
 * read between -5 and -25 dB. Derived: the impulse response of a mode is (4 pi c^2 C / omega) e^(-delta t) sin omega t, whose
 * energy from t on is A^2 e^(-2 delta t) / 4 delta; beats between modes are left out. No band filter enters, whose own
 * ringing would be longer than the room's in narrow bands. Null without modes, or where nothing absorbs.
 */
export const bandDecayS = (terms: readonly ModalTerm[]): number | null => {
  const heard = terms.filter(({ coupling, decayS }) => coupling > 0 && Number.isFinite(decayS));
  if (heard.length === 0) return null;
  const energies = heard.map(({ hz, decayS, coupling }) => coupling ** 2 / (hz * hz * dampingOf(decayS)));
  const levelAt = (t: number) =>
    10 * Math.log10(heard.reduce((sum, { decayS }, n) => sum + energies[n] * Math.exp(-2 * dampingOf(decayS) * t), 0));
  const start = levelAt(0);
  const longest = Math.max(...heard.map(({ decayS }) => decayS));
  const reached = (db: number) => {
    let low = 0;
    let high = longest;
    for (let step = 0; step < 60; step++) {
      const middle = (low + high) / 2;
      if (levelAt(middle) - start > db) low = middle;
      else high = middle;
    }
    return low;
  };
  return (60 / (FROM_DB - TO_DB)) * (reached(TO_DB) - reached(FROM_DB));
};

/** A band a third of an octave wide. */
export interface ThirdOctave {
  /** The centre's nominal value, as people read it. */
  readonly nominalHz: number;
  readonly lowHz: number;
  readonly highHz: number;
}

const NOMINAL_HZ = [20, 25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200] as const;

/** Third octaves from 20 to 200 Hz: exact centres 1000 x 10^(n/10), edges 10^(1/20) away (IEC 61260-1, base ten; from memory). */
export const THIRD_OCTAVES: readonly ThirdOctave[] = NOMINAL_HZ.map((nominalHz, i) => {
  const centre = 1000 * 10 ** ((i - 17) / 10);
  return { nominalHz, lowHz: centre * 10 ** -0.05, highHz: centre * 10 ** 0.05 };
});
