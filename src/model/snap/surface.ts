import type { Point2 } from '../../math/polyline.ts';
import type { ItemRef, Opening, Patch, Project } from '../project.ts';
import { frameOf, isLying, reachUpM, type SurfaceFrame, topAt } from '../room/places.ts';
import { wholeCm } from './lines.ts';
import type { SnapReason } from './reason.ts';

const STEP_M = 0.05;
const STEP_REACH_M = 0.012;

interface Stop {
  readonly atM: number;
  readonly reason: SnapReason | null;
}

/** A value drawn to the nearest stop in reach, else to 5 cm where it is close, else to whole centimetres. */
const stopped = (valueM: number, stops: readonly Stop[], reachM: number): Stop => {
  if (reachM <= 0) return { atM: Number(valueM.toFixed(4)), reason: null };
  let best: Stop | null = null;
  for (const stop of stops) {
    const away = Math.abs(stop.atM - valueM);
    if (away <= reachM && (best === null || away < Math.abs(best.atM - valueM))) best = stop;
  }
  if (best) return { atM: Number(best.atM.toFixed(4)), reason: best.reason };
  const step = Math.round(valueM / STEP_M) * STEP_M;
  const near = Math.abs(step - valueM) <= Math.min(reachM, STEP_REACH_M);
  return { atM: near ? Number(step.toFixed(4)) : wholeCm(valueM), reason: null };
};

const sameFrame = (a: SurfaceFrame, b: SurfaceFrame): boolean =>
  a.surface === b.surface && a.wall?.edge === b.wall?.edge;

/** The openings and patches that lie on a surface, but for one of them. */
const neighbours = (project: Project, frame: SurfaceFrame, except: ItemRef | null) => {
  const { openings, patches } = project.room;
  const all: { readonly ref: ItemRef; readonly item: Opening | Patch }[] = [
    ...openings.map((item) => ({ ref: { kind: 'opening', id: item.id } as const, item })),
    ...patches.map((item) => ({ ref: { kind: 'patch', id: item.id } as const, item })),
  ];
  return all.filter(({ ref, item }) => {
    if (except && ref.kind === except.kind && ref.id === except.id) return false;
    const other = frameOf(project, item);
    return other !== undefined && sameFrame(other, frame);
  });
};

const alongStops = (project: Project, frame: SurfaceFrame, except: ItemRef | null): Stop[] => [
  { atM: 0, reason: null },
  { atM: frame.alongM, reason: null },
  ...neighbours(project, frame, except).flatMap(({ ref: of, item }) => {
    const reason = { kind: 'edgeOf', of } as const;
    return [item.fromM, item.fromM + item.widthM].map((atM) => ({ atM, reason }));
  }),
];

/** @param topM how high the surface reaches there */
const upStops = (project: Project, frame: SurfaceFrame, except: ItemRef | null, topM: number): Stop[] => [
  { atM: 0, reason: isLying(frame.surface) ? null : { kind: 'floor' } },
  { atM: topM, reason: isLying(frame.surface) ? null : { kind: 'ceiling' } },
  ...neighbours(project, frame, except).flatMap(({ ref: of, item }) => {
    const reason = { kind: 'edgeOf', of } as const;
    return [item.bottomM, item.bottomM + item.heightM].map((atM) => ({ atM, reason }));
  }),
];

const reasonsOf = (...stops: readonly Stop[]): SnapReason[] => stops.flatMap(({ reason }) => reason ?? []);

export interface SnappedPoint {
  readonly atM: Point2;
  readonly reasons: readonly SnapReason[];
}

/** A point of a surface, [along, up], drawn to the floor, to the edges of what is there, and to 5 cm. */
export const snapOnSurface = (
  project: Project,
  frame: SurfaceFrame,
  [along, up]: Point2,
  reachM: number,
  except: ItemRef | null = null,
): SnappedPoint => {
  const a = stopped(along, alongStops(project, frame, except), reachM);
  const topM = frame.wall ? topAt(frame.wall, a.atM) : frame.upM;
  const b = stopped(up, upStops(project, frame, except, topM), reachM);
  return { atM: [a.atM, b.atM], reasons: reasonsOf(a, b) };
};

/** How high a stretch of a surface reaches all along. */
const reachOver = (frame: SurfaceFrame, fromM: number, widthM: number): number =>
  reachUpM(frame, { surface: frame.surface, fromM, widthM, bottomM: 0, heightM: 0 });

/** One edge of a rectangle [from, width], by how far along or up its surface it lies. */
export const snapEdge = (
  project: Project,
  frame: SurfaceFrame,
  direction: 'along' | 'up',
  [fromM, widthM]: Point2,
  valueM: number,
  reachM: number,
  except: ItemRef | null,
): { readonly atM: number; readonly reasons: readonly SnapReason[] } => {
  const stops =
    direction === 'along'
      ? alongStops(project, frame, except)
      : upStops(project, frame, except, reachOver(frame, fromM, widthM));
  const stop = stopped(valueM, stops, reachM);
  return { atM: stop.atM, reasons: reasonsOf(stop) };
};

/** The lower near corner of a rectangle that slides on a surface: either of its edges may come to a stop, or its middle. */
export const snapRect = (
  project: Project,
  frame: SurfaceFrame,
  [along, up]: Point2,
  [widthM, heightM]: Point2,
  reachM: number,
  except: ItemRef | null,
): SnappedPoint => {
  const both = (stops: readonly Stop[], sizeM: number): Stop[] =>
    stops.flatMap((stop) => [stop, { ...stop, atM: stop.atM - sizeM }]);
  const middle: Stop = { atM: (frame.alongM - widthM) / 2, reason: { kind: 'wallMiddle' } };
  const a = stopped(along, [...both(alongStops(project, frame, except), widthM), middle], reachM);
  const topM = reachOver(frame, Math.max(0, a.atM), widthM);
  const b = stopped(up, both(upStops(project, frame, except, topM), heightM), reachM);
  return { atM: [a.atM, b.atM], reasons: reasonsOf(a, b) };
};
