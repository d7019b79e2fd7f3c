import { subtract } from '../math/vec3.ts';
import type { Project } from '../model/project.ts';
import { roomShape } from '../model/room/shape.ts';
import { partsOf, type RawPart } from './geometries.ts';
import { facingFront, revolved } from './mesh/loft.ts';
import { joined, moved, shaped } from './mesh/raw.ts';
import { boxBetween } from './mesh/rounded-box.ts';
import { pictureFace } from './picture.ts';
import { facing, standing } from './placement.ts';
import type { Solid } from './solid.ts';

const WIDTH_M = 0.42;
const HEIGHT_M = 0.15;
const DEPTH_M = 0.36;
/** The lens's front stands this far before the body; the file's point is the lens's. */
const LENS_M = 0.02;

/** A projector about its lens, which looks to -z. */
const projectorParts = (): RawPart[] => {
  const lens = shaped(
    revolved(
      [
        [0.052, -0.03],
        [0.052, -0.006],
        [0.048, 0],
        [0.036, 0],
        [0.032, -0.01],
      ],
      24,
    ),
    facingFront,
  );
  const glass = shaped(
    revolved(
      [
        [0.0325, -0.0115],
        [0.022, -0.0075],
        [0, -0.0055],
      ],
      24,
    ),
    facingFront,
  );
  const body = boxBetween([-WIDTH_M / 2, -HEIGHT_M / 2, LENS_M], [WIDTH_M / 2, HEIGHT_M / 2, LENS_M + DEPTH_M], {
    radiusM: 0.025,
    arc: 2,
  });
  const slot = (y: number) => boxBetween([0.085, y, LENS_M - 0.002], [0.185, y + 0.004, LENS_M + 0.02], { radiusM: 0 });
  return [
    { part: 'body', material: 'cabinet', mesh: body },
    { part: 'lens', material: 'rubber', mesh: joined(lens, ...[-0.02, -0.006, 0.008, 0.022].map(slot)) },
    { part: 'glass', material: 'glass', mesh: glass },
  ];
};

/** The projector, its lens at the file's point, turned level to the picture, hung from the ceiling when near it. */
export const projectorSolids = (project: Project): Solid[] => {
  const { projector, kind } = project.picture;
  if (projector === undefined || kind !== 'screen') return [];
  const { yawDeg } = facing(subtract(pictureFace(project).centreM, projector.atM));
  const placement = standing(projector.atM, yawDeg);
  const dropM = roomShape(project).ceilingAtM(projector.atM[0], projector.atM[2]) - projector.atM[1] - HEIGHT_M / 2;
  const hangs = dropM > 0.005 && dropM < 1.2;
  const pole = hangs
    ? partsOf('projector-pole', [dropM], () => [
        {
          part: 'pole',
          material: 'metal',
          mesh: moved(
            joined(
              revolved(
                [
                  [0.02, -0.01],
                  [0.02, dropM],
                ],
                16,
              ),
              revolved(
                [
                  [0.07, Math.max(0, dropM - 0.012)],
                  [0.07, dropM],
                ],
                20,
              ),
            ),
            [0, HEIGHT_M / 2, LENS_M + DEPTH_M / 2],
          ),
        },
      ])
    : [];
  return [...partsOf('projector', [], projectorParts), ...pole].map((part) => ({
    kind: 'projector',
    id: 'projector',
    ...part,
    placement,
  }));
};
