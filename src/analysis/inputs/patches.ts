import { admittanceFromDiffuse } from '../../engines/acoustics/admittance.ts';
import { MOST_FUNCTIONS } from '../../engines/bass/patches/patch-functions.ts';
import { type Admittance, isPrism, type RoomSpec, type WallPatch } from '../../engines/bass/room-field.ts';
import type { Vec3 } from '../../math/vec3.ts';
import type { Opening, Patch, Project } from '../../model/project.ts';
import { frameOf, pointOn, wallFrame } from '../../model/room/places.ts';
import { roomShape } from '../../model/room/shape.ts';
import { openingAbsorption, saysSomething } from './areas.ts';
import { type Face, facesOf, liesOn } from './boundary.ts';
import { DAMPING_FACTOR, type Damping } from './damping.ts';
import { wallOfBox, wallOfPrism } from './engine-walls.ts';
import { type Measures, SI } from './measures.ts';
import { disjoint, type Owned } from './rectangles.ts';

import { defaultFinish, wallAdmittance } from './treatment.ts';

/** Whether nothing closes an opening. */
export const isOpen = ({ kind, leaf }: Pick<Opening, 'kind' | 'leaf'>): boolean =>
  kind === 'opening' || leaf !== 'closed';

/** What lies behind an open one is not computed: it takes what arrives as endless air does, rho c. */
const OPEN: Admittance = [1, 0];

const factors: Readonly<Record<Damping, number>> = { nominal: 1, low: 1 / DAMPING_FACTOR, high: DAMPING_FACTOR };

const damped = ([re, im]: Admittance, damping: Damping): Admittance => [re * factors[damping], im];

/**
 * Admittance of an opening at low frequency: rho c where nothing closes it, whatever the damping band; else real, from what
 * a closed door or window absorbs in its lowest octave.
 */
const ofOpening = (opening: Opening, damping: Damping): Admittance =>
  isOpen(opening) ? OPEN : damped([admittanceFromDiffuse(openingAbsorption(opening)[0]).admittance, 0], damping);

const same = (a: Admittance, b: Admittance): boolean => a[0] === b[0] && a[1] === b[1];

/** How far a face reaches in its own `fromM` and `bottomM`. */
const extentOf = (project: Project, face: Face): readonly [number, number] => {
  if (face.wall) {
    const { alongM, upM } = wallFrame(face.wall);
    return [alongM, upM];
  }
  const { minM, maxM } = roomShape(project);
  return [maxM[0] - minM[0], maxM[2] - minM[2]];
};

/** Where a ceiling changes its plane, along its own `fromM` and `bottomM`. */
const foldsOf = (project: Project, face: Face): readonly [readonly number[], readonly number[]] => {
  if (face.surface !== 'ceiling') return [[], []];
  const { ceiling, minM } = roomShape(project);
  const places = ceiling.knots.slice(1, -1).map(([place]) => place - minM[ceiling.axis]);
  return ceiling.axis === 0 ? [places, []] : [[], places];
};

/** A face's patches and openings as disjoint rectangles that differ from the face itself. */
const rectanglesOf = (project: Project, face: Face, damping: Damping): Owned<Admittance>[] => {
  const own = damped(wallAdmittance(face.treatment, defaultFinish(face.surface)), damping);
  const reach = extentOf(project, face);
  const rectangle = (item: Opening | Patch, owner: Admittance): Owned<Admittance> => ({
    fromM: [Math.min(item.fromM, reach[0]), Math.min(item.bottomM, reach[1])],
    toM: [Math.min(item.fromM + item.widthM, reach[0]), Math.min(item.bottomM + item.heightM, reach[1])],
    owner,
  });
  const pieces = [
    ...project.room.patches
      .filter((patch) => liesOn(project, face, patch))
      .map((patch) => rectangle(patch, saysSomething(patch) ? damped(wallAdmittance(patch, ''), damping) : own)),
    ...project.room.openings
      .filter((opening) => liesOn(project, face, opening))
      .map((opening) => rectangle(opening, ofOpening(opening, damping))),
  ];
  return disjoint(pieces, same, foldsOf(project, face)).filter(({ owner }) => !same(owner, own));
};

/** The corners of a rectangle on a face in the engine's axes (origin in the corner of least x, y and z). */
const cornersOf = (project: Project, face: Face, { fromM, toM }: Owned<Admittance>): Vec3[] => {
  const { minM } = roomShape(project);
  const frame = face.wall
    ? wallFrame(face.wall)
    : frameOf(project, {
        surface: face.surface,
        fromM: fromM[0],
        widthM: toM[0] - fromM[0],
        bottomM: fromM[1],
        heightM: toM[1] - fromM[1],
      });
  if (frame === undefined) return [];
  return [fromM[0], toM[0]].flatMap((along) =>
    [fromM[1], toM[1]].map((up): Vec3 => {
      const [x, y, z] = pointOn(frame, along, up);
      return [x - minM[0], y - minM[1], z - minM[2]];
    }),
  );
};

/**
 * Patches and openings of a document as the bass engine takes them: disjoint rectangles on the walls of `spec`, later
 * entries over earlier ones and openings over patches. Patches take their own admittance, absorption or finish (the same
 * inversion as whole walls); closed doors and windows what they absorb; open ones rho c. 'low' and 'high' divide and multiply
 * the real part of all but the open ones by sqrt(3). A rectangle that lies on no wall of `spec` is left out.
 */
export const roomPatches = (project: Project, spec: RoomSpec, damping: Damping = 'nominal'): WallPatch[] =>
  facesOf(project).flatMap((face) =>
    rectanglesOf(project, face, damping).flatMap((rectangle): WallPatch[] => {
      const corners = cornersOf(project, face, rectangle);
      const place = isPrism(spec) ? wallOfPrism(spec, corners) : wallOfBox(spec, corners);
      return place ? [{ ...place, admittance: rectangle.owner }] : [];
    }),
  );

/** Area of every opening that nothing closes, m2, by id. */
export const openAreas = ({ room }: Project): readonly { readonly id: string; readonly areaM2: number }[] =>
  room.openings.filter(isOpen).map(({ id, widthM, heightM }) => ({ id, areaM2: widthM * heightM }));

/**
 * What the bass leaves out at open doors and openings, in a sentence for the person; null where nothing is open. A termination
 * of rho c takes all that arrives straight on and sends nothing back; a real opening is narrower than a wave, reflects part
 * of it, and the room behind answers with modes of its own.
 */
export const openingApproximation = (project: Project, measures: Measures = SI): string | null => {
  const open = openAreas(project);
  if (open.length === 0) return null;
  const areaM2 = open.reduce((sum, one) => sum + one.areaM2, 0);
  const what = open.length === 1 ? 'the open doorway is' : `the ${open.length} openings are`;
  return `For the bass, ${what} taken to let everything out that meets ${open.length === 1 ? 'it' : 'them'} (${measures.area(areaM2)}) and nothing back in. A real opening sends part of it back and the space behind answers, so expect rougher figures near it and below the first mode.`;
};

/** What the bass leaves out where there are very many patches, in a sentence for the person; null where it leaves out nothing. */
export const patchesApproximation = ({ patches = [] }: RoomSpec): string | null =>
  patches.length > MOST_FUNCTIONS
    ? `For the bass, only the ${MOST_FUNCTIONS} of ${patches.length} patches that matter most are worked out one by one; the others are spread evenly over their walls.`
    : null;
