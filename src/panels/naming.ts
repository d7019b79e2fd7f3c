import { isEdge } from '../model/items.ts';
import type { ItemRef, Project } from '../model/project.ts';

/** A seat's row and its place in it, from 1; null when the seat is not in the document. */
const seatNumbers = (project: Project, id: string): readonly [row: number, seat: number] | null => {
  for (const [r, row] of project.rows.entries()) {
    const s = row.seats.findIndex((seat) => seat.id === id);
    if (s >= 0) return [r + 1, s + 1];
  }
  return null;
};

/** "Row 2, seat 3", counted from the picture and from the left; the id itself when the seat is not in the document. */
export const seatTitle = (project: Project, id: string): string => {
  const numbers = seatNumbers(project, id);
  return numbers ? `Row ${numbers[0]}, seat ${numbers[1]}` : id;
};

/** The same where there is little room: "R2 s3". */
export const seatShort = (project: Project, id: string): string => {
  const numbers = seatNumbers(project, id);
  return numbers ? `R${numbers[0]} s${numbers[1]}` : id;
};

const OPENING: Readonly<Record<string, string>> = { door: 'Door', window: 'Window', opening: 'Opening' };

export const surfaceTitle = (name: string): string => {
  if (isEdge(name)) return `Wall ${Number(name) + 1}`;
  return name === 'floor' || name === 'ceiling' ? capital(name) : `${capital(name)} wall`;
};

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What one thing of the document is called in lists and headings. */
export const itemTitle = (project: Project, item: ItemRef): string => {
  switch (item.kind) {
    case 'seat':
      return seatTitle(project, item.id);
    case 'row':
      return `Row ${project.rows.findIndex((row) => row.id === item.id) + 1}`;
    case 'picture':
      return project.picture.kind === 'panel' ? 'Picture, panel' : 'Picture, screen';
    case 'surface':
      return surfaceTitle(item.id);
    case 'opening': {
      const opening = project.room.openings.find((entry) => entry.id === item.id);
      return opening ? `${OPENING[opening.kind]} ${opening.id === opening.kind ? '' : opening.id}`.trim() : item.id;
    }
    case 'object':
      return project.room.objects.find((entry) => entry.id === item.id)?.name || item.id;
    case 'loudspeaker':
      return `Loudspeaker ${item.id}`;
    case 'subwoofer':
      return `Subwoofer ${item.id}`;
    case 'patch':
      return `Patch ${item.id}`;
  }
};
