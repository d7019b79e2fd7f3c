import type { Point2 } from '../math/polyline.ts';
import type { Project } from './project.ts';

/** The plan's corners [x, z] in the file's order, a rectangle's from the front left one along the front wall. */
export const planCorners = ({ room: { plan } }: Pick<Project, 'room'>): readonly Point2[] => {
  if (plan.shape === 'polygon') return plan.cornersM;
  const half = plan.widthM / 2;
  return [
    [-half, 0],
    [half, 0],
    [half, plan.lengthM],
    [-half, plan.lengthM],
  ];
};
