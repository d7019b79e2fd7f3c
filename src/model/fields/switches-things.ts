import { type Edit, refuseWords, setValue } from '../commands/edit.ts';
import { type Key, pathText, valueAt } from '../paths.ts';
import { planCorners } from '../plan-walls.ts';
import type { Project, Row, SurfaceTreatment } from '../project.ts';
import { SURFACES } from '../schema/room.ts';
import { referenceSeatId, seatPoses } from '../seating.ts';
import type { Acoustics, Switch } from './switch.ts';

const notThere = (keys: readonly Key[]): Edit => refuseWords(pathText(keys), undefined, 'a part of this project');

/** Something the file may leave out: its own numbers once it is there. `make` gives the numbers it begins with. */
const part = (
  about: Pick<Switch, 'pattern' | 'label' | 'help'> & { readonly without: string; readonly with: string },
  make: (project: Project, keys: readonly Key[]) => unknown,
): Switch => ({
  pattern: about.pattern,
  label: about.label,
  help: about.help,
  ways: [
    { id: 'usual', word: about.without },
    { id: 'own', word: about.with },
  ],
  read: (project, keys) => (valueAt(project, keys) === undefined ? 'usual' : 'own'),
  set(project, keys, way): Edit {
    if (valueAt(project, keys.slice(0, -1)) === undefined) return notThere(keys);
    const there = valueAt(project, keys) !== undefined;
    if (there === (way === 'own')) return { ok: true, project };
    return setValue(project, keys, way === 'own' ? make(project, keys) : undefined);
  },
});

const centimetres = (valueM: number): number => Math.round(valueM * 100) / 100;

/** How far behind the eyes of the row before it a platform begins, and before its own row's where there is none. */
const BEHIND_EYES_M = 0.6;

/** Wall to wall, from behind the row in front to the back wall. */
const usualRiser = (project: Project, keys: readonly Key[]): Row['riser'] => {
  const own = project.rows[Number(keys[1])];
  const corners = planCorners(project);
  const xs = corners.map(([x]) => x);
  const zs = corners.map(([, z]) => z);
  const before = project.rows.filter((row) => row !== own && row.eyeZM < own.eyeZM).map((row) => row.eyeZM);
  const fromZM = Math.max(0, Math.min(Math.max(0, ...before) + BEHIND_EYES_M, own.eyeZM - BEHIND_EYES_M / 2));
  return {
    fromXM: Math.min(...xs),
    toXM: Math.max(...xs),
    fromZM: centimetres(fromZM),
    toZM: Math.max(...zs),
    steps: [],
  };
};

/** A ceiling's lowest height, for what hangs from it. */
const ceilingM = ({ room: { ceiling } }: Project): number => {
  if (ceiling.shape === 'flat') return ceiling.heightM;
  if (ceiling.shape === 'slope') return Math.min(ceiling.startHeightM, ceiling.endHeightM);
  return Math.max(...ceiling.pointsM.map(([, height]) => height));
};

/** Under the ceiling on the picture's middle line, far enough for a throw of one and a half picture widths. */
const usualProjector = (project: Project): Project['picture']['projector'] => {
  const farM = Math.max(...planCorners(project).map(([, z]) => z)) - 0.3;
  const { centreXM, widthM, offFrontWallM } = project.picture;
  const zM = Math.min(farM, offFrontWallM + 1.5 * widthM);
  return {
    lumens: 2000,
    calibratedFraction: 0.6,
    atM: [centreXM, centimetres(ceilingM(project) - 0.3), centimetres(zM)],
  };
};

/** What a sealed 12-inch subwoofer does, near enough to begin with: our own figures, no source. */
const USUAL_OUTPUT = { bandsDb: { '20': 96, '31.5': 106, '50': 111, '80': 112 }, space: 'half', kind: 'peak' };

const referenceEar = (project: Project): readonly number[] => {
  const id = referenceSeatId(project);
  const ear = seatPoses(project).find(({ seat }) => seat.id === id)?.earM ?? [0, 1.1, 3];
  return ear.map(centimetres);
};

const aim: Switch = {
  pattern: 'loudspeakers[].aim',
  label: 'Aims at',
  help: 'As usual: the reference seat; a dipole without an aim lies along its wall.',
  ways: [
    { id: 'usual', word: 'as usual' },
    { id: 'reference', word: 'the reference seat' },
    { id: 'point', word: 'a point' },
  ],
  read(project, keys) {
    const value = valueAt(project, keys);
    if (value === undefined) return 'usual';
    return value === 'reference' ? 'reference' : 'point';
  },
  set(project, keys, way) {
    if (way === aim.read(project, keys)) return { ok: true, project };
    const value = way === 'usual' ? undefined : way === 'reference' ? 'reference' : referenceEar(project);
    return setValue(project, keys, value);
  },
};

const stated = (treatment: SurfaceTreatment | undefined): string =>
  treatment?.admittance ? 'admittance' : treatment?.absorption ? 'octave' : 'finish';

const restated = (
  treatment: SurfaceTreatment | undefined,
  keys: readonly Key[],
  way: string,
  acoustics: Acoustics,
): SurfaceTreatment => {
  const { finish: _finish, absorption: _absorption, admittance: _admittance, ...others } = treatment ?? {};
  if (way === 'octave') return { ...others, absorption: { ...acoustics.absorption(treatment, keys) } };
  if (way === 'admittance') return { ...others, admittance: [...acoustics.admittance(treatment, keys)] };
  return { ...others, finish: acoustics.finish(treatment, keys) };
};

/** The switch of a surface stands on the surface itself. */
const treatmentSwitch = (pattern: string): Switch => ({
  pattern,
  label: 'Stated by',
  help: 'A finish of the list, absorption octave by octave, or an admittance for the bass alone.',
  ways: [
    { id: 'finish', word: 'its finish' },
    { id: 'octave', word: 'absorption by octave' },
    { id: 'admittance', word: 'admittance in the bass' },
  ],
  read: (project, keys) => stated(valueAt(project, keys) as SurfaceTreatment | undefined),
  set(project, keys, way, acoustics) {
    const treatment = valueAt(project, keys) as SurfaceTreatment | undefined;
    if (stated(treatment) === way) return { ok: true, project };
    return setValue(project, keys, restated(treatment, keys, way, acoustics));
  },
});

export const THING_SWITCHES: readonly Switch[] = [
  aim,
  part(
    {
      pattern: 'picture.projector',
      label: 'Projector',
      help: 'A screen needs one; a panel shines by itself.',
      without: 'none',
      with: 'one',
    },
    usualProjector,
  ),
  part(
    {
      pattern: 'rows[].riser',
      label: 'Riser',
      help: 'As usual it runs from wall to wall and from behind the row in front to the back wall.',
      without: 'wall to wall',
      with: 'by its edges',
    },
    usualRiser,
  ),
  part(
    {
      pattern: 'subwoofers[].maxOutput',
      label: 'Output',
      help: 'What it can do at most, band by band, as its data sheet says.',
      without: 'not known',
      with: 'by its bands',
    },
    () => USUAL_OUTPUT,
  ),
  ...SURFACES.map((surface) => treatmentSwitch(`room.surfaces.${surface}`)),
  treatmentSwitch('room.surfaces.walls{}'),
  treatmentSwitch('room.patches[]'),
];
