import type { Project } from './project.ts';
import { seatPoses } from './seating.ts';

/** A room from above in a few numbers, kept beside its text so that a list of rooms can draw each without reading it. */
export interface PlanSketch {
  /** x and z, metres, in the document's axes. */
  readonly cornersM: readonly (readonly [number, number])[];
  /** The picture's two ends. */
  readonly pictureM: readonly [readonly [number, number], readonly [number, number]];
  readonly seats: readonly {
    readonly atM: readonly [number, number];
    readonly widthM: number;
    readonly turnDeg: number;
  }[];
  readonly loudspeakersM: readonly (readonly [number, number])[];
  readonly subwoofersM: readonly (readonly [number, number])[];
}

const cornersOf = ({ room: { plan } }: Project): PlanSketch['cornersM'] => {
  if (plan.shape === 'polygon') return plan.cornersM;
  const half = plan.widthM / 2;
  return [
    [-half, 0],
    [half, 0],
    [half, plan.lengthM],
    [-half, plan.lengthM],
  ];
};

export const planSketch = (project: Project): PlanSketch => {
  const { picture } = project;
  const halfM = picture.widthM / 2;
  const cornersM = cornersOf(project);
  const pictureZM = Math.min(...cornersM.map(([, z]) => z)) + picture.offFrontWallM;
  return {
    cornersM,
    pictureM: [
      [picture.centreXM - halfM, pictureZM],
      [picture.centreXM + halfM, pictureZM],
    ],
    seats: seatPoses(project).map(({ row, seat, eyeM, facingDeg }) => ({
      atM: [seat.xM, eyeM[2]] as const,
      widthM: row.seat.widthM,
      turnDeg: facingDeg,
    })),
    loudspeakersM: project.loudspeakers.map(({ atM }) => [atM[0], atM[2]] as const),
    subwoofersM: project.subwoofers.map(({ atM }) => [atM[0], atM[2]] as const),
  };
};
