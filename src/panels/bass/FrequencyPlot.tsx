import { type PointerEvent, type ReactNode, useId, useRef } from 'react';
import { useResults, useSession } from '../../state/view.tsx';
import { hertz } from '../figures.ts';
import { useChoose } from '../hooks.ts';
import {
  frequencyOfStep,
  HIGHEST_HZ,
  hzOfShare,
  LAST_STEP,
  LOWEST_HZ,
  stepOfFrequency,
  TICKS_HZ,
} from '../ribbon/levels.ts';
import { type PlotFrame, plotFrame, xOf } from './plot.ts';

interface FrequencyPlotProps {
  readonly width: number;
  readonly height: number;
  readonly label: string;
  /** What the cursor says when it is read out. */
  readonly spoken: string;
  children(frame: PlotFrame): ReactNode;
}

const LEAKS = 'a real room leaks: less than shown';
/** What the sentences in the plot need to stand beside what they speak of. */
const LEAST_WORDS_PX = 205;
const ALL_WORDS_PX = 285;

/** From the first mode down the sealed model is not to be trusted. */
const Doubt = ({ frame }: { frame: PlotFrame }) => {
  const first = useResults((state) => state.modes?.value[0]?.hz ?? 0);
  const schroeder = useResults((state) => state.geometry?.value.room.schroederHz ?? HIGHEST_HZ);
  const pattern = useId();
  const { left, right, top, bottom } = frame;
  const end = xOf(frame, Math.min(HIGHEST_HZ, Math.max(LOWEST_HZ, first)));
  const from = xOf(frame, Math.max(LOWEST_HZ, schroeder));
  return (
    <g className="plot-doubt">
      <defs>
        <pattern id={pattern} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path className="plot-hatch" d="M0 0V7" />
        </pattern>
      </defs>
      {end - left > 2 && <rect x={left} y={top} width={end - left} height={bottom - top} fill={`url(#${pattern})`} />}
      {end - left > LEAST_WORDS_PX && (
        <text x={left + 6} y={bottom - 7}>
          {end - left > ALL_WORDS_PX ? `below ${Math.round(first)} Hz ${LEAKS}` : LEAKS}
        </text>
      )}
      {right - from > 2 && (
        <>
          <path className="plot-limit" d={`M${from} ${top}V${bottom}`} />
          <text x={right - 6} y={bottom - 7} textAnchor="end">
            {right - from > LEAST_WORDS_PX ? `above ${Math.round(schroeder)} Hz only a tendency` : 'a tendency'}
          </text>
        </>
      )}
    </g>
  );
};

/** A plot over 20 to 200 Hz that shares the ribbon's cursor: by pointer, and by arrow keys. */
export const FrequencyPlot = ({ width, height, label, spoken, children }: FrequencyPlotProps) => {
  const frequencyHz = useSession((state) => state.frequencyHz);
  const modes = useResults((state) => state.modes?.value);
  const choose = useChoose();
  const slider = useRef<HTMLInputElement>(null);
  const frame = plotFrame(width, height);
  const { left, right, top, bottom } = frame;
  const drag = (event: PointerEvent<HTMLDivElement>) => {
    if (event.type === 'pointermove' && event.buttons === 0) return;
    if (event.type === 'pointerdown') {
      event.preventDefault();
      event.currentTarget.setPointerCapture(event.pointerId);
      slider.current?.focus({ preventScroll: true });
    }
    const share = (event.clientX - event.currentTarget.getBoundingClientRect().left - left) / (right - left);
    choose.frequency(frequencyOfStep(stepOfFrequency(hzOfShare(Math.min(1, Math.max(0, share))))));
  };
  const x = xOf(frame, frequencyHz);
  const roomy = right - left > 480;
  return (
    <div className="plot" style={{ width, height }} onPointerDown={drag} onPointerMove={drag}>
      {children(frame)}
      <svg width={width} height={height} aria-hidden="true">
        <Doubt frame={frame} />
        <g className="plot-modes">
          {modes
            ?.filter(({ hz }) => hz >= LOWEST_HZ && hz <= HIGHEST_HZ)
            .map(({ hz, order }) => (
              <path key={`${hz}|${order?.join()}`} d={`M${xOf(frame, hz)} ${top - 6}v5`} />
            ))}
        </g>
        <g className="plot-axis">
          {TICKS_HZ.filter((_, i) => roomy || i % 2 === 0).map((hz) => (
            <text key={hz} x={xOf(frame, hz)} y={bottom + 16} textAnchor={hz === HIGHEST_HZ ? 'end' : 'middle'}>
              {hz === HIGHEST_HZ ? '200 Hz' : hz}
            </text>
          ))}
        </g>
        <path className="plot-cursor" d={`M${x} ${top - 4}V${bottom + 3}`} />
      </svg>
      <input
        ref={slider}
        className="unseen"
        type="range"
        min={0}
        max={LAST_STEP}
        step={1}
        value={stepOfFrequency(frequencyHz)}
        aria-label={label}
        aria-valuetext={`${hertz(frequencyHz).text} Hz, ${spoken}`}
        onChange={(event) => choose.frequency(frequencyOfStep(Number(event.target.value)))}
      />
    </div>
  );
};
