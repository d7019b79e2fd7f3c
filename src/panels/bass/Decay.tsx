import { useEffect, useRef } from 'react';
import type { DecayReadout } from '../../analysis/types.ts';
import { cividisCss } from '../../math/cividis.ts';
import { useDocument, useResults, useSession } from '../../state/view.tsx';
import { fixed } from '../../words/quantities-length.ts';
import { useCurrent } from '../hooks.ts';
import { seatTitle } from '../naming.ts';
import { DECAY_SPAN_DB, decayAt, decayPixels, decayTopDb, timeTicks } from './decay-draw.ts';
import { FrequencyPlot } from './FrequencyPlot.tsx';
import { type PlotFrame, xOf } from './plot.ts';

const STOPS = 24;

/** The colours' meaning, beside the picture's heading. */
export const DecayLegend = () => {
  const decay = useResults((state) => state.decay?.value);
  if (!decay) return null;
  const topDb = decayTopDb(decay);
  const colours = Array.from({ length: STOPS + 1 }, (_, i) => cividisCss(i / STOPS)).join(', ');
  return (
    <p className="decay-legend" data-low={topDb - DECAY_SPAN_DB} data-high={topDb}>
      {fixed(topDb - DECAY_SPAN_DB, 0)}
      <i style={{ background: `linear-gradient(to right, ${colours})` }} />
      {fixed(topDb, 0)} dB
    </p>
  );
};

/** How much is left at the cursor's frequency after a while, in words. */
export const DecayReading = () => {
  const decay = useResults((state) => state.decay?.value);
  const project = useDocument((state) => state.project);
  const frequencyHz = useSession((state) => state.frequencyHz);
  if (!decay) return null;
  const begin = decayAt(decay, frequencyHz, 0);
  const later = decayAt(decay, frequencyHz, 0.2);
  return (
    <p className="plot-reading">
      {seatTitle(project, decay.seatId)} <b className="plot-value">{fixed(later - begin, 1)}</b> dB
      <small className="plot-note"> a fifth of a second after a tone of {fixed(frequencyHz, 1)} Hz stops</small>
      <small className="plot-note is-beside">
        <i className="beside-dash is-whole" aria-hidden="true" /> 60 dB down, by third octave
      </small>
    </p>
  );
};

const Times = ({ frame, lastS }: { frame: PlotFrame; lastS: number }) => (
  <g className="plot-grid">
    {timeTicks(lastS).map(({ timeS, text }) => (
      <text
        key={text}
        x={frame.left - 7}
        y={frame.top + (timeS / lastS) * (frame.bottom - frame.top) + 4}
        textAnchor="end"
      >
        {text}
      </text>
    ))}
  </g>
);

/** Time to fall by 60 dB, by third octave, over the picture. */
const Thirds = ({ frame, lastS }: { frame: PlotFrame; lastS: number }) => {
  const thirds = useResults((state) => state.heard?.value.thirds);
  return (
    <g className="plot-thirds">
      {thirds?.map(({ hz, decayS }) => {
        if (decayS === null || decayS > lastS) return null;
        const y = frame.top + (decayS / lastS) * (frame.bottom - frame.top);
        const [from, to] = [hz * 2 ** (-1 / 6), hz * 2 ** (1 / 6)].map((edge) =>
          Math.min(frame.right, Math.max(frame.left, xOf(frame, edge))),
        );
        return <path key={hz} d={`M${from + 1} ${y}H${to - 1}`} />;
      })}
    </g>
  );
};

const Picture = ({ decay, frame }: { decay: DecayReadout; frame: PlotFrame }) => {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [width, height] = [frame.right - frame.left, frame.bottom - frame.top];
  useEffect(() => {
    const sheet = canvas.current;
    const brush = sheet?.getContext('2d');
    if (!sheet || !brush || width < 1 || height < 1) return;
    const ratio = window.devicePixelRatio || 1;
    sheet.width = Math.round(width * ratio);
    sheet.height = Math.round(height * ratio);
    const pixels = decayPixels(decay, decayTopDb(decay), sheet.width, sheet.height);
    brush.putImageData(new ImageData(pixels, sheet.width, sheet.height), 0, 0);
  }, [decay, width, height]);
  return <canvas ref={canvas} style={{ left: frame.left, top: frame.top, width, height }} />;
};

/** How tones die away at the chosen seat: frequency across, time down, level by colour. */
export const Decay = ({ width, height }: { readonly width: number; readonly height: number }) => {
  const decay = useResults((state) => state.decay?.value);
  const seatId = useSession((state) => state.seatId);
  const current = useCurrent('decay');
  if (!decay) return <p className="waiting">Working out the decay …</p>;
  const lastS = decay.timesS[decay.timesS.length - 1];
  const fresh = current && decay.seatId === seatId;
  return (
    <div className={fresh ? undefined : 'is-stale'} aria-busy={!fresh}>
      <FrequencyPlot width={width} height={height} label="Frequency on the decay" spoken="decay picture">
        {(frame) => (
          <>
            <Picture decay={decay} frame={frame} />
            <svg width={width} height={height} aria-hidden="true">
              <Times frame={frame} lastS={lastS} />
              <Thirds frame={frame} lastS={lastS} />
            </svg>
          </>
        )}
      </FrequencyPlot>
    </div>
  );
};
