import { cividisCss } from '../../math/cividis.ts';
import { shareOf } from '../../math/level-scale.ts';
import { useResults, useSession } from '../../state/view.tsx';
import { fixed } from '../../words/quantities-length.ts';
import { decibels, hertz } from '../figures.ts';
import { useCurrent } from '../hooks.ts';
import { useFloorScale } from './useScale.ts';
import './legend.css';

const STOPS = 32;
const GRADIENT = `linear-gradient(to right, ${Array.from({ length: STOPS + 1 }, (_, i) => cividisCss(i / STOPS)).join(', ')})`;

/** What the bass floor's colours mean, with the level under the pointer. */
export const Legend = () => {
  const shown = useSession((state) => state.floor.shown);
  const frequencyHz = useSession((state) => state.frequencyHz);
  const probe = useSession((state) => state.probe);
  const floor = useResults((state) => state.floor?.value);
  const current = useCurrent('floor');
  const scale = useFloorScale();
  if (!shown || !floor || !scale) return null;
  const ticks: number[] = [];
  for (let db = scale.lowDb; db <= scale.highDb; db += 6) ticks.push(db);
  const behind = !current || Math.abs(floor.frequencyHz / frequencyHz - 1) > 0.001;
  return (
    <figure className="legend">
      <figcaption>
        Bass floor at <b>{hertz(floor.frequencyHz).text} Hz</b>
        {behind && <em> computing</em>}
        <span>{probe ? `${decibels(probe.levelDb).text} dB here` : ''}</span>
      </figcaption>
      <div className="legend-bar" style={{ background: GRADIENT }}>
        {probe && <i style={{ left: `${shareOf(probe.levelDb, scale) * 100}%` }} />}
      </div>
      <ol aria-hidden="true">
        {ticks.map((db) => (
          <li key={db} style={{ left: `${shareOf(db, scale) * 100}%` }}>
            {fixed(db, 0)}
          </li>
        ))}
      </ol>
      <p>dB against one subwoofer’s free field at 1 m</p>
    </figure>
  );
};
