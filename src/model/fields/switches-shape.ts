import { type Edit, setValue } from '../commands/edit.ts';
import { setRectangle, toPolygon } from '../commands/plan.ts';
import { planCorners } from '../plan-walls.ts';
import type { Project } from '../project.ts';
import type { Switch } from './switch.ts';

type Ceiling = Project['room']['ceiling'];

const span = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
const millimetres = (valueM: number): number => Math.round(valueM * 1000) / 1000;

const planAs = (project: Project, shape: string): Edit => {
  if (project.room.plan.shape === shape) return { ok: true, project };
  if (shape === 'polygon') return toPolygon(project);
  const corners = planCorners(project);
  return setRectangle(
    project,
    millimetres(span(corners.map(([x]) => x))),
    millimetres(span(corners.map(([, z]) => z))),
  );
};

const heightsOf = (ceiling: Ceiling): { readonly start: number; readonly end: number; readonly top: number } => {
  switch (ceiling.shape) {
    case 'flat':
      return { start: ceiling.heightM, end: ceiling.heightM, top: ceiling.heightM };
    case 'slope': {
      const { startHeightM, endHeightM } = ceiling;
      return { start: startHeightM, end: endHeightM, top: Math.max(startHeightM, endHeightM) };
    }
    case 'profile': {
      const heights = ceiling.pointsM.map(([, height]) => height);
      return { start: heights[0], end: heights[heights.length - 1], top: Math.max(...heights) };
    }
  }
};

/** A slope begins and ends at a room's least height: what a knee wall may be, a slope's low side may not. */
const LEAST_M = 1.8;

const ceilingAs = (project: Project, shape: string): Ceiling => {
  const { ceiling } = project.room;
  const { start, end, top } = heightsOf(ceiling);
  const across = ceiling.shape === 'flat' ? 'x' : ceiling.across;
  if (shape === 'flat') return { shape: 'flat', heightM: top };
  if (shape === 'slope')
    return { shape: 'slope', across, startHeightM: Math.max(LEAST_M, start), endHeightM: Math.max(LEAST_M, end) };
  const along = planCorners(project).map(([x, z]) => (across === 'x' ? x : z));
  const [low, high] = [Math.min(...along), Math.max(...along)];
  return {
    shape: 'profile',
    across,
    pointsM: [
      [low, start],
      [millimetres((low + high) / 2), top],
      [high, end],
    ],
  };
};

export const SHAPE_SWITCHES: readonly Switch[] = [
  {
    pattern: 'room.plan.shape',
    label: 'Plan',
    help: 'A rectangle by two lengths, or any straight walls by their corners.',
    ways: [
      { id: 'rectangle', word: 'rectangle' },
      { id: 'polygon', word: 'by its corners' },
    ],
    read: ({ room }) => room.plan.shape,
    set: (project, _keys, way) => planAs(project, way),
  },
  {
    pattern: 'room.ceiling.shape',
    label: 'Ceiling',
    help: 'Flat, sloping one way, or bent along a line of points.',
    ways: [
      { id: 'flat', word: 'flat' },
      { id: 'slope', word: 'sloping' },
      { id: 'profile', word: 'by its bends' },
    ],
    read: ({ room }) => room.ceiling.shape,
    set: (project, _keys, way) =>
      project.room.ceiling.shape === way
        ? { ok: true, project }
        : setValue(project, ['room', 'ceiling'], ceilingAs(project, way)),
  },
];
