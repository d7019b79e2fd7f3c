import type { PlanBasis } from '../../../../../src/engines/bass/plan/plan-basis.ts';

/** int cos(alpha x) cos(beta x + gamma) dx over from..to. Derived: product to sum. */
const cosineProduct = (alpha: number, beta: number, gamma: number, from: number, to: number): number => {
  const half = (to - from) / 2;
  const middle = (to + from) / 2;
  const part = (rate: number): number => {
    const argument = rate * half;
    const sinc = Math.abs(argument) < 1e-9 ? 1 : Math.sin(argument) / argument;
    return half * sinc * Math.cos(rate * middle + gamma);
  };
  return part(alpha + beta) + part(beta - alpha);
};

interface Edge {
  readonly along: 0 | 1;
  /** 1 where the edge runs towards larger coordinates. */
  readonly direction: 1 | -1;
  /** Whether the edge lies at the far end of the other axis. */
  readonly far: boolean;
}

const EDGES: readonly Edge[] = [
  { along: 0, direction: 1, far: false },
  { along: 1, direction: 1, far: true },
  { along: 0, direction: -1, far: true },
  { along: 1, direction: -1, far: false },
];

/**
 * The rigid modes of a rectangle in closed form: sqrt(e_m e_n / A) cos(m pi u / width) cos(n pi v / height), e = 1 for order
 * 0, else 2 (e.g. Morse and Ingard, Theoretical Acoustics, 9.4). Corners (0, 0), (width, 0), (width, height), (0, height), edges
 * in that order. No loads: the series is complete as `maxHz` grows, so that `withPoints` gives the same basis back.
 */
export const createRectangleBasis = (
  widthM: number,
  heightM: number,
  { maxHz, soundSpeed }: { readonly maxHz: number; readonly soundSpeed: number },
): PlanBasis => {
  const sizeM = [widthM, heightM] as const;
  const areaM2 = widthM * heightM;
  const bound = ((2 * Math.PI * maxHz) / soundSpeed) ** 2;
  const waves: { wave: readonly [number, number]; scale: number; value: number }[] = [];
  for (let m = 0; (m * Math.PI) / widthM <= Math.sqrt(bound); m++) {
    for (let n = 0; ((m * Math.PI) / widthM) ** 2 + ((n * Math.PI) / heightM) ** 2 <= bound; n++) {
      const wave = [(m * Math.PI) / widthM, (n * Math.PI) / heightM] as const;
      const scale = Math.sqrt(((m === 0 ? 1 : 2) * (n === 0 ? 1 : 2)) / areaM2);
      waves.push({ wave, scale, value: wave[0] ** 2 + wave[1] ** 2 });
    }
  }
  waves.sort((a, b) => a.value - b.value);
  const size = waves.length;
  const lambda = Float64Array.from(waves, ({ value }) => value);

  /** Values of the modes at an edge, without their course along it. */
  const across = ({ along, far }: Edge): Float64Array => {
    const other = along === 0 ? 1 : 0;
    return Float64Array.from(waves, ({ wave, scale }) => scale * (far ? Math.cos(wave[other] * sizeM[other]) : 1));
  };

  const basis: PlanBasis = {
    size,
    lambda,
    rigid: lambda,
    areaM2,
    valuesAt: (pointsUv) => {
      const points = pointsUv.length / 2;
      const values = new Float64Array(points * size);
      for (let p = 0; p < points; p++) {
        const u = Math.min(Math.max(pointsUv[2 * p], 0), widthM);
        const v = Math.min(Math.max(pointsUv[2 * p + 1], 0), heightM);
        for (let i = 0; i < size; i++) {
          const { wave, scale } = waves[i];
          values[p * size + i] = scale * Math.cos(wave[0] * u) * Math.cos(wave[1] * v);
        }
      }
      return values;
    },
    edgeMatrix: (edge, fromM = 0, toM = sizeM[EDGES[edge].along]) => {
      const { along, direction } = EDGES[edge];
      const at = (metres: number): number => (direction === 1 ? metres : sizeM[along] - metres);
      const [from, to] = direction === 1 ? [at(fromM), at(toM)] : [at(toM), at(fromM)];
      const side = across(EDGES[edge]);
      const matrix = new Float64Array(size * size);
      for (let i = 0; i < size; i++) {
        for (let j = 0; j <= i; j++) {
          const value = side[i] * side[j] * cosineProduct(waves[i].wave[along], waves[j].wave[along], 0, from, to);
          matrix[i * size + j] = value;
          matrix[j * size + i] = value;
        }
      }
      return matrix;
    },
    edgeVector: (edge, fromM, toM, order) => {
      const { along, direction } = EDGES[edge];
      const [start, end] = direction === 1 ? [fromM, toM] : [sizeM[along] - fromM, sizeM[along] - toM];
      const rate = (order * Math.PI) / (end - start);
      const side = across(EDGES[edge]);
      return Float64Array.from(
        waves,
        ({ wave }, i) =>
          side[i] * cosineProduct(wave[along], rate, -rate * start, Math.min(start, end), Math.max(start, end)),
      );
    },
    withPoints: () => basis,
    bytes: 8 * size * 5,
  };
  return basis;
};
