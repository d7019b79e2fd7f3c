import { type PointerEvent, useEffect, useMemo, useRef } from 'react';
import { useDocument, useResults, useSession } from '../../state/view.tsx';
import { decibels, hertz } from '../figures.ts';
import { useChoose, useCurrent } from '../hooks.ts';
import { seatShort, seatTitle } from '../naming.ts';
import { drawRibbon } from './draw.ts';
import { levelAxis, type RibbonLayout, ribbonLayout, xOfHz } from './layout.ts';
import { frequencyOfStep, HIGHEST_HZ, hzOfShare, LAST_STEP, levelAt, stepOfFrequency, TICKS_HZ } from './levels.ts';
import { ScaleBar } from './ScaleBar.tsx';
import { useSize } from './useSize.ts';
import './ribbon.css';

/** A name needs this much height of its own. */
const NAME_PX = 11.5;
/** How far the heading's note reaches, so that the cursor's label keeps clear of it. */
const NOTE_PX = 490;

/**
 * The strips are a few thousand pixels drawn anew for every move of a dragged subwoofer: the processor has them done before
 * a graphics process, which may itself be the processor, has taken up the work.
 */
const DRAWN_BY_PROCESSOR: CanvasRenderingContext2DSettings = { willReadFrequently: true };

/** Narrower than this, every other tick is left out and the note goes under the axis. */
const ROOMY_PX = 480;

const Axis = ({ layout }: { layout: RibbonLayout }) => (
  <ol className="ribbon-axis" aria-hidden="true" style={{ top: layout.bottom }}>
    {TICKS_HZ.filter((_, i) => layout.right - layout.left > ROOMY_PX || i % 2 === 0).map((hz) => (
      <li key={hz} style={{ left: xOfHz(layout, hz) }}>
        {hz === 200 ? '200 Hz' : hz}
      </li>
    ))}
  </ol>
);

interface NamesProps {
  readonly layout: RibbonLayout;
  readonly seats: readonly { readonly id: string; readonly name: string; readonly title: string }[];
  readonly chosen: string;
}

const Names = ({ layout, seats, chosen }: NamesProps) => {
  const each = (layout.bottom - layout.top) / seats.length;
  return (
    <ol className="ribbon-names" aria-hidden="true">
      {seats.map(({ id, name, title }, i) => {
        const isChosen = id === chosen;
        if (!isChosen && each < NAME_PX) return null;
        return (
          <li
            key={id}
            className={isChosen ? 'is-chosen' : undefined}
            title={title}
            style={{ top: layout.top + (i + 0.5) * each, width: layout.left - 8 }}
          >
            {name}
          </li>
        );
      })}
    </ol>
  );
};

const Cursor = ({ layout, level, waiting }: { layout: RibbonLayout; level: number | null; waiting: boolean }) => {
  const frequencyHz = useSession((state) => state.frequencyHz);
  const x = xOfHz(layout, frequencyHz);
  const flips = x > layout.right - 150;
  const note = layout.right - layout.left > ROOMY_PX ? NOTE_PX : 0;
  const away = flips ? 8 : Math.max(8, layout.left + note - x);
  const top = x < layout.left + note ? layout.top - 8 : 4;
  return (
    <div className="ribbon-cursor" style={{ left: x, top, height: layout.bottom + 2 - top }}>
      <span style={{ top: 4 - top, ...(flips ? { right: away } : { left: away }) }}>
        <b>{hertz(frequencyHz).text} Hz</b>
        {level !== null && `  ${decibels(level).text} dB`}
        {waiting && <em> computing</em>}
      </span>
    </div>
  );
};

/** One colour strip a seat over frequency, with the chosen seat's curve; its cursor is the bass floor's frequency. */
export const Ribbon = () => {
  const box = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const scratch = useRef<HTMLCanvasElement | null>(null);
  const slider = useRef<HTMLInputElement>(null);
  const size = useSize(box);
  const bass = useResults((state) => state.curves?.value ?? state.bass?.value);
  const schroederHz = useResults((state) => state.geometry?.value.room.schroederHz ?? HIGHEST_HZ);
  const modes = useResults((state) => state.modes?.value);
  const current = useCurrent('bass');
  const project = useDocument((state) => state.project);
  const seatId = useSession((state) => state.seatId);
  const frequencyHz = useSession((state) => state.frequencyHz);
  const choose = useChoose();
  const scale = useResults((state) => state.scale);
  const axis = useMemo(() => {
    const own = bass?.seats.find(({ id }) => id === seatId) ?? bass?.seats[0];
    return own && scale && levelAxis([own.levelDb], scale);
  }, [bass, scale, seatId]);

  const roomForNames = size !== null && size.width > ROOMY_PX;
  const seats = (bass?.seats ?? []).map(({ id }) => {
    const title = seatTitle(project, id);
    return { id, title, name: roomForNames ? title : seatShort(project, id) };
  });
  const letters = Math.max(0, ...seats.map(({ name }) => name.length));
  const layout = useMemo(() => size && ribbonLayout(size.width, size.height, letters), [size, letters]);
  const silent = project.subwoofers.length === 0;
  const seatIndex = silent ? -1 : (bass?.seats.findIndex(({ id }) => id === seatId) ?? -1);
  const level = bass && seatIndex >= 0 ? levelAt(bass.frequenciesHz, bass.seats[seatIndex].levelDb, frequencyHz) : null;

  useEffect(() => {
    const sheet = canvas.current;
    const brush = sheet?.getContext('2d', DRAWN_BY_PROCESSOR);
    if (!sheet || !brush || !layout || !bass || !scale || !axis) return;
    scratch.current ??= document.createElement('canvas');
    const ratio = window.devicePixelRatio || 1;
    const [width, height] = [Math.round(layout.width * ratio), Math.round(layout.height * ratio)];
    // A new size empties the sheet and makes it anew; the same size is wiped.
    if (sheet.width !== width || sheet.height !== height) Object.assign(sheet, { width, height });
    brush.setTransform(ratio, 0, 0, ratio, 0, 0);
    brush.clearRect(0, 0, layout.width, layout.height);
    const picture = { bass, modes: modes ?? [], scale, axis, seatIndex, schroederHz };
    drawRibbon(brush, scratch.current, layout, picture);
  }, [layout, bass, modes, scale, axis, seatIndex, schroederHz]);

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

  const roomy = layout && layout.right - layout.left > ROOMY_PX;
  const spoken = `${hertz(frequencyHz).text} Hz`;
  const atSeat = level === null ? '' : `, ${decibels(level).text} dB at ${seatTitle(project, seatId)}`;
  return (
    <div className={current ? 'ribbon' : 'ribbon is-waiting'} aria-busy={!current} ref={box}>
      <div className="ribbon-plot" onPointerDown={drag} onPointerMove={drag}>
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
          aria-valuetext={spoken + atSeat}
          onChange={(event) => choose.frequency(frequencyOfStep(Number(event.target.value)))}
        />
      </div>
      {layout && (
        <>
          {bass && <Names layout={layout} seats={seats} chosen={seatId} />}
          <Axis layout={layout} />
          {axis && scale && <ScaleBar scale={scale} axis={axis} layout={layout} />}
          {silent && (
            <p className="ribbon-note" style={{ left: layout.left, top: 5 }}>
              No subwoofer yet: what the seats get of one is drawn here
            </p>
          )}
          {!silent && modes?.[0] && modes[0].hz > 20 && (
            <p
              className={roomy ? 'ribbon-note' : 'ribbon-note is-below'}
              style={{ left: roomy ? layout.left : 0, top: roomy ? 5 : layout.height + 4 }}
            >
              <i /> below {Math.round(modes[0].hz)} Hz a real room leaks: less than shown
              {schroederHz < HIGHEST_HZ && <span>above {Math.round(schroederHz)} Hz only a tendency</span>}
            </p>
          )}
          <Cursor layout={layout} level={level} waiting={!current} />
        </>
      )}
    </div>
  );
};
