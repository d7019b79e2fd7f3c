import type { PatchFunctions } from '../patches/patch-functions.ts';
import { BASIS_SIZE, basisTopHz } from './basis-size.ts';
import type { PrismPatch } from './patch-division.ts';
import type { PrismGeometry } from './prism-geometry.ts';

/** Work in steps of the innermost products: a factorisation's, which a kernel does, ... */
const PER_PRODUCT = 0.5;
/** ... and one that adds up orders or functions of two patches. */
const PER_PAIR = 2;

/** Plan modes below a frequency, by Weyl's estimate with its edge term. */
const planModesBelow = ({ areaM2, edges, soundSpeed }: PrismGeometry, hz: number): number => {
  const k = (2 * Math.PI * hz) / soundSpeed;
  const perimeterM = edges.reduce((sum, edge) => sum + edge.lengthM, 0);
  return (areaM2 * k * k) / (4 * Math.PI) + (perimeterM * k) / (4 * Math.PI) + 1;
};

/**
 * Steps of work that the system of a prism's patches takes, about: per order of the even axis its section's factorisation, the
 * answers of the patches' parts and their products; the system itself. Before anything is made; some 1e9 are done in a second.
 */
export const prismSystemWork = (
  geometry: PrismGeometry,
  patches: readonly PrismPatch[],
  functions: PatchFunctions,
): number => {
  const topHz = basisTopHz(geometry, 'fine');
  const orderHz = geometry.soundSpeed / (2 * geometry.lengthM);
  const { mostLoads, wallFunctions } = BASIS_SIZE.fine;
  const loads = Math.min(mostLoads, wallFunctions * geometry.edges.length);
  const parts = patches.reduce(
    (sum, { wall }, i) => sum + (wall >= 0 ? functions.patches[i].orders[0] : functions.patches[i].first.length),
    0,
  );
  const { count } = functions;
  let work = PER_PRODUCT * (count ** 3 / 6);
  for (let n = 0; n * orderHz <= topHz; n++) {
    const size = loads + planModesBelow(geometry, Math.sqrt(topHz ** 2 - (n * orderHz) ** 2));
    work += PER_PRODUCT * (size ** 3 / 6 + size * size * parts + 2 * size * parts * parts);
    work += PER_PAIR * (count * count);
  }
  return work;
};
