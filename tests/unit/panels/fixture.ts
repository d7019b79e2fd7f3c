import { findings } from '../../../src/analysis/findings.ts';
import type { BassReadout, BassSlice, GeometryReadout, ModeReadout } from '../../../src/analysis/types.ts';
import { distance, subtract } from '../../../src/math/vec3.ts';
import twoRow from '../../../src/model/presets/two-row.json';
import type { Project } from '../../../src/model/project.ts';
import { projectSchema } from '../../../src/model/schema/project.ts';
import { seatPoses } from '../../../src/model/seating.ts';
import { createDocumentStore } from '../../../src/state/document.ts';
import { createResultsStore } from '../../../src/state/results.ts';
import { createSessionStore } from '../../../src/state/session.ts';
import type { View } from '../../../src/state/view.tsx';

const DEG = 180 / Math.PI;

/** Plausible numbers for the demo room, made without the engines: panels are tested for showing, not for computing. */
export const plausibleGeometry = (project: Project): GeometryReadout => ({
  room: { volumeM3: 70.8, surfaceM2: 108.6, rt60S: { '500': 0.41, '1000': 0.38 }, schroederHz: 149 },
  picture: { widthM: 2.6, heightM: 1.46, diagonalM: 2.98 },
  seats: seatPoses(project).map(({ seat, eyeM, earM, rowIndex, seatIndex }) => ({
    id: seat.id,
    eyeM,
    earM,
    picture: {
      distanceM: distance(eyeM, [0, 1.45, 0.4]),
      distanceHeights: (eyeM[2] - 0.4) / 1.4625,
      horizontalDeg: 2 * Math.atan(1.3 / (eyeM[2] - 0.4)) * DEG,
      verticalDeg: 2 * Math.atan(0.73 / (eyeM[2] - 0.4)) * DEG,
      offAxisDeg: 3.26 + Math.abs(eyeM[0]) * 9.1,
      topElevationDeg: Math.atan((2.18 - eyeM[1]) / (eyeM[2] - 0.4)) * DEG,
      centreElevationDeg: Math.atan((1.45 - eyeM[1]) / (eyeM[2] - 0.4)) * DEG,
      pixelsPerDegree: 74.4,
      visibleFraction: rowIndex === 0 ? 1 : 0.942 + 0.01 * seatIndex,
      clearanceMm: rowIndex === 0 ? null : 41.3 + 20 * seatIndex,
      worstCase: { visibleFraction: rowIndex === 0 ? 1 : 0.874, clearanceMm: rowIndex === 0 ? null : -118.2 },
    },
    loudspeakers: project.loudspeakers.map(({ id, atM }) => {
      const [x, y, z] = subtract(atM, earM);
      const farM = Math.hypot(x, y, z);
      return {
        id,
        azimuthDeg: Math.atan2(x, -z) * DEG,
        elevationDeg: Math.asin(y / farM) * DEG,
        distanceM: farM,
        arrivalMs: (farM / 343.2) * 1000,
        offAxisDeg: 0,
        levelDb: -20 * Math.log10(farM),
        maxLevelDb: 105.2,
        visibleFraction: id === 'C' && rowIndex === 1 ? 0.81 : 1,
      };
    }),
  })),
});

const levelAt = (hz: number, x: number, z: number): number => {
  const wave = Math.cos((hz / 28) * z + 0.4) * 0.6 + Math.cos((hz / 40) * x) * 0.5;
  return 6 + 20 * Math.log10(0.05 + Math.abs(wave)) - (hz < 28 ? (28 - hz) * 0.3 : 0);
};

export const plausibleBass = (project: Project): BassReadout => {
  const frequenciesHz = Float64Array.from({ length: 80 }, (_, i) => 20 * 2 ** (i / 24));
  const seats = seatPoses(project).map(({ seat, earM }) => {
    const levelDb = frequenciesHz.map((hz) => levelAt(hz, earM[0], earM[2]));
    return {
      id: seat.id,
      levelDb,
      lowDb: levelDb.map((db) => db - 1.4),
      highDb: levelDb.map((db) => db + 1.7),
    };
  });
  const spreadDb = frequenciesHz.map((_, i) => 2.1 + Math.sin(i / 9));
  return { frequenciesHz, seats, spreadDb, meanSpreadDb: 2.36, meanVarianceDb2: 6.4, maxMinDb: 11.8 };
};

export const plausibleFloor = (frequencyHz: number): BassSlice => {
  const xM = Float64Array.from({ length: 30 }, (_, i) => -2.15 + (i * 4.3) / 29);
  const zM = Float64Array.from({ length: 42 }, (_, i) => (i * 6.1) / 41);
  const levelDb = new Float32Array(30 * 42);
  for (let j = 0; j < 42; j++) for (let i = 0; i < 30; i++) levelDb[j * 30 + i] = levelAt(frequencyHz, xM[i], zM[j]);
  return {
    cut: { normal: 'y', atM: 1.11 },
    as: 'level',
    frequencyHz,
    bandHz: null,
    uM: xM,
    vM: zM,
    levelDb,
    pressure: null,
    meanDb: null,
  };
};

export const PLAUSIBLE_MODES: readonly ModeReadout[] = [28.1, 39.9, 48.8, 56.3, 63.5, 63.6, 69.5, 79.8, 84.5, 92.9].map(
  (hz) => ({ hz, order: null, decayS: 0.8 }),
);

/** A view on the demo room with every result in place. */
export const plausibleView = (): View => {
  const project = projectSchema.parse(twoRow);
  const view: View = {
    document: createDocumentStore(project),
    session: createSessionStore(),
    results: createResultsStore(),
  };
  const geometry = plausibleGeometry(project);
  const bass = plausibleBass(project);
  const keyed = <T>(value: T) => ({ variant: 'main', revision: 0, inputsKey: 'fixture', value });
  view.session.setState({ seatId: 'front-2' });
  view.results.setState({
    geometry: keyed(geometry),
    bass: keyed(bass),
    modes: keyed(PLAUSIBLE_MODES),
    slice: keyed(plausibleFloor(40)),
    scale: { lowDb: -12, highDb: 12, stepDb: 3 },
    findings: keyed(findings(project, geometry, bass)),
  });
  return view;
};
