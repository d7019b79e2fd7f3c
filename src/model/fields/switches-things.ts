import { type Edit, refuseWords, setValue } from '../commands/edit.ts';
import { type Key, pathText, valueAt } from '../paths.ts';
import type { Project, SurfaceTreatment } from '../project.ts';
import { riserOf } from '../riser.ts';
import { plainSteps, statedSteps } from '../riser-steps.ts';
import { roomShape } from '../room/shape.ts';
import { SURFACES } from '../schema/room.ts';
import { referenceSeatId, seatPoses } from '../seating.ts';
import { undusted } from '../snap/lines.ts';
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

/** A projector's body keeps this far from ceiling and walls. */
const PROJECTOR_CLEAR_M = 0.3;

/** Under the ceiling on the picture's middle line, far enough for a throw of one and a half picture widths. */
const usualProjector = (project: Project): Project['picture']['projector'] => {
  const { minM, ceilingAtM, nearestInside } = roomShape(project);
  const { centreXM, widthM, offFrontWallM } = project.picture;
  const zM = minM[2] + offFrontWallM + 1.5 * widthM;
  const [x, , z] = nearestInside([centreXM, 0, zM], [0, 0, PROJECTOR_CLEAR_M]);
  return {
    lumens: 2000,
    calibratedFraction: 0.6,
    atM: [undusted(x), centimetres(ceilingAtM(x, z) - PROJECTOR_CLEAR_M), centimetres(z)],
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

/** Steps without a list of their own are drawn as usual; with one they are those of the list. */
const steps: Switch = {
  pattern: 'rows[].riser.steps',
  label: 'Steps up',
  help: 'As usual equal steps at both ends, wherever the riser is higher than one step may be.',
  ways: [
    { id: 'usual', word: 'as usual' },
    { id: 'own', word: 'by their edges' },
  ],
  read: (project, keys) => (statedSteps(project.rows[Number(keys[1])]).length > 0 ? 'own' : 'usual'),
  set(project, keys, way) {
    const row = project.rows[Number(keys[1])];
    if (!row) return notThere(keys);
    if (way === steps.read(project, keys)) return { ok: true, project };
    const riser = { ...riserOf(project, row), steps: way === 'own' ? plainSteps(project, row) : [] };
    return setValue(project, keys.slice(0, -1), riser);
  },
};

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
    (project, keys) => riserOf(project, project.rows[Number(keys[1])]),
  ),
  steps,
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
