import type { BassReadout, ModeReadout } from '../../analysis/types.ts';
import { CIVIDIS_BYTES, cividisIndex } from '../../math/cividis.ts';
import { type LevelScale, shareOf } from '../../math/level-scale.ts';
import { type LevelAxis, type RibbonLayout, shareOfLevel, xOfHz } from './layout.ts';
import { HIGHEST_HZ, hzOfShare, LOWEST_HZ, levelAt } from './levels.ts';

export interface RibbonPicture {
  readonly bass: Pick<BassReadout, 'frequenciesHz' | 'seats'>;
  readonly modes: readonly ModeReadout[];
  /** What the strips' colours mean. */
  readonly scale: LevelScale;
  /** What the curve's height means. */
  readonly axis: LevelAxis;
  /** The chosen seat's place in the readout; -1 when it has none. */
  readonly seatIndex: number;
  /** Above here single modes are no longer told apart. */
  readonly schroederHz: number;
}

const PLASTER = '#efe8dc';
const BRASS = '#d2ae68';
const HALO = 'rgb(20 17 15 / 0.85)';
const VEIL = 'rgb(20 17 15 / 0.45)';
const GAP = 2;

type Brush = CanvasRenderingContext2D;

/** One pixel row a seat, one column a pixel of the ribbon, by the colour map: drawn large afterwards. */
export const stripPixels = (
  { bass, scale }: Pick<RibbonPicture, 'bass' | 'scale'>,
  columns: number,
): Uint8ClampedArray<ArrayBuffer> => {
  const pixels = new Uint8ClampedArray(columns * bass.seats.length * 4);
  for (let column = 0; column < columns; column++) {
    const hz = hzOfShare((column + 0.5) / columns);
    for (let i = 0; i < bass.seats.length; i++) {
      const level = levelAt(bass.frequenciesHz, bass.seats[i].levelDb, hz);
      const entry = cividisIndex(shareOf(level, scale)) * 3;
      const at = (i * columns + column) * 4;
      pixels[at] = CIVIDIS_BYTES[entry];
      pixels[at + 1] = CIVIDIS_BYTES[entry + 1];
      pixels[at + 2] = CIVIDIS_BYTES[entry + 2];
      pixels[at + 3] = 255;
    }
  }
  return pixels;
};

const drawStrips = (brush: Brush, scratch: HTMLCanvasElement, layout: RibbonLayout, picture: RibbonPicture) => {
  const { left, right, top, bottom } = layout;
  const columns = Math.max(1, Math.round(right - left));
  const rows = picture.bass.seats.length;
  const each = (bottom - top) / rows;
  scratch.width = columns;
  scratch.height = rows;
  scratch
    .getContext('2d', { willReadFrequently: true })
    ?.putImageData(new ImageData(stripPixels(picture, columns), columns, rows), 0, 0);
  brush.imageSmoothingEnabled = false;
  for (let i = 0; i < rows; i++) {
    brush.drawImage(scratch, 0, i, columns, 1, left, top + i * each + GAP / 2, columns, Math.max(1, each - GAP));
  }
};

const trace = (brush: Brush, layout: RibbonLayout, picture: RibbonPicture, levels: Float64Array, back = false) => {
  const { frequenciesHz } = picture.bass;
  const { top, bottom } = layout;
  for (let k = 0; k < frequenciesHz.length; k++) {
    const i = back ? frequenciesHz.length - 1 - k : k;
    if (frequenciesHz[i] < LOWEST_HZ || frequenciesHz[i] > HIGHEST_HZ) continue;
    brush.lineTo(xOfHz(layout, frequenciesHz[i]), bottom - shareOfLevel(levels[i], picture.axis) * (bottom - top));
  }
};

const drawCurve = (brush: Brush, layout: RibbonLayout, picture: RibbonPicture) => {
  const seat = picture.bass.seats[picture.seatIndex];
  if (!seat) return;
  brush.save();
  brush.lineJoin = 'round';
  if (seat.lowDb && seat.highDb) {
    brush.beginPath();
    trace(brush, layout, picture, seat.lowDb);
    trace(brush, layout, picture, seat.highDb, true);
    brush.closePath();
    brush.fillStyle = VEIL;
    brush.fill();
  }
  brush.beginPath();
  trace(brush, layout, picture, seat.levelDb);
  brush.strokeStyle = HALO;
  brush.lineWidth = 4.5;
  brush.stroke();
  brush.strokeStyle = PLASTER;
  brush.lineWidth = 1.75;
  brush.stroke();
  brush.restore();
};

/** Below the first mode the sealed model is not to be trusted: hatched, not hidden. */
const drawHatch = (brush: Brush, layout: RibbonLayout, firstHz: number) => {
  const end = xOfHz(layout, Math.min(HIGHEST_HZ, Math.max(LOWEST_HZ, firstHz)));
  const { left, top, bottom } = layout;
  if (end - left < 2) return;
  brush.save();
  brush.beginPath();
  brush.rect(left, top, end - left, bottom - top);
  brush.clip();
  brush.strokeStyle = 'rgb(20 17 15 / 0.8)';
  brush.lineWidth = 2;
  brush.beginPath();
  for (let x = left - (bottom - top); x < end; x += 7) {
    brush.moveTo(x, bottom);
    brush.lineTo(x + (bottom - top), top);
  }
  brush.stroke();
  brush.restore();
};

const drawModes = (brush: Brush, { top, ...layout }: RibbonLayout, modes: readonly ModeReadout[]) => {
  brush.strokeStyle = BRASS;
  brush.lineWidth = 1;
  brush.beginPath();
  for (const { hz } of modes) {
    if (hz < LOWEST_HZ || hz > HIGHEST_HZ) continue;
    const x = Math.round(xOfHz({ top, ...layout }, hz)) + 0.5;
    brush.moveTo(x, top - 6);
    brush.lineTo(x, top - 1);
  }
  brush.stroke();
};

/** A dashed line where the forecast of single modes ends. */
const drawLimit = (brush: Brush, layout: RibbonLayout, schroederHz: number) => {
  if (schroederHz <= LOWEST_HZ || schroederHz >= HIGHEST_HZ) return;
  const x = Math.round(xOfHz(layout, schroederHz)) + 0.5;
  brush.save();
  for (const [colour, width] of [
    [HALO, 4],
    [BRASS, 1.25],
  ] as const) {
    brush.beginPath();
    brush.setLineDash([5, 4]);
    brush.moveTo(x, layout.top);
    brush.lineTo(x, layout.bottom);
    brush.strokeStyle = colour;
    brush.lineWidth = width;
    brush.stroke();
  }
  brush.restore();
};

/** Draws the strips, the hatch, the chosen seat's curve and the modes. `scratch` is a canvas of the caller's to keep. */
export const drawRibbon = (
  brush: Brush,
  scratch: HTMLCanvasElement,
  layout: RibbonLayout,
  picture: RibbonPicture,
): void => {
  brush.clearRect(0, 0, layout.width, layout.height);
  if (picture.bass.seats.length === 0) return;
  drawStrips(brush, scratch, layout, picture);
  if (picture.modes.length > 0) drawHatch(brush, layout, picture.modes[0].hz);
  drawLimit(brush, layout, picture.schroederHz);
  drawCurve(brush, layout, picture);
  drawModes(brush, layout, picture.modes);
};
