import type { BoxResponses } from '../box-responses.ts';
import type { BoxGeometry, BoxState } from '../box-state.ts';
import { insideBox } from '../pairs.ts';
import type { UnitResponses } from '../room-field.ts';
import { sameNumbers } from '../slice-rest.ts';
import type { StateCache } from '../state-cache.ts';
import type { BoxPatch } from './box-patches.ts';
import { answerOfPatches } from './coupled-system.ts';
import { patchLoads } from './patch-loads.ts';
import type { PatchState, PatchStates } from './patch-state.ts';

interface KeptLoads {
  readonly points: Float64Array;
  readonly of: PatchState;
  readonly loads: Float64Array;
}

/** Unit responses of a box with patches: those of the even box less what the patches change (coupled-system.ts). */
export const createPatchResponses = (
  geometry: BoxGeometry,
  cache: StateCache,
  even: BoxResponses,
  patches: readonly BoxPatch[],
  states: PatchStates,
): BoxResponses => {
  const kept = new WeakMap<BoxState, KeptLoads>();

  const receiverLoads = (state: BoxState, own: PatchState, points: Float64Array): Float64Array => {
    const known = kept.get(state);
    if (known !== undefined && known.of === own && sameNumbers(known.points, points)) return known.loads;
    const size = (2 * own.layout.functions.count * points.length) / 3;
    const loads = known?.loads.length === size ? known.loads : new Float64Array(size);
    patchLoads(geometry, state, patches, own, points, loads);
    kept.set(state, { points, of: own, loads });
    return loads;
  };

  const bytesFor = (state: BoxState): number =>
    even.bytesFor(state) + states.bytesFor(state) + (kept.get(state)?.loads.byteLength ?? 0);

  const at: BoxResponses['at'] = (sourcesM, receiversM, frequenciesHz, growthPerS) => {
    const answer = even.at(sourcesM, receiversM, frequenciesHz, growthPerS);
    const sources = insideBox(geometry, sourcesM);
    const receivers = insideBox(geometry, receiversM);
    for (let f = 0; f < frequenciesHz.length; f++) {
      const state = cache.at(frequenciesHz[f], growthPerS);
      const own = states.at(state);
      if (own.coupled === null) continue;
      const { count } = own.layout.functions;
      const loads = receiverLoads(state, own, receivers);
      const answers = new Float64Array(2 * count * answer.sources);
      patchLoads(geometry, state, patches, own, sources, answers);
      for (let s = 0; s < answer.sources; s++) answerOfPatches(own.coupled, answers, 2 * count * s);
      subtract(answer, f, count, answers, loads);
    }
    cache.trim(bytesFor);
    return answer;
  };
  return { at, bytesFor };
};

/** H = H0 - 4 pi v(receiver) . y(source). */
const subtract = (
  answer: UnitResponses,
  f: number,
  count: number,
  answers: Float64Array,
  loads: Float64Array,
): void => {
  const width = 2 * count;
  for (let s = 0; s < answer.sources; s++) {
    for (let r = 0; r < answer.receivers; r++) {
      let re = 0;
      let im = 0;
      for (let a = 0, i = width * s, j = width * r; a < width; a += 2, i += 2, j += 2) {
        re += answers[i] * loads[j] - answers[i + 1] * loads[j + 1];
        im += answers[i] * loads[j + 1] + answers[i + 1] * loads[j];
      }
      const at = (s * answer.receivers + r) * answer.frequencies + f;
      answer.re[at] -= 4 * Math.PI * re;
      answer.im[at] -= 4 * Math.PI * im;
    }
  }
};
