import {
  Color,
  type Material,
  Mesh,
  MeshBasicMaterial,
  NearestFilter,
  NoToneMapping,
  type Object3D,
  type PerspectiveCamera,
  type Scene,
  SRGBColorSpace,
  type WebGLRenderer,
  WebGLRenderTarget,
} from 'three';
import { hold, release } from './ledger.ts';

/** How many pixels each thing covers, by `kind:id`, from where the camera stands. */
export type ObjectCounts = Readonly<Record<string, number>>;

/** What objects/parts.ts writes on a mesh. */
export interface PartLabel {
  readonly kind: string;
  readonly id: string;
  readonly part: string;
}

/** The name a mesh is counted under; null leaves it out, as though it were not there. */
export type Naming = (label: PartLabel) => string | null;

const byItem: Naming = ({ kind, id }) => `${kind}:${id}`;

const nameOf = ({ userData }: Object3D, naming: Naming): string | null => {
  const { kind, id, part } = userData as Partial<PartLabel>;
  return typeof kind === 'string' && typeof id === 'string' ? naming({ kind, id, part: part ?? '' }) : null;
};

/** Number n as a colour that comes back unchanged from an eight-bit target: zero is nothing. */
export const idColour = (id: number): readonly [red: number, green: number, blue: number] => [
  (id & 0xff) / 255,
  ((id >> 8) & 0xff) / 255,
  ((id >> 16) & 0xff) / 255,
];

/** An image of numbers: RGBA bytes, rows from the bottom up, names[n - 1] the thing drawn as number n. */
export interface IdImage {
  readonly width: number;
  readonly height: number;
  readonly pixels: Uint8Array;
  readonly names: readonly string[];
}

const idAt = (pixels: Uint8Array, i: number): number => pixels[i] | (pixels[i + 1] << 8) | (pixels[i + 2] << 16);

/** Pixels by name. */
export const countIds = ({ pixels, names }: Pick<IdImage, 'pixels' | 'names'>): ObjectCounts => {
  const counts: Record<string, number> = {};
  for (let i = 0; i < pixels.length; i += 4) {
    const name = names[idAt(pixels, i) - 1];
    if (name !== undefined) counts[name] = (counts[name] ?? 0) + 1;
  }
  return counts;
};

/** What is seen at a point given as shares of the image from its upper left corner; null where nothing named is. */
export const thingAt = ({ width, height, pixels, names }: IdImage, across: number, down: number): string | null => {
  const column = Math.min(width - 1, Math.max(0, Math.floor(across * width)));
  const row = Math.min(height - 1, Math.max(0, height - 1 - Math.floor(down * height)));
  return names[idAt(pixels, 4 * (row * width + column)) - 1] ?? null;
};

interface Dressed {
  readonly mesh: Mesh;
  readonly material: Material | Material[];
  readonly before: Mesh['onBeforeRender'];
  readonly visible: boolean;
}

/**
 * Renders the scene once, every named mesh in one flat colour a thing and everything unnamed left out, into a target of
 * its own. What is hidden in the scene stays hidden. Costs a frame and a read back: for tests and probes.
 */
export const renderIds = (
  renderer: WebGLRenderer,
  scene: Scene,
  camera: PerspectiveCamera,
  width: number,
  height: number,
  naming: Naming = byItem,
): IdImage => {
  const names: string[] = [];
  const materials = new Map<string, MeshBasicMaterial>();
  const dressed: Dressed[] = [];
  scene.traverse((object) => {
    if (!('material' in object)) return;
    const name = object instanceof Mesh ? nameOf(object, naming) : null;
    const mesh = object as Mesh;
    dressed.push({ mesh, material: mesh.material, before: mesh.onBeforeRender, visible: mesh.visible });
    if (name === null) {
      mesh.visible = false;
      return;
    }
    mesh.material = materialFor(name, names, materials);
    mesh.onBeforeRender = () => {};
  });
  const target = new WebGLRenderTarget(width, height, {
    minFilter: NearestFilter,
    magFilter: NearestFilter,
    generateMipmaps: false,
  });
  hold('target');
  const pixels = new Uint8Array(width * height * 4);
  const { background } = scene;
  const { toneMapping, outputColorSpace } = renderer;
  const clear = renderer.getClearColor(new Color());
  const clearAlpha = renderer.getClearAlpha();
  try {
    scene.background = null;
    renderer.toneMapping = NoToneMapping;
    renderer.setClearColor(0x000000, 1);
    renderer.setRenderTarget(target);
    renderer.clear();
    renderer.render(scene, camera);
    renderer.readRenderTargetPixels(target, 0, 0, width, height, pixels);
  } finally {
    renderer.setRenderTarget(null);
    renderer.toneMapping = toneMapping;
    renderer.outputColorSpace = outputColorSpace ?? SRGBColorSpace;
    renderer.setClearColor(clear, clearAlpha);
    scene.background = background;
    for (const { mesh, material, before, visible } of dressed) {
      mesh.material = material;
      mesh.onBeforeRender = before;
      mesh.visible = visible;
    }
    for (const material of materials.values()) material.dispose();
    target.dispose();
    release('target');
  }
  return { width, height, pixels, names };
};

const materialFor = (name: string, names: string[], materials: Map<string, MeshBasicMaterial>): MeshBasicMaterial => {
  let material = materials.get(name);
  if (!material) {
    names.push(name);
    material = new MeshBasicMaterial({ toneMapped: false });
    // Written as linear values: the target is linear too, so bytes come back as they went in.
    material.color.setRGB(...idColour(names.length));
    materials.set(name, material);
  }
  return material;
};
