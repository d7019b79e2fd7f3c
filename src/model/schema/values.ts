import * as z from 'zod';

// The page forbids compiled code (content policy without unsafe-eval), so the validator must not compile itself.
z.config({ jitless: true });

export { z };

export const ID_LENGTH = 64;
export const NAME_LENGTH = 200;
export const NOTES_LENGTH = 20_000;

/** Coordinates may lie anywhere a building could reach; what must lie inside the room is checked with the room known. */
const REACH_M = 100;

export const number = (min: number, max: number) => z.number().min(min).max(max);
export const wholeNumber = (min: number, max: number) => z.int().min(min).max(max);
export const coordinate = number(-REACH_M, REACH_M);
export const pointM = z.tuple([coordinate, coordinate, coordinate]);
export const sizeM = z.tuple([number(0.01, 10), number(0.01, 10), number(0.01, 10)]);

export const id = z.string().min(1).max(ID_LENGTH);
export const label = z.string().min(1).max(ID_LENGTH);
export const locked = z.boolean().optional();

/** One value in [min, max] an octave or band, keyed by its centre frequency in hertz written as a number. */
export const byFrequency = (min: number, max: number) =>
  z
    .record(z.string().regex(/^\d{1,5}(\.\d{1,2})?$/, { error: 'a band centre in hertz' }), number(min, max))
    .refine((bands) => Object.keys(bands).length > 0, { error: 'at least one band' });
