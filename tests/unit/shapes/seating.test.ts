import { describe, expect, it } from 'vitest';
import { seatPose, seatPoses } from '../../../src/model/seating.ts';
import { chairSolids, personSolids, placed } from '../../../src/shapes/index.ts';
import { bare, boundsOf, byPart, demo, full } from './support.ts';

/** Single precision near 5 m keeps 0.0003 mm; sums of a few such numbers stay under 0.01 mm. */
const EXACT = 5;

const row = (changes: Record<string, unknown>, seat: Record<string, unknown> = {}) =>
  bare({ rows: [{ id: 'r', eyeZM: 2.5, seats: [{ id: 's', xM: 0, ...seat }], ...changes }] });
const chairs = ['single', 'recliner', 'sofa', 'chaise', 'stool'] as const;

describe('chairs', () => {
  it.each(chairs)('a %s has the pan, width and back of the file', (furniture) => {
    const project = row({ furniture, floorM: 0.3, seat: { widthM: 0.68, panHeightM: 0.44, backHeightM: 0.98 } });
    const solids = chairSolids(seatPose(project, 0, 0));
    const own = solids.filter(({ part }) => !part.startsWith('arm'));
    const { min, max } = boundsOf(own);
    expect(max[0] - min[0]).toBeCloseTo(0.68, EXACT);
    expect(boundsOf(byPart(solids, 'seat')).max[1]).toBeCloseTo(0.3 + 0.44, EXACT);
    if (furniture !== 'stool') expect(boundsOf(byPart(solids, 'back')).max[1]).toBeCloseTo(0.3 + 0.98, EXACT);
    expect(boundsOf(solids).min[1]).toBeGreaterThanOrEqual(0.3 - 1e-6);
  });

  it('stands on feet with a gap under it', () => {
    for (const furniture of chairs) {
      const solids = chairSolids(seatPose(row({ furniture }), 0, 0));
      const feet = solids.filter(({ part }) => part.includes('feet'));
      expect(feet.length, furniture).toBeGreaterThan(0);
      expect(boundsOf(feet).min[1], furniture).toBeCloseTo(0, EXACT);
      const above = boundsOf(solids.filter(({ part }) => !part.includes('feet')));
      expect(above.min[1], furniture).toBeGreaterThan(0.08);
    }
  });

  it('has no back where the file gives it none', () => {
    const solids = chairSolids(seatPose(row({ furniture: 'single', seat: { backHeightM: 0 } }), 0, 0));
    expect(byPart(solids, 'back')).toEqual([]);
    expect(boundsOf(solids).max[1]).toBeLessThan(0.7);
  });

  it('leans the back away and lowers its top when reclined', () => {
    const top = (reclineDeg: number) => {
      const pose = seatPose(row({ furniture: 'recliner' }, { reclineDeg }), 0, 0);
      return boundsOf(byPart(chairSolids(pose), 'back')).max;
    };
    const [upright, leaned] = [top(0), top(30)];
    expect(leaned[1]).toBeLessThan(upright[1] - 0.03);
    expect(leaned[2]).toBeGreaterThan(upright[2] + 0.15);
  });

  it('raises a recliner’s leg pad under the legs', () => {
    const front = (reclineDeg: number) =>
      boundsOf(byPart(chairSolids(seatPose(row({ furniture: 'recliner' }, { reclineDeg }), 0, 0)), 'body')).min[2];
    expect(front(0)).toBeGreaterThan(2.5 - 0.4);
    expect(front(30)).toBeLessThan(2.5 - 0.65);
  });

  it('turns as azimuths do: a chair facing right has its back on the left', () => {
    const back = boundsOf(byPart(chairSolids(seatPose(row({ furniture: 'single' }, { facingDeg: 90 }), 0, 0)), 'back'));
    expect(back.max[0]).toBeLessThan(-0.15);
  });
});

describe('sofas', () => {
  const demoRow = demo().rows[0];
  const arms = (xs: readonly number[]) => {
    const project = demo({
      rows: [{ ...demoRow, seats: xs.map((xM, i) => ({ id: `front-${i + 1}`, xM })) }],
      referenceSeat: undefined,
    });
    return seatPoses(project).map((pose) => chairSolids(pose).filter(({ part }) => part.startsWith('arm-')));
  };

  it('is one piece: arms at the ends only when seats meet', () => {
    const [left, middle, right] = arms([-0.72, 0, 0.72]);
    expect(left.map(({ part }) => part)).toEqual(['arm-left', 'arm-feet-left']);
    expect(middle).toEqual([]);
    expect(right.map(({ part }) => part)).toEqual(['arm-right', 'arm-feet-right']);
  });

  it('fills a gap between seats with one shared arm', () => {
    const [left, right] = arms([-0.46, 0.46]);
    const shared = left.filter(({ part }) => part === 'arm-right');
    expect(shared.length).toBe(1);
    const { min, max } = boundsOf(shared);
    expect([min[0], max[0]].map((v) => Math.round(v * 1e5) / 1e5)).toEqual([-0.1, 0.1]);
    expect(right.map(({ part }) => part)).toEqual(['arm-right', 'arm-feet-right']);
  });

  it('stands as two pieces where the seats are far apart', () => {
    const parts = arms([-0.8, 0.8]).map((solids) => solids.map(({ part }) => part));
    expect(parts).toEqual([
      ['arm-left', 'arm-feet-left', 'arm-right', 'arm-feet-right'],
      ['arm-left', 'arm-feet-left', 'arm-right', 'arm-feet-right'],
    ]);
  });
});

describe('people', () => {
  const poses = seatPoses(full());

  it('have the eye inside the head and the crown where the file says', () => {
    for (const pose of poses) {
      const head = boundsOf(byPart(personSolids(pose), 'head'));
      expect(head.max[1], pose.seat.id).toBeCloseTo(pose.eyeM[1] + pose.body.crownAboveEyeM, EXACT);
      for (let axis = 0; axis < 3; axis += 1) {
        expect(pose.eyeM[axis], pose.seat.id).toBeGreaterThan(head.min[axis]);
        expect(pose.eyeM[axis], pose.seat.id).toBeLessThan(head.max[axis]);
      }
      // The ear line is within 15 mm of the middle of the head's length.
      expect(Math.abs(pose.earM[2] - (head.min[2] + head.max[2]) / 2), pose.seat.id).toBeLessThan(0.015);
    }
  });

  it('have the head of a median British man: breadth 155 mm, length 195 mm (head table of facts 3.2, read)', () => {
    const { min, max } = boundsOf(byPart(personSolids(poses[0]), 'head'));
    // A ring of straight pieces touches the true ellipse at its ends.
    expect(max[0] - min[0]).toBeCloseTo(0.155, EXACT);
    expect(max[2] - min[2]).toBeCloseTo(0.195, EXACT);
  });

  it('sit on the pan, against the back, with feet on the floor', () => {
    for (const furniture of ['single', 'recliner', 'sofa'] as const) {
      const pose = seatPose(row({ furniture }), 0, 0);
      const [body] = byPart(personSolids(pose), 'body');
      const { min, max } = boundsOf([body]);
      expect(min[1], furniture).toBeGreaterThanOrEqual(-1e-6);
      expect(min[1], furniture).toBeLessThan(0.004);
      // Back: the fullest part of the backrest's front and the flattened back are the same plane.
      const rest = boundsOf(byPart(chairSolids(pose), 'back'));
      expect(max[2], furniture).toBeCloseTo(rest.min[2], 3);
      // Trunk and thighs stay above the pan: everything over the cushion.
      const world = placed(body.geometry.positions, body.placement);
      for (let i = 0; i < world.length; i += 3) {
        if (world[i + 2] > 2.5 - 0.32) expect(world[i + 1], furniture).toBeGreaterThanOrEqual(pose.panHeightM - 1e-5);
      }
    }
  });

  it('stay over their chair when they are taller, shorter or reclined, and never lose the head', () => {
    for (const eyeAbovePanM of [0.6, 0.69, 0.78, 0.855]) {
      for (const reclineDeg of [0, 20, 45]) {
        const project = row({ furniture: 'recliner' }, { reclineDeg, people: { eyeAbovePanM, earAbovePanM: 0.6 } });
        const pose = seatPose(project, 0, 0);
        const solids = personSolids(pose);
        const head = boundsOf(byPart(solids, 'head'));
        const body = boundsOf(byPart(solids, 'body'));
        // The neck ends inside the head.
        expect(body.max[1]).toBeGreaterThan(head.min[1]);
        expect(body.max[1]).toBeLessThan(head.max[1]);
        expect(boundsOf(solids).min[1]).toBeGreaterThan(-1e-6);
      }
    }
  });

  it('rest their feet on the rail of a high stool and on the floor before a low one', () => {
    const seated = (panHeightM: number) => {
      const pose = seatPose(row({ furniture: 'stool', seat: { panHeightM, backHeightM: 0 } }), 0, 0);
      const [stool] = byPart(chairSolids(pose), 'feet');
      const body = boundsOf(byPart(personSolids(pose), 'body'));
      return { stool: placed(stool.geometry.positions, stool.placement), body };
    };
    const { stool, body } = seated(0.75);
    // The stool's foremost bar: its top is where the soles are, and it lies between heel and toes.
    let frontZ = Infinity;
    for (let i = 2; i < stool.length; i += 3) frontZ = Math.min(frontZ, stool[i]);
    let topM = 0;
    for (let i = 0; i < stool.length; i += 3) if (stool[i + 2] < frontZ + 0.025) topM = Math.max(topM, stool[i + 1]);
    expect(Math.abs(topM - body.min[1])).toBeLessThan(0.005);
    expect(frontZ).toBeGreaterThan(body.min[2]);
    expect(frontZ).toBeLessThan(2.5 - 0.2);
    expect(seated(0.42).body.min[1]).toBeCloseTo(0, EXACT);
  });

  it('keep the head straight to the picture in a turned chair', () => {
    const pose = seatPose(row({ furniture: 'single' }, { facingDeg: 40 }), 0, 0);
    const [head] = byPart(personSolids(pose), 'head');
    expect(head.placement).toEqual({ positionM: pose.eyeM, yawDeg: 0, pitchDeg: 0 });
  });

  it('look the same for the same body: one geometry for a row of equal seats', () => {
    const front = seatPoses(demo()).filter(({ rowIndex }) => rowIndex === 0);
    expect(new Set(front.flatMap((pose) => personSolids(pose).map(({ geometry }) => geometry))).size).toBe(2);
  });
});
