import { seededRandom } from '../../../math/random.ts';
import { css, type StillView } from './view.ts';

/** Dusk: deep blue overhead, amber along the horizon, thin lit clouds and a young moon. */
export const paintSky = (view: StillView): void => {
  const { context, width, height } = view;
  const fill = context.createLinearGradient(0, 0, 0, height * 0.52);
  fill.addColorStop(0, '#1b4a82');
  fill.addColorStop(0.34, '#3c80bd');
  fill.addColorStop(0.66, '#7aa6cc');
  fill.addColorStop(0.86, '#c8a092');
  fill.addColorStop(1, '#ffc98a');
  context.fillStyle = fill;
  context.fillRect(0, 0, width, height);
  paintClouds(view);
  const moon = context.createRadialGradient(width * 0.74, height * 0.14, 0, width * 0.74, height * 0.14, height * 0.16);
  moon.addColorStop(0, 'rgba(255, 248, 228, 1)');
  moon.addColorStop(0.105, 'rgba(255, 248, 228, 1)');
  moon.addColorStop(0.13, 'rgba(222, 228, 236, 0.35)');
  moon.addColorStop(1, 'rgba(200, 216, 236, 0)');
  context.fillStyle = moon;
  context.fillRect(width * 0.5, 0, width * 0.5, height * 0.4);
};

const paintClouds = ({ context, width, height }: StillView): void => {
  const random = seededRandom(7);
  for (let k = 0; k < 46; k++) {
    const y = height * (0.1 + 0.36 * random() ** 0.8);
    const x = width * random();
    const long = width * (0.08 + 0.22 * random());
    const thick = height * (0.004 + 0.012 * random());
    const low = y / (height * 0.46);
    context.save();
    context.translate(x, y);
    context.scale(long, thick);
    const fill = context.createRadialGradient(0, 0, 0, 0, 0, 1);
    fill.addColorStop(0, css([255, 150 + 60 * low, 110 + 40 * low], 0.34 * low + 0.05));
    fill.addColorStop(1, css([255, 150, 120], 0));
    context.fillStyle = fill;
    context.fillRect(-1, -1, 2, 2);
    context.restore();
  }
};
