import { describe, expect, it } from 'vitest';
import { bessel, setBessel } from '../../../../../src/engines/bass/prism/bessel.ts';

// scipy.special 1.x k0, k1 (computed outside the program, typed); x = 1, 2, 5 also stand in Abramowitz and Stegun, table 9.8.
const VALUES: readonly (readonly [number, number, number])[] = [
  [0.001, 7.0236888005623825, 999.9962381560855],
  [0.1, 2.4270690247020164, 9.853844780870606],
  [0.5, 0.9244190712276656, 1.6564411200033007],
  [1, 0.42102443824070823, 0.6019072301972346],
  [1.99, 0.11530176755177687, 0.1417175616224013],
  [2, 0.1138938727495334, 0.13986588181652246],
  [2.01, 0.11250436099872804, 0.1380408773192077],
  [3.7, 0.015630659921626655, 0.017628035102223265],
  [5, 0.0036910983340425942, 0.004044613445452163],
  [9.3, 3.709591042513211e-5, 3.904166852725512e-5],
  [15.9, 3.879411017320338e-8, 3.9995970510075194e-8],
];

describe('K0 and K1', () => {
  it('agree with another library to 1e-8 from the singularity to where they are dropped', () => {
    for (const [x, k0, k1] of VALUES) {
      setBessel(x);
      expect(Math.abs(bessel.k0 / k0 - 1)).toBeLessThan(1e-8);
      expect(Math.abs(bessel.k1 / k1 - 1)).toBeLessThan(1e-8);
    }
  });

  it('are nothing beyond e^-16', () => {
    setBessel(16.1);
    expect([bessel.k0, bessel.k1]).toEqual([0, 0]);
  });
});
