// One shader for all tissues: the same light and the same patterns as the desktop picture.

// As viewer/scene/looks.py has them; a part carries the number of its pattern.
const PATTERNS = ["muscle", "bone", "gristle", "sheet", "film", "fat", "tube", "skin", "context"];
const is = (name) => `pattern == ${PATTERNS.indexOf(name)}`;
export const FILM = PATTERNS.indexOf("film");

const FETCH = `
  ivec2 cell(float id) { int i = int(id + 0.5); return ivec2(i & 63, i >> 6); }
`;

export const VERTEX = `
  precision highp float;
  precision highp int;
  in vec4 place;   // x, y, z in steps, number of the part
  in vec4 shade;   // octahedral normal, tendon, openness
  in vec2 fibre;   // along and across in steps
  uniform sampler2D looks;
  uniform sampler2D colours;
  uniform mat4 modelViewMatrix;
  uniform mat4 projectionMatrix;
  uniform float stepMm;
  uniform float fibreStepMm;
  uniform float away;
  // Of a narrow triangle the middle of a pixel may lie outside: there its values run wild.
  centroid out vec3 normalV;
  centroid out vec3 placeV;
  centroid out vec4 surfaceV;
  flat out vec4 lookV;
  flat out vec4 colourV;
  flat out float partV;
  ${FETCH}
  void main() {
    lookV = texelFetch(looks, cell(place.w), 0);
    colourV = texelFetch(colours, cell(place.w), 0);
    partV = place.w;
    if (lookV.r < 0.5) { gl_Position = vec4(2.0, 2.0, 2.0, 1.0); return; }
    vec3 p = place.xyz * stepMm;
    vec3 n = vec3(shade.xy, 1.0 - abs(shade.x) - abs(shade.y));
    float down = max(-n.z, 0.0);
    n.xy -= mix(vec2(-down), vec2(down), step(0.0, n.xy));
    normalV = mat3(modelViewMatrix) * normalize(n);
    placeV = p;
    surfaceV = vec4(fibre * fibreStepMm, max(shade.zw, 0.0));
    gl_Position = projectionMatrix * modelViewMatrix * vec4(p, 1.0);
    // Thinned shells of neighbouring layers may run through each other by a fraction of a
    // millimetre; moved apart in depth by their stratum, the outer one still covers.
    gl_Position.z += away * gl_Position.w;
  }
`;

// Ordered 4 by 4 pattern: as many pixels of a block are kept as the part is opaque.
const SCREEN_DOOR = `
    ivec2 door = ivec2(gl_FragCoord.xy) & 3;
    int rank = ((door.x ^ door.y) & 1) * 8 + (door.y & 1) * 4 + ((door.x ^ door.y) >> 1) * 2
             + (door.y >> 1);
    if ((float(rank) + 0.5) / 16.0 > lookV.g) discard;
`;

const fragment = (door) => `
  precision highp float;
  precision highp int;
  centroid in vec3 normalV;
  centroid in vec3 placeV;
  centroid in vec4 surfaceV;
  flat in vec4 lookV;
  flat in vec4 colourV;
  flat in float partV;
  uniform vec3 tendonColour;
  out vec4 colourOut;
  void main() {
    vec2 slope = vec2(dFdx(surfaceV.y), dFdy(surfaceV.y));
    float mmpp = length(slope) + 1e-5;
    float pixelMm = length(dFdx(placeV)) + 1e-5;
    ${door}
    int pattern = int(colourV.a * 255.0 + 0.5);
    vec3 N = normalize(normalV);
    if (N.z < 0.0) N = -N;
    vec3 base = colourV.rgb;
    float gloss = 0.0;
    float rim = 0.0;
    if (${is("muscle")}) {
      float t = surfaceV.z;
      base = mix(base, tendonColour, t * t * (3.0 - 2.0 * t));
      vec2 across = slope / mmpp;
      float flesh = 1.0 - t;
      float wander = 0.9 * sin(surfaceV.x * 0.031 + surfaceV.y * 0.17)
                   + 0.5 * sin(surfaceV.x * 0.083 - surfaceV.y * 0.41);
      float bundle = surfaceV.y * 1.12 + wander + 1.1 * sin(surfaceV.y * 0.37);
      float coarse = clamp(2.2 - mmpp * 0.9, 0.0, 1.0);
      float fine = clamp(1.9 - mmpp * 2.6, 0.0, 1.0);
      float s1 = sin(bundle);
      float thread = 3.3 * bundle + 1.3 * sin(surfaceV.x * 0.11 + 0.7 * s1);
      float s2 = sin(thread);
      float seam = s1 * s1; seam = seam * seam; seam = seam * seam * coarse;
      float grain = coarse * (0.125 * s1 - 0.03) + fine * 0.06 * s2;
      base *= 1.0 + grain * (0.45 + 0.55 * flesh);
      base += vec3(0.075, 0.062, 0.052) * seam * step(s1, 0.0) * flesh;
      N.xy += across * (coarse * 0.25 * cos(bundle) + fine * 0.10 * cos(thread))
            * (0.35 + 0.65 * flesh);
      N = normalize(N);
      gloss = mix(0.045, 0.10, t);
    } else if (${is("bone")}) {
      vec3 p = placeV * 0.083;
      float grain = sin(p.x + 1.7 * sin(p.y * 0.9)) * sin(p.y * 1.3 + 1.1 * sin(p.z * 1.1))
                  + 0.6 * sin(p.z * 2.3 + p.x * 1.9 + p.y);
      base *= 1.0 + 0.016 * grain;
      base.b *= 1.0 - 0.012 * grain;
      gloss = 0.03;
    } else if (${is("gristle")}) {
      gloss = 0.07;
    } else if (${is("sheet")}) {
      float seen = clamp(2.0 - mmpp * 1.1, 0.0, 1.0);
      float silk = sin(surfaceV.y * 1.7 + 1.2 * sin(surfaceV.x * 0.05 + surfaceV.y * 0.13));
      base *= 1.0 + 0.035 * seen * silk;
      gloss = 0.09;
    } else if (${is("film")}) {
      float weave = sin(dot(placeV, vec3(0.9, 0.5, 1.3)) + 1.4 * sin(placeV.z * 0.11));
      base *= 1.0 + 0.05 * clamp(1.6 - pixelMm, 0.0, 1.0) * weave;
      gloss = 0.16;
      rim = 0.55;
    } else if (${is("fat")}) {
      // Lobules: each pixel belongs to the nearest of scattered centres; pale septa part them.
      vec3 q = placeV * 0.19 + 0.35 * sin(placeV.zxy * 0.13);
      vec3 corner = floor(q - 0.5);
      float near = 9.0, next = 9.0, tint = 0.0;
      for (int n = 0; n < 8; n++) {
        vec3 at = corner + vec3(float(n & 1), float((n >> 1) & 1), float(n >> 2));
        vec3 mixed = fract(at * vec3(0.1031, 0.1130, 0.0973));
        mixed += dot(mixed, mixed.yzx + 31.7);
        mixed = fract((mixed.xxy + mixed.yzz) * mixed.zyx);
        vec3 off = q - at - 0.16 - 0.68 * mixed;
        float d = dot(off, off);
        if (d < near) { next = near; near = d; tint = mixed.x; }
        else { next = min(next, d); }
      }
      near = sqrt(near);
      float septum = 1.0 - smoothstep(0.02, 0.16, sqrt(next) - near);
      float seen = clamp(1.75 - 0.9 * pixelMm, 0.0, 1.0);
      float drift = sin(placeV.x * 0.037 + 1.3 * sin(placeV.z * 0.029))
                  * sin(placeV.z * 0.041 + placeV.y * 0.03);
      base *= 1.0 + 0.05 * seen * (tint - 0.5) + 0.035 * drift;
      base *= 1.0 - seen * septum * vec3(0.06, 0.09, 0.15);
      float heap = near * near;
      N.xy += 0.9 * seen * vec2(dFdx(heap), dFdy(heap)) / pixelMm;
      N = normalize(N);
      gloss = 0.05;
    } else if (${is("tube")}) {
      gloss = 0.10;
    } else if (${is("skin")}) {
      vec3 p = placeV * 0.045;
      float flush = sin(p.x + sin(p.z * 1.3)) * sin(p.z * 1.1 + sin(p.y));
      base *= 1.0 + vec3(0.025, 0.012, 0.006) * flush;
      gloss = 0.035;
    }
    base = mix(base, vec3(1.0, 0.84, 0.25), lookV.b * 0.5);
    float open = surfaceV.w;
    float key = max(0.68 * dot(N, vec3(-0.405, 0.486, 0.774)) + 0.32, 0.0);
    float head = max(N.z, 0.0);
    float lit = 0.42 * key + 0.33 * head + 0.12 * (0.5 + 0.5 * N.y) + 0.13;
    lit *= 1.22 - 0.22 * lit;
    float edge = 1.0 - head; edge *= edge;
    lit *= (0.42 + 0.58 * open) * (1.0 - 0.38 * edge * edge);
    vec3 tone = base * lit;
    tone *= mix(vec3(1.02, 0.93, 0.90), vec3(1.0), clamp(lit * 1.35, 0.0, 1.0));
    float shine = max(dot(N, vec3(-0.215, 0.258, 0.942)), 0.0);
    shine *= shine; shine *= shine; shine *= shine; shine *= shine;
    // A film is seen edge-on where it turns away: there it is whiter.
    float cover = mix(1.0, lookV.g + rim * edge * (1.0 - lookV.g), step(0.01, rim));
    colourOut = vec4(tone + gloss * shine * open, cover);
  }
`;

// A shader that may throw points away is slower: only where something is see-through.
export const SOLID_FRAGMENT = fragment("");
export const DOOR_FRAGMENT = fragment(SCREEN_DOOR);

// The number of the part as a colour; what is see-through is not in the way.
export const PICK_FRAGMENT = `
  precision highp float;
  precision highp int;
  centroid in vec3 normalV;
  centroid in vec3 placeV;
  centroid in vec4 surfaceV;
  flat in vec4 lookV;
  flat in vec4 colourV;
  flat in float partV;
  uniform vec3 tendonColour;
  out vec4 colourOut;
  void main() {
    if (lookV.g < 0.9) discard;
    int id = int(partV + 0.5) + 1;
    colourOut = vec4(float(id & 255) / 255.0, float(id >> 8) / 255.0, 0.0, 1.0);
  }
`;
