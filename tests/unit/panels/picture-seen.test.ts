import { describe, expect, it } from 'vitest';
import twoRow from '../../../src/model/presets/two-row.json';
import { projectSchema } from '../../../src/model/schema/project.ts';
import { pictureSeen } from '../../../src/panels/seats/picture-seen.ts';
import { plausibleGeometry } from './fixture.ts';

const project = projectSchema.parse(twoRow);

/** The demo's seats, each seeing the share given for it and else the whole picture. */
const seeing = (shares: Readonly<Record<string, number>>) =>
  plausibleGeometry(project).seats.map((seat) => ({
    ...seat,
    picture: { ...seat.picture, visibleFraction: shares[seat.id] ?? 1 },
  }));

describe('what the seats see of the picture, together', () => {
  it('is said outright when every seat sees the whole of it', () => {
    const said = pictureSeen(project, seeing({}));
    expect(said?.short).toBe('All 7 seats see the whole picture');
    expect(said?.long).toBe('All 7 seats see the whole picture.');
    // What reads as 100 % is the whole.
    expect(pictureSeen(project, seeing({ 'back-1': 0.9951 }))?.long).toBe(said?.long);
  });

  it('names the seats that do not, row by row, and the least of it', () => {
    const said = pictureSeen(project, seeing({ 'front-1': 0.94, 'front-3': 0.823, 'back-4': 0.99 }));
    expect(said?.short).toBe('3 of 7 see part of the picture');
    expect(said?.long).toBe(
      'Row 1, seats 1 and 3; row 2, seat 4 see 82 % or more of the picture. The other seats see the whole picture.',
    );
    expect(pictureSeen(project, seeing({ 'back-2': 0.5 }))?.long).toBe(
      'Row 2, seat 2 sees 50 % of the picture. The other seats see the whole picture.',
    );
  });

  it('says nothing of others where there are none', () => {
    const all = Object.fromEntries(plausibleGeometry(project).seats.map(({ id }) => [id, 0.6]));
    expect(pictureSeen(project, seeing(all))?.long).toBe(
      'Row 1, seats 1, 2 and 3; row 2, seats 1, 2, 3 and 4 see 60 % or more of the picture.',
    );
  });

  it('speaks of the seats that are in the room, and of none where there is none', () => {
    const [front] = project.rows;
    const one = { ...project, rows: [{ ...front, seats: [front.seats[0]] }] };
    expect(pictureSeen(one, seeing({ 'back-1': 0.2 }))?.long).toBe('The one seat sees the whole picture.');
    expect(pictureSeen({ ...project, rows: [] }, seeing({}))).toBeNull();
  });
});
