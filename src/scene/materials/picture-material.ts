import { Color, MeshBasicMaterial, type Texture } from 'three';
import { hold, release } from '../gpu/ledger.ts';

/** White of the light that falls on the screen when the house lights are up. */
const WASH = new Color('#ffe3c0');

/**
 * The picture: shown as it is, whatever the room's exposure, but for the light that falls on the cloth. `wash` is that
 * light as a share of the picture's own white: it lifts black and leaves white where it was, as contrast is lost.
 */
export class PictureMaterial {
  readonly material = new MeshBasicMaterial({ toneMapped: false });
  private readonly wash = { value: new Color(0, 0, 0) };

  constructor() {
    this.material.onBeforeCompile = (shader) => {
      shader.uniforms.uWash = this.wash;
      shader.fragmentShader = shader.fragmentShader
        .replace('void main() {', 'uniform vec3 uWash;\nvoid main() {')
        .replace(
          '#include <opaque_fragment>',
          'outgoingLight = outgoingLight * (1.0 - uWash) + uWash;\n#include <opaque_fragment>',
        );
    };
    hold('material');
  }

  setPicture(texture: Texture): void {
    this.material.map = texture;
    this.material.needsUpdate = true;
  }

  setWash(share: number): void {
    this.wash.value.copy(WASH).multiplyScalar(share);
  }

  dispose(): void {
    this.material.dispose();
    release('material');
  }
}
