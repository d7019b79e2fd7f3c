import { cividisCss } from '../../math/cividis.ts';
import { type LevelScale, shareOf } from '../../math/level-scale.ts';
import { useSession } from '../../state/view.tsx';
import { fixed } from '../../words/quantities-length.ts';
import { decibels } from '../figures.ts';
import { type LevelAxis, type RibbonLayout, shareOfLevel } from './layout.ts';

const STOPS = 48;
/** Numbers closer than this run into each other. */
const LEAST_APART_PX = 15;

/** The colours along the curve's axis: what lies beyond the colour scale keeps its end's colour, as on the floor. */
const gradient = (scale: LevelScale, { lowDb, highDb }: LevelAxis): string => {
  const stops = Array.from({ length: STOPS + 1 }, (_, i) =>
    cividisCss(shareOf(lowDb + ((highDb - lowDb) * i) / STOPS, scale)),
  );
  return `linear-gradient(to top, ${stops.join(', ')})`;
};

/** Every how many decibels a number stands: whole 6, 12 or 18 dB, as dense as the height allows. */
const labelStep = ({ lowDb, highDb }: LevelAxis, heightPx: number): number =>
  [6, 12, 18].find((step) => (heightPx * step) / (highDb - lowDb) >= LEAST_APART_PX) ?? highDb - lowDb;

interface ScaleBarProps {
  readonly scale: LevelScale;
  readonly axis: LevelAxis;
  readonly layout: RibbonLayout;
}

/** What the colours mean, of the strips and of a bass floor without colours of its own, and the curve's axis; the level under the pointer. */
export const ScaleBar = ({ scale, axis, layout }: ScaleBarProps) => {
  const probe = useSession((state) => state.probe);
  const step = labelStep(axis, layout.bottom - layout.top);
  const ticks: number[] = [];
  for (let db = Math.floor(axis.highDb / step) * step; db >= axis.lowDb; db -= step) ticks.push(db);
  return (
    <div
      className="scale"
      data-low-db={scale.lowDb}
      data-high-db={scale.highDb}
      style={{ left: layout.right + 12, top: layout.top + 1, height: layout.bottom - layout.top - 2 }}
    >
      <div className="scale-bar" style={{ background: gradient(scale, axis) }}>
        {probe && <i style={{ bottom: `${shareOfLevel(probe.levelDb, axis) * 100}%` }} />}
      </div>
      <ol aria-hidden="true">
        {ticks.map((db) => (
          <li key={db} style={{ bottom: `${shareOfLevel(db, axis) * 100}%` }}>
            {fixed(db, 0)}
          </li>
        ))}
      </ol>
      <p>{probe ? <b data-probe={probe.levelDb}>{decibels(probe.levelDb).text} dB</b> : 'dB'}</p>
    </div>
  );
};
