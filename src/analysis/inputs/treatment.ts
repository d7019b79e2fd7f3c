import { admittanceFromDiffuse, diffuseAbsorption } from '../../engines/acoustics/admittance.ts';
import { type OctaveValues, octaveBandsHz, octaves } from '../../engines/acoustics/bands.ts';
import { absorptionOf, finishAbsorption } from '../../engines/acoustics/materials.ts';
import type { SurfaceName, SurfaceTreatment } from '../../model/project.ts';

/** What a surface is taken to be made of when the file does not say: board on studs, and boards on joists underfoot. */
export const defaultFinish = (surface: SurfaceName): string =>
  surface === 'floor' ? 'wood-floor-on-joists' : 'plasterboard-on-studs';

const finishValues = (id: string): OctaveValues => {
  const found = finishAbsorption(id);
  if (!found) throw new RangeError(`no absorption for the finish "${id}"`);
  return absorptionOf(found);
};

type Bands = Readonly<Record<string, number>>;

/**
 * Absorption at `hz` from the bands a file gives: the band itself, else between its neighbours along the logarithm of
 * frequency, else that of the nearest band given.
 */
export const absorptionAt = (bands: Bands, hz: number): number => {
  const known = Object.entries(bands)
    .map(([centre, value]) => [Number(centre), value] as const)
    .sort((a, b) => a[0] - b[0]);
  const above = known.findIndex(([centre]) => centre >= hz);
  if (above < 0) return known[known.length - 1][1];
  if (above === 0 || known[above][0] === hz) return known[above][1];
  const [lowHz, low] = known[above - 1];
  const [highHz, high] = known[above];
  return low + ((high - low) * Math.log(hz / lowHz)) / Math.log(highHz / lowHz);
};

/** The bands a bass admittance may be read from, the lowest given first. */
const lowest = (bands: Bands): number => ('63' in bands ? bands['63'] : absorptionAt(bands, 125));

/**
 * Random-incidence absorption by octave, 125 to 4000 Hz: the bands given, else the finish's table, else (an admittance
 * alone) the diffuse-incidence integral of that admittance, the same at every frequency.
 */
export const octaveAbsorption = (treatment: SurfaceTreatment | undefined, fallback: string): OctaveValues => {
  if (treatment?.absorption) {
    const bands = treatment.absorption;
    return octaves((band) => absorptionAt(bands, octaveBandsHz[band]));
  }
  if (treatment?.finish !== undefined) return finishValues(treatment.finish);
  if (treatment?.admittance) {
    const [real, imaginary] = treatment.admittance;
    return octaves(() => diffuseAbsorption(real, imaginary));
  }
  return finishValues(fallback);
};

/**
 * Normalised specific admittance at low frequency, [real, imaginary]: as given, else real, from the absorption at the lowest
 * band given (63 or 125 Hz) by inverting the diffuse-incidence integral. Absorption above 0.951, more than any real
 * admittance gives, takes the admittance of that greatest one.
 */
export const wallAdmittance = (
  treatment: SurfaceTreatment | undefined,
  fallback: string,
): readonly [number, number] => {
  if (treatment?.admittance) return treatment.admittance;
  return [admittanceFromDiffuse(lowAbsorption(treatment, fallback)).admittance, 0];
};

const lowAbsorption = (treatment: SurfaceTreatment | undefined, fallback: string): number =>
  treatment?.absorption ? lowest(treatment.absorption) : finishValues(treatment?.finish ?? fallback)[0];

/** The absorption at low frequency where it is more than any real admittance gives, so that less was taken; else null. */
export const clampedAbsorption = (treatment: SurfaceTreatment | undefined, fallback: string): number | null => {
  if (treatment?.admittance) return null;
  const absorption = lowAbsorption(treatment, fallback);
  return admittanceFromDiffuse(absorption).clamped ? absorption : null;
};
