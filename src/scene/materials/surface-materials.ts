import { Color, ShaderMaterial, type Texture, Vector2, Vector3, Vector4 } from 'three';
import type { MaterialName } from '../../shapes/solid.ts';
import { hold, release } from '../gpu/ledger.ts';
import type { PictureLight } from '../light/picture-light.ts';
import type { LightLevels } from '../light/presets.ts';
import { type Finishing, PALETTE } from './palette.ts';
import { FRAGMENT, VERTEX } from './surface-shader.ts';
import { TileShelf } from './tiles.ts';

export type SurfaceName = Exclude<MaterialName, 'picture'>;

const LAMP_COLOUR = new Color('#ffd0a0');
/** A mirrored picture is shown no more than this much brighter than the picture itself. */
const MOST_SHINE = 3;
/** Share of the picture's light that a grazed edge between it and the eye catches. */
const RIM_SHARE = 0.1;
const GENERAL_COLOUR = new Color('#ffe3c0');

/**
 * The materials of one stage. All of them read the same few light uniforms; a shell surface has its own copy so that it
 * can fade alone. Per-part glow and dimming are set just before a part is drawn.
 */
export class SurfaceMaterials {
  private readonly made = new Map<string, ShaderMaterial>();
  private readonly tiles = new TileShelf();
  private readonly shared = {
    uLamps: { value: new Vector3() },
    uGeneral: { value: new Vector3() },
    uPicture: { value: 1 },
    uPictureMap: { value: null as Texture | null },
    uPictureRect: { value: new Vector4(-1, 0, 2, 1) },
    uPictureZ: { value: 0 },
    uPictureShine: { value: 1 },
    uRim: { value: new Vector3() },
  };

  private readonly meanPicture = new Vector3(0.2, 0.2, 0.2);

  take(name: SurfaceName, fadeGroup = ''): ShaderMaterial {
    const key = `${name} ${fadeGroup}`;
    let material = this.made.get(key);
    if (!material) {
      material = this.make(PALETTE[name]);
      material.name = key;
      this.made.set(key, material);
      hold('material');
    }
    return material;
  }

  setLevels({ picture, lamps, general }: LightLevels, exposure: number): void {
    const { uLamps, uGeneral, uPicture, uPictureShine } = this.shared;
    uLamps.value.set(LAMP_COLOUR.r, LAMP_COLOUR.g, LAMP_COLOUR.b).multiplyScalar(lamps * exposure);
    uGeneral.value.set(GENERAL_COLOUR.r, GENERAL_COLOUR.g, GENERAL_COLOUR.b).multiplyScalar(general * exposure);
    uPicture.value = picture * exposure;
    uPictureShine.value = Math.min(MOST_SHINE, picture * exposure);
    this.shared.uRim.value.copy(this.meanPicture).multiplyScalar(RIM_SHARE * picture * exposure);
  }

  setPicture(light: PictureLight, texture: Texture): void {
    this.shared.uPictureMap.value = texture;
    this.shared.uPictureRect.value.set(light.minXM, light.minYM, light.widthM, light.heightM);
    this.shared.uPictureZ.value = light.planeZM;
    const patches = light.radiance.length / 3;
    this.meanPicture.set(0, 0, 0);
    for (let i = 0; i < patches; i++)
      this.meanPicture.add(
        new Vector3(light.radiance[i * 3], light.radiance[i * 3 + 1], light.radiance[i * 3 + 2]).divideScalar(patches),
      );
  }

  private make({ colour, tile, gloss, roughness, sheen }: Finishing): ShaderMaterial {
    const defines: Record<string, string> = {};
    if (tile) defines.TILED = '';
    if (gloss > 0) defines.GLOSSY = '';
    if (gloss > 0 || sheen > 0) defines.VIEWED = '';
    const base = new Color(colour);
    return new ShaderMaterial({
      vertexShader: VERTEX,
      fragmentShader: FRAGMENT,
      defines,
      uniforms: {
        ...this.shared,
        uColour: { value: new Vector3(base.r, base.g, base.b) },
        uTile: { value: tile ? new Vector2(1 / tile.sizeM[0], 1 / tile.sizeM[1]) : new Vector2(1, 1) },
        uMap: { value: tile ? this.tiles.take(tile) : null },
        uGloss: { value: gloss },
        uRoughness: { value: roughness },
        uSheen: { value: sheen },
        uFade: { value: 1 },
        uGlow: { value: 0 },
        uDim: { value: 1 },
      },
    });
  }

  dispose(): void {
    for (const material of this.made.values()) material.dispose();
    release('material', this.made.size);
    this.made.clear();
    this.tiles.dispose();
  }
}
