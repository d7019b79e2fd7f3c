import type { ItemRef, Project } from '../model/project.ts';

/** A thing as it is called in the middle of a sentence. */
export const thingName = (project: Project, { kind, id }: ItemRef): string => {
  switch (kind) {
    case 'seat': {
      const row = project.rows.findIndex((one) => one.seats.some((seat) => seat.id === id));
      const seat = project.rows[row]?.seats.findIndex((one) => one.id === id) ?? -1;
      return row < 0 ? id : `row ${row + 1}, seat ${seat + 1}`;
    }
    case 'row':
      return `row ${project.rows.findIndex((one) => one.id === id) + 1}`;
    case 'picture':
      return 'the picture';
    case 'object':
      return project.room.objects.find((one) => one.id === id)?.name || id;
    case 'surface':
      return id;
    case 'opening':
    case 'patch':
      return id;
    default:
      return `${kind} ${id}`;
  }
};

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** That two things stand in one another's room. */
export const overlapText = (project: Project, a: ItemRef, b: ItemRef): string =>
  `${capital(thingName(project, a))} and ${thingName(project, b)} stand in the same place.`;
