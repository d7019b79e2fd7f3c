import type { Vec3 } from '../math/vec3.ts';
import type { Project } from '../model/project.ts';
import { roomShape } from '../model/room/shape.ts';
import { partsOf } from './geometries.ts';
import { memoOf } from './memo.ts';
import { addQuad, addVertex, emptyMesh, joined, type RawMesh } from './mesh/raw.ts';
import { boxBetween } from './mesh/rounded-box.ts';
import { standing } from './placement.ts';
import type { MeshGeometry, Solid } from './solid.ts';

/** The lit rectangle, metres. `right` and `up` as a person facing it sees them; `normal` points to the seats. */
export interface PictureFace {
  readonly centreM: Vec3;
  readonly right: Vec3;
  readonly up: Vec3;
  readonly normal: Vec3;
  readonly widthM: number;
  readonly heightM: number;
  readonly bottomM: number;
  readonly zM: number;
}

/** Where the picture is: the one source for sight and scene. The front wall is at the plan's least z. */
export const pictureFace = (project: Project): PictureFace => {
  const { picture } = project;
  const heightM = picture.widthM / picture.aspect;
  const zM = roomShape(project).minM[2] + picture.offFrontWallM;
  return {
    centreM: [picture.centreXM, picture.bottomM + heightM / 2, zM],
    right: [1, 0, 0],
    up: [0, 1, 0],
    normal: [0, 0, 1],
    widthM: picture.widthM,
    heightM,
    bottomM: picture.bottomM,
    zM,
  };
};

/** How far a panel's bezel and a screen's frame reach past the lit face on each side. */
const BEZEL_M = 0.008;
const FRAME_M = 0.06;
const PANEL_DEPTH_M = 0.035;
const FRAME_DEPTH_M = 0.04;

const faces = memoOf<MeshGeometry>(16);

/** The lit face, (0, 0) its lower left corner in the picture's own measure and (1, 1) its upper right. */
const litFace = (widthM: number, heightM: number): MeshGeometry =>
  faces(`${widthM} ${heightM}`, () => {
    const columns = 8;
    const rows = 5;
    const positions: number[] = [];
    const normals: number[] = [];
    const uvs: number[] = [];
    const indices: number[] = [];
    for (let j = 0; j <= rows; j += 1) {
      for (let i = 0; i <= columns; i += 1) {
        positions.push((i / columns - 0.5) * widthM, (j / rows - 0.5) * heightM, 0);
        normals.push(0, 0, 1);
        uvs.push(i / columns, j / rows);
        if (i === columns || j === rows) continue;
        const a = j * (columns + 1) + i;
        indices.push(a, a + 1, a + columns + 2, a, a + columns + 2, a + columns + 1);
      }
    }
    return {
      positions: new Float32Array(positions),
      normals: new Float32Array(normals),
      uvs: new Float32Array(uvs),
      indices: new Uint32Array(indices),
    };
  });

/** A flat border round a rectangle, its front face at z = 0 and its body behind, closed. Mitred at the corners. */
const border = (widthM: number, heightM: number, rimM: number, depthM: number): RawMesh => {
  const mesh = emptyMesh();
  const chamfer = Math.min(0.004, rimM / 3);
  // Outline of the section, from the inner front edge round outside to the inner back edge: reach past the face, depth.
  const section = [
    [0, 0],
    [rimM - chamfer, 0],
    [rimM, -chamfer],
    [rimM, -depthM],
    [0, -depthM],
  ];
  const corners = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ];
  const rings = corners.map(([sx, sy]) =>
    section.map(([reach, z]) => addVertex(mesh, sx * (widthM / 2 + reach), sy * (heightM / 2 + reach), z)),
  );
  for (let k = 0; k < 4; k += 1) {
    const here = rings[k];
    const next = rings[(k + 1) % 4];
    for (let i = 0; i < section.length; i += 1) {
      const j = (i + 1) % section.length;
      addQuad(mesh, here[j], next[j], next[i], here[i]);
    }
  }
  return mesh;
};

/** A panel's body stands a hair behind its face, so that the face is the only thing in its plane. */
const BEHIND_M = 0.001;

const panelBody = (widthM: number, heightM: number, depthM: number): RawMesh =>
  joined(
    border(widthM, heightM, BEZEL_M, depthM),
    boxBetween([-widthM / 2, -heightM / 2, -depthM], [widthM / 2, heightM / 2, -BEHIND_M], { radiusM: 0 }),
  );

/** What holds the picture up and rims it; never in front of the face's plane. */
export const pictureSolids = (project: Project): Solid[] => {
  const face = pictureFace(project);
  const { widthM, heightM } = face;
  const panel = project.picture.kind === 'panel';
  const depthM = Math.max(0.004, Math.min(panel ? PANEL_DEPTH_M : FRAME_DEPTH_M, face.zM - 0.002));
  const placement = standing(face.centreM);
  const frame = partsOf('picture-frame', [panel, widthM, heightM, depthM], () => [
    {
      part: 'frame',
      material: panel ? 'rubber' : 'screen-frame',
      mesh: panel ? panelBody(widthM, heightM, depthM) : border(widthM, heightM, FRAME_M, depthM),
    },
  ]);
  const item = { kind: 'picture', id: 'picture', placement } as const;
  return [
    ...frame.map((part): Solid => ({ ...item, ...part })),
    { ...item, part: 'face', material: 'picture', geometry: litFace(widthM, heightM) },
  ];
};
