import { readFileSync } from 'node:fs';
import { createRoomField } from '../../src/engines/bass/create-room-field.ts';
import type { Admittance, Axis, Detail, PrismSpec } from '../../src/engines/bass/room-field.ts';

/** A forced prism as the reference files write it: section x, y, height along z. */
export interface PrismFile {
  constants: { c_m_s: number };
  room: { polygon_m: [number, number][]; height_m: number };
  walls: { beta: [number, number] }[];
  patches?: { wall: number; from_m: [number, number]; to_m: [number, number]; beta: [number, number] }[];
  sources: { position_m: [number, number, number] }[];
  receivers: { position_m: [number, number, number] }[];
  results: { f_hz: number; pn: [number, number][] }[];
}

export const loadPrism = (name: string): PrismFile =>
  JSON.parse(readFileSync(new URL(`../fixtures/bass/${name}.json`, import.meta.url), 'utf8')) as PrismFile;

/** The file's room with its even direction along any of the engine's axes, and its points there. */
export const asSpec = (file: PrismFile, axis: Axis): { spec: PrismSpec; place(point: readonly number[]): number[] } => {
  const count = file.room.polygon_m.length;
  const betas = file.walls.map(({ beta }): Admittance => beta);
  return {
    spec: {
      axis,
      lengthM: file.room.height_m,
      cornersM: file.room.polygon_m,
      soundSpeed: file.constants.c_m_s,
      edges: betas.slice(0, count),
      ends: [betas[count], betas[count + 1]],
      patches: (file.patches ?? []).map((patch) => ({
        wall: patch.wall,
        fromM: patch.from_m,
        toM: patch.to_m,
        admittance: patch.beta,
      })),
    },
    place: ([x, y, z]) => (axis === 0 ? [z, x, y] : axis === 1 ? [x, z, y] : [x, y, z]),
  };
};

export interface Compared {
  /** Level errors in dB off the notches, ascending. */
  readonly offNotchesDb: number[];
  /** |H - pn| over the rms over the receivers at that frequency: in the notches, and of all points. */
  readonly notches: number[];
  readonly all: number[];
}

/** The engine against a file; a notch lies more than 20 dB under the rms over the receivers at its frequency. */
export const comparePrism = (file: PrismFile, axis: Axis, detail: Detail): Compared => {
  const { spec, place } = asSpec(file, axis);
  const h = createRoomField(spec, detail).unitResponses(
    Float64Array.from(file.sources.flatMap(({ position_m }) => place(position_m))),
    Float64Array.from(file.receivers.flatMap(({ position_m }) => place(position_m))),
    Float64Array.from(file.results, ({ f_hz }) => f_hz),
  );
  const compared: Compared = { offNotchesDb: [], notches: [], all: [] };
  for (const [f, { pn }] of file.results.entries()) {
    const rms = Math.sqrt(pn.reduce((sum, [re, im]) => sum + re * re + im * im, 0) / pn.length);
    for (const [r, [re, im]] of pn.entries()) {
      const i = r * file.results.length + f;
      const error = Math.hypot(h.re[i] - re, h.im[i] - im) / rms;
      compared.all.push(error);
      if (Math.hypot(re, im) < 0.1 * rms) compared.notches.push(error);
      else compared.offNotchesDb.push(Math.abs(20 * Math.log10(Math.hypot(h.re[i], h.im[i]) / Math.hypot(re, im))));
    }
  }
  compared.offNotchesDb.sort((a, b) => a - b);
  return compared;
};

/** The value that a share of an ascending list does not exceed. */
export const shareOf = (ascending: readonly number[], share: number): number =>
  ascending[Math.min(ascending.length - 1, Math.ceil(share * ascending.length) - 1)];
