import type { StillView } from './view.ts';

/** A figure in a red coat on the gravel, seen from behind, with a lamp. It gives the walk its length. */
export const paintWalker = (view: StillView): void => {
  const { context } = view;
  const z = 15;
  const scale = view.scaleAt(z);
  const [px, py] = view.at(-4.9, 0, z);
  const at = (x: number, y: number): [number, number] => [px + x * scale, py - y * scale];
  context.fillStyle = 'rgba(20, 22, 24, 0.45)';
  context.beginPath();
  context.ellipse(px + 0.1 * scale, py, 0.55 * scale, 0.09 * scale, 0, 0, Math.PI * 2);
  context.fill();
  context.fillStyle = '#1b1517';
  context.fillRect(...at(-0.14, 0.45), 0.1 * scale, 0.45 * scale);
  context.fillRect(...at(0.05, 0.45), 0.1 * scale, 0.45 * scale);
  const coat = context.createLinearGradient(...at(-0.3, 1), ...at(0.32, 1));
  coat.addColorStop(0, '#5c1a22');
  coat.addColorStop(0.6, '#a5303a');
  coat.addColorStop(1, '#e06a52');
  context.fillStyle = coat;
  context.beginPath();
  context.moveTo(...at(-0.17, 1.42));
  context.lineTo(...at(0.17, 1.42));
  context.quadraticCurveTo(...at(0.24, 1), ...at(0.33, 0.38));
  context.lineTo(...at(-0.33, 0.38));
  context.quadraticCurveTo(...at(-0.24, 1), ...at(-0.17, 1.42));
  context.fill();
  context.fillStyle = '#2a1c1a';
  context.beginPath();
  context.arc(...at(0, 1.56), 0.12 * scale, 0, Math.PI * 2);
  context.fill();
};
