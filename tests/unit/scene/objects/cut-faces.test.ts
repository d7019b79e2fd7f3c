import { describe, expect, it } from 'vitest';
import atticJson from '../../../../src/model/presets/attic.json' with { type: 'json' };
import ellJson from '../../../../src/model/presets/corner-living.json' with { type: 'json' };
import boxJson from '../../../../src/model/presets/two-row.json' with { type: 'json' };
import { projectSchema } from '../../../../src/model/schema/project.ts';
import { cutFaces, wallOf } from '../../../../src/scene/objects/cut-faces.ts';
import { standsOutside } from '../../../../src/scene/objects/walls.ts';
import { shellSolids } from '../../../../src/shapes/index.ts';

const [box, ell, attic] = [boxJson, ellJson, atticJson].map((json) => projectSchema.parse(json));

const cutFrom = (project: typeof box, camera: readonly [number, number, number]): string[] =>
  cutFaces(project)
    .filter((face) => standsOutside(camera, face))
    .map(({ key }) => key);

describe('what makes way for the camera', () => {
  it('in a box: the walls between it and the room, and the ceiling', () => {
    expect(cutFrom(box, [4, 5, 9]).sort()).toEqual(['back', 'ceiling', 'right']);
    expect(cutFrom(box, [-4, 1, 3]).sort()).toEqual(['left']);
  });

  it('in an L: every wall seen from behind, by its edge', () => {
    // From the right and behind: the right wall (1) and the long back wall (2).
    expect(cutFrom(ell, [6, 5, 10]).sort()).toEqual(['1', '2', 'ceiling']);
    // From the left, before the front of the arm: its left end (3), its front (4) and the wall beside the picture (5).
    expect(cutFrom(ell, [-8, 1, 1]).sort()).toEqual(['3', '4', '5']);
  });

  it('under a ridge: the slope one looks down on, not the one one looks into', () => {
    const cut = cutFrom(attic, [6, 3.5, 9]);
    expect(cut).toContain('ceiling-2');
    expect(cut).not.toContain('ceiling-0');
  });

  it('takes everything that hangs on it along', () => {
    for (const project of [box, ell, attic]) {
      const keys = new Set(cutFaces(project).map(({ key }) => key));
      const faceOf = wallOf(project);
      for (const solid of shellSolids(project)) {
        const key = faceOf(solid);
        if (solid.id === 'floor' || (solid.kind === 'patch' && solid.id === 'rug')) expect(key).toBe('');
        else expect(keys, `${solid.kind} ${solid.id} ${solid.part}`).toContain(key);
      }
    }
  });
});
