import { useMemo } from 'react';
import { smoothedCurves } from '../../analysis/curves.ts';
import type { BassCurves } from '../../analysis/types.ts';
import { useDocument, useResults, useSession } from '../../state/view.tsx';
import { fixed } from '../../words/quantities-length.ts';
import { decibels, signed } from '../figures.ts';
import { useCurrent } from '../hooks.ts';
import { seatTitle } from '../naming.ts';
import { type LevelAxis, levelAxis } from '../ribbon/layout.ts';
import { levelAt } from '../ribbon/levels.ts';
import { FrequencyPlot } from './FrequencyPlot.tsx';
import { bandPath, levelPath, type PlotFrame, yOf } from './plot.ts';
import { useBeside } from './useBeside.ts';

/** The curves as they are to be shown: raw or smoothed. */
export const useShownCurves = (): BassCurves | null => {
  const curves = useResults((state) => state.curves?.value ?? null);
  const smoothing = useSession((state) => state.smoothing);
  return useMemo(() => curves && smoothedCurves(curves, smoothing), [curves, smoothing]);
};

const GRID_DB = 6;

const Grid = ({ frame, axis }: { frame: PlotFrame; axis: LevelAxis }) => {
  const lines = Array.from(
    { length: Math.round((axis.highDb - axis.lowDb) / GRID_DB) + 1 },
    (_, i) => axis.lowDb + i * GRID_DB,
  );
  const every = (frame.bottom - frame.top) / lines.length > 15 ? 1 : 2;
  return (
    <g className="plot-grid">
      {lines.map((db, i) => {
        const y = yOf(frame, axis, db);
        return (
          <g key={db}>
            <path d={`M${frame.left} ${y}H${frame.right}`} />
            {i % every === 0 && (
              <text x={frame.left - 7} y={y + 4} textAnchor="end">
                {fixed(db, 0)}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
};

interface CurveLinesProps {
  readonly curves: BassCurves;
  readonly beside: BassCurves | null;
  readonly chosen: string;
  readonly frame: PlotFrame;
  readonly axis: LevelAxis;
}

/** All seats' lines thin, the chosen one's strong over them with its damping band, dashed what lies over it. */
const CurveLines = ({ curves: { frequenciesHz, seats }, beside, chosen, frame, axis }: CurveLinesProps) => {
  const own = seats.find(({ id }) => id === chosen);
  const other = beside?.seats.find(({ id }) => id === chosen);
  const line = (levels: Float64Array, over = frequenciesHz) => levelPath(frame, axis, over, levels);
  return (
    <g className="plot-curves">
      {own?.lowDb && own.highDb && (
        <path className="is-band" d={bandPath(frame, axis, frequenciesHz, own.lowDb, own.highDb)} />
      )}
      {seats.map(({ id, levelDb }) => id !== chosen && <path key={id} d={line(levelDb)} />)}
      {own && <path className="is-halo" d={line(own.levelDb)} />}
      {own && <path className="is-chosen" d={line(own.levelDb)} />}
      {beside && other && <path className="is-halo" d={line(other.levelDb, beside.frequenciesHz)} />}
      {beside && other && <path className="is-beside" d={line(other.levelDb, beside.frequenciesHz)} />}
    </g>
  );
};

/** What the chosen seat gets at the cursor with what lies over the curves, and how far that is from its own. */
const BesideReading = ({ ownDb }: { readonly ownDb: number }) => {
  const { curves, value, word, current } = useBeside();
  const seatId = useSession((state) => state.seatId);
  const frequencyHz = useSession((state) => state.frequencyHz);
  if (value === 'nothing') return null;
  const seat = curves?.seats.find(({ id }) => id === seatId);
  if (!curves || !seat) return <span className="plot-note is-beside"> {word}: working it out …</span>;
  const db = levelAt(curves.frequenciesHz, seat.levelDb, frequencyHz);
  return (
    <span className={current ? 'is-beside' : 'is-beside is-stale'} aria-busy={!current}>
      <i className="beside-dash" aria-hidden="true" /> {word} <b className="plot-value">{decibels(db).text}</b> dB
      <small className="plot-note"> {signed(db - ownDb)}</small>
    </span>
  );
};

/** What the chosen seat gets at the cursor, in words. */
export const CurveReading = () => {
  const curves = useShownCurves();
  const project = useDocument((state) => state.project);
  const seatId = useSession((state) => state.seatId);
  const frequencyHz = useSession((state) => state.frequencyHz);
  const own = curves?.seats.find(({ id }) => id === seatId);
  if (!curves || !own) return null;
  const at = (levels: Float64Array) => decibels(levelAt(curves.frequenciesHz, levels, frequencyHz)).text;
  return (
    <p className="plot-reading">
      {seatTitle(project, seatId)} <b className="plot-value">{at(own.levelDb)}</b> dB
      {own.lowDb && own.highDb && (
        <small className="plot-note">
          {' '}
          {at(own.lowDb)} to {at(own.highDb)} with damping in doubt
        </small>
      )}
      <BesideReading ownDb={levelAt(curves.frequenciesHz, own.levelDb, frequencyHz)} />
    </p>
  );
};

/** Every seat's level over frequency. */
export const Curves = ({ width, height }: { readonly width: number; readonly height: number }) => {
  const curves = useShownCurves();
  const current = useCurrent('curves');
  const seatId = useSession((state) => state.seatId);
  const frequencyHz = useSession((state) => state.frequencyHz);
  const { curves: beside } = useBeside();
  const axis = useMemo(() => {
    const over = beside?.seats.filter(({ id }) => id === seatId) ?? [];
    return curves && levelAxis([...curves.seats, ...over].map(({ levelDb }) => levelDb));
  }, [curves, beside, seatId]);
  if (!curves || !axis) return <p className="waiting">Working out the curves …</p>;
  const own = curves.seats.find(({ id }) => id === seatId);
  const spoken = own ? `${decibels(levelAt(curves.frequenciesHz, own.levelDb, frequencyHz)).text} dB` : '';
  return (
    <div className={current ? undefined : 'is-stale'} aria-busy={!current}>
      <FrequencyPlot width={width} height={height} label="Frequency on the curves" spoken={spoken}>
        {(frame) => (
          <svg width={width} height={height} aria-hidden="true">
            <Grid frame={frame} axis={axis} />
            <CurveLines curves={curves} beside={beside} chosen={seatId} frame={frame} axis={axis} />
          </svg>
        )}
      </FrequencyPlot>
    </div>
  );
};
