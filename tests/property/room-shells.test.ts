import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roomShape } from '../../src/model/room/shape.ts';
import { projectSchema } from '../../src/model/schema/project.ts';
import { type Solid, shellSolids } from '../../src/shapes/index.ts';
import { facesOf, openEdges, volumeOf } from '../unit/shapes/support.ts';
import { rooms } from './any-rooms.ts';

const SEED = 20261126;

/** Area of the faces of a solid whose middle lies, within a tenth of a millimetre, on the room's own skin. */
const innerArea = (solid: Solid, isOn: (at: readonly [number, number, number]) => boolean): number => {
  const { positions } = solid.geometry;
  return facesOf(solid.geometry).reduce((sum, { vector, corners }) => {
    const middle = [0, 1, 2].map((c) => corners.reduce((total, k) => total + positions[3 * k + c], 0) / 3);
    return isOn(middle as unknown as [number, number, number]) ? sum + Math.hypot(...vector) / 2 : sum;
  }, 0);
};

const projectOf = ({ room }: { room: object }) =>
  projectSchema.parse({
    format: 'parterre/project',
    version: 1,
    room,
    rows: [{ id: 'r', eyeZM: 2.5, furniture: 'single', seats: [{ id: 's', xM: 0 }] }],
  });

describe(`the drawn shell of any room (seed ${SEED})`, () => {
  it('is closed, turned outwards and as large inside as the room', () => {
    fc.assert(
      fc.property(rooms, (plain) => {
        const project = projectOf(plain);
        const shape = roomShape(project);
        const walls = shellSolids(project).filter(({ kind, part }) => kind === 'shell' && part.startsWith('wall'));
        for (const { geometry, id, part } of walls) {
          expect(openEdges(geometry), `${id} ${part}`).toBe(0);
          expect(volumeOf(geometry), `${id} ${part}`).toBeGreaterThan(0);
        }
        const polygon = project.room.plan.shape === 'polygon';
        for (const wall of shape.walls) {
          const id = polygon ? String(wall.edge) : wall.surface;
          const [x0, z0] = wall.start;
          const area = walls
            .filter((solid) => solid.id === id)
            .reduce(
              (sum, solid) =>
                sum +
                innerArea(solid, ([x, , z]) => {
                  const along = (x - x0) * wall.along[0] + (z - z0) * wall.along[1];
                  const off = (x - x0) * wall.outward[0] + (z - z0) * wall.outward[1];
                  return Math.abs(off) < 1e-4 && along > 0 && along < wall.lengthM;
                }),
              0,
            );
          // Points are single precision and welded to a hundredth of a millimetre; walls under 5 mm are not drawn.
          expect(Math.abs(area - wall.areaM2)).toBeLessThan(2e-3 + 0.005 * wall.lengthM);
        }
        const inPlan = (x: number, z: number) => shape.contains([x, 0, z]);
        const floor = walls.filter(({ id }) => id === 'floor');
        const floorArea = floor.reduce(
          (sum, solid) => sum + innerArea(solid, ([x, y, z]) => Math.abs(y) < 1e-4 && inPlan(x, z)),
          0,
        );
        // Cells on a slanted edge of the plan are cut by the grown outline, not by the plan's own: a cell each may err.
        const rim = shape.walls.reduce((sum, { lengthM }) => sum + lengthM, 0) * 0.16;
        expect(Math.abs(floorArea - shape.floorAreaM2)).toBeLessThan(rim);
      }),
      { seed: SEED, numRuns: 60 },
    );
  });
});
