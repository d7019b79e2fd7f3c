import { eyringS } from '../../engines/acoustics/reverberation.ts';
import type { Project, SurfaceTreatment } from '../../model/project.ts';
import { roomShape } from '../../model/room/shape.ts';
import { soundSpeedOf } from '../../model/room.ts';
import { SURFACES } from '../../model/schema/room.ts';
import { saysSomething, treatedAreas } from './areas.ts';
import { absorptionAt, defaultFinish, octaveAbsorption } from './treatment.ts';

/** Octaves whose absorption a stated time may change; the first only where a surface or the statement names it. */
const BANDS_HZ = [63, 125, 250, 500, 1000, 2000, 4000] as const;

/** Part of the boundary in one octave. */
interface Share {
  readonly areaM2: number;
  readonly absorption: number;
  readonly held: boolean;
}

const ROUNDS = 60;
/** Exponents between which the search runs: a millionth of the finishes' damping to a thousandfold. */
const LEAST = 1e-6;
const MOST = 1e3;

/**
 * Absorption under an exponent: 1 - (1 - a)^k. It stays between 0 and 1 and, where all surfaces are alike, makes Eyring's
 * time 1/k of what it was.
 */
const under = (absorption: number, exponent: number): number =>
  absorption >= 1 ? 1 : -Math.expm1(exponent * Math.log1p(-absorption));

const meanUnder = (shares: readonly Share[], exponent: number): number => {
  let [sum, areaM2] = [0, 0];
  for (const share of shares) {
    sum += share.areaM2 * (share.held ? share.absorption : under(share.absorption, exponent));
    areaM2 += share.areaM2;
  }
  return sum / areaM2;
};

/** The exponent that brings the mean absorption to `wanted`, and whether any does; the nearest end where none does. */
const exponentFor = (shares: readonly Share[], wanted: number): { exponent: number; reached: boolean } => {
  let [low, high] = [Math.log(LEAST), Math.log(MOST)];
  if (meanUnder(shares, LEAST) > wanted) return { exponent: LEAST, reached: false };
  if (meanUnder(shares, MOST) < wanted) return { exponent: MOST, reached: false };
  for (let round = 0; round < ROUNDS; round += 1) {
    const middle = (low + high) / 2;
    if (meanUnder(shares, Math.exp(middle)) < wanted) low = middle;
    else high = middle;
  }
  return { exponent: Math.exp((low + high) / 2), reached: true };
};

interface Fit {
  readonly room: Project['room'];
  /** Octaves in which no finish makes the time that is stated, Hz. */
  readonly missedHz: readonly number[];
}

/** How much more or less than the finishes each octave takes: as stated, and between and beyond in proportion to its neighbours. */
const fitTo = (project: Project, statedS: Readonly<Record<string, number>>): Fit => {
  const areas = treatedAreas(project);
  const { volumeM3 } = roomShape(project);
  const speedMS = soundSpeedOf(project);
  const surfaceM2 = areas.reduce((sum, { areaM2 }) => sum + areaM2, 0);
  const sharesOf = (hz: number): Share[] =>
    areas.map(({ areaM2, absorption, lowest, held }) => ({
      areaM2,
      held,
      absorption: hz < 125 ? lowest : absorptionAt(toBands(absorption), hz),
    }));
  // -ln(1 - mean absorption) that gives a time: Eyring turned round.
  const takenFor = (timeS: number): number => eyringS(volumeM3, surfaceM2, -Math.expm1(-1), speedMS) / timeS;
  const missedHz: number[] = [];
  const ratios: Record<string, number> = {};
  for (const [hz, timeS] of Object.entries(statedS))
    ratios[hz] = Math.log(takenFor(timeS) / -Math.log1p(-Math.min(1 - 1e-9, meanUnder(sharesOf(Number(hz)), 1))));
  const exponents = Object.fromEntries(
    BANDS_HZ.map((hz) => {
      const shares = sharesOf(hz);
      const now = -Math.log1p(-Math.min(1 - 1e-9, meanUnder(shares, 1)));
      const { exponent, reached } = exponentFor(shares, -Math.expm1(-now * Math.exp(absorptionAt(ratios, hz))));
      if (!reached && String(hz) in statedS) missedHz.push(hz);
      return [String(hz), exponent];
    }),
  );
  return { room: scaled(project, exponents, '63' in statedS), missedHz };
};

const toBands = (values: readonly number[]): Readonly<Record<string, number>> =>
  Object.fromEntries(values.map((value, index) => [String(BANDS_HZ[index + 1]), value]));

/** The room with every surface's absorption under the exponents, octave by octave; admittances stay as stated. */
const scaled = (project: Project, exponents: Readonly<Record<string, number>>, from63: boolean): Project['room'] => {
  const treated = (treatment: SurfaceTreatment | undefined, fallback: string): SurfaceTreatment => {
    if (treatment?.admittance) return treatment;
    const bands: Record<string, number> = { ...toBands(octaveAbsorption(treatment, fallback)) };
    const own = treatment?.absorption;
    if (from63 || (own && '63' in own)) bands['63'] = own && '63' in own ? own['63'] : bands['125'];
    return {
      absorption: Object.fromEntries(Object.entries(bands).map(([hz, value]) => [hz, under(value, exponents[hz])])),
    };
  };
  const { surfaces, patches } = project.room;
  return {
    ...project.room,
    surfaces: {
      ...Object.fromEntries(SURFACES.map((name) => [name, treated(surfaces[name], defaultFinish(name))])),
      ...(surfaces.walls && {
        walls: Object.fromEntries(
          Object.entries(surfaces.walls).map(([edge, own]) => [edge, treated(own, defaultFinish('front'))]),
        ),
      }),
    },
    patches: patches.map((patch) =>
      saysSomething(patch) && !patch.admittance ? { ...patch, finish: undefined, ...treated(patch, '') } : patch,
    ),
  };
};

/** One answer a room: it is asked for many times a frame while a hand moves what stands in it. */
const fits = new WeakMap<Project['room'], { readonly temperatureC: number; readonly fit: Fit }>();

const fitOf = (project: Project): Fit => {
  const { room, air } = project;
  const statedS = room.reverberationS;
  if (!statedS) return { room, missedHz: [] };
  const known = fits.get(room);
  if (known?.temperatureC === air.temperatureC) return known.fit;
  const fit = fitTo(project, statedS);
  fits.set(room, { temperatureC: air.temperatureC, fit });
  return fit;
};

/**
 * The document with the damping a person has stated: where reverberation times are given by octave, the absorption of all
 * surfaces and patches that are stated by finish or by octave is changed by one exponent an octave, so that Eyring's formula
 * gives those times; admittances and openings stay what they are. An octave without a time follows its neighbours in
 * proportion. Without stated times the document itself.
 */
export const asStated = (project: Project): Project => {
  const { room } = fitOf(project);
  return room === project.room ? project : { ...project, room };
};

/** What of the stated times cannot be had, in a sentence for the person; null where all can. */
export const timesApproximation = (project: Project): string | null => {
  const { missedHz } = fitOf(project);
  if (missedHz.length === 0) return null;
  return `No finish of these walls makes the reverberation time stated at ${missedHz.join(', ')} Hz: openings and stated admittances take more, or less, than it allows. The nearest there is was taken.`;
};
