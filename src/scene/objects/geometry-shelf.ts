import { BufferAttribute, BufferGeometry, InterleavedBuffer, InterleavedBufferAttribute } from 'three';
import type { MeshGeometry } from '../../shapes/solid.ts';
import { hold, release } from '../gpu/ledger.ts';
import { LIGHT_STRIDE } from '../light/room-light.ts';
import { subdivide } from './subdivide.ts';

interface Shelved {
  readonly fine: MeshGeometry;
  readonly position: BufferAttribute;
  readonly normal: BufferAttribute;
  readonly uv: BufferAttribute;
  readonly index: BufferAttribute;
  users: number;
}

/** A part's geometry as drawn: shape shared with every equal part, light its own. */
export interface LitGeometry {
  readonly source: MeshGeometry;
  readonly fine: MeshGeometry;
  readonly geometry: BufferGeometry;
  readonly light: Float32Array;
  readonly lightBuffer: InterleavedBuffer;
}

/** Light on things changes little over less. */
const LONGEST_EDGE_M = 0.7;

/** One copy of each shape on the graphics side, however many parts show it; let go with its last user. */
export class GeometryShelf {
  private readonly shelf = new Map<MeshGeometry, Shelved>();

  /** `cut` says whether the shape's maker has cut it for light already, as it does the room's shell. */
  take(source: MeshGeometry, cut = false): LitGeometry {
    let shape = this.shelf.get(source);
    if (!shape) {
      const fine = cut ? source : subdivide(source, LONGEST_EDGE_M);
      shape = {
        fine,
        position: new BufferAttribute(fine.positions, 3),
        normal: new BufferAttribute(fine.normals, 3),
        uv: new BufferAttribute(fine.uvs, 2),
        index: new BufferAttribute(fine.indices, 1),
        users: 0,
      };
      this.shelf.set(source, shape);
      hold('geometry');
    }
    shape.users += 1;
    const light = new Float32Array((shape.fine.positions.length / 3) * LIGHT_STRIDE);
    const lightBuffer = new InterleavedBuffer(light, LIGHT_STRIDE);
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', shape.position);
    geometry.setAttribute('normal', shape.normal);
    geometry.setAttribute('uv', shape.uv);
    geometry.setIndex(shape.index);
    geometry.setAttribute('light', new InterleavedBufferAttribute(lightBuffer, 4, 0));
    geometry.setAttribute('open', new InterleavedBufferAttribute(lightBuffer, 1, 4));
    return { source, fine: shape.fine, geometry, light, lightBuffer };
  }

  /** Lets one user go. Disposing would take the shared attributes along, so they are parted from it first. */
  give({ source, geometry }: LitGeometry): void {
    const shape = this.shelf.get(source);
    if (!shape) return;
    shape.users -= 1;
    if (shape.users > 0) {
      for (const name of ['position', 'normal', 'uv']) geometry.deleteAttribute(name);
      geometry.setIndex(null);
    } else {
      this.shelf.delete(source);
      release('geometry');
    }
    geometry.dispose();
  }

  get size(): number {
    return this.shelf.size;
  }
}
