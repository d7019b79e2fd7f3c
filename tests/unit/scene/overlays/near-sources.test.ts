import { describe, expect, it } from 'vitest';
import { nearRadiusM } from '../../../../src/scene/overlays/NearSources.tsx';
import { demo } from '../../analysis/rooms.ts';

const [any] = demo().subwoofers;
const subwoofer = {
  ...any,
  atM: [1, 0.3, 2] as [number, number, number],
  sizeM: [0.3, 0.5, 0.4] as [number, number, number],
};

describe('what lies too near to a subwoofer to be foretold', () => {
  it('is a ball as large as its largest side, cut by the slice', () => {
    expect(nearRadiusM(subwoofer, { normal: 'y', atM: 0.3 })).toBeCloseTo(0.5, 9);
    expect(nearRadiusM(subwoofer, { normal: 'y', atM: 0.6 })).toBeCloseTo(0.4, 9);
    expect(nearRadiusM(subwoofer, { normal: 'x', atM: 0.7 })).toBeCloseTo(0.4, 9);
    expect(nearRadiusM(subwoofer, { normal: 'y', atM: 1.1 })).toBe(0);
    expect(nearRadiusM({ ...subwoofer, sizeM: [0.05, 0.05, 0.05] }, { normal: 'z', atM: 2 })).toBeCloseTo(0.1, 9);
  });
});
