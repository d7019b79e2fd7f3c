// The bench's plain baselines are also its oracles: here they meet the engine on small cases, each to a stated bound.
import { describe, expect, it } from 'vitest';
import { createBoxField } from '../../../../src/engines/bass/box-field.ts';
import { perPairResponses } from '../../../bench/baselines/per-pair.ts';
import { plainRoom } from '../../../bench/baselines/plain-axis.ts';
import { factoredSlice, sourceShapes, tripleSumAt } from '../../../bench/baselines/slices.ts';
import { CUT_HZ, EPSILON, floorPlane, meanOverRms, SCENES, worstOverRms } from '../../../bench/scene.ts';

const HERTZ = Float64Array.of(21, 34, 55, 89, 144, 190);
const WEIGHTS = Float64Array.of(1, 0, 1, 0, 0.5, 0.5, 0, -1);

describe.each(SCENES)('$title', (scene) => {
  const { spec, sources } = scene;

  it.each(['rows', 'scattered'] as const)('per-pair sum, seats in %s: to 1e-9 of the rms', (seats) => {
    const plain = perPairResponses(spec, sources, scene[seats], HERTZ, EPSILON, CUT_HZ);
    const ours = createBoxField(spec).unitResponses(sources, scene[seats], HERTZ);
    expect(worstOverRms(ours, plain)).toBeLessThanOrEqual(1e-9);
  });

  it('per-pair sum carried much farther: the truncation costs at most 1e-4 of the rms', () => {
    const plain = perPairResponses(spec, sources, scene.rows, HERTZ, 1e-9, 2500);
    const ours = createBoxField(spec).unitResponses(sources, scene.rows, HERTZ);
    expect(worstOverRms(ours, plain)).toBeLessThanOrEqual(1e-4);
  });

  it('and at 300 to 600 Hz at most 5e-4', () => {
    const high = Float64Array.of(300, 450, 600);
    const plain = perPairResponses(spec, sources, scene.rows, high, 1e-9, 2500);
    const ours = createBoxField(spec).unitResponses(sources, scene.rows, high);
    expect(worstOverRms(ours, plain)).toBeLessThanOrEqual(5e-4);
  });

  it('factored slice: to 1e-9 of the rms', () => {
    const plane = floorPlane(scene, 1.2, 24);
    const field = createBoxField(spec);
    for (const hz of HERTZ) {
      const room = plainRoom(spec.sizeM, spec.soundSpeed, spec.admittance, hz, CUT_HZ, null);
      const plain = factoredSlice(room, sources, WEIGHTS, 1.2, plane.uM, plane.vM, EPSILON, CUT_HZ);
      expect(worstOverRms(field.slice(plane, sources, WEIGHTS, hz), plain), `${hz} Hz`).toBeLessThanOrEqual(1e-9);
    }
  });

  it('triple sum per pixel: cut at 400 Hz to 2 % of the rms, at 800 Hz nearer and to 1 %', () => {
    const plane = floorPlane(scene, 1.2, 5);
    const room = plainRoom(spec.sizeM, spec.soundSpeed, spec.admittance, 63, CUT_HZ, null);
    const slice = createBoxField(spec).slice(plane, sources, WEIGHTS, 63);
    const errors = [400, 800].map((cutHz) => {
      const sum = { re: new Float64Array(25), im: new Float64Array(25) };
      for (let i = 0; i < 25; i++) {
        const at = [plane.uM[i % 5], 1.2, plane.vM[Math.floor(i / 5)]] as const;
        [sum.re[i], sum.im[i]] = tripleSumAt(room, sourceShapes(room, sources, WEIGHTS), at, cutHz);
      }
      return meanOverRms(slice, sum);
    });
    expect(errors[0]).toBeLessThanOrEqual(0.02);
    expect(errors[1]).toBeLessThan(errors[0]);
    expect(errors[1]).toBeLessThanOrEqual(0.01);
  });
});
