import { type OctaveValues, octaves } from './bands.ts';

/** One printed table's random-incidence absorption of a material, 125 to 4000 Hz. */
export interface AbsorptionTable {
  readonly values: OctaveValues;
  readonly source: string;
}

/**
 * A finish's absorption. The first table is the one used; where handbooks contradict one another the others stand beside
 * it, and their extremes bound what a prediction may claim. All values read in the named sources.
 */
export interface FinishAbsorption {
  readonly id: string;
  readonly tables: readonly AbsorptionTable[];
}

const handbook = 'a handbook table of absorption coefficients (table 27.1)';
const rt60 = 'an acoustics reference table of coefficients for RT60';
const both = `${handbook}; ${rt60}`;
const everest = 'Everest, Master Handbook of Acoustics, table at p. 188';
const audio = 'an audio engineering handbook, ch. 29';

const table = (source: string, ...values: OctaveValues): AbsorptionTable => ({ values, source });
const finish = (id: string, ...tables: AbsorptionTable[]): FinishAbsorption => ({ id, tables });

export const finishAbsorptions: readonly FinishAbsorption[] = [
  finish(
    'plasterboard-on-studs',
    // 125 Hz differs threefold between tables: how stiffly and how far apart the studs hold the board decides it.
    table(everest, 0.29, 0.1, 0.05, 0.04, 0.07, 0.09),
    table(handbook, 0.1, 0.08, 0.05, 0.03, 0.03, 0.03),
    table('an acoustics table, plasterboard 12 mm on studs', 0.29, 0.1, 0.06, 0.05, 0.04, 0.04),
  ),
  finish('plasterboard-deep-air', table(audio, 0.2, 0.15, 0.1, 0.05, 0.05, 0.05)),
  finish('plaster-on-brick', table(handbook, 0.013, 0.015, 0.02, 0.03, 0.04, 0.05)),
  finish('brick', table(both, 0.03, 0.03, 0.03, 0.04, 0.05, 0.07)),
  finish('brick-painted', table(both, 0.01, 0.01, 0.02, 0.02, 0.02, 0.03)),
  finish('concrete-block', table(both, 0.36, 0.44, 0.31, 0.29, 0.39, 0.25)),
  finish('concrete-block-painted', table(both, 0.1, 0.05, 0.06, 0.07, 0.09, 0.08)),
  finish(
    'concrete',
    table(everest, 0.01, 0.01, 0.015, 0.02, 0.02, 0.02),
    table(handbook, 0.01, 0.01, 0.02, 0.02, 0.02, 0.02),
  ),
  finish('linoleum-on-concrete', table(rt60, 0.02, 0.03, 0.03, 0.03, 0.03, 0.02)),
  finish('parquet-on-concrete', table(both, 0.04, 0.04, 0.07, 0.06, 0.06, 0.07)),
  finish('wood-floor-on-joists', table(both, 0.15, 0.11, 0.1, 0.07, 0.06, 0.07)),
  finish('carpet-thin', table(audio, 0.01, 0.05, 0.1, 0.2, 0.45, 0.65)),
  finish('carpet-on-concrete', table(`${both}; ${audio}`, 0.02, 0.06, 0.14, 0.37, 0.6, 0.65)),
  finish('carpet-on-felt', table(both, 0.08, 0.24, 0.57, 0.69, 0.71, 0.73)),
  finish('carpet-latex-on-felt', table(handbook, 0.08, 0.27, 0.39, 0.34, 0.48, 0.63)),
  finish('curtain-light', table(both, 0.03, 0.04, 0.11, 0.17, 0.24, 0.35)),
  finish('curtain-medium-draped', table(both, 0.07, 0.31, 0.49, 0.75, 0.7, 0.6)),
  finish('curtain-heavy-draped', table(both, 0.14, 0.35, 0.55, 0.72, 0.7, 0.65)),
  finish('glass-large-pane', table(both, 0.18, 0.06, 0.04, 0.03, 0.02, 0.02)),
  finish('glass-window', table(both, 0.35, 0.25, 0.18, 0.12, 0.07, 0.04)),
  finish('acoustic-tile', table(everest, 0.09, 0.28, 0.78, 0.84, 0.73, 0.64)),
  finish('fibre-panel-25', table(audio, 0.1, 0.3, 0.55, 0.65, 0.75, 0.8)),
  finish(
    'fibre-panel-50',
    table(audio, 0.2, 0.45, 0.7, 0.8, 0.8, 0.8),
    table(`${rt60}, glass fibre 48 kg/m3`, 0.22, 0.82, 0.99, 0.99, 0.99, 0.99),
  ),
];

/** Upholstered seats, absorption a square metre of the floor they stand on. */
export const upholsteredSeats = {
  empty: table(rt60, 0.49, 0.66, 0.8, 0.88, 0.82, 0.7),
  occupied: table(rt60, 0.6, 0.74, 0.88, 0.96, 0.93, 0.85),
} as const;

const byId = new Map(finishAbsorptions.map((f) => [f.id, f]));

/** A finish by id, or null. */
export const finishAbsorption = (id: string): FinishAbsorption | null => byId.get(id) ?? null;

/** The absorption used for a finish: its first table. */
export const absorptionOf = (f: FinishAbsorption): OctaveValues => f.tables[0].values;

/** The least and greatest absorption any table gives in each band; equal where there is one table. */
export const absorptionBand = (f: FinishAbsorption): { low: OctaveValues; high: OctaveValues } => ({
  low: octaves((i) => Math.min(...f.tables.map((t) => t.values[i]))),
  high: octaves((i) => Math.max(...f.tables.map((t) => t.values[i]))),
});
