import { describe, expect, it } from 'vitest';
import { seatPose } from '../../../src/model/seating.ts';
import { occluders, personSolids, placed, roomSolids } from '../../../src/shapes/index.ts';
import { boundsOf, demo, full } from './support.ts';

const project = full();
const found = occluders(project);

describe('occluders', () => {
  it('are exactly the triangles that are drawn', () => {
    const drawn = roomSolids(project);
    for (const occluder of found) {
      const solids = drawn.filter(
        ({ kind, id, part }) =>
          kind === occluder.kind && id === occluder.id && !(kind === 'picture' && part === 'face'),
      );
      const corners: number[] = [];
      for (const { geometry, placement } of solids) {
        const world = placed(geometry.positions, placement);
        for (const index of geometry.indices) corners.push(...world.subarray(3 * index, 3 * index + 3));
      }
      const own: number[] = [];
      for (const index of occluder.indices) own.push(...occluder.positions.subarray(3 * index, 3 * index + 3));
      expect(own.length, occluder.id).toBeGreaterThan(0);
      expect(own, occluder.id).toEqual(corners);
    }
  });

  it('take in every chair, person, riser, object, loudspeaker, subwoofer, projector and the picture’s frame', () => {
    const counts = new Map<string, number>();
    for (const { kind } of found) counts.set(kind, (counts.get(kind) ?? 0) + 1);
    expect(Object.fromEntries(counts)).toEqual({
      seat: 11,
      person: 11,
      riser: 1,
      object: 7,
      projector: 1,
      loudspeaker: project.loudspeakers.length,
      subwoofer: 4,
      picture: 1,
    });
  });

  it('name the seat and row they belong to', () => {
    for (const { kind, id, seatId, rowIndex } of found) {
      if (kind === 'seat' || kind === 'person') {
        expect(seatId).toBe(id);
        expect(project.rows[rowIndex!].seats.some((seat) => seat.id === id)).toBe(true);
      } else expect(seatId).toBeUndefined();
    }
  });

  it('have bounds that hold their vertices tightly', () => {
    for (const { positions, boundsMin, boundsMax } of found) {
      for (let axis = 0; axis < 3; axis += 1) {
        const values = positions.filter((_, i) => i % 3 === axis);
        expect(Math.min(...values)).toBe(boundsMin[axis]);
        expect(Math.max(...values)).toBe(boundsMax[axis]);
      }
    }
  });

  it('keep their arrays while nothing moves, and move only what moved', () => {
    const again = occluders(full());
    expect(again.every((occluder, i) => occluder.positions === found[i].positions)).toBe(true);
    const moved = occluders(
      demo({ ...full(), subwoofers: full().subwoofers.map((s, i) => (i ? s : { ...s, atM: [-1.5, 0.22, 0.4] })) }),
    );
    const changed = moved.filter((occluder, i) => occluder.positions !== found[i].positions);
    expect(changed.map(({ id }) => id)).toEqual(['S1']);
  });

  it('let sound and sight through transparent cloth and hide behind any other', () => {
    const area = (acousticallyTransparent: boolean) => {
      const p = demo({ picture: { ...project.picture, acousticallyTransparent } });
      const [picture] = occluders(p).filter(({ kind }) => kind === 'picture');
      return picture.indices.length;
    };
    expect(area(false) - area(true)).toBe(8 * 5 * 6);
    expect(occluders(project, { picture: false }).some(({ kind }) => kind === 'picture')).toBe(false);
  });

  it('seat other bodies on request, or nobody', () => {
    const tall = { eyeAbovePanM: 0.855, earAbovePanM: 0.845, earBehindEyeM: 0.1, crownAboveEyeM: 0.11 };
    const tallPeople = occluders(project, { people: () => tall }).filter(({ kind }) => kind === 'person');
    const pose = seatPose(project, 0, 0, tall);
    expect(tallPeople[0].boundsMax[1]).toBeCloseTo(pose.eyeM[1] + 0.11, 5);
    expect(tallPeople[0].boundsMax[1]).toBe(boundsOf(personSolids(pose)).max[1]);
    const alone = occluders(project, { people: ({ seat, body }) => (seat.id === 'front-1' ? body : null) });
    expect(alone.filter(({ kind }) => kind === 'person').map(({ id }) => id)).toEqual(['front-1']);
  });
});
