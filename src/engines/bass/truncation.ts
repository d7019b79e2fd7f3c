import { ACROSS, type BoxGeometry, type BoxState } from './box-state.ts';
import type { Axis } from './room-field.ts';

/**
 * Where the transverse sum may stop. A term (m, n) of the closed axis falls as e^(-Re gamma d) over the separation d,
 * gamma^2 = w_m / L1^2 + w_n / L2^2 - k^2, and the terms are listed by their rigid wavenumber kappa. Terms are needed
 * until
 *
 *   Re gamma >= gamma0 + reach,     reach = ln(1 / eps) / d
 *
 * gamma0 the least attenuation of all: behind lined walls the whole field falls, and the error is to fall with it. Where
 * walls are stiffness-like, modes lie below the rigid ones: surface waves at Re w < 0 (depth Z^2 = -Re w / L^2) take the
 * lowest places and push the others up by at most `lag` = max(n pi / L - Re sqrt w / L). So, as Re gamma^2 >= kappa'^2
 * - Z1^2 - Z2^2 - k^2 with kappa' >= kappa - hypot(lag1, lag2),
 *
 *   kappa <= sqrt((gamma0 + reach)^2 + k^2 + Z1^2 + Z2^2) + hypot(lag1, lag2)
 *
 * is enough; lag and Z are 0 for real admittance. Derived. The error that remains is bounded by the sum's tail, taken as
 * an integral over kappa: at most 16 eps / d of the free field at 1 m (two mirror images per axis).
 * The lists end at CUT_HZ whatever is needed here: a surface wave on a wall so stiff that it dies within some 6 cm of the
 * wall (1 / Z) is not followed farther than that.
 */
export interface Cut {
  gamma0: number;
  /** k^2 + Z1^2 + Z2^2, k the real part. */
  lift: number;
  lag: number;
}

export const newCut = (): Cut => ({ gamma0: 0, lift: 0, lag: 0 });

/** The least attenuated term is looked for among this many orders of each axis. */
const FIRST_ORDERS = 4;

/** What the cut of the sums across `axis` depends on besides the separation, at this state, into `cut`. */
export const setCut = (geometry: BoxGeometry, state: BoxState, axis: Axis, cut: Cut): void => {
  const k2Re = state.kRe * state.kRe - state.kIm * state.kIm;
  const k2Im = 2 * state.kRe * state.kIm;
  cut.lift = state.kRe * state.kRe;
  let lag2 = 0;
  for (const across of ACROSS[axis]) {
    const { count, w } = state.axes[across].roots;
    const lengthM = geometry.sizeM[across];
    if (w[0] < 0) cut.lift -= w[0] / (lengthM * lengthM);
    let lag = 0;
    for (let n = 1; n < count; n++) lag = Math.max(lag, n * Math.PI - Math.sqrt(Math.max(0, w[2 * n])));
    lag2 += (lag / lengthM) ** 2;
  }
  cut.lag = Math.sqrt(lag2);
  const [b, c] = ACROSS[axis];
  const perB = 1 / geometry.sizeM[b] ** 2;
  const perC = 1 / geometry.sizeM[c] ** 2;
  const rootsB = state.axes[b].roots;
  const rootsC = state.axes[c].roots;
  cut.gamma0 = Number.POSITIVE_INFINITY;
  for (let m = 0; m < Math.min(FIRST_ORDERS, rootsB.count); m++) {
    for (let n = 0; n < Math.min(FIRST_ORDERS, rootsC.count); n++) {
      const re = rootsB.w[2 * m] * perB + rootsC.w[2 * n] * perC - k2Re;
      const im = rootsB.w[2 * m + 1] * perB + rootsC.w[2 * n + 1] * perC - k2Im;
      const gamma = Math.sqrt(Math.max(0, (Math.sqrt(re * re + im * im) + re) / 2));
      if (gamma < cut.gamma0) cut.gamma0 = gamma;
    }
  }
};

/** kappa^2 up to which terms are needed, for a reach ln(1 / eps) / separation in 1/m. */
export const cutKappa2 = (cut: Cut, reach: number): number => {
  const kappa2 = (cut.gamma0 + reach) ** 2 + cut.lift;
  return cut.lag === 0 ? kappa2 : (Math.sqrt(kappa2) + cut.lag) ** 2;
};
