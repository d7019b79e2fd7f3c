import type { Project } from '../../../src/model/project.ts';
import { projectSchema } from '../../../src/model/schema/project.ts';
import twoRow from '../../fixtures/projects/v1/two-row.json' with { type: 'json' };

/** The frozen version 1 sample as a document: two rows of 3 and 4 seats in a room of 4.3 x 6.1 x 2.7 m. */
export const sampleProject = (): Project => projectSchema.parse(structuredClone(twoRow));

/** A document the limits just allow: 12 rows, 64 seats, 64 loudspeakers, 16 subwoofers, 200 of each thing in the room. */
export const largestProject = (): Project => {
  const many = <Item>(count: number, make: (index: number) => Item): Item[] =>
    Array.from({ length: count }, (_, index) => make(index));
  const seatsIn = (row: number) => (row < 4 ? 6 : 5);
  return projectSchema.parse({
    ...structuredClone(twoRow),
    room: {
      ...structuredClone(twoRow.room),
      plan: { shape: 'rectangle', widthM: 20, lengthM: 30 },
      patches: many(200, (i) => ({
        id: `p${i}`,
        surface: 'left',
        fromM: i / 10,
        widthM: 0.1,
        heightM: 1,
        finish: 'brick',
      })),
      openings: many(200, (i) => ({
        id: `o${i}`,
        kind: 'window',
        surface: 'right',
        fromM: i / 10,
        widthM: 0.1,
        heightM: 1,
      })),
      objects: many(200, (i) => ({ id: `b${i}`, kind: 'box', minM: [0, 0, i / 10], maxM: [1, 1, i / 10 + 0.1] })),
    },
    rows: many(12, (r) => ({
      id: `r${r}`,
      eyeZM: 3 + r,
      seats: many(seatsIn(r), (s) => ({ id: `s${r}-${s}`, xM: s - 3 })),
    })),
    referenceSeat: 's0-0',
    loudspeakers: many(64, (i) => ({ id: `L${i}`, channel: 'M+000', atM: [0, 1, i / 4] })),
    subwoofers: many(16, (i) => ({ id: `S${i}`, atM: [0, 0.2, i] })),
  });
};
