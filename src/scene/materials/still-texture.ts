import { CanvasTexture, LinearFilter, LinearMipmapLinearFilter, SRGBColorSpace } from 'three';
import { hold, release } from '../gpu/ledger.ts';
import { PICTURE_COLUMNS, PICTURE_ROWS } from '../light/picture-light.ts';
import { paintStill, patchMeans } from './still/paint.ts';

const WIDTH = 2048;
const HEIGHT = 1152;
const SMALL_WIDTH = 256;
const SMALL_HEIGHT = 144;

export interface StillImage {
  readonly canvas: HTMLCanvasElement;
  /** The same, small: what glossy surfaces mirror. */
  readonly small: HTMLCanvasElement;
  /** Mean linear radiance of the picture's patches, as the light wants them. */
  readonly radiance: Float32Array;
}

let image: StillImage | null = null;

const canvasOf = (width: number, height: number) => {
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  // Drawn by the processor: its pixels are read back at once, for which a drawing on the graphics unit stops the page.
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (!context) throw new Error('no canvas to draw the picture on');
  return { canvas, context };
};

/** The still, drawn once for the life of the page. */
export const stillImage = (): StillImage => {
  if (image) return image;
  const { canvas, context } = canvasOf(WIDTH, HEIGHT);
  paintStill(context, WIDTH, HEIGHT);
  const small = canvasOf(SMALL_WIDTH, SMALL_HEIGHT);
  small.context.imageSmoothingQuality = 'high';
  small.context.drawImage(canvas, 0, 0, SMALL_WIDTH, SMALL_HEIGHT);
  const { data } = small.context.getImageData(0, 0, SMALL_WIDTH, SMALL_HEIGHT);
  image = {
    canvas,
    small: small.canvas,
    radiance: patchMeans(data, SMALL_WIDTH, SMALL_HEIGHT, PICTURE_COLUMNS, PICTURE_ROWS),
  };
  return image;
};

export const stillTexture = (anisotropy: number): CanvasTexture => textureOf(stillImage().canvas, anisotropy);

/** For mirror images only. Never anisotropic: some software renderers stall on that with an explicit level. */
export const mirrorTexture = (): CanvasTexture => textureOf(stillImage().small, 1);

const textureOf = (canvas: HTMLCanvasElement, anisotropy: number): CanvasTexture => {
  const texture = new CanvasTexture(canvas);
  texture.colorSpace = SRGBColorSpace;
  texture.magFilter = LinearFilter;
  texture.minFilter = LinearMipmapLinearFilter;
  texture.generateMipmaps = true;
  texture.anisotropy = anisotropy;
  hold('texture');
  return texture;
};

export const disposeStill = (texture: CanvasTexture): void => {
  texture.dispose();
  release('texture');
};
