import type { Vec3 } from '../../math/vec3.ts';
import type { RawPart } from '../geometries.ts';
import { baffle, type Hole } from '../mesh/baffle.ts';
import { revolved } from '../mesh/loft.ts';
import { joined, moved, type RawMesh, shaped, turned } from '../mesh/raw.ts';
import { boxBetween, roundedBox } from '../mesh/rounded-box.ts';
import { driverParts, WELL_M } from './driver.ts';

/** Where a front of this size has its drivers: cones along the longer way, the tweeter above them or in their middle. */
const driverHoles = (widthM: number, heightM: number): Hole[] => {
  const narrow = Math.min(widthM, heightM);
  const long = Math.max(widthM, heightM);
  const cone = narrow * 0.37;
  const dome = Math.min(0.034, narrow * 0.16);
  const lying = widthM > heightM;
  const at = (along: number, radiusM: number): Hole =>
    lying ? { x: along, y: 0, radiusM } : { x: 0, y: along, radiusM };
  if (long > narrow * 1.95) {
    const apart = Math.min(long / 2 - cone - 0.025, cone + dome + 0.03 + (long - narrow * 1.95) * 0.12);
    return [at(-apart, cone), at(0, dome), at(apart, cone)];
  }
  if (long < narrow * 1.12) return [{ x: 0, y: 0, radiusM: cone }];
  const tall = { x: 0, y: -heightM / 2 + cone + narrow * 0.1, radiusM: cone };
  const room = heightM / 2 - (tall.y + cone);
  if (!lying && room > dome * 2.4) return [tall, { x: 0, y: tall.y + cone + room / 2, radiusM: dome }];
  return lying ? [at(-long / 2 + cone + 0.03, cone), at(long / 2 - dome - 0.05, dome)] : [tall];
};

/**
 * A rounded box about the origin with a baffle as its front, deep enough for drivers to sink in; bounds are its size. The
 * box's own rounded front lies behind the drivers' wells; the baffle is set in a little from its sides.
 */
export const fronted = (
  [width, height, depth]: Vec3,
  radiusM: number,
  wellM: number,
  holes: readonly Hole[],
): RawMesh => {
  const front = -depth / 2;
  const inset = radiusM * 0.3;
  return joined(
    boxBetween([-width / 2, -height / 2, front + wellM], [width / 2, height / 2, depth / 2], { radiusM }),
    moved(baffle(width - inset, height - inset, wellM + radiusM, holes), [0, 0, front]),
  );
};

/** How deep a front may be let in; too shallow for drivers where it is less than WELL_M. */
export const wellOf = (depth: number): number => Math.min(WELL_M, depth * 0.4);

/** A box loudspeaker about its middle: rounded cabinet, a baffle let into its front, drivers in it. */
export const boxCabinet = (size: Vec3): RawPart[] => {
  const [width, height, depth] = size;
  const well = wellOf(depth);
  const radiusM = Math.min(0.012, width / 8, height / 8, depth / 8);
  const holes = driverHoles(width * 0.96, height * 0.96);
  return [
    { part: 'cabinet', material: 'cabinet', mesh: fronted(size, radiusM, well, holes) },
    ...(well < WELL_M ? [] : driverParts(holes, -depth / 2)),
  ];
};

/**
 * A dipole or bipole about its middle: a flat trapezium in plan whose two angled baffles look fore and aft along the wall
 * while its narrow face looks into the room. Bounds are its size.
 */
export const angledCabinet = ([width, height, depth]: Vec3): RawPart[] => {
  const narrow = 0.36;
  const radiusM = Math.min(0.01, depth / 8);
  // The slopes end where the back edge's rounding begins, so that the back keeps its full width.
  const sloped = depth - radiusM;
  const body = shaped(roundedBox([width, height, depth], { radiusM }), ([x, y, z]) => [
    x * (narrow + (1 - narrow) * Math.min(1, (z + depth / 2) / sloped)),
    y,
    z,
  ]);
  // Each slope's outward direction in plan and the middle of the slope.
  const run = (width / 2) * (1 - narrow);
  const slope = Math.hypot(run, sloped);
  const degrees = (Math.atan2(sloped, run) * 180) / Math.PI;
  const radius = Math.min(slope * 0.34, height * 0.3);
  const disc = (r: number, from: number, to: number): RawMesh =>
    revolved(
      [
        [r, from],
        [r, to - 0.002],
        [r * 0.86, to],
        [r * 0.7, to - 0.002],
        [r * 0.3, to - 0.004],
        [0, to - 0.001],
      ],
      20,
    );
  const lay = (mesh: RawMesh, sign: 1 | -1): RawMesh => {
    const front = shaped(mesh, (p) => [p[0], p[2], -p[1]]);
    return moved(turned(front, sign * degrees), [sign * (width / 2 - run / 2), 0, -radiusM / 2]);
  };
  const driver = (r: number): RawMesh => joined(lay(disc(r, -0.01, 0.003), 1), lay(disc(r, -0.01, 0.003), -1));
  return [
    { part: 'cabinet', material: 'cabinet', mesh: body },
    { part: 'cones', material: 'cone', mesh: driver(radius) },
  ];
};

/** A loudspeaker that sounds all round: an upright oval column with a cloth band. */
export const roundCabinet = ([width, height, depth]: Vec3): RawPart[] => {
  const column = (profile: readonly (readonly [number, number])[]): RawMesh =>
    shaped(revolved(profile, 28), ([x, y, z]) => [x * width, y, z * depth]);
  const h = height / 2;
  const lip = Math.min(0.012, h / 6);
  return [
    {
      part: 'cabinet',
      material: 'cabinet',
      mesh: column([
        [0.46, -h],
        [0.5, -h + lip],
        [0.5, 0],
        [0.485, 0.002],
        [0.485, h - 3 * lip],
        [0.5, h - 3 * lip + 0.002],
        [0.5, h - lip],
        [0.46, h],
      ]),
    },
    {
      part: 'grille',
      material: 'grille',
      mesh: column([
        [0.494, 0.004],
        [0.494, h - 3 * lip - 0.002],
      ]),
    },
  ];
};

/** A flush loudspeaker: what shows of it is a thin rim and its grille, before the surface its origin lies on. */
export const flushCabinet = ([width, height]: Vec3, rimM: number): RawPart[] => {
  const round = Math.abs(width - height) < 0.02 * width;
  if (round) {
    const disc = (profile: readonly (readonly [number, number])[]): RawMesh =>
      shaped(revolved(profile, 36), ([x, y, z]) => [x, z, -y]);
    const r = width / 2;
    return [
      {
        part: 'cabinet',
        material: 'cabinet',
        mesh: disc([
          [r, 0],
          [r, rimM * 0.5],
          [r - 0.003, rimM],
          [r - 0.009, rimM],
          [r - 0.01, rimM * 0.5],
        ]),
      },
      {
        part: 'grille',
        material: 'grille',
        mesh: disc([
          [r - 0.0102, rimM * 0.3],
          [r - 0.0102, rimM * 0.75],
          [r * 0.5, rimM * 0.95],
        ]),
      },
    ];
  }
  const rim = baffleRim(width, height, rimM);
  return [
    { part: 'cabinet', material: 'cabinet', mesh: rim },
    {
      part: 'grille',
      material: 'grille',
      mesh: boxBetween(
        [0.011 - width / 2, 0.011 - height / 2, -rimM * 0.8],
        [width / 2 - 0.011, height / 2 - 0.011, 0],
        {
          radiusM: 0.002,
        },
      ),
    },
  ];
};

/** Four thin bars round a rectangle, from the surface out to `rimM`. */
const baffleRim = (width: number, height: number, rimM: number): RawMesh => {
  const [w, h, t] = [width / 2, height / 2, 0.011];
  const bar = (x0: number, y0: number, x1: number, y1: number) =>
    boxBetween([x0, y0, -rimM], [x1, y1, 0], { radiusM: 0.002 });
  return joined(bar(-w, -h, w, t - h), bar(-w, h - t, w, h), bar(-w, t - h, t - w, h - t), bar(w - t, t - h, w, h - t));
};
