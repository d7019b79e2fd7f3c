import { subwoofer } from './sources.ts';
import { id, NAME_LENGTH, number, z } from './values.ts';

/**
 * What this version writes under the reserved keys `alternatives` and `equaliser`. The file's own schema leaves both open:
 * an entry that is not of this shape is carried through and not shown.
 */
export const alternative = z.looseObject({
  id,
  name: z.string().min(1).max(NAME_LENGTH),
  subwoofers: z.array(subwoofer).max(16),
  /** Other parts of the document that belong to it, by their key: they stand in place of the document's own. */
  parts: z.record(z.string(), z.unknown()).optional(),
});

export const peakFilter = z.looseObject({
  frequencyHz: number(5, 500),
  gainDb: number(-30, 12),
  q: number(0.1, 50),
});

export const equaliser = z.looseObject({ filters: z.array(peakFilter).max(24) });
