import { useLayoutEffect } from 'react';
import type { Cut } from '../../analysis/slice/wish.ts';
import type { Vec3 } from '../../math/vec3.ts';
import type { Project } from '../../model/project.ts';
import { roomShape } from '../../model/room/shape.ts';
import { requestFrame } from '../../state/frames.ts';
import { useDocument } from '../../state/view.tsx';
import type { LineStyle } from './lines.ts';
import { pointOnSlice, slicePoint } from './slice-geometry.ts';
import { TONE } from './tones.ts';
import { useLines } from './use-lines.ts';

const RING: LineStyle = { widthPx: 1.25, opacity: 0.9, casing: true, hidden: 0 };
/** Every second piece of the ring is drawn: dashes. */
const CORNERS = 48;
const ABOVE_M = 0.004;
/** The engine answers no nearer than this. */
const NEAREST_M = 0.1;

type Subwoofer = Project['subwoofers'][number];

/**
 * Nearer to a subwoofer than its own largest side the prediction stops being trustworthy: it is a point there, in truth a
 * cabinet with a cone. Where a slice cuts that ball; 0 where it does not.
 */
export const nearRadiusM = ({ atM, sizeM }: Subwoofer, { normal, atM: planeM }: Cut): number => {
  const reach = Math.max(NEAREST_M, ...sizeM);
  const off = planeM - atM[normal === 'x' ? 0 : normal === 'y' ? 1 : 2];
  return Math.sqrt(Math.max(0, reach * reach - off * off));
};

/** Dashed rings on the bass floor round what lies too near to a subwoofer to be foretold. */
export const NearSources = ({ cut }: { readonly cut: Cut }) => {
  const project = useDocument((state) => state.project);
  const lines = useLines(RING);
  useLayoutEffect(() => {
    lines.begin();
    const { contains } = roomShape(project);
    for (const subwoofer of project.subwoofers) {
      const radius = nearRadiusM(subwoofer, cut);
      if (radius === 0) continue;
      const [x, y, z] = subwoofer.atM;
      const [u, v] = pointOnSlice(cut, [x, y, z]);
      const at = (i: number): Vec3 => {
        const angle = (2 * Math.PI * i) / CORNERS;
        return slicePoint(cut, [u + radius * Math.cos(angle), v + radius * Math.sin(angle)], ABOVE_M);
      };
      for (let i = 0; i < CORNERS; i += 2)
        if (contains(at(i)) && contains(at(i + 1))) lines.line([at(i), at(i + 1)], TONE.brass);
    }
    lines.end();
    requestFrame('session');
  }, [lines, project, cut]);
  return <primitive object={lines.object} />;
};
