import { memoOf } from './memo.ts';
import { finished } from './mesh/finish.ts';
import type { RawMesh } from './mesh/raw.ts';
import type { MaterialName, MeshGeometry } from './solid.ts';

/** One named piece of an item before it is given normals. */
export interface RawPart {
  readonly part: string;
  readonly material: MaterialName;
  readonly mesh: RawMesh;
  /** Edges that turn by more than this stay sharp, degrees. */
  readonly creaseDeg?: number;
}

/** One named piece of an item, ready to be placed. */
export interface Part {
  readonly part: string;
  readonly material: MaterialName;
  readonly geometry: MeshGeometry;
}

/** At most 512 items' shapes are kept; the largest (a wall of 30 x 10 m) is about 1.2 MB, a chair about 60 kB. */
const kept = memoOf<readonly Part[]>(512);

type Parameters = readonly (number | string | boolean)[];

/** The parts of an item by its name and parameters: equal ones are one and the same objects while they are kept. */
export const partsOf = (name: string, parameters: Parameters, make: () => readonly RawPart[]): readonly Part[] =>
  kept(`${name} ${parameters.join(' ')}`, () =>
    make()
      .filter(({ mesh }) => mesh.indices.length > 0)
      .map(({ part, material, mesh, creaseDeg }) => ({ part, material, geometry: finished(mesh, creaseDeg) })),
  );

/** As partsOf, for makers that give their own normals. */
export const madeParts = (name: string, parameters: Parameters, make: () => readonly Part[]): readonly Part[] =>
  kept(`${name} ${parameters.join(' ')}`, make);
