import { useEffect, useLayoutEffect, useMemo } from 'react';
import type { Finding, LoudspeakerReadout } from '../../analysis/types.ts';
import type { Vec3 } from '../../math/vec3.ts';
import { requestFrame } from '../../state/frames.ts';
import { useDocument, useResults, useSession } from '../../state/view.tsx';
import { useKit } from '../kit.ts';
import {
  AHEAD_DEG,
  around,
  levelArc,
  type PlacedDirection,
  placeDirections,
  RING_M,
  rangeHatch,
  rangeOutline,
  uprightArc,
} from './angle-drawing.ts';
import { type Cone, Cones, earsOf } from './Cones.tsx';
import type { Label } from './label-board.ts';
import type { LineBatch, LineStyle } from './lines.ts';
import { besideTheBass } from './shown.ts';
import { GROUP_DASH, TONE } from './tones.ts';
import { useLines } from './use-lines.ts';

const FINE: LineStyle = { widthPx: 1.5, casing: true, hidden: 0.15 };
const RIGHT: LineStyle = { ...FINE, dashM: GROUP_DASH.right };
const HEIGHT: LineStyle = { ...FINE, dashM: GROUP_DASH.height };
const RING: LineStyle = { widthPx: 1, casing: true, opacity: 0.7, hidden: 0 };
const BAND: LineStyle = { widthPx: 1, casing: true, opacity: 0.75, hidden: 0.1 };
const HATCH: LineStyle = { widthPx: 1, opacity: 0.55, hidden: 0 };
const EDGE: LineStyle = { widthPx: 1, opacity: 0.45, hidden: 0.3 };
/** Straight ahead is marked from inside the ring to past the last arc. */
const AHEAD_FROM_M = 0.2;
const ARROW_M = 0.05;
const TICK_M = 0.03;
const LOUDSPEAKER_PRIORITY = 40;
const CHOSEN_PRIORITY = 90;

const drawRing = (ring: LineBatch, earM: Vec3, reachM: number): void => {
  ring.begin();
  ring.line(levelArc(earM, RING_M, -180, 180), TONE.brass);
  const tip = around(earM, reachM, 0);
  ring.line([around(earM, AHEAD_FROM_M, 0), tip], TONE.brass);
  ring.line(
    [[tip[0] - ARROW_M / 2, tip[1], tip[2] + ARROW_M], tip, [tip[0] + ARROW_M / 2, tip[1], tip[2] + ARROW_M]],
    TONE.brass,
  );
  for (let at = -150; at <= 180; at += 30)
    ring.pieces([around(earM, RING_M, at), around(earM, RING_M - 0.02, at)], TONE.brass);
  ring.end();
};

const drawDirections = (
  lines: Readonly<Record<PlacedDirection['group'], LineBatch>>,
  placed: readonly PlacedDirection[],
  earM: Vec3,
  chosen: string | null,
): void => {
  for (const batch of Object.values(lines)) batch.begin();
  for (const { id, group, radiusM, azimuthDeg, elevationDeg } of placed) {
    const colour = id === chosen ? TONE.strong : TONE[group];
    const batch = lines[group];
    if (group !== 'height' && Math.abs(azimuthDeg) > AHEAD_DEG) {
      batch.line(levelArc(earM, radiusM, 0, azimuthDeg), colour);
      batch.line([around(earM, RING_M, azimuthDeg), around(earM, radiusM + TICK_M, azimuthDeg)], colour);
    }
    batch.line(uprightArc(earM, radiusM, azimuthDeg, elevationDeg), colour);
    const foot = around(earM, radiusM - TICK_M, azimuthDeg, elevationDeg);
    batch.line([foot, around(earM, radiusM + TICK_M, azimuthDeg, elevationDeg)], colour);
  }
  for (const batch of Object.values(lines)) batch.end();
};

/** The range a layout angle is held against, on the side the loudspeaker stands; null where no rule judges it here. */
const rangeOf = (findings: readonly Finding[], seatId: string, { id, azimuthDeg }: PlacedDirection) => {
  const finding = findings.find(({ rule, seat, item }) => rule.endsWith('azimuth') && seat === seatId && item === id);
  const [low, high] = finding?.range ?? [null, null];
  if (low === null || high === null || low === high) return null;
  return azimuthDeg < 0 ? ([-high, -low] as const) : ([low, high] as const);
};

const drawRanges = (
  outline: LineBatch,
  hatch: LineBatch,
  placed: readonly PlacedDirection[],
  findings: readonly Finding[],
  seatId: string,
  earM: Vec3,
): void => {
  outline.begin();
  hatch.begin();
  for (const direction of placed) {
    const range = direction.group === 'height' ? null : rangeOf(findings, seatId, direction);
    if (!range) continue;
    outline.line(rangeOutline(earM, direction.radiusM, range[0], range[1]), TONE.brass);
    hatch.pieces(rangeHatch(earM, direction.radiusM, range[0], range[1]), TONE.brass);
  }
  outline.end();
  hatch.end();
};

const drawEdges = (edges: LineBatch, cones: readonly Cone[]): void => {
  edges.begin();
  for (const { fromM, earM, tone, strong } of cones) {
    const colour = strong ? TONE.strong : TONE[tone];
    for (const ear of earsOf(earM)) edges.line([fromM, ear], colour);
  }
  edges.end();
};

/** Where labels must give way, the nearer to the picture the longer a loudspeaker keeps its own, heights after the rest. */
const priorityOf = (azimuthDeg: number, elevationDeg: number): number =>
  LOUDSPEAKER_PRIORITY - (Math.abs(azimuthDeg) + Math.abs(elevationDeg)) / 20;

const signed = (degrees: number): string => `${degrees < 0 ? '\u2212' : '+'}${Math.abs(degrees).toFixed(1)}°`;

/** Left or right of straight ahead, as the card's table signs it: minus to the left. */
const sided = (azimuthDeg: number): string => `${azimuthDeg < -0.05 ? '−' : ''}${Math.abs(azimuthDeg).toFixed(1)}°`;

const labelOf = ({ id, azimuthDeg, elevationDeg }: LoudspeakerReadout, atM: Vec3, chosen: boolean): Label => ({
  key: id,
  atM,
  before: id,
  value: sided(azimuthDeg),
  after: signed(elevationDeg),
  priority: chosen ? CHOSEN_PRIORITY : priorityOf(azimuthDeg, elevationDeg),
  tone: chosen ? 'chosen' : 'plain',
});

const EMPTY: readonly Finding[] = [];

/** Where each loudspeaker stands for the chosen seat's ears: wedges, arcs with their numbers, and what is allowed. */
export const Angles = () => {
  const { labels } = useKit();
  const loudspeakers = useDocument((state) => state.project.loudspeakers);
  const readout = useResults((state) => state.geometry?.value ?? null);
  const findings = useResults((state) => state.findings?.value ?? EMPTY);
  const seatId = useSession((state) => state.seatId);
  const shown = useSession((state) => state.overlays.cones && besideTheBass(state));
  const named = useSession((state) => state.overlays.labels);
  const chosen = useSession(({ hovered, selection }) => {
    const item = hovered?.kind === 'loudspeaker' ? hovered : selection;
    return item?.kind === 'loudspeaker' ? item.id : null;
  });
  const left = useLines(FINE);
  const right = useLines(RIGHT);
  const height = useLines(HEIGHT);
  const ring = useLines(RING);
  const outline = useLines(BAND);
  const hatch = useLines(HATCH);
  const edges = useLines(EDGE);
  const seat = shown ? (readout?.seats.find(({ id }) => id === seatId) ?? null) : null;

  const placed = useMemo(() => {
    const channels = new Map(loudspeakers.map(({ id, channel }) => [id, channel]));
    return placeDirections(
      (seat?.loudspeakers ?? []).map(({ id, azimuthDeg, elevationDeg }) => ({
        id,
        azimuthDeg,
        elevationDeg,
        channel: channels.get(id) ?? '',
      })),
    );
  }, [seat, loudspeakers]);
  const cones = useMemo(() => {
    if (!seat) return [];
    return loudspeakers.flatMap(({ id, atM }) => {
      const direction = placed.find((candidate) => candidate.id === id);
      return direction ? [{ fromM: atM, earM: seat.earM, tone: direction.group, strong: id === chosen }] : [];
    });
  }, [seat, placed, loudspeakers, chosen]);

  useLayoutEffect(() => {
    if (!seat) return;
    const reachM = Math.max(RING_M, ...placed.map(({ radiusM }) => radiusM)) + 0.16;
    drawRing(ring, seat.earM, reachM);
    drawDirections({ left, right, height }, placed, seat.earM, chosen);
    drawRanges(outline, hatch, placed, findings, seatId, seat.earM);
    drawEdges(edges, cones);
  }, [seat, placed, findings, seatId, chosen, cones, ring, left, right, height, outline, hatch, edges]);

  useEffect(() => {
    const written = seat && named ? seat.loudspeakers : [];
    labels.set(
      'angles',
      written.flatMap((speaker) => {
        const at = loudspeakers.find(({ id }) => id === speaker.id)?.atM;
        return at ? [labelOf(speaker, at, speaker.id === chosen)] : [];
      }),
    );
    requestFrame('session');
    return () => labels.set('angles', []);
  }, [labels, seat, loudspeakers, chosen, named]);

  if (!seat) return null;
  return (
    <group>
      <Cones cones={cones} />
      {[edges, ring, left, right, height, outline, hatch].map(({ object }) => (
        <primitive key={object.id} object={object} />
      ))}
    </group>
  );
};
