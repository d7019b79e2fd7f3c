import type { Edit } from '../commands/edit.ts';
import type { Key } from '../paths.ts';
import type { Project, SurfaceTreatment } from '../project.ts';

/** What the sound engines know of a surface: handed in, since the model has no tables of its own. */
export interface Acoustics {
  /** Absorption by octave, 125 to 4000 Hz, of a surface as it is stated. */
  absorption(treatment: SurfaceTreatment | undefined, keys: readonly Key[]): Readonly<Record<string, number>>;
  /** Normalised admittance at low frequency, real and imaginary. */
  admittance(treatment: SurfaceTreatment | undefined, keys: readonly Key[]): readonly [number, number];
  /** Reverberation times by octave, seconds, 125 to 4000 Hz, as the surfaces make them. */
  times(project: Project): Readonly<Record<string, number>>;
  /** The finish of the list that is nearest to it. */
  finish(treatment: SurfaceTreatment | undefined, keys: readonly Key[]): string;
}

export interface Way {
  readonly id: string;
  readonly word: string;
}

/**
 * A choice between ways of saying a thing: changing it rewrites what stands there, keeping what it can. To a person it is
 * a field like any other.
 */
export interface Switch {
  /** As a field's. */
  readonly pattern: string;
  readonly label: string;
  readonly help: string;
  readonly ways: readonly Way[];
  /** Which way it is said now. */
  read(project: Project, keys: readonly Key[]): string;
  set(project: Project, keys: readonly Key[], way: string, acoustics: Acoustics): Edit;
}
