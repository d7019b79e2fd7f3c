import { fixed } from '../../words/quantities-length.ts';

export interface SketchLine {
  readonly name: string;
  readonly tone: 'before' | 'after' | 'other';
  readonly levelDb: ArrayLike<number>;
}

interface SketchProps {
  readonly label: string;
  readonly frequenciesHz: ArrayLike<number>;
  readonly lines: readonly SketchLine[];
}

const WIDTH = 280;
const HEIGHT = 108;
const LEFT = 30;
const BOTTOM = 90;
const TOP = 6;
const DECADE_TICKS = [20, 40, 80, 160];

/** A small picture of levels over frequency; the numbers stand in the table beside it. */
export const Sketch = ({ label, frequenciesHz, lines }: SketchProps) => {
  const first = frequenciesHz[0];
  const last = frequenciesHz[frequenciesHz.length - 1];
  const all = lines.flatMap(({ levelDb }) => Array.from(levelDb));
  const high = Math.ceil(Math.max(...all) / 6) * 6;
  const low = Math.max(high - 42, Math.floor(Math.min(...all) / 6) * 6);
  const x = (hz: number): number => LEFT + (Math.log(hz / first) / Math.log(last / first)) * (WIDTH - LEFT - 6);
  const y = (db: number): number => BOTTOM - ((Math.max(low, db) - low) / Math.max(6, high - low)) * (BOTTOM - TOP);
  const path = (levelDb: ArrayLike<number>): string =>
    Array.from(levelDb, (db, i) => `${i === 0 ? 'M' : 'L'}${x(frequenciesHz[i]).toFixed(1)} ${y(db).toFixed(1)}`).join(
      '',
    );
  return (
    <figure className="sketch">
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={label}>
        {[low, high].map((db) => (
          <g key={db}>
            <path className="sketch-rule" d={`M${LEFT} ${y(db)}H${WIDTH - 6}`} />
            <text x={LEFT - 4} y={y(db) + 4} textAnchor="end">
              {fixed(db, 0)}
            </text>
          </g>
        ))}
        {DECADE_TICKS.filter((hz) => hz >= first * 0.99 && hz <= last).map((hz) => (
          <text key={hz} x={x(hz)} y={HEIGHT - 4} textAnchor={x(hz) > WIDTH - 20 ? 'end' : 'middle'}>
            {hz}
          </text>
        ))}
        {lines.map(({ name, tone, levelDb }) => (
          <path key={name} className={`sketch-line is-${tone}`} d={path(levelDb)} />
        ))}
      </svg>
      <figcaption>
        {lines.map(({ name, tone }) => (
          <span key={name} className={`is-${tone}`}>
            {name}
          </span>
        ))}
        <span>dB over Hz</span>
      </figcaption>
    </figure>
  );
};
