import { useFrame } from '@react-three/fiber';
import { useEffect, useRef } from 'react';
import { PerspectiveCamera } from 'three';
import { useView } from '../../state/view.tsx';
import { useKit } from '../kit.ts';
import type { Box } from './place-labels.ts';

const LAYER = { position: 'absolute', inset: 0, pointerEvents: 'none', overflow: 'hidden' } as const;

/** The one DOM layer over the canvas that carries every label. The same words stand in the panels, so it is not read out. */
export const LabelLayer = () => {
  const { labels, handles } = useKit();
  const host = useRef<HTMLDivElement>(null);
  const leaders = useRef<SVGSVGElement>(null);
  const marks = useRef<SVGSVGElement>(null);
  useEffect(() => {
    labels.attach(host.current, leaders.current);
    handles.attach(marks.current);
    return () => {
      labels.attach(null, null);
      handles.attach(null);
    };
  }, [labels, handles]);
  return (
    <div aria-hidden="true" className="scene-labels" style={LAYER}>
      <svg ref={leaders} width="100%" height="100%" style={{ position: 'absolute', inset: 0 }} aria-hidden="true" />
      <svg ref={marks} width="100%" height="100%" style={{ position: 'absolute', inset: 0 }} aria-hidden="true" />
      <div ref={host} style={{ position: 'absolute', inset: 0 }} />
    </div>
  );
};

const NOTHING: readonly Box[] = [];

/** Inside the canvas: moves the labels after the camera, in the same frame. */
export const LabelDriver = () => {
  const kit = useKit();
  const { session } = useView();
  useFrame(({ camera }) => {
    const area = kit.rig.free;
    if (!area || !(camera instanceof PerspectiveCamera)) return;
    const picture = session.getState().mode === 'sit' ? kit.pictureBox(camera) : null;
    const hand = kit.handles.boxes();
    kit.labels.draw(camera, area, picture ? [picture, ...hand] : hand.length > 0 ? hand : NOTHING);
  }, -5);
  return null;
};
