/** Who draws here: a graphics processor, the processor in its place, or nobody. */
export type RendererKind = 'hardware' | 'software' | 'none';

const SOFTWARE = /swiftshader|llvmpipe|softpipe|software|basic render/i;

/** Known before the canvas is made, because smoothing of edges is fixed with it and costs a software renderer a third more. */
export const rendererHere = (): RendererKind => {
  const context = document.createElement('canvas').getContext('webgl2');
  if (!context) return 'none';
  const info = context.getExtension('WEBGL_debug_renderer_info');
  const name = String(context.getParameter(info ? info.UNMASKED_RENDERER_WEBGL : context.RENDERER));
  context.getExtension('WEBGL_lose_context')?.loseContext();
  return SOFTWARE.test(name) ? 'software' : 'hardware';
};
