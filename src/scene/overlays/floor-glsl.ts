/** A slice's own coordinates reach the fragments as they are. */
export const VERTEX = /* glsl */ `
  out vec2 sliceM;
  void main() {
    sliceM = uv;
    gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
  }
`;

// One program a kind of map, chosen by SIGNED and PRESSURE: a processor that draws the scene pays for every branch of every
// pixel. Nothing is discarded, which would keep hidden pixels from being skipped: the mesh ends where the room does.
// Written straight to the canvas: the table's entries are display bytes already, so no tone mapping, no light, no
// colour conversion may follow. Interpolated here because linear filtering of float textures is an extension.
export const FRAGMENT = /* glsl */ `
  precision highp float;
  precision highp sampler2D;
  uniform sampler2D values;
  uniform sampler2D table;
  uniform vec2 cells;
  uniform vec2 originM;
  uniform vec2 spanM;
  uniform vec2 range;
  uniform vec2 turn;
  uniform float stepBetween;
  uniform float light;
  in vec2 sliceM;
  out vec4 colour;

  // Level and difference stand in the first number; a pressure is complex and turns with the clock.
  float cell(ivec2 at) {
    #ifdef PRESSURE
      vec2 both = texelFetch(values, min(at, ivec2(cells) - 1), 0).rg;
      return both.r > -1e8 ? dot(both, vec2(turn.x, -turn.y)) : both.r;
    #else
      return texelFetch(values, min(at, ivec2(cells) - 1), 0).r;
    #endif
  }

  float valueAt(vec2 at) {
    vec2 grid = clamp((at - originM) / spanM, 0.0, 1.0) * (cells - 1.0);
    vec2 low = min(floor(grid), max(cells - 2.0, 0.0));
    vec2 share = grid - low;
    ivec2 corner = ivec2(low);
    return mix(
      mix(cell(corner), cell(corner + ivec2(1, 0)), share.x),
      mix(cell(corner + ivec2(0, 1)), cell(corner + ivec2(1, 1)), share.x),
      share.y);
  }

  // How dark the contour nearest to this pixel draws it: every second one is heavier; none where they would run together.
  float contour(float value, float slope) {
    float steps = value / stepBetween;
    float nearest = floor(steps + 0.5);
    float heavy = 1.0 - mod(nearest, 2.0);
    float every = stepBetween * (1.0 + heavy);
    float awayPx = abs(steps - nearest) * stepBetween / max(slope, 1e-6);
    float covered = 1.0 - clamp(awayPx - 0.3 * heavy, 0.0, 1.0);
    return (0.34 + 0.28 * heavy) * covered * (1.0 - smoothstep(every * 0.1, every * 0.24, slope));
  }

  void main() {
    float value = valueAt(sliceM);
    float slope = fwidth(value);
    float share = clamp((value - range.x) / (range.y - range.x), 0.0, 1.0);
    vec3 map = texelFetch(table, ivec2(int(floor(share * 255.0 + 0.5)), 0), 0).rgb;
    // Under the scale's low end all is one colour and the contours alone go on; far under it they would trace the grid
    // inside a null.
    float line = step(range.x - 4.0 * stepBetween, value) * contour(value, slope);
    #ifdef SIGNED
      bool dark = abs(share - 0.5) < 0.3;
    #else
      bool dark = share < 0.42;
    #endif
    vec3 ink = dark ? vec3(0.94, 0.91, 0.86) : vec3(0.08, 0.067, 0.06);
    vec3 lined = mix(map, ink, line * (dark ? 0.7 : 1.0));
    #ifdef SIGNED
      // Where the sign changes, a bold line: nothing is heard there.
      float nodal = 1.0 - smoothstep(1.0, 2.0, abs(value) / max(slope, 1e-6));
      #ifdef PRESSURE
        lined = mix(lined, vec3(0.94, 0.91, 0.86), nodal);
      #else
        lined = mix(lined, vec3(0.94, 0.91, 0.86), 0.75 * nodal);
      #endif
    #endif
    colour = vec4(lined * light, 1.0);
  }
`;
