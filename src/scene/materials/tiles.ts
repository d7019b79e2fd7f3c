import { DataTexture, LinearFilter, LinearMipmapNearestFilter, NoColorSpace, RepeatWrapping } from 'three';
import { hold, release } from '../gpu/ledger.ts';
import type { Tile } from './palette.ts';
import { type PatternImage, paintPattern } from './textures/noise.ts';

/** Painted once for the life of the page: pixels are the same for every stage. */
const painted = new Map<Tile, PatternImage>();

const imageOf = (tile: Tile): PatternImage => {
  let image = painted.get(tile);
  if (!image) {
    image = paintPattern(tile.pixels[0], tile.pixels[1], tile.pattern());
    painted.set(tile, image);
  }
  return image;
};

/** The textures of one stage's materials, each made when first asked for. */
export class TileShelf {
  private readonly textures = new Map<Tile, DataTexture>();

  take(tile: Tile): DataTexture {
    let texture = this.textures.get(tile);
    if (!texture) {
      const image = imageOf(tile);
      texture = new DataTexture(image.data, image.width, image.height);
      texture.colorSpace = NoColorSpace;
      texture.wrapS = texture.wrapT = RepeatWrapping;
      texture.magFilter = LinearFilter;
      texture.minFilter = LinearMipmapNearestFilter;
      texture.generateMipmaps = true;
      texture.needsUpdate = true;
      this.textures.set(tile, texture);
      hold('texture');
    }
    return texture;
  }

  dispose(): void {
    for (const texture of this.textures.values()) texture.dispose();
    release('texture', this.textures.size);
    this.textures.clear();
  }
}
