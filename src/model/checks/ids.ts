import type { Project } from '../project.ts';
import type { Refusal } from '../refusal.ts';

interface Named {
  readonly id: string;
  readonly field: string;
}

const listed = (list: string, items: readonly { id: string }[]): Named[] =>
  items.map(({ id }, index) => ({ id, field: `${list}[${index}]` }));

/** The groups within which an id has to be its own: sources share one because drives and cables name both. */
export const idGroups = (project: Project): Named[][] => [
  listed('rows', project.rows),
  project.rows.flatMap((row, index) => listed(`rows[${index}].seats`, row.seats)),
  [...listed('loudspeakers', project.loudspeakers), ...listed('subwoofers', project.subwoofers)],
  listed('room.openings', project.room.openings),
  listed('room.patches', project.room.patches),
  listed('room.objects', project.room.objects),
];

const duplicates = (group: readonly Named[]): Refusal[] => {
  const owners = new Map<string, string>();
  const refusals: Refusal[] = [];
  for (const { id, field } of group) {
    const owner = owners.get(id);
    if (owner === undefined) owners.set(id, field);
    else
      refusals.push({
        field: `${field}.id`,
        holds: id,
        aside: `already used by ${owner}`,
        allowed: { kind: 'words', words: 'an id of its own' },
      });
  }
  return refusals;
};

export const checkIds = (project: Project): Refusal[] => idGroups(project).flatMap(duplicates);

export const seatIds = (project: Project): string[] => project.rows.flatMap((row) => row.seats.map(({ id }) => id));

/** A reference seat that is named has to be one of the seats. */
export const checkReferenceSeat = (project: Project): Refusal[] => {
  const { referenceSeat } = project;
  if (referenceSeat === undefined || seatIds(project).includes(referenceSeat)) return [];
  const allowed = { kind: 'words', words: 'the id of a seat in rows' } as const;
  return [{ field: 'referenceSeat', holds: referenceSeat, aside: 'no seat has this id', allowed }];
};

export const MOST_SEATS = 64;

export const checkSeatCount = (project: Project): Refusal[] => {
  const count = project.rows.reduce((sum, row) => sum + row.seats.length, 0);
  if (count >= 1 && count <= MOST_SEATS) return [];
  const allowed = { kind: 'count', of: 'seats', min: 1, max: MOST_SEATS } as const;
  return [{ field: 'rows', holds: count, lead: 'seats in all:', allowed }];
};
