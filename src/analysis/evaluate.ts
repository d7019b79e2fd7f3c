import { createRoomField } from '../engines/bass/create-room-field.ts';
import type { UnitResponses } from '../engines/bass/room-field.ts';
import type { Project } from '../model/project.ts';
import { bassReadout, type UnitSet } from './bass.ts';
import { bassNotes } from './bass-notes.ts';
import { findings } from './findings.ts';
import { geometryReadout } from './geometry.ts';
import {
  type Damping,
  defaultFrequenciesHz,
  earTriples,
  METRIC_FREQUENCIES_HZ,
  opensWithSpreadGrid,
  roomSpec,
  sourceTriples,
} from './inputs.ts';
import { modeReadouts } from './modes.ts';
import { makeReport, type Report } from './report.ts';
import type { BassReadout } from './types.ts';

/** The report lists modes to here: past 200 Hz, so that the list is complete to there whatever rounding does. */
const MODES_TO_HZ = 205;

const solver =
  (project: Project) =>
  (damping: Damping, frequenciesHz: Float64Array): UnitResponses =>
    createRoomField(roomSpec(project, damping), 'fine').unitResponses(
      sourceTriples(project),
      earTriples(project),
      frequenciesHz,
    );

/** Bass at the frequencies asked for, and at the default ones, by which findings are judged whatever was asked for. */
const bassOf = (project: Project, asked: Float64Array | null): { shown: BassReadout; judged: BassReadout } => {
  const solve = solver(project);
  const frequenciesHz = defaultFrequenciesHz();
  const unitsAt = (hz: Float64Array): UnitSet => ({
    frequenciesHz: hz,
    nominal: solve('nominal', hz),
    low: solve('low', hz),
    high: solve('high', hz),
  });
  if (!asked) {
    const shown = bassReadout(project, unitsAt(frequenciesHz));
    return { shown, judged: shown };
  }
  const judged = bassReadout(project, {
    frequenciesHz,
    nominal: solve('nominal', frequenciesHz),
    low: null,
    high: null,
  });
  const grid = opensWithSpreadGrid(asked) ? null : solve('nominal', METRIC_FREQUENCIES_HZ);
  return { shown: bassReadout(project, unitsAt(asked), grid), judged };
};

/** A project as its report. `frequenciesHz` null means the default list. Everything is computed here and now. */
export const evaluateProject = (project: Project, frequenciesHz: Float64Array | null, inputSha256: string): Report => {
  const geometry = geometryReadout(project);
  const { shown, judged } = bassOf(project, frequenciesHz);
  const modes = modeReadouts(createRoomField(roomSpec(project), 'fine').modes(MODES_TO_HZ));
  return makeReport({
    inputSha256,
    geometry,
    modes,
    bass: shown,
    bassNotes: bassNotes(project),
    findings: findings(project, geometry, judged),
  });
};
