import type { PlanSketch } from '../../model/plan-sketch.ts';

const MARGIN_M = 0.25;
const CHAIR_DEPTH_M = 0.8;
/** The chair's middle stands a little behind the eyes. */
const BEHIND_EYE_M = 0.1;

type Spot = readonly [number, number];

/** Each place once: two loudspeakers may stand one above the other. */
const apart = (spots: readonly Spot[]): Spot[] => [...new Map(spots.map((spot) => [spot.join(' '), spot])).values()];

/** A room from above as a small fine drawing: walls, picture, chairs, loudspeakers. Decoration beside its name. */
export const PlanThumbnail = ({ sketch }: { readonly sketch: PlanSketch }) => {
  const xs = sketch.cornersM.map(([x]) => x);
  const zs = sketch.cornersM.map(([, z]) => z);
  const [left, top] = [Math.min(...xs) - MARGIN_M, Math.min(...zs) - MARGIN_M];
  const [width, height] = [Math.max(...xs) + MARGIN_M - left, Math.max(...zs) + MARGIN_M - top];
  const [from, to] = sketch.pictureM;
  return (
    <svg className="plan-thumbnail" viewBox={`${left} ${top} ${width} ${height}`} aria-hidden="true">
      <polygon className="thumb-walls" points={sketch.cornersM.map(([x, z]) => `${x},${z}`).join(' ')} />
      <line className="thumb-picture" x1={from[0]} y1={from[1] + 0.05} x2={to[0]} y2={to[1] + 0.05} />
      {sketch.seats.map(({ atM: [x, z], widthM, turnDeg }) => (
        <rect
          key={`${x} ${z}`}
          className="thumb-chair"
          x={x - widthM / 2 + 0.03}
          y={z + BEHIND_EYE_M - CHAIR_DEPTH_M / 2}
          width={widthM - 0.06}
          height={CHAIR_DEPTH_M}
          rx={0.12}
          transform={`rotate(${turnDeg} ${x} ${z})`}
        />
      ))}
      {apart(sketch.loudspeakersM).map(([x, z]) => (
        <circle key={`${x} ${z}`} className="thumb-loudspeaker" cx={x} cy={z} r={0.11} />
      ))}
      {apart(sketch.subwoofersM).map(([x, z]) => (
        <rect key={`${x} ${z}`} className="thumb-subwoofer" x={x - 0.17} y={z - 0.17} width={0.34} height={0.34} />
      ))}
    </svg>
  );
};
