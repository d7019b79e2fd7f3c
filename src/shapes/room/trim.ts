import { add, dot, scale } from '../../math/vec3.ts';
import type { Patch, Project } from '../../model/project.ts';
import { frameOf, lowestTop, pointOn, type SurfaceFrame, wallOfItem } from '../../model/room/places.ts';
import { roomShape } from '../../model/room/shape.ts';
import { partsOf, type RawPart } from '../geometries.ts';
import { bevelledFront } from '../mesh/bevelled-box.ts';
import { addQuad, addTriangle, addVertex, emptyMesh, joined, type RawMesh } from '../mesh/raw.ts';
import { asDrawn, axesOf, facing, standing } from '../placement.ts';
import type { Solid } from '../solid.ts';
import { ARCHITRAVE_M } from './joinery.ts';
import { type DrawnWall, drawnWalls, isMirrored, onSurface, stretch, wallEnds } from './surfaces.ts';

const SKIRTING_M = 0.09;
const SKIRTING_DEPTH_M = 0.014;
const PIECE_M = 0.4;

/** How far the board goes on past a wall's two ends: round an inward corner, where two boards would leave a gap. */
const overrun = (project: Project, { wall }: DrawnWall): readonly [number, number] => {
  const { from, to } = wallEnds(roomShape(project), wall);
  const past = (backM: number) => (backM < 0 ? SKIRTING_DEPTH_M : 0);
  const ends = [past(from.backM), past(to.backM)] as const;
  return wall.start === wall.from ? ends : [ends[1], ends[0]];
};

/** Where skirting runs along a wall: everywhere but across openings that reach down to it, and under a slope's foot. */
const skirtingRuns = (project: Project, drawn: DrawnWall): [number, number][] => {
  const { wall, frame } = drawn;
  const gaps = project.room.openings
    .filter((opening) => opening.bottomM < SKIRTING_M && wallOfItem(project, opening) === wall)
    .map((opening) => ({ cut: onSurface(frame, opening), door: opening.kind === 'door' }))
    .flatMap(({ cut, door }) => {
      const trim = door ? ARCHITRAVE_M - 0.008 : 0;
      return cut ? [[cut.u0 - trim, cut.u1 + trim]] : [];
    })
    .sort((a, b) => a[0] - b[0]);
  const [less, more] = overrun(project, drawn);
  const runs: [number, number][] = [];
  let from = -less;
  for (const [start, end] of gaps) {
    if (start - from > 0.02) runs.push([from, start]);
    from = Math.max(from, end);
  }
  const last = wall.lengthM + more;
  if (last - from > 0.02) runs.push([from, last]);
  return runs.filter(([start, end]) => lowestTop(wall, Math.max(0, start), Math.min(wall.lengthM, end)) > SKIRTING_M);
};

/** A moulded board along a wall from u = from to u = to, closed. */
const skirtingRun = (frame: SurfaceFrame, [from, to]: readonly [number, number]): RawMesh => {
  const mesh = emptyMesh();
  const [h, d] = [SKIRTING_M, SKIRTING_DEPTH_M];
  // Out from the wall, up: a board with an eased top edge.
  const section = [
    [0, 0],
    [d, 0],
    [d, h - 0.016],
    [d - 0.003, h - 0.006],
    [d - 0.008, h],
    [0, h],
  ];
  const pieces = Math.max(1, Math.ceil((to - from) / PIECE_M));
  const rings = Array.from({ length: pieces + 1 }, (_, k) => {
    const along = from + ((to - from) * k) / pieces;
    return section.map(([out, up]) => {
      const p = add(pointOn(frame, along, up), scale(frame.n, out));
      return addVertex(mesh, ...p);
    });
  });
  // u x up = n for two of a box's walls; the others turn the other way.
  const along = isMirrored(frame) ? -1 : 1;
  const quad = (a: number, b: number, c: number, e: number) =>
    along > 0 ? addQuad(mesh, a, b, c, e) : addQuad(mesh, e, c, b, a);
  const count = section.length;
  for (let k = 0; k < pieces; k += 1) {
    for (let i = 0; i < count; i += 1) {
      const j = (i + 1) % count;
      quad(rings[k][i], rings[k + 1][i], rings[k + 1][j], rings[k][j]);
    }
  }
  for (let i = 1; i + 1 < count; i += 1) {
    const [s, e] = [rings[0], rings[pieces]];
    if (along > 0) {
      addTriangle(mesh, s[0], s[i], s[i + 1]);
      addTriangle(mesh, e[0], e[i + 1], e[i]);
    } else {
      addTriangle(mesh, s[0], s[i + 1], s[i]);
      addTriangle(mesh, e[0], e[i], e[i + 1]);
    }
  }
  return mesh;
};

/** Skirting boards, kind 'shell' with their wall's id, so that they fade with it. */
export const skirtingSolids = (project: Project): Solid[] =>
  drawnWalls(project).flatMap((drawn) => {
    const runs = skirtingRuns(project, drawn);
    const key = [...drawn.frame.originM, ...drawn.frame.u, ...runs.flat()];
    return partsOf('skirting', key, () => [
      { part: 'skirting', material: 'joinery', mesh: joined(...runs.map((run) => skirtingRun(drawn.frame, run))) },
    ]).map((part): Solid => ({ kind: 'shell', id: drawn.id, ...part, placement: asDrawn }));
  });

/** How thick a patch is drawn: a fibre panel by the millimetres in its name, anything else as a board. */
const thicknessOf = ({ finish }: Patch): number => {
  const panel = /-panel-(\d{1,3})$/.exec(finish ?? '');
  if (panel) return Math.max(0.01, Math.min(0.3, Number(panel[1]) / 1000));
  return finish?.startsWith('curtain') ? 0.06 : 0.012;
};

/** A cloth panel as modules with seams between them, about its middle; its back on z = 0, its front at -z. */
const panelParts = (width: number, height: number, thick: number): RawPart[] => {
  const columns = Math.max(1, Math.round(width / 0.6));
  const rows = Math.max(1, Math.round(height / 1.2));
  const modules: RawMesh[] = [];
  for (let i = 0; i < columns; i += 1) {
    for (let j = 0; j < rows; j += 1) {
      const x = -width / 2 + (width * i) / columns;
      const y = -height / 2 + (height * j) / rows;
      const bevelM = Math.min(0.007, thick / 2.5, width / 8, height / 8);
      modules.push(bevelledFront([x, y, -thick], [x + width / columns, y + height / rows, 0], bevelM));
    }
  }
  return [{ part: 'panel', material: 'linen', mesh: joined(...modules) }];
};

/** Panels and other patches on the surfaces, kind 'patch'. A patch on the floor lies flat as a rug. */
export const patchSolids = (project: Project): Solid[] =>
  project.room.patches.flatMap((patch) => {
    const frame = frameOf(project, patch);
    const cut = frame ? onSurface(frame, patch) : null;
    if (!frame || !cut) return [];
    const middle = pointOn(frame, (cut.u0 + cut.u1) / 2, (cut.v0 + cut.v1) / 2);
    const { yawDeg, pitchDeg } = facing(frame.n);
    const placement = standing(middle, yawDeg, pitchDeg);
    const along = (cut.u1 - cut.u0) * stretch(frame.u);
    const up = (cut.v1 - cut.v0) * stretch(frame.v);
    // On a slope across the room the panel's own right runs along the room: there its width is the surface's rise.
    const { right } = axesOf(placement);
    const turned = Math.abs(dot(right, frame.u)) < Math.abs(dot(right, frame.v));
    const [width, height] = turned ? [up, along] : [along, up];
    const thick = thicknessOf(patch);
    return partsOf('patch', [width, height, thick], () => panelParts(width, height, thick)).map(
      (part): Solid => ({ kind: 'patch', id: patch.id, ...part, placement }),
    );
  });
