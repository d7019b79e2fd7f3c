import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readProjectText } from '../../../../src/files/project/read.ts';
import { writeProject } from '../../../../src/files/project/write.ts';
import { planSketch } from '../../../../src/model/plan-sketch.ts';
import { emptyRoom } from '../../../../src/model/presets/empty-room.ts';

describe('an empty room', () => {
  it('is a project that reads back from its own file, whatever its three lengths', () => {
    const centimetres = (min: number, max: number) =>
      fc.integer({ min: min * 100, max: max * 100 }).map((cm) => cm / 100);
    fc.assert(
      fc.property(centimetres(1.5, 30), centimetres(1.5, 30), centimetres(1.8, 10), (widthM, lengthM, heightM) => {
        const project = emptyRoom({ widthM, lengthM, heightM });
        const read = readProjectText(writeProject(project));
        expect(read.ok && read.project).toEqual(project);
        expect(project.room.plan).toEqual({ shape: 'rectangle', widthM, lengthM });
        expect([project.loudspeakers.length, project.subwoofers.length]).toEqual([0, 0]);
        expect(project.picture.widthM).toBeLessThanOrEqual(0.45 * widthM);
      }),
    );
  });

  it('is sketched with its four corners, its picture and its chair', () => {
    const sketch = planSketch(emptyRoom({ widthM: 4, lengthM: 5.5, heightM: 2.5 }));
    expect(sketch.cornersM).toEqual([
      [-2, 0],
      [2, 0],
      [2, 5.5],
      [-2, 5.5],
    ]);
    expect(sketch.pictureM).toEqual([
      [-0.8, 0.06],
      [0.8, 0.06],
    ]);
    expect(sketch.seats).toEqual([{ atM: [0, 3.3], widthM: 0.7, turnDeg: 0 }]);
  });
});
