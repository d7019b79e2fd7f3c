import { cividisCss } from '../../math/cividis.ts';
import { divergingCss } from '../../math/diverging.ts';
import { useFloorShown } from '../../state/floor-shown.ts';
import { type SliceLegend as Legend, sliceLegend } from '../../state/slice-legend.ts';
import { useResults, useSession } from '../../state/view.tsx';
import { fixed } from '../../words/quantities-length.ts';
import { useUnits } from '../hooks.ts';
import { kindWords, sliceWords } from './words.ts';
import './bass.css';

const STOPS = 32;

const gradient = ({ kind }: Legend): string => {
  const colour = kind === 'level' ? cividisCss : divergingCss;
  return `linear-gradient(to right, ${Array.from({ length: STOPS + 1 }, (_, i) => colour(i / STOPS)).join(', ')})`;
};

const PARTS = 4;

/** Numbers under the bar: every quarter of it; a pressure's as signed parts of the whole. */
const ticksOf = ({ kind, low, high }: Legend): { readonly share: number; readonly text: string }[] =>
  Array.from({ length: PARTS + 1 }, (_, i) => {
    const value = low + ((high - low) * i) / PARTS;
    const plus = kind !== 'level' && value > 0 ? '+' : '';
    const fine = kind === 'level' ? !Number.isInteger((high - low) / PARTS) : kind === 'pressure' && high < 10;
    const decimals = fine ? 1 : 0;
    return { share: i / PARTS, text: `${plus}${fixed(value, decimals)}` };
  });

/** What the colours of the bass floor mean, with the value under the pointer marked; and whether it is being refined. */
export const SliceLegend = () => {
  const slice = useResults((state) => state.slice?.value);
  const scale = useResults((state) => state.scale);
  const refining = useResults((state) => state.refining);
  const alone = useSession((state) => state.slice.ownScale);
  const shown = useFloorShown();
  const probe = useSession((state) => state.probe);
  const units = useUnits();
  if (!slice || !scale || !shown) return null;
  const legend = sliceLegend(slice, scale, alone);
  const share = probe && Math.min(1, Math.max(0, (probe.value - legend.low) / (legend.high - legend.low)));
  return (
    <section
      className="legend"
      aria-label="Legend of the bass floor"
      data-kind={legend.kind}
      data-low={legend.low}
      data-high={legend.high}
    >
      <p>
        <b>{kindWords(slice, alone)}</b>
        <span>{sliceWords(slice, units)}</span>
        {refining && <em role="status">an estimate so far, being refined</em>}
      </p>
      <div className="legend-bar" style={{ background: gradient(legend) }}>
        {share !== null && <i style={{ left: `${share * 100}%` }} />}
      </div>
      <ol aria-hidden="true">
        {ticksOf(legend).map((tick) => (
          <li key={tick.share} style={{ left: `${tick.share * 100}%` }}>
            {tick.text}
          </li>
        ))}
        <li className="legend-unit">{legend.kind === 'pressure' ? '× 1 m' : 'dB'}</li>
      </ol>
    </section>
  );
};
