import { tallPerson } from '../../engines/sight/people.ts';
import type { Project } from '../../model/project.ts';
import { bodyOf, type SeatPose, seatPose } from '../../model/seating.ts';

/** Every seat taken by a tall person (men's 95th percentile), whoever the file seats there. */
export const tallPoses = (project: Project): SeatPose[] =>
  project.rows.flatMap((row, rowIndex) =>
    row.seats.map((seat, seatIndex) =>
      seatPose(project, rowIndex, seatIndex, { ...bodyOf(project, seat), ...tallPerson }),
    ),
  );
