import { describe, expect, it } from 'vitest';
import { cross, distance, dot, length, normalise, subtract } from '../../../src/math/vec3.ts';
import type { Project } from '../../../src/model/project.ts';
import { seatPoses } from '../../../src/model/seating.ts';
import {
  loudspeakerAim,
  loudspeakerFront,
  loudspeakerSolids,
  pictureFace,
  pictureSolids,
  placed,
  projectorSolids,
  subwooferSolids,
} from '../../../src/shapes/index.ts';
import { bare, boundsOf, byPart, demo, full } from './support.ts';

const EXACT = 5;
const project = demo();
const ear = seatPoses(project).find(({ seat }) => seat.id === 'front-2')!.earM;

const withSpeaker = (changes: object): Project =>
  bare({ loudspeakers: [{ id: 'x', channel: 'M+030', atM: [-1, 1.1, 0.4], sizeM: [0.3, 0.4, 0.2], ...changes }] });
const only = (p: Project) => p.loudspeakers[0];

/** A cabinet's own bounds, before it is placed. */
const ownBounds = (p: Project) =>
  boundsOf(
    loudspeakerSolids(p, only(p))
      .filter(({ part }) => part !== 'stand' && part !== 'spacer')
      .map((solid) => ({ ...solid, placement: { positionM: [0, 0, 0], yawDeg: 0, pitchDeg: 0 } })),
  );

describe('loudspeakers', () => {
  it('aim at the reference ear, or at the point the file names', () => {
    for (const loudspeaker of project.loudspeakers) {
      const aim = loudspeakerAim(project, loudspeaker);
      expect(length(aim)).toBeCloseTo(1, 12);
      const to = normalise(subtract(ear, loudspeaker.atM));
      expect(distance(aim, to)).toBeLessThan(1e-12);
    }
    const aimed = withSpeaker({ aim: [1, 1.1, 0.4] });
    expect(loudspeakerAim(aimed, only(aimed))).toEqual([1, 0, 0]);
  });

  it('a dipole without an aim lies along its wall, front lobe forward (contract)', () => {
    const left = withSpeaker({ pattern: 'dipole', mount: 'wall', atM: [-1.9, 1.5, 3] });
    expect(loudspeakerAim(left, only(left))).toEqual([0, 0, -1]);
    const right = withSpeaker({ pattern: 'dipole', mount: 'wall', atM: [1.9, 1.5, 3] });
    expect(loudspeakerAim(right, only(right))).toEqual([0, 0, -1]);
    // Its face looks into the room, its null plane towards the seats.
    const front = loudspeakerFront(right, only(right));
    expect(cross(front.right, front.up)[0]).toBeCloseTo(-1, 12);
    const back = withSpeaker({ pattern: 'dipole', mount: 'wall', atM: [1, 1.5, 4.9] });
    expect(loudspeakerAim(back, only(back))).toEqual([-1, 0, 0]);
  });

  it.each(['box', 'omni', 'dipole', 'bipole'] as const)('a %s cabinet is as large as the file says', (pattern) => {
    const { min, max } = ownBounds(withSpeaker({ pattern }));
    // An oval column of straight pieces touches its box with a vertex at front and back; its sides as well.
    expect(max[0] - min[0]).toBeCloseTo(0.3, EXACT);
    expect(max[1] - min[1]).toBeCloseTo(0.4, EXACT);
    expect(max[2] - min[2]).toBeCloseTo(0.2, EXACT);
  });

  it('shows real cones, nothing of them before the front', () => {
    for (const loudspeaker of full().loudspeakers) {
      const front = loudspeakerFront(full(), loudspeaker);
      const normal = cross(front.right, front.up);
      for (const { geometry, placement, part } of loudspeakerSolids(full(), loudspeaker)) {
        if (part === 'stand') continue;
        const world = placed(geometry.positions, placement);
        let most = -Infinity;
        for (let i = 0; i < world.length; i += 3) {
          const ahead = dot(subtract([world[i], world[i + 1], world[i + 2]], front.centreM), normal);
          most = Math.max(most, ahead);
        }
        expect(most, `${loudspeaker.id} ${part}`).toBeLessThan(1e-6);
      }
    }
    expect(byPart(loudspeakerSolids(project, project.loudspeakers[0]), 'cones').length).toBe(1);
  });

  it('turn to the ear on a stand: the front’s normal is the aim, half the depth before the acoustic centre', () => {
    for (const loudspeaker of project.loudspeakers.filter(({ mount }) => mount === 'stand')) {
      const front = loudspeakerFront(project, loudspeaker);
      const aim = loudspeakerAim(project, loudspeaker);
      expect(distance(cross(front.right, front.up), aim)).toBeLessThan(1e-9);
      expect(dot(subtract(front.centreM, loudspeaker.atM), aim)).toBeCloseTo(loudspeaker.sizeM[2] / 2, 9);
      expect([front.widthM, front.heightM]).toEqual([loudspeaker.sizeM[0], loudspeaker.sizeM[1]]);
      expect(front.right[1]).toBeCloseTo(0, 12);
    }
  });

  it('stand on the floor, the riser or nothing, the pole meeting the cabinet', () => {
    const [solid] = byPart(loudspeakerSolids(project, project.loudspeakers[0]), 'stand');
    const { min, max } = boundsOf([solid]);
    expect(min[1]).toBeCloseTo(0, EXACT);
    expect(max[1]).toBeGreaterThan(1.15 - 0.3 - 0.02);
    expect(max[1]).toBeLessThan(1.15 - 0.3 + 0.02);
    const onRiser = demo({ loudspeakers: [{ ...project.loudspeakers[0], atM: [-1.8, 1.4, 5] }] });
    expect(boundsOf(byPart(loudspeakerSolids(onRiser, only(onRiser)), 'stand')).min[1]).toBeCloseTo(0.36, EXACT);
    const low = withSpeaker({ atM: [-1, 0.2, 0.4] });
    expect(byPart(loudspeakerSolids(low, only(low)), 'stand')).toEqual([]);
  });

  it('hang flat on a wall whatever they aim at', () => {
    const ls = project.loudspeakers.find(({ id }) => id === 'Ls')!;
    const front = loudspeakerFront(project, ls);
    expect(cross(front.right, front.up).map((v) => Math.round(v * 1e9) / 1e9 + 0)).toEqual([1, 0, 0]);
    const { min, max } = boundsOf(loudspeakerSolids(project, ls));
    expect(min[0]).toBeCloseTo(-2.15, EXACT);
    expect(max[0]).toBeCloseTo(-2.06 + 0.08, EXACT);
  });

  it('lie flush in wall or ceiling: only a rim of millimetres shows', () => {
    for (const loudspeaker of full().loudspeakers.filter(({ mount }) => mount.startsWith('in-'))) {
      const { min, max } = boundsOf(loudspeakerSolids(full(), loudspeaker));
      const ceiling = loudspeaker.mount === 'in-ceiling';
      const [low, high, plane] = ceiling ? [min[1], max[1], 2.7] : [min[0], max[0], 2.15];
      expect(high).toBeCloseTo(plane, EXACT);
      expect(high - low).toBeLessThan(0.01);
      const normal = cross(loudspeakerFront(full(), loudspeaker).right, loudspeakerFront(full(), loudspeaker).up);
      expect(normal[ceiling ? 1 : 0]).toBeCloseTo(-1, 9);
    }
  });
});

describe('subwoofers', () => {
  it('fill the box the file gives, feet included', () => {
    for (const subwoofer of project.subwoofers) {
      const { min, max } = boundsOf(subwooferSolids(project, subwoofer));
      for (let axis = 0; axis < 3; axis += 1) {
        expect(min[axis]).toBeCloseTo(subwoofer.atM[axis] - subwoofer.sizeM[axis] / 2, EXACT);
        expect(max[axis]).toBeCloseTo(subwoofer.atM[axis] + subwoofer.sizeM[axis] / 2, EXACT);
      }
    }
  });
});

describe('the picture', () => {
  const panel = { kind: 'panel', widthM: 1.6, aspect: 1.6, bottomM: 0.8, centreXM: 0.2, offFrontWallM: 0.06 };

  it('has the face of the file: width, width / aspect, bottom edge, distance from the wall', () => {
    const face = pictureFace(bare({ picture: panel }));
    expect(face.centreM).toEqual([0.2, 1.3, 0.06]);
    expect([face.widthM, face.heightM, face.bottomM, face.zM]).toEqual([1.6, 1, 0.8, 0.06]);
    expect(cross(face.right, face.up)).toEqual(face.normal);
  });

  it.each(['panel', 'screen'])('draws exactly that rectangle on a %s, texture 0 to 1 from its lower left', (kind) => {
    const p = bare({ picture: { ...panel, kind } });
    const [lit] = byPart(pictureSolids(p), 'face');
    const { min, max } = boundsOf([lit]);
    expect([...min, ...max].map((v) => Math.round(v * 1e5) / 1e5)).toEqual([-0.6, 0.8, 0.06, 1, 1.8, 0.06]);
    const world = placed(lit.geometry.positions, lit.placement);
    for (let i = 0; i < world.length / 3; i += 1) {
      expect(lit.geometry.uvs[2 * i]).toBeCloseTo((world[3 * i] + 0.6) / 1.6, 5);
      expect(lit.geometry.uvs[2 * i + 1]).toBeCloseTo(world[3 * i + 1] - 0.8, 5);
    }
    expect(lit.material).toBe('picture');
  });

  it.each(['panel', 'screen'])('has nothing before the face of a %s and nothing in the wall', (kind) => {
    const solids = pictureSolids(bare({ picture: { ...panel, kind } }));
    const { min, max } = boundsOf(solids);
    expect(max[2]).toBeCloseTo(0.06, EXACT);
    expect(min[2]).toBeGreaterThan(0);
    expect(min[0]).toBeLessThan(-0.6 - 0.005);
  });

  it('has a projector only with a screen, its lens at the file’s point', () => {
    expect(projectorSolids(bare({ picture: panel }))).toEqual([]);
    const glass = boundsOf(byPart(projectorSolids(project), 'lens'));
    expect(glass.min[2]).toBeCloseTo(5.5, EXACT);
    const { max } = boundsOf(projectorSolids(project));
    expect(max[1]).toBeCloseTo(2.7, EXACT);
  });
});
