import { describe, expect, it } from 'vitest';
import twoRow from '../../../../src/model/presets/two-row.json';
import { projectSchema } from '../../../../src/model/schema/project.ts';
import { lampsOf } from '../../../../src/scene/light/lamps.ts';
import { lightRoom } from '../../../../src/scene/light/light-room.ts';
import { toWorld, worldMatrix } from '../../../../src/scene/light/placing.ts';
import { exposureOf, levelsOf, mixLevels } from '../../../../src/scene/light/presets.ts';
import { LIGHT_STRIDE, lightPart } from '../../../../src/scene/light/room-light.ts';
import { placementMatrix, roomSolids } from '../../../../src/shapes/index.ts';

const project = projectSchema.parse(twoRow);
const solids = roomSolids(project);
const radiance = new Float32Array(24).fill(0.2);

describe('light in the demo room', () => {
  const light = lightRoom(project, solids, radiance);

  it('is finite, never negative, and there on every part', () => {
    for (const solid of solids) {
      const out = new Float32Array((solid.geometry.positions.length / 3) * LIGHT_STRIDE);
      lightPart(light, solid, solid.geometry, solid.placement, out);
      const most = out.reduce((top, value) => Math.max(top, value), 0);
      expect(out.every((value) => Number.isFinite(value) && value >= 0)).toBe(true);
      expect(most, `${solid.kind} ${solid.id} ${solid.part}`).toBeGreaterThan(0.01);
    }
  });

  it('falls on the floor before the screen more than behind the seats', () => {
    const spot = (z: number) => {
      const out = new Float32Array(LIGHT_STRIDE);
      const shape = { positions: [0, 0.001, z], normals: [0, 1, 0] };
      lightPart(light, { kind: 'shell', id: 'floor' }, shape, { positionM: [0, 0, 0], yawDeg: 0, pitchDeg: 0 }, out);
      return out[0];
    };
    expect(spot(1.6)).toBeGreaterThan(4 * spot(3.8));
  });
});

describe('lamps', () => {
  it('hang two facing sconces clear of whatever is on the side walls', () => {
    const sconces = lampsOf(project).filter(({ kind }) => kind === 'sconce');
    expect(sconces).toHaveLength(2);
    const [a, b] = sconces;
    expect(a.atM[0]).toBeCloseTo(-b.atM[0], 9);
    const [, y, z] = a.atM;
    for (const { fromM, widthM, bottomM, heightM } of [...project.room.openings, ...project.room.patches].filter(
      ({ surface }) => surface === 'left' || surface === 'right',
    ))
      expect(z > fromM - 0.06 && z < fromM + widthM + 0.06 && y > bottomM - 0.13 && y < bottomM + heightM + 0.13).toBe(
        false,
      );
  });
});

describe('placing and levels', () => {
  it('puts parts where the shapes say', () => {
    const placement = { positionM: [1, 2, 3] as const, yawDeg: 37, pitchDeg: -12 };
    const m = placementMatrix(placement);
    const out = new Float64Array(3);
    toWorld(worldMatrix(placement), 0.3, -0.2, 0.9, out);
    for (let row = 0; row < 3; row++)
      expect(out[row]).toBeCloseTo(0.3 * m[row] - 0.2 * m[4 + row] + 0.9 * m[8 + row] + m[12 + row], 9);
  });

  it('expose a room to the same key whatever its light', () => {
    const levels = levelsOf('dim', false);
    const mean = { picture: 0.02, lamps: 0.1, general: 0.5 };
    const twice = { picture: 0.04, lamps: 0.2, general: 1 };
    expect(exposureOf(levels, mean) / exposureOf(levels, twice)).toBeCloseTo(2, 9);
    expect(levelsOf('clean', true).key).toBeGreaterThan(levelsOf('dim', true).key);
    expect(levelsOf('dim', true).key).toBeGreaterThan(levelsOf('dark', true).key);
    const half = mixLevels(levelsOf('clean', true), levelsOf('dark', true), 0.5);
    expect(half.lamps).toBeCloseTo((levelsOf('clean', true).lamps + levelsOf('dark', true).lamps) / 2, 12);
  });
});
