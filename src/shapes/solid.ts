import type { Vec3 } from '../math/vec3.ts';
import type { ItemKind } from '../model/project.ts';

/** Names what a surface is made of; the scene turns the name into a material, the sheets into a line weight. */
export type MaterialName =
  | 'plaster'
  | 'ceiling'
  | 'oak'
  | 'carpet'
  | 'brick'
  | 'linen'
  | 'joinery'
  | 'glass'
  | 'velvet'
  | 'leather'
  | 'wood-dark'
  | 'metal'
  | 'cabinet'
  | 'cone'
  | 'rubber'
  | 'grille'
  | 'figure'
  | 'screen-frame'
  | 'picture';

/** Triangles in the part's own axes (metres, y up, front towards -z, origin named by the maker). Shared between equal parts. */
export interface MeshGeometry {
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  /** Metres along the surface, so that a texture keeps its true size. */
  readonly uvs: Float32Array;
  readonly indices: Uint32Array;
}

/** Where a part stands: turned by yaw about y (positive to the right, as azimuths are), then pitched up, then moved. */
export interface Placement {
  readonly positionM: Vec3;
  readonly yawDeg: number;
  readonly pitchDeg: number;
}

/** One named piece of the room. Equal geometry keeps its identity between calls, so that a drag only moves placements. */
export interface Solid {
  readonly kind: ItemKind | 'shell' | 'riser' | 'person' | 'projector';
  /** The item's id; a person's is their seat's. */
  readonly id: string;
  readonly part: string;
  readonly material: MaterialName;
  readonly geometry: MeshGeometry;
  readonly placement: Placement;
}
