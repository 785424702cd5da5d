/**
 * How wood and lines are drawn.
 *
 * One texture holds, for each part, where it has been pulled to and how it is shown, so that the
 * whole piece is two buffers whatever is done to it. Grain is drawn from the rings of the tree:
 * circles about a pith that lies outside the board, seen wherever a face cuts through them.
 */

/** How a part is shown; `x y z` of its texel is how far it has been pulled. */
export const HIDDEN = 0;
export const GHOST = 1;
export const PLAIN = 2;
export const CHOSEN = 3;

const STATES = `
uniform sampler2D states;
vec4 state(float part) { return texelFetch(states, ivec2(int(part), 0), 0); }
`;

export const FACES_VERTEX = `
precision highp float;
uniform mat4 modelViewMatrix;
uniform mat4 projectionMatrix;
in vec3 position;
in vec3 normal;
in vec3 wood;
in vec4 rings;
in vec3 colour;
in float part;
out vec3 vNormal;
out vec3 vWood;
flat out vec4 vRings;
flat out vec3 vColour;
flat out float vShown;
${STATES}
void main() {
  vec4 told = state(part);
  vNormal = normal;
  vWood = wood;
  vRings = rings;
  vColour = colour;
  vShown = told.w;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(position + told.xyz, 1.0);
  if (told.w < 1.5) gl_Position = vec4(2.0, 2.0, 2.0, 1.0);
}
`;

export const FACES_FRAGMENT = `
precision highp float;
uniform vec3 ground;
uniform vec3 ink;
uniform float depth;
in vec3 vNormal;
in vec3 vWood;
flat in vec4 vRings;
flat in vec3 vColour;
flat in float vShown;
out vec4 drawn;
/* Lines at whole years, fine where they are far apart on the screen, gone where they are not. */
float lines(float year, float across) {
  float off = abs(fract(year + 0.5) - 0.5) / max(across, 1e-5);
  return 1.0 - smoothstep(0.15, 0.85, off);
}
void main() {
  float lit = 0.5 + 0.5 * dot(normalize(vNormal), normalize(vec3(-0.35, 0.8, 0.5)));
  vec3 pale = mix(ground, vColour, depth * (1.25 - 0.6 * lit));
  if (vRings.w > 0.0) {
    float sway = 0.8 * sin(vWood.x * 0.009 + vRings.z) + 0.3 * sin(vWood.x * 0.027 + vRings.z * 2.3);
    float r = length(vWood.yz - vRings.xy) + sway + vWood.x * 0.012;
    float year = r / vRings.w;
    float across = fwidth(year);
    /* from far away only every second, fourth, eighth year is drawn */
    float far = max(0.0, log2(max(across, 1e-5) / 0.1));
    float each = exp2(floor(far));
    float some = lines(year / each, across / each) * (1.0 - fract(far));
    float line = max(some, lines(year / (2.0 * each), across / (2.0 * each)));
    pale = mix(pale, ink, 0.24 * line);
  }
  drawn = vec4(pale, 1.0);
}
`;

export const LINES_VERTEX = `
precision highp float;
uniform mat4 modelViewMatrix;
uniform mat4 projectionMatrix;
uniform vec2 screen;
uniform float thick;
in vec2 position;
in vec3 from;
in vec3 to;
in float part;
flat out float vShown;
${STATES}
void main() {
  vec4 told = state(part);
  vShown = told.w;
  vec4 a = projectionMatrix * modelViewMatrix * vec4(from + told.xyz, 1.0);
  vec4 b = projectionMatrix * modelViewMatrix * vec4(to + told.xyz, 1.0);
  vec2 run = (b.xy - a.xy) * screen;
  vec2 unit = length(run) > 1e-6 ? normalize(run) : vec2(1.0, 0.0);
  float wide = thick * (told.w > 2.5 ? 2.4 : told.w < 1.5 ? 0.7 : 1.0);
  vec2 side = vec2(-unit.y, unit.x) * position.y + unit * (position.x * 2.0 - 1.0) * 0.5;
  gl_Position = mix(a, b, position.x);
  gl_Position.xy += side * wide / screen;
  gl_Position.z -= told.w > 2.5 ? 0.0002 : 0.0001;
  if (told.w < 1.5) gl_Position.z = 0.9999; /* ghosts stand behind everything */
  if (told.w < 0.5) gl_Position = vec4(2.0, 2.0, 2.0, 1.0);
}
`;

export const LINES_FRAGMENT = `
precision highp float;
uniform vec3 ground;
uniform vec3 ink;
flat in float vShown;
out vec4 drawn;
void main() {
  drawn = vec4(vShown < 1.5 ? mix(ground, ink, 0.17) : ink, 1.0);
}
`;
