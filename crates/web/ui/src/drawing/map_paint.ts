/** The paint of a map: a tone for each band between two lines, or, for reading, the value itself. */
import { type Plane, ShaderMaterial, type ShaderMaterialParameters, Vector3 } from 'three';
import type { MapHead } from '../answers';
import { MOST_LINES, NO_VALUE, tones } from './bands';

/** Stands for a place without a value: what is not a number is lost on some graphics cards. */
export const NOTHING = -1e30;

/** Steps into which a value is written for reading: three bytes, and none of them nought. */
const STEPS = 256 ** 3 - 2;

const VERTEX = `
attribute float value;
varying float vValue;
varying vec3 vView;
#include <clipping_planes_pars_vertex>
void main() {
  vValue = value;
  vec4 mvPosition = modelViewMatrix * vec4(position, 1.0);
  vView = mvPosition.xyz;
  gl_Position = projectionMatrix * mvPosition;
  #include <clipping_planes_vertex>
}`;

const FRAGMENT = `
uniform float lines[${MOST_LINES}];
uniform vec3 tones[${MOST_LINES + 1}];
uniform int count;
uniform vec3 none;
uniform float low;
uniform float high;
uniform bool telling;
uniform float shade;
varying float vValue;
varying vec3 vView;
#include <clipping_planes_pars_fragment>
void main() {
  #include <clipping_planes_fragment>
  bool has = vValue > -1e29;
  if (telling) {
    float share = clamp((vValue - low) / max(high - low, 1e-12), 0.0, 1.0);
    float whole = has ? 1.0 + floor(share * ${STEPS.toFixed(1)}) : 0.0;
    float red = floor(whole / 65536.0);
    float green = floor((whole - 65536.0 * red) / 256.0);
    gl_FragColor = vec4(vec3(red, green, whole - 65536.0 * red - 256.0 * green) / 255.0, 1.0);
    return;
  }
  vec3 tone = none;
  if (has) {
    int band = 0;
    // What lies on a line is of the band above it, whatever a card makes of it between corners.
    float near = 1e-4 * (high - low);
    for (int line = 0; line < ${MOST_LINES}; line += 1) {
      if (line < count && vValue >= lines[line] - near) band = line + 1;
    }
    tone = tones[band];
  }
  vec3 normal = normalize(cross(dFdx(vView), dFdy(vView)));
  float lit = max(dot(normal, normalize(vec3(-0.5, 0.6, 1.0))), 0.0);
  gl_FragColor = vec4(tone * mix(1.0 - shade, 1.0, lit), 1.0);
}`;

/** Darkening of a skin that looks away from the lamp: form is seen, and no band is mistaken. */
const SHADE = 0.16;

/** The paint of a map on a skin that a plane clips, or, without one, on the face of the cut. */
export function mapPaint(
  head: MapHead,
  plane: Plane | null,
  more: ShaderMaterialParameters = {},
): ShaderMaterial {
  const lines = head.lines.slice(0, MOST_LINES);
  const filled = tones(lines.length + 1);
  const pad = <T>(all: T[], length: number, rest: T) =>
    Array.from({ length }, (_, at) => all[at] ?? rest);
  return new ShaderMaterial({
    vertexShader: VERTEX,
    fragmentShader: FRAGMENT,
    clipping: plane !== null,
    clippingPlanes: plane ? [plane] : [],
    uniforms: {
      lines: { value: pad(lines, MOST_LINES, 0) },
      tones: { value: pad(filled, MOST_LINES + 1, [0, 0, 0]).map(vector) },
      count: { value: lines.length },
      none: { value: vector(NO_VALUE) },
      low: { value: head.low },
      high: { value: head.high },
      telling: { value: false },
      shade: { value: plane ? SHADE : 0 },
    },
    ...more,
  });
}

/** The value that three bytes of a told picture stand for; none where there is none. */
export function told(head: MapHead, red: number, green: number, blue: number): number | null {
  const whole = 65536 * red + 256 * green + blue;
  if (whole === 0) return null;
  return head.low + ((whole - 1) / STEPS) * (head.high - head.low);
}

const vector = ([red = 0, green = 0, blue = 0]: readonly number[]) => new Vector3(red, green, blue);
