import { type KeyboardEvent, type PointerEvent, useMemo, useRef, useState } from 'react';
import type { Point2 } from '../../math/polyline.ts';
import {
  type Aimed,
  directionDeg,
  dropCorner,
  lengthM,
  moveCorner,
  type PlanDraft,
  pointAlong,
} from '../../model/plan-draft.ts';
import { wholeCm } from '../../model/snap/lines.ts';
import { formatQuantity } from '../../words/quantities.ts';
import { useUnits } from '../hooks.ts';
import { useSize } from '../ribbon/useSize.ts';
import { gridLines, toM, toPx, viewOf } from './board-view.ts';

interface Props {
  readonly draft: PlanDraft;
  readonly crossed: readonly [number, number] | null;
  /** A length typed along the way: the next wall is so long, whichever way the hand points. */
  readonly typedM: number | undefined;
  readonly aim: (draft: PlanDraft, wantedM: Point2, reachM: number, free?: boolean) => Aimed;
  onChange(draft: PlanDraft): void;
  onAdd(atM: Point2, closes: boolean): void;
}

const REACH_PX = 14;
/** A finger's target is 44 px across. */
const CORNER_PX = 22;
const STEPS: Readonly<Record<string, Point2>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** The squared paper: the walls with their lengths, the corners to be dragged, and the wall that is about to be drawn. */
export const BoardCanvas = ({ draft, crossed, typedM, aim, onChange, onAdd }: Props) => {
  const box = useRef<HTMLDivElement>(null);
  const size = useSize(box);
  const units = useUnits();
  const [pointed, setPointed] = useState<{ atM: Point2; free: boolean } | null>(null);
  const [held, setHeld] = useState<number | null>(null);
  const { width = 0, height = 0 } = size ?? {};
  const fitted = useMemo(() => viewOf(draft.corners, width, height), [draft.corners, width, height]);
  const frozen = useRef(fitted);
  if (held === null) frozen.current = fitted;
  const view = frozen.current;
  const { corners, closed } = draft;
  const last = corners[corners.length - 1];
  const px = (point: Point2) => toPx(view, point);

  const aimed = useMemo(() => {
    if (closed || !pointed) return null;
    const found = aim(draft, pointed.atM, REACH_PX / view.scale, pointed.free);
    if (!last || found.closes || typedM === undefined || typedM <= 0) return found;
    return { ...found, atM: pointAlong(last, directionDeg(last, found.atM), typedM) };
  }, [closed, pointed, draft, view.scale, aim, last, typedM]);

  const at = (event: PointerEvent): Point2 => {
    const { left, top } = event.currentTarget.getBoundingClientRect();
    return toM(view, [event.clientX - left, event.clientY - top]);
  };
  const onPointerDown = (event: PointerEvent) => {
    event.currentTarget.setPointerCapture(event.pointerId);
    const atM = at(event);
    const near = closed ? corners.findIndex((corner) => lengthM(corner, atM) * view.scale <= CORNER_PX) : -1;
    setHeld(near >= 0 ? near : null);
    setPointed({ atM, free: event.altKey });
  };
  const onPointerMove = (event: PointerEvent) => {
    const atM = at(event);
    setPointed({ atM, free: event.altKey });
    if (held === null) return;
    const beside = [corners[(held + corners.length - 1) % corners.length], corners[(held + 1) % corners.length]];
    const reach = event.altKey ? 0 : REACH_PX / view.scale / 1.5;
    const square = (axis: 0 | 1) =>
      beside.map((corner) => corner[axis]).find((value) => Math.abs(value - atM[axis]) < reach) ?? wholeCm(atM[axis]);
    onChange(moveCorner(draft, held, [square(0), square(1)]));
  };
  const onPointerUp = (event: PointerEvent) => {
    setHeld(null);
    if (event.pointerType === 'touch') setPointed(null);
    if (!closed && aimed) onAdd(aimed.atM, aimed.closes);
  };
  const onCancel = () => {
    setHeld(null);
    setPointed(null);
  };
  const onCornerKey = (event: KeyboardEvent, index: number) => {
    if (event.key === 'Delete' || event.key === 'Backspace') onChange(dropCorner(draft, index));
    else if (Object.hasOwn(STEPS, event.key)) {
      const by = event.shiftKey ? 0.1 : 0.01;
      const [x, z] = corners[index];
      onChange(
        moveCorner(draft, index, [wholeCm(x + STEPS[event.key][0] * by), wholeCm(z + STEPS[event.key][1] * by)]),
      );
    } else return;
    event.preventDefault();
    event.stopPropagation();
  };

  const walls = corners.slice(0, closed ? undefined : -1).map((from, i) => {
    const to = corners[(i + 1) % corners.length];
    const long = formatQuantity(lengthM(from, to), 'length', units);
    return {
      key: `wall ${i + 1}`,
      a: px(from),
      b: px(to),
      text: `${i + 1}: ${long}`,
      bad: crossed?.includes(i) ?? false,
    };
  });
  const dots = corners.map((corner, index) => {
    const [across, back] = corner.map((value) => formatQuantity(value, 'length', units));
    const label = `Corner ${index + 1}: ${across} across, ${back} back. Arrows move it.`;
    return { key: `corner ${index + 1}`, index, at: px(corner), label };
  });
  const outline =
    corners.map((corner, i) => `${i === 0 ? 'M' : 'L'}${px(corner).join(' ')}`).join('') + (closed ? 'Z' : '');
  return (
    <div className="plan-paper" ref={box}>
      <svg
        width={width}
        height={height}
        role="application"
        aria-label="The plan from above, the picture wall at the top"
        onPointerDown={onPointerDown}
        onPointerMove={onPointerMove}
        onPointerUp={onPointerUp}
        onPointerCancel={onCancel}
        onPointerLeave={() => held === null && setPointed(null)}
      >
        {gridLines(view, width, height).map(({ key, d, whole }) => (
          <path key={key} className={whole ? 'grid is-whole' : 'grid'} d={d} />
        ))}
        <text className="plan-front" x={10} y={20}>
          front, with the picture
        </text>
        <path className={closed ? 'floor' : 'floor is-open'} d={outline} />
        {walls.map(({ key, ...wall }) => (
          <Wall key={key} {...wall} />
        ))}
        {aimed && last && (
          <Wall
            a={px(last)}
            b={px(aimed.atM)}
            text={`${formatQuantity(lengthM(last, aimed.atM), 'length', units)}, ${Math.round(directionDeg(last, aimed.atM))}°${aimed.closes ? ', closes' : ''}`}
            next
          />
        )}
        {aimed && <circle className="next" cx={px(aimed.atM)[0]} cy={px(aimed.atM)[1]} r={aimed.closes ? 9 : 4} />}
        {dots.map(({ key, index, at: [x, y] }) => (
          <circle key={key} className={held === index ? 'dot is-held' : 'dot'} cx={x} cy={y} r={5.5} />
        ))}
      </svg>
      {dots.map(({ key, index, at: [left, top], label }) => (
        <button
          key={key}
          type="button"
          className="plan-corner"
          style={{ left, top }}
          aria-label={label}
          onKeyDown={(event) => onCornerKey(event, index)}
        />
      ))}
    </div>
  );
};

interface WallProps {
  readonly a: Point2;
  readonly b: Point2;
  readonly text: string;
  readonly bad?: boolean;
  readonly next?: boolean;
}

const Wall = ({ a, b, text, bad = false, next = false }: WallProps) => {
  const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const off: Point2 = long > 0 ? [(b[1] - a[1]) / long, (a[0] - b[0]) / long] : [0, 0];
  return (
    <g className={bad ? 'wall is-bad' : next ? 'wall is-next' : 'wall'}>
      <line x1={a[0]} y1={a[1]} x2={b[0]} y2={b[1]} />
      {long > 34 && (
        <text
          x={(a[0] + b[0]) / 2 + off[0] * 14}
          y={(a[1] + b[1]) / 2 + off[1] * 16 + 4}
          style={{ textAnchor: off[0] > 0.5 ? 'start' : off[0] < -0.5 ? 'end' : 'middle' }}
        >
          {text}
        </text>
      )}
    </g>
  );
};
