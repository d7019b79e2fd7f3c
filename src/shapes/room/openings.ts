import type { Vec3 } from '../../math/vec3.ts';
import type { Opening, Project } from '../../model/project.ts';
import { frameOf, lowestTop, pointOn, type SurfaceFrame } from '../../model/room/places.ts';
import { partsOf, type RawPart } from '../geometries.ts';
import { mirrored } from '../mesh/raw.ts';
import { facing, standing } from '../placement.ts';
import type { Placement, Solid } from '../solid.ts';
import type { Cut } from './cells.ts';
import { ARCHITRAVE_M, doorFrame, doorHandle, doorLeaf, leafOf, windowFrame, windowPane } from './joinery.ts';
import { onSurface, WALL_M } from './surfaces.ts';

/** How far an open leaf stands from its frame. */
const AJAR_DEG = 68;

/** The middle of a cut's lower edge on the inner face, facing into the room. */
const cutPlacement = (frame: SurfaceFrame, cut: Cut): Placement =>
  standing(pointOn(frame, (cut.u0 + cut.u1) / 2, cut.v0), facing(frame.n).yawDeg);

/** Where the leaf's hinge stands, and which way it has swung; `side` is -1 for a hinge at smaller x of the joinery axes. */
const leafPlacement = (frame: Placement, opening: Opening, leafWidthM: number, side: -1 | 1): Placement => {
  const into = opening.swing === 'in';
  // The leaf lies at the face it opens towards, so that it clears the reveal.
  const z = into ? 0.022 : WALL_M - 0.022;
  const x = (side * leafWidthM) / 2;
  const turn = (frame.yawDeg * Math.PI) / 180;
  const [px, py, pz] = frame.positionM;
  const positionM: Vec3 = [
    px + x * Math.cos(turn) - z * Math.sin(turn),
    py,
    pz + x * Math.sin(turn) + z * Math.cos(turn),
  ];
  // Positive yaw turns +x towards +z, out of the room.
  const swing = opening.leaf === 'open' ? AJAR_DEG * (into ? 1 : -1) * side : 0;
  return standing(positionM, frame.yawDeg + swing);
};

const doorSolids = (opening: Opening, surface: SurfaceFrame, cut: Cut): Solid[] => {
  const width = cut.u1 - cut.u0;
  const height = cut.v1 - cut.v0;
  const placement = cutPlacement(surface, cut);
  // The architrave may not reach past the wall's ends or its top.
  const reach = ARCHITRAVE_M;
  const topM = surface.wall ? lowestTop(surface.wall, cut.u0 - reach, cut.u1 + reach) : surface.upM;
  const clear = Math.min(cut.u0, surface.alongM - cut.u1, topM - cut.v1) + 0.007;
  const wide = Math.max(0, Math.min(ARCHITRAVE_M, clear));
  const item = { kind: 'opening', id: opening.id } as const;
  const frame = partsOf('door-frame', [width, height, wide], () => [
    { part: 'frame', material: 'joinery', mesh: doorFrame(width, height, WALL_M, wide) },
  ]).map((part): Solid => ({ ...item, ...part, placement }));
  if (opening.leaf === 'none' || opening.kind !== 'door' || width < 0.3 || height < 0.5) return frame;
  // Hinge left means on the left of a person in the room who looks at the door: joinery's x grows to the right
  // of one who looks into the room, so left is its positive side.
  const side = opening.hinge === 'left' ? 1 : -1;
  const leaf = leafOf(width, height);
  const parts = partsOf('door-leaf', [width, height, side], () => {
    const made: RawPart[] = [
      { part: 'leaf', material: 'joinery', mesh: doorLeaf(leaf) },
      { part: 'handle', material: 'metal', mesh: doorHandle(leaf) },
    ];
    // The maker's leaf reaches from its hinge to +x.
    return side < 0 ? made : made.map((part) => ({ ...part, mesh: mirrored(part.mesh) }));
  });
  const at = leafPlacement(placement, opening, leaf.widthM, side);
  return [...frame, ...parts.map((part): Solid => ({ ...item, ...part, placement: at }))];
};

const windowSolids = (opening: Opening, surface: SurfaceFrame, cut: Cut): Solid[] => {
  const width = cut.u1 - cut.u0;
  const height = cut.v1 - cut.v0;
  const placement = cutPlacement(surface, cut);
  return partsOf('window', [width, height], () => [
    { part: 'frame', material: 'joinery', mesh: windowFrame(width, height, WALL_M) },
    { part: 'pane', material: 'glass', mesh: windowPane(width, height, WALL_M) },
  ]).map((part) => ({ kind: 'opening', id: opening.id, ...part, placement }));
};

/** Frames, leaves, handles and panes of the openings in walls; an opening in floor or ceiling is a bare hole. */
export const openingSolids = (project: Project): Solid[] =>
  project.room.openings.flatMap((opening) => {
    const frame = frameOf(project, opening);
    const cut = frame?.wall ? onSurface(frame, opening) : null;
    if (!frame || !cut) return [];
    if (opening.kind === 'window') return windowSolids(opening, frame, cut);
    return opening.kind === 'door' ? doorSolids(opening, frame, cut) : [];
  });
