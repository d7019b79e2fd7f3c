import type { RawPart } from '../geometries.ts';
import { facingFront, revolved } from '../mesh/loft.ts';
import { joined, leaned, mirrored, moved, type RawMesh, shaped } from '../mesh/raw.ts';
import { cushion, type RoundedBoxOptions } from '../mesh/rounded-box.ts';
import { block, type ChairMeasures, foot } from './chair-measures.ts';
import {
  ARM_ABOVE_PAN_M,
  BACK_PLANE_M,
  hasFootRail,
  RAIL_BELOW_PAN_M,
  RAIL_RADIUS_M,
  RAIL_Z_M,
  SEAT_FRONT_M,
} from './sitting.ts';

const SOFT: RoundedBoxOptions = { radiusM: 0.05, arc: 2, cuts: [2, 1, 2] };
const PILLOW: RoundedBoxOptions = { radiusM: 0.05, arc: 2, cuts: [2, 2, 1] };
/** Fewer pieces, for the recliner's two pillows and the seat between its arms. */
const PLAIN_PILLOW: RoundedBoxOptions = { radiusM: 0.045, arc: 1, cuts: [2, 2, 1] };
const PLAIN_SEAT: RoundedBoxOptions = { radiusM: 0.045, arc: 1, cuts: [4, 1, 4] };

/** The seat cushion: its fullest middle is the pan the file names. */
const seatCushion = (width: number, pan: number, thick: number, front: number, soft = SOFT): RawMesh => {
  const back = BACK_PLANE_M + 0.03;
  const thickness = Math.min(thick, pan - 0.01);
  return moved(cushion([width, thickness, back - front], 1, 0.22, soft), [0, pan - thickness / 2, (front + back) / 2]);
};

/** A pillow that leans on the back, its fullest middle at the plane a sitter's back touches. */
const backPillow = (width: number, from: number, to: number, thick: number, soft = PILLOW): RawMesh =>
  moved(cushion([width, to - from, thick], 2, 0.34, soft), [0, (from + to) / 2, BACK_PLANE_M + thick / 2]);

const bothSides = (right: RawMesh): RawMesh => joined(right, mirrored(right));

/** Two pillows over one another and the shell behind them, leaned with the sitter. */
const reclinerBack = ({ panM, backM, reclineDeg, widthM, armM }: ChairMeasures): RawMesh[] => {
  if (backM === null) return [];
  const width = widthM - 2 * armM;
  const split = panM + (backM - panM) * 0.58;
  const lean = (mesh: RawMesh) => leaned(mesh, reclineDeg, [panM, 0]);
  const shell = block(
    [-width / 2 - armM * 0.3, panM - 0.12, BACK_PLANE_M + 0.1],
    [width / 2 + armM * 0.3, backM - 0.012, BACK_PLANE_M + 0.19],
    { radiusM: 0.04, arc: 1 },
  );
  return [
    lean(backPillow(width - 0.006, panM - 0.03, split + 0.004, 0.15, PLAIN_PILLOW)),
    lean(backPillow(width - 0.006, split - 0.004, backM, 0.15, PLAIN_PILLOW)),
    lean(shell),
  ];
};

/** The leg pad, turned up about the sitter's knees; folded away it closes the front. */
const legPad = ({ panM, widthM, armM, gapM, legRaiseDeg }: ChairMeasures): RawMesh => {
  const knee = panM + 0.06;
  const width = widthM - 2 * armM - 0.008;
  const pad = block([-width / 2, gapM + 0.01, SEAT_FRONT_M - 0.02], [width / 2, panM - 0.09, SEAT_FRONT_M + 0.05], {
    radiusM: 0.025,
    arc: 1,
    cuts: [1, 1, 1],
  });
  return leaned(pad, legRaiseDeg, [knee, SEAT_FRONT_M - 0.07]);
};

const recliner = (m: ChairMeasures): RawPart[] => {
  const { panM, widthM, armM, gapM } = m;
  const inner = widthM / 2 - armM;
  const arm = block([inner, gapM, SEAT_FRONT_M + 0.01], [widthM / 2, panM + ARM_ABOVE_PAN_M, BACK_PLANE_M + 0.14], {
    radiusM: 0.045,
    arc: 2,
  });
  const base = block([-inner, gapM, SEAT_FRONT_M + 0.06], [inner, panM - 0.12, BACK_PLANE_M + 0.14], { radiusM: 0.01 });
  const glides = joined(
    foot(inner + armM / 2, SEAT_FRONT_M + 0.07, gapM + 0.01, 0.028),
    foot(inner + armM / 2, BACK_PLANE_M + 0.07, gapM + 0.01, 0.028),
  );
  return [
    { part: 'seat', material: 'leather', mesh: seatCushion(2 * inner - 0.006, panM, 0.16, SEAT_FRONT_M, PLAIN_SEAT) },
    { part: 'back', material: 'leather', mesh: joined(...reclinerBack(m)) },
    { part: 'body', material: 'leather', mesh: joined(bothSides(arm), base, legPad(m)) },
    { part: 'feet', material: 'metal', mesh: bothSides(glides) },
  ];
};

const single = (m: ChairMeasures): RawPart[] => {
  const { panM, widthM, armM, gapM, backM, reclineDeg } = m;
  const inner = widthM / 2 - armM;
  const rail = Math.max(gapM, panM - 0.2);
  const arm = block([inner, rail, SEAT_FRONT_M + 0.03], [widthM / 2, panM + ARM_ABOVE_PAN_M, BACK_PLANE_M + 0.16], {
    radiusM: 0.034,
    arc: 2,
  });
  const base = block([-inner, rail, SEAT_FRONT_M + 0.04], [inner, panM - 0.11, BACK_PLANE_M + 0.16], {
    radiusM: 0.012,
  });
  const back =
    backM === null
      ? []
      : [
          backPillow(2 * inner - 0.006, panM - 0.04, backM - 0.015, 0.13),
          block([-widthM / 2 + 0.004, rail, BACK_PLANE_M + 0.09], [widthM / 2 - 0.004, backM, BACK_PLANE_M + 0.17], {
            radiusM: 0.036,
            arc: 1,
          }),
        ];
  const legs = joined(
    foot(inner - 0.02, SEAT_FRONT_M + 0.09, rail + 0.004, 0.02, 7),
    foot(inner - 0.02, BACK_PLANE_M + 0.1, rail + 0.004, 0.02, 7),
  );
  return [
    { part: 'seat', material: 'velvet', mesh: seatCushion(2 * inner - 0.006, panM, 0.13, SEAT_FRONT_M, PLAIN_SEAT) },
    { part: 'back', material: 'velvet', mesh: leaned(joined(...back), reclineDeg, [panM, 0]) },
    { part: 'body', material: 'velvet', mesh: joined(bothSides(arm), base) },
    { part: 'feet', material: 'wood-dark', mesh: bothSides(legs) },
  ];
};

/** One seat's length of a sofa: it meets its neighbours edge to edge. A chaise is the same, drawn out under the legs. */
const sofaSeat = (m: ChairMeasures): RawPart[] => {
  const { panM, widthM, gapM, backM, reclineDeg, furniture } = m;
  const half = widthM / 2;
  const chaise = furniture === 'chaise';
  const front = chaise ? -1.02 : SEAT_FRONT_M;
  const base = block([-half, gapM, front + 0.03], [half, panM - 0.14, BACK_PLANE_M + 0.2], { radiusM: 0.014 });
  const back =
    backM === null
      ? []
      : [
          backPillow(widthM - 0.01, panM - 0.03, backM, 0.15),
          block([-half, gapM + 0.02, BACK_PLANE_M + 0.11], [half, backM - 0.05, BACK_PLANE_M + 0.2], {
            radiusM: 0.03,
            arc: 2,
          }),
        ];
  const parts: RawPart[] = [
    { part: 'seat', material: 'velvet', mesh: seatCushion(widthM - 0.006, panM, 0.17, front) },
    { part: 'back', material: 'velvet', mesh: leaned(joined(...back), reclineDeg, [panM, 0]) },
    { part: 'body', material: 'velvet', mesh: base },
  ];
  if (!chaise) return parts;
  const legs = joined(
    foot(half - 0.06, front + 0.1, gapM + 0.004, 0.022, 4),
    foot(half - 0.06, BACK_PLANE_M + 0.12, gapM + 0.004, 0.022, 4),
  );
  return [...parts, { part: 'feet', material: 'wood-dark', mesh: bothSides(legs) }];
};

/** A high stool's rail: under the feet in front, along both sides and behind the back legs. */
const railRing = (halfWidth: number, panM: number, backZ: number): RawMesh => {
  const bar = (length: number) =>
    revolved(
      [
        [RAIL_RADIUS_M, -length / 2],
        [RAIL_RADIUS_M, length / 2],
      ],
      8,
    );
  const y = panM - RAIL_BELOW_PAN_M;
  const across = shaped(bar(2 * halfWidth + 2 * RAIL_RADIUS_M), ([px, py, pz]) => [py, -px, pz]);
  const along = shaped(bar(backZ - RAIL_Z_M), facingFront);
  const middleZ = (RAIL_Z_M + backZ) / 2;
  return joined(
    moved(across, [0, y, RAIL_Z_M]),
    moved(across, [0, y, backZ]),
    moved(along, [-halfWidth, y, middleZ]),
    moved(along, [halfWidth, y, middleZ]),
  );
};

const stool = ({ panM, widthM }: ChairMeasures): RawPart[] => {
  const depth = Math.min(widthM, 0.46);
  const thick = Math.min(0.09, panM / 2);
  const front = -depth * 0.55;
  const middle = front + depth / 2;
  const seat = moved(cushion([widthM, thick, depth], 1, 0.25, SOFT), [0, panM - thick / 2, middle]);
  const legTop = panM - thick + 0.012;
  const legs = moved(
    bothSides(
      joined(
        foot(widthM / 2 - 0.07, -depth / 2 + 0.07, legTop, 0.014, 5),
        foot(widthM / 2 - 0.07, depth / 2 - 0.07, legTop, 0.014, 5),
      ),
    ),
    [0, 0, middle],
  );
  const rails = hasFootRail('stool', panM) ? [railRing(widthM / 2 - 0.045, panM, front + depth - 0.05)] : [];
  return [
    { part: 'seat', material: 'leather', mesh: seat },
    { part: 'feet', material: 'metal', mesh: joined(legs, ...rails) },
  ];
};

/** A sofa's arm of a given width about x = 0, with its two feet. */
export const sofaArm = ({ panM, gapM }: ChairMeasures, widthM: number): RawPart[] => [
  {
    part: 'arm',
    material: 'velvet',
    mesh: block([-widthM / 2, gapM, SEAT_FRONT_M - 0.005], [widthM / 2, panM + ARM_ABOVE_PAN_M, BACK_PLANE_M + 0.21], {
      radiusM: 0.05,
      arc: 2,
    }),
  },
  {
    part: 'arm-feet',
    material: 'wood-dark',
    mesh: joined(foot(0, SEAT_FRONT_M + 0.06, gapM + 0.004, 0.022), foot(0, BACK_PLANE_M + 0.14, gapM + 0.004, 0.022)),
  },
];

/** The parts of one chair in its own axes: origin on the row's floor under the sitter's hip. */
export const chairParts = (m: ChairMeasures): RawPart[] => {
  if (m.furniture === 'recliner') return recliner(m);
  if (m.furniture === 'single') return single(m);
  return m.furniture === 'stool' ? stool(m) : sofaSeat(m);
};
