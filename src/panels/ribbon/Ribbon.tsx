import { type PointerEvent, useEffect, useRef } from 'react';
import { useDocument, useResults, useSession } from '../../state/view.tsx';
import { decibels, hertz } from '../figures.ts';
import { useChoose, useCurrent } from '../hooks.ts';
import { useFloorScale } from '../legend/useScale.ts';
import { seatTitle } from '../naming.ts';
import { drawRibbon, ribbonLayout, xOfHz } from './draw.ts';
import { frequencyOfStep, hzOfShare, LAST_STEP, levelAt, stepOfFrequency } from './levels.ts';
import { useSize } from './useSize.ts';
import './ribbon.css';

/** One colour strip a seat over frequency; its cursor is the bass floor's frequency. */
export const Ribbon = () => {
  const box = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const slider = useRef<HTMLInputElement>(null);
  const size = useSize(box);
  const bass = useResults((state) => state.bass?.value);
  const modes = useResults((state) => state.modes?.value);
  const current = useCurrent('bass');
  const project = useDocument((state) => state.project);
  const seatId = useSession((state) => state.seatId);
  const frequencyHz = useSession((state) => state.frequencyHz);
  const choose = useChoose();
  const scale = useFloorScale();

  const layout = size && ribbonLayout(size.width, size.height);
  const seatIndex = bass?.seats.findIndex(({ id }) => id === seatId) ?? -1;
  const level = bass && seatIndex >= 0 ? levelAt(bass.frequenciesHz, bass.seats[seatIndex].levelDb, frequencyHz) : null;

  useEffect(() => {
    const sheet = canvas.current;
    const brush = sheet?.getContext('2d');
    if (!sheet || !brush || !size || !bass || !scale) return;
    const ratio = window.devicePixelRatio || 1;
    sheet.width = Math.round(size.width * ratio);
    sheet.height = Math.round(size.height * ratio);
    brush.setTransform(ratio, 0, 0, ratio, 0, 0);
    drawRibbon(brush, ribbonLayout(size.width, size.height), { bass, modes: modes ?? [], scale, seatIndex });
  }, [size, bass, modes, scale, seatIndex]);

  const drag = (event: PointerEvent<HTMLDivElement>) => {
    if (!layout || (event.type === 'pointermove' && event.buttons === 0)) return;
    if (event.type === 'pointerdown') {
      event.preventDefault();
      event.currentTarget.setPointerCapture(event.pointerId);
      slider.current?.focus({ preventScroll: true });
    }
    const { left } = event.currentTarget.getBoundingClientRect();
    const share = (event.clientX - left - layout.left) / (layout.right - layout.left);
    choose.frequency(frequencyOfStep(stepOfFrequency(hzOfShare(Math.min(1, Math.max(0, share))))));
  };

  const hz = `${hertz(frequencyHz).text} Hz`;
  const db = level === null ? '' : `${decibels(level).text} dB`;
  const first = modes?.[0]?.hz ?? 0;
  return (
    <div className={current ? 'ribbon' : 'ribbon is-waiting'} aria-busy={!current}>
      <div className="ribbon-plot" ref={box} onPointerDown={drag} onPointerMove={drag}>
        <canvas ref={canvas} />
        <input
          ref={slider}
          className="unseen"
          type="range"
          min={0}
          max={LAST_STEP}
          step={1}
          value={stepOfFrequency(frequencyHz)}
          aria-label="Frequency of the bass floor"
          aria-valuetext={`${hz}${db === '' ? '' : `, ${db} at ${seatTitle(project, seatId)}`}`}
          onChange={(event) => choose.frequency(frequencyOfStep(Number(event.target.value)))}
        />
        {layout && (
          <div className="ribbon-cursor" style={{ left: xOfHz(layout, frequencyHz) }}>
            <span className={xOfHz(layout, frequencyHz) > layout.width - 240 ? 'is-left' : undefined}>
              <b>{hz}</b> {db}
              {!current && <em> computing</em>}
            </span>
          </div>
        )}
        {layout && first > 26 && (
          <p className="ribbon-note" style={{ maxWidth: xOfHz(layout, first) - 8 }}>
            a sealed model; doors and stud walls leak
          </p>
        )}
      </div>
    </div>
  );
};
