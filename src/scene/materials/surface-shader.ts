/**
 * Light arrives per vertex (src/scene/light): `light` holds the picture's red, green, blue and the lamps' share, `open`
 * the share of general light. A pixel multiplies by the material, adds the picture's mirror image (for floors and other
 * glossy things: the reflected ray meets the picture's plane, blurred by its mip level and by soft edges) and sheen.
 */
/**
 * From scene light to the screen. Neutral: hue and chroma are kept, only a peak above 0.76 is rolled off towards 1 (no
 * toe: a dim room lives where a toe would tint it). Then the sRGB curve as s (1.13 - 0.13 s), s the square root: within
 * 0.012 of the exact curve above 0.01 and up to 0.024 lighter in the last blacks (derived here). Powers would cost a
 * software renderer several times as much, and only the picture itself has to be exact.
 */
export const DISPLAYED = /* glsl */ `
vec3 displayed(vec3 light) {
  float peak = max(light.r, max(light.g, light.b));
  float rolled = 1.0 - 0.0576 / (max(peak, 0.76) - 0.52);
  vec3 c = peak > 0.76 ? light * (rolled / peak) : max(light, 0.0);
  vec3 root = sqrt(c);
  return root * (1.13 - 0.13 * root);
}`;

export const VERTEX = /* glsl */ `
attribute vec4 light;
attribute float open;
uniform vec3 uLamps;
uniform vec3 uGeneral;
uniform float uPicture;
uniform vec2 uTile;
varying vec3 vLight;
varying vec2 vUv;
#ifdef VIEWED
varying vec3 vWorld;
varying vec3 vNormal;
#endif
void main() {
  vLight = light.rgb * uPicture + uLamps * light.a + uGeneral * open;
  vUv = uv * uTile;
  vec4 world = modelMatrix * vec4(position, 1.0);
  #ifdef VIEWED
  vWorld = world.xyz;
  vNormal = mat3(modelMatrix) * normal;
  #endif
  gl_Position = projectionMatrix * viewMatrix * world;
}`;

export const FRAGMENT = /* glsl */ `
uniform vec3 uColour;
uniform float uFade;
uniform float uGlow;
uniform float uDim;
#ifdef TILED
uniform sampler2D uMap;
#endif
#ifdef VIEWED
uniform float uSheen;
uniform vec3 uRim;
varying vec3 vWorld;
varying vec3 vNormal;
#endif
#ifdef GLOSSY
uniform sampler2D uPictureMap;
uniform vec4 uPictureRect;
uniform float uPictureZ;
uniform float uGloss;
uniform float uRoughness;
uniform float uPictureShine;
#endif
varying vec3 vLight;
varying vec2 vUv;
${DISPLAYED}
void main() {
  vec3 colour = uColour;
  float polish = 1.0;
  #ifdef TILED
  vec4 texel = texture2D(uMap, vUv);
  colour *= texel.rgb * 2.0;
  polish = texel.a;
  #endif
  vec3 shown = colour * vLight;
  #ifdef VIEWED
  vec3 toEye = normalize(cameraPosition - vWorld);
  vec3 n = vNormal * inversesqrt(max(dot(vNormal, vNormal), 1e-6));
  float facing = clamp(dot(toEye, n), 0.0, 1.0);
  float graze = 1.0 - facing;
  float graze3 = graze * graze * graze;
  shown += (0.25 + colour) * vLight * (uSheen * graze3 * 0.5);
  shown += (0.3 + colour) * uRim * (uSheen * graze3 * clamp(toEye.z, 0.0, 1.0));
  shown += vec3(0.83, 0.5, 0.17) * (uGlow * 0.4 * graze3);
  #ifdef GLOSSY
  vec3 ray = reflect(-toEye, n);
  if (ray.z < -0.02) {
    float t = (uPictureZ - vWorld.z) / ray.z;
    if (t > 0.0 && t < 40.0) {
      vec2 hit = (vWorld.xy + ray.xy * t - uPictureRect.xy) / uPictureRect.zw;
      float spread = uRoughness * (0.12 + 0.25 * t);
      vec2 soft = vec2(spread, spread * 2.2);
      vec2 inside = smoothstep(-soft, soft, hit) * smoothstep(-soft, soft, 1.0 - hit);
      float amount = inside.x * inside.y;
      if (amount > 0.004) {
        float fresnel = 0.045 + 0.955 * graze3 * graze * graze;
        vec3 mirrored = textureLod(uPictureMap, clamp(hit, 0.02, 0.98), min(7.0, log2(1.0 + spread * 52.0))).rgb;
        shown += mirrored * (amount * fresnel * polish * uGloss * uPictureShine);
      }
    }
  }
  #endif
  #endif
  shown = (shown + vec3(0.83, 0.5, 0.17) * (uGlow * 0.018)) * uDim;
  gl_FragColor = vec4(displayed(shown), uFade);
  float grain = fract(52.9829189 * fract(dot(gl_FragCoord.xy, vec2(0.06711056, 0.00583715))));
  gl_FragColor.rgb += (grain - 0.5) / 255.0;
}`;
