import { radiansOf } from '../../math/angles.ts';
import type { Vec3 } from '../../math/vec3.ts';
import type { Row } from '../../model/project.ts';
import type { SeatPose } from '../../model/seating.ts';
import { revolved } from '../mesh/loft.ts';
import { emptyMesh, type RawMesh } from '../mesh/raw.ts';
import { boxBetween, type RoundedBoxOptions } from '../mesh/rounded-box.ts';
import { armWidthM, type Furniture, hasBack, legRaiseDeg } from './sitting.ts';

/** All that a chair's shape depends on; heights above the row's floor. */
export interface ChairMeasures {
  readonly furniture: Furniture;
  readonly widthM: number;
  readonly panM: number;
  /** Top of the back; null where there is none. */
  readonly backM: number | null;
  readonly reclineDeg: number;
  readonly armM: number;
  /** Clear height under the seat. */
  readonly gapM: number;
  readonly legRaiseDeg: number;
}

export const measuresOf = (row: Row, { reclineDeg }: Pick<SeatPose, 'reclineDeg'>): ChairMeasures => {
  const { furniture, seat } = row;
  return {
    furniture,
    widthM: seat.widthM,
    panM: seat.panHeightM,
    backM: hasBack(row) ? seat.backHeightM : null,
    reclineDeg: hasBack(row) ? reclineDeg : 0,
    armM: armWidthM(furniture, seat.widthM),
    gapM: Math.max(0.012, Math.min(0.13, seat.panHeightM * 0.28)),
    legRaiseDeg: legRaiseDeg(furniture, reclineDeg),
  };
};

/** A block between two corners, or nothing where it would be thinner than 8 mm. */
export const block = (min: Vec3, max: Vec3, options: RoundedBoxOptions = {}): RawMesh =>
  max.some((value, axis) => value - min[axis] < 0.008) ? emptyMesh() : boxBetween(min, max, options);

/** A turned foot from the floor up, narrower below, leaning outwards by `splayDeg` in x and z. */
export const foot = (x: number, z: number, heightM: number, radiusM: number, splayDeg = 0): RawMesh => {
  const reach = heightM * Math.tan(radiansOf(splayDeg));
  const mesh = revolved(
    [
      [radiusM * 0.62, 0],
      [radiusM, heightM],
    ],
    8,
  );
  const { positions } = mesh;
  for (let i = 0; i < positions.length; i += 3) {
    const low = 1 - positions[i + 1] / heightM;
    positions[i] += x + Math.sign(x) * reach * low;
    positions[i + 2] += z + Math.sign(z) * reach * low;
  }
  return mesh;
};
