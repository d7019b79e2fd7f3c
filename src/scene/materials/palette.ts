import type { MaterialName } from '../../shapes/solid.ts';
import { carpetPattern, leatherPattern, velvetPattern, weavePattern } from './textures/cloth.ts';
import { brickPattern, brushedPattern, perforatedPattern, plasterPattern } from './textures/hard.ts';
import type { Pattern } from './textures/noise.ts';
import { boardPattern, veneerPattern } from './textures/wood.ts';

/** A tile of a procedural texture: its pixels and how many metres it covers. */
export interface Tile {
  readonly pattern: () => Pattern;
  readonly pixels: readonly [number, number];
  readonly sizeM: readonly [number, number];
}

export interface Finishing {
  /** Base colour, sRGB. */
  readonly colour: string;
  readonly tile: Tile | null;
  /** Strength of the mirrored picture at a grazing view, and how far it is blurred (0 sharp to 1). Dear: for few things. */
  readonly gloss: number;
  readonly roughness: number;
  /** Light caught at a grazing view by nap or plaster's softness. */
  readonly sheen: number;
}

const tile = (pattern: () => Pattern, pixels: number | [number, number], sizeM: number | [number, number]): Tile => ({
  pattern,
  pixels: typeof pixels === 'number' ? [pixels, pixels] : pixels,
  sizeM: typeof sizeM === 'number' ? [sizeM, sizeM] : sizeM,
});

const PLASTER = tile(() => plasterPattern(11), 512, 1.6);
const OAK = tile(() => boardPattern(23, 8), [512, 1024], [1.04, 2.6]);
const CARPET = tile(() => carpetPattern(31), 256, 0.5);
const BRICK = tile(() => brickPattern(41, 8), 256, [0.9, 0.6]);
const LINEN = tile(() => weavePattern(47, 64, 0.34), 256, 0.16);
const CLOTH = tile(() => weavePattern(53, 64, 0.5), 256, 0.1);
const VELVET = tile(() => velvetPattern(59), 256, 0.7);
const LEATHER = tile(() => leatherPattern(61), 256, 0.22);
const VENEER = tile(() => veneerPattern(67), [256, 512], [0.4, 0.8]);
const BRUSHED = tile(() => brushedPattern(71), 256, 0.3);
const PERFORATED = tile(() => perforatedPattern(16), 128, 0.1);

/** How each material name of the shapes is finished. The picture is no finish: it shines. */
export const PALETTE: Readonly<Record<Exclude<MaterialName, 'picture'>, Finishing>> = {
  plaster: { colour: '#7d7772', tile: PLASTER, gloss: 0, roughness: 1, sheen: 0 },
  ceiling: { colour: '#5d5956', tile: PLASTER, gloss: 0, roughness: 1, sheen: 0 },
  oak: { colour: '#8c6746', tile: OAK, gloss: 1.5, roughness: 0.26, sheen: 0 },
  carpet: { colour: '#4d4346', tile: CARPET, gloss: 0, roughness: 1, sheen: 0 },
  brick: { colour: '#8e5743', tile: BRICK, gloss: 0, roughness: 1, sheen: 0 },
  linen: { colour: '#7f7770', tile: LINEN, gloss: 0, roughness: 1, sheen: 0 },
  joinery: { colour: '#8b857d', tile: null, gloss: 0, roughness: 0.6, sheen: 0 },
  glass: { colour: '#10161d', tile: null, gloss: 1, roughness: 0.05, sheen: 0 },
  velvet: { colour: '#6c2534', tile: VELVET, gloss: 0, roughness: 1, sheen: 1.1 },
  leather: { colour: '#5b3f2f', tile: LEATHER, gloss: 0, roughness: 0.65, sheen: 0.2 },
  'wood-dark': { colour: '#4d3a2c', tile: VENEER, gloss: 0, roughness: 0.4, sheen: 0.15 },
  metal: { colour: '#8e8a84', tile: BRUSHED, gloss: 0.7, roughness: 0.5, sheen: 0 },
  cabinet: { colour: '#3a3633', tile: VENEER, gloss: 0.4, roughness: 0.35, sheen: 0 },
  cone: { colour: '#3b3733', tile: null, gloss: 0, roughness: 0.7, sheen: 0.15 },
  rubber: { colour: '#191716', tile: null, gloss: 0, roughness: 0.7, sheen: 0.15 },
  grille: { colour: '#2a2622', tile: PERFORATED, gloss: 0, roughness: 1, sheen: 0 },
  figure: { colour: '#a39c92', tile: null, gloss: 0, roughness: 1, sheen: 0.7 },
  'screen-frame': { colour: '#121011', tile: CLOTH, gloss: 0, roughness: 1, sheen: 0 },
};
