import { type SourceTerms, sourceTerms } from './near-field.ts';
import type { Section } from './section.ts';

/** Terms of the sources asked for lately, by their place: the same subwoofer serves responses and slices. */
export interface SourceShelf {
  at(x: number, y: number, z: number): SourceTerms;
}

const BYTES = 6e6;

export const createSourceShelf = (section: Section): SourceShelf => {
  const known = new Map<string, SourceTerms>();
  const most = Math.max(4, Math.floor(BYTES / (48 * section.orders * section.size)));
  return {
    at: (x, y, z) => {
      const key = `${x},${y},${z}`;
      let terms = known.get(key);
      if (terms === undefined) terms = sourceTerms(section, x, y, z);
      else known.delete(key);
      known.set(key, terms);
      for (const oldest of known.keys()) {
        if (known.size <= most) break;
        known.delete(oldest);
      }
      return terms;
    },
  };
};
