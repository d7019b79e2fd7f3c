import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findings } from '../../src/analysis/findings.ts';
import { geometryReadout } from '../../src/analysis/geometry.ts';
import { checkProject } from '../../src/model/checks/project.ts';
import { clampSeatInside } from '../../src/model/commands/clamp.ts';
import { duplicateItem } from '../../src/model/commands/duplicate.ts';
import { moveSeat } from '../../src/model/commands/move.ts';
import { insertPlanCorner, movePlanEdge, toPolygon } from '../../src/model/commands/plan.ts';
import type { Project } from '../../src/model/project.ts';
import { frameOf, reachUpM } from '../../src/model/room/places.ts';
import { roomShape } from '../../src/model/room/shape.ts';
import { projectSchema } from '../../src/model/schema/project.ts';
import { lightRoom } from '../../src/scene/light/light-room.ts';
import { LIGHT_STRIDE, lightPart } from '../../src/scene/light/room-light.ts';
import { roomSolids } from '../../src/shapes/index.ts';
import { milli, rooms } from './any-rooms.ts';

const SEED = 20261127;

const share = milli(0, 1);
const placesIn = fc.array(fc.tuple(share, share, share), { minLength: 9, maxLength: 9 });
const edges = fc.array(fc.tuple(fc.nat(15), share, share), { minLength: 4, maxLength: 4 });

/** A room of any kind with a row of three, four loudspeakers, a subwoofer, two openings and two patches, all inside. */
const furnished = fc
  .tuple(rooms, placesIn, edges, fc.constantFrom('stand', 'wall', 'in-wall', 'in-ceiling'))
  .map(([{ room }, places, onWalls, mount]): Project | null => {
    const shape = roomShape({ room });
    if (shape.highestM < 1.8) return null;
    const inside = (index: number, around: readonly [number, number, number]) => {
      const at = places[index].map((part, axis) => shape.minM[axis] + part * (shape.maxM[axis] - shape.minM[axis]));
      return shape.nearestInside([at[0], at[1], at[2]], around);
    };
    const walls = onWalls.map(([number, along, up], index) => {
      const wall = shape.walls[number % shape.walls.length];
      const widthM = Math.max(0.05, wall.lengthM * 0.3);
      const item = {
        id: `w${index}`,
        surface: wall.surface,
        wall: wall.edge,
        fromM: along * (wall.lengthM - widthM),
        widthM,
      };
      const probe = { ...item, bottomM: 0, heightM: 1 };
      const frame = frameOf({ room } as Project, probe);
      const reach = frame ? reachUpM(frame, probe) : 0;
      return { ...item, bottomM: up * reach * 0.4, heightM: Math.max(0.01, reach * 0.5) };
    });
    const seats = [0, 1, 2].map((index) => {
      const [xM, , z] = inside(index, [0.3, 0, 0.3]);
      return { id: `s${index}`, xM, eyeZM: z - 0.1 };
    });
    const raw = {
      format: 'parterre/project',
      version: 1,
      room: {
        ...room,
        openings: walls.slice(0, 2).map((wall, i) => ({ ...wall, kind: i === 0 ? 'door' : 'window', leaf: 'open' })),
        patches: walls.slice(2).map((wall) => ({ ...wall, finish: 'fibre-panel-50' })),
      },
      picture: { widthM: 1 },
      rows: [{ id: 'r', eyeZM: seats[0].eyeZM, floorM: 0.2, furniture: 'single', seats }],
      loudspeakers: [3, 4, 5, 6].map((index) => ({
        id: `l${index}`,
        channel: index === 3 ? 'M+000' : 'M+110',
        atM: inside(index, [0.1, 0.1, 0.1]),
        mount,
        pattern: index === 4 ? 'dipole' : 'box',
        sizeM: [0.2, 0.2, 0.2],
      })),
      subwoofers: [{ id: 'S', atM: inside(7, [0.2, 0.2, 0.2]), sizeM: [0.4, 0.4, 0.4] }],
    };
    const parsed = projectSchema.safeParse(raw);
    return parsed.success && checkProject(parsed.data).length === 0 ? parsed.data : null;
  })
  .filter((project): project is Project => project !== null);

const finite = (value: unknown, path = ''): void => {
  if (typeof value === 'number') expect(Number.isNaN(value), path).toBe(false);
  else if (value && typeof value === 'object')
    for (const [key, inner] of Object.entries(value)) finite(inner, `${path}.${key}`);
};

describe(`any room (seed ${SEED})`, () => {
  it('is measured and judged without a number that is none', () => {
    fc.assert(
      fc.property(furnished, (project) => {
        const geometry = geometryReadout(project);
        finite(geometry);
        expect(geometry.room.volumeM3).toBeCloseTo(roomShape(project).volumeM3, 9);
        expect(geometry.room.surfaceM2).toBeCloseTo(roomShape(project).surfaceM2, 6);
        for (const finding of findings(project, geometry, null)) finite(finding);
      }),
      { seed: SEED, numRuns: 60 },
    );
  });

  it('is drawn and lit without a number that is none', () => {
    fc.assert(
      fc.property(furnished, (project) => {
        const solids = roomSolids(project);
        const light = lightRoom(project, solids, new Float32Array(24).fill(0.2));
        for (const solid of solids) {
          const { positions, normals } = solid.geometry;
          expect(positions.every(Number.isFinite) && normals.every(Number.isFinite)).toBe(true);
          expect([...solid.placement.positionM, solid.placement.yawDeg].every(Number.isFinite)).toBe(true);
          if (solid.kind !== 'shell' && solid.kind !== 'patch') continue;
          const out = new Float32Array((positions.length / 3) * LIGHT_STRIDE);
          lightPart(light, solid, solid.geometry, solid.placement, out);
          expect(out.every((value) => Number.isFinite(value) && value >= 0)).toBe(true);
        }
      }),
      { seed: SEED, numRuns: 25 },
    );
  });

  it('gives back a good document or a reason, whatever is done to its walls and seats', () => {
    fc.assert(
      fc.property(furnished, fc.nat(15), milli(-1, 1), milli(-6, 6), milli(-2, 10), (project, edge, by, x, z) => {
        const seat = clampSeatInside(project, 's1', { xM: x, eyeZM: z });
        const edits = [moveSeat(project, 's1', seat), duplicateItem(project, { kind: 'subwoofer', id: 'S' })];
        const polygon = toPolygon(project);
        edits.push(polygon);
        // Both can always be done: the seat was brought inside first, and the walls stay where they are.
        expect([edits[0].ok, polygon.ok]).toEqual([true, true]);
        if (polygon.ok) {
          const { walls } = roomShape(polygon.project);
          const wall = walls[edge % walls.length];
          const middle = [(wall.from[0] + wall.to[0]) / 2, (wall.from[1] + wall.to[1]) / 2] as const;
          edits.push(
            movePlanEdge(polygon.project, wall.edge, by),
            insertPlanCorner(polygon.project, wall.edge, middle),
          );
        }
        for (const edit of edits)
          if (edit.ok) expect(checkProject(projectSchema.parse(edit.project))).toEqual([]);
          else expect(edit.reason.field).not.toBe('');
      }),
      { seed: SEED, numRuns: 150 },
    );
  });
});
