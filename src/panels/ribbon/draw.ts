import type { BassReadout, ModeReadout } from '../../analysis/types.ts';
import { cividis } from '../../math/cividis.ts';
import { type LevelScale, shareOf } from '../../math/level-scale.ts';
import { HIGHEST_HZ, levelAt, shareOfHz, TICKS_HZ } from './levels.ts';

export interface RibbonPicture {
  readonly bass: BassReadout;
  readonly modes: readonly ModeReadout[];
  readonly scale: LevelScale;
  readonly seatIndex: number;
}

/** Where things stand in the ribbon, in CSS pixels: strips between `top` and `bottom`, modes above, ticks below. */
export interface RibbonLayout {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export const ribbonLayout = (width: number, height: number): RibbonLayout => ({
  width,
  height,
  left: 1,
  right: width - 1,
  top: 30,
  bottom: height - 24,
});

export const xOfHz = (layout: RibbonLayout, hz: number): number =>
  layout.left + shareOfHz(hz) * (layout.right - layout.left);

const PLASTER = '#efe8dc';
const SECONDARY = '#b9ad9b';
const DARK = '#14110f';
const GAP = 2;

type Brush = CanvasRenderingContext2D;

const drawStrips = (brush: Brush, layout: RibbonLayout, { bass, scale }: RibbonPicture) => {
  const { left, right, top, bottom } = layout;
  const columns = Math.max(1, Math.round(right - left));
  const each = (bottom - top) / bass.seats.length;
  const row = brush.createImageData(columns, 1);
  const strip = new OffscreenCanvas(columns, 1);
  const stripBrush = strip.getContext('2d');
  if (!stripBrush) return;
  brush.imageSmoothingEnabled = false;
  for (const [i, seat] of bass.seats.entries()) {
    for (let column = 0; column < columns; column++) {
      const hz = 20 * 10 ** ((column + 0.5) / columns);
      const colour = cividis(shareOf(levelAt(bass.frequenciesHz, seat.levelDb, hz), scale));
      row.data.set(colour, column * 4);
      row.data[column * 4 + 3] = 255;
    }
    stripBrush.putImageData(row, 0, 0);
    brush.drawImage(strip, left, top + i * each + GAP / 2, columns, Math.max(1, each - GAP));
  }
};

const trace = (brush: Brush, layout: RibbonLayout, picture: RibbonPicture, levels: Float64Array, back = false) => {
  const { frequenciesHz } = picture.bass;
  const { top, bottom } = layout;
  for (let k = 0; k < frequenciesHz.length; k++) {
    const i = back ? frequenciesHz.length - 1 - k : k;
    const y = bottom - shareOf(levels[i], picture.scale) * (bottom - top);
    brush.lineTo(xOfHz(layout, Math.min(HIGHEST_HZ, frequenciesHz[i])), y);
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
    brush.fillStyle = 'rgb(20 17 15 / 0.5)';
    brush.fill();
  }
  brush.beginPath();
  trace(brush, layout, picture, seat.levelDb);
  brush.strokeStyle = 'rgb(20 17 15 / 0.85)';
  brush.lineWidth = 5;
  brush.stroke();
  brush.strokeStyle = PLASTER;
  brush.lineWidth = 2;
  brush.stroke();
  brush.restore();
};

/** Below the first mode the sealed model is not to be trusted: hatched, not hidden. */
const drawHatch = (brush: Brush, layout: RibbonLayout, firstHz: number) => {
  const end = xOfHz(layout, Math.min(HIGHEST_HZ, Math.max(20, firstHz)));
  const { left, top, bottom } = layout;
  if (end - left < 2) return;
  brush.save();
  brush.beginPath();
  brush.rect(left, top, end - left, bottom - top);
  brush.clip();
  brush.strokeStyle = 'rgb(20 17 15 / 0.75)';
  brush.lineWidth = 2;
  brush.beginPath();
  for (let x = left - (bottom - top); x < end; x += 7) {
    brush.moveTo(x, bottom);
    brush.lineTo(x + (bottom - top), top);
  }
  brush.stroke();
  brush.restore();
};

const drawAxis = (brush: Brush, layout: RibbonLayout, modes: readonly ModeReadout[]) => {
  const { top, bottom } = layout;
  brush.font = '12px "Source Sans 3", sans-serif';
  brush.fillStyle = SECONDARY;
  brush.strokeStyle = SECONDARY;
  brush.lineWidth = 1;
  brush.textBaseline = 'top';
  for (const hz of TICKS_HZ) {
    const x = Math.round(xOfHz(layout, hz)) + (hz === 20 ? 0.5 : -0.5);
    brush.beginPath();
    brush.moveTo(x, bottom + 1);
    brush.lineTo(x, bottom + 5);
    brush.stroke();
    brush.textAlign = hz === 20 ? 'left' : hz === 200 ? 'right' : 'center';
    brush.fillText(hz === 200 ? '200 Hz' : String(hz), x, bottom + 7);
  }
  brush.strokeStyle = 'rgb(210 174 104 / 0.8)';
  brush.beginPath();
  for (const { hz } of modes) {
    if (hz < 20 || hz > HIGHEST_HZ) continue;
    const x = Math.round(xOfHz(layout, hz)) + 0.5;
    brush.moveTo(x, top - 6);
    brush.lineTo(x, top - 1);
  }
  brush.stroke();
};

export const drawRibbon = (brush: Brush, layout: RibbonLayout, picture: RibbonPicture): void => {
  brush.fillStyle = DARK;
  brush.clearRect(0, 0, layout.width, layout.height);
  drawStrips(brush, layout, picture);
  if (picture.modes.length > 0) drawHatch(brush, layout, picture.modes[0].hz);
  drawCurve(brush, layout, picture);
  drawAxis(brush, layout, picture.modes);
};
