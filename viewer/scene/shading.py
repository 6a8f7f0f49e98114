"""The shader text: one light tone for all, and a surface pattern for each material.

VTK's own light code is replaced, so that the tone is set in one place (key
light from the upper left, headlight, soft fill) and can't clip to white: the
weights sum to 1 and no base colour is brighter than 0.87. The fibre pattern
is worked out per pixel from fibre millimetres, so that coarse meshes keep it,
and fades where its period falls under two pixels. A texture would be simpler
but doubled the frame on software GL; these few sines cost a few per cent.
"""

from __future__ import annotations

SURFACE_ARRAY = "surface"
"""Vertex attribute (u mm along, v mm across, tendon 0..1, openness 0..1)."""

_VERTEX_DECLARE = """//VTK::Normal::Dec
in vec4 surface;
out vec4 surfaceVS;
out vec3 placeVS;
"""

_VERTEX_BODY = """//VTK::Normal::Impl
  surfaceVS = surface;
  placeVS = vertexMC.xyz;
"""

# Coarse shells of neighbouring layers run through each other by up to a millimetre; moved
# apart in depth by their stratum, the outer one still covers the inner.
_LAYER_DEPTH = """//VTK::PositionVC::Impl
  gl_Position.z += {away:.2f}
    * length(vec3(MCDCMatrix[0].z, MCDCMatrix[1].z, MCDCMatrix[2].z));
"""

_FRAGMENT_DECLARE = """//VTK::Normal::Dec
in vec4 surfaceVS;
in vec3 placeVS;
"""

# Tangent tilt: the picture-plane gradient of v points across the fibres.
_FIBRES = """
  vec2 across = vec2(dFdx(surfaceVS.y), dFdy(surfaceVS.y));
  float mmpp = length(across) + 1e-5;
  across /= mmpp;
  float flesh = 1.0 - surfaceVS.z;
  float wander = 0.9 * sin(surfaceVS.x * 0.031 + surfaceVS.y * 0.17)
               + 0.5 * sin(surfaceVS.x * 0.083 - surfaceVS.y * 0.41);
  float bundle = surfaceVS.y * 1.12 + wander + 1.1 * sin(surfaceVS.y * 0.37);
  float coarse = clamp(2.2 - mmpp * 0.9, 0.0, 1.0);
  float fine = clamp(1.9 - mmpp * 2.6, 0.0, 1.0);
  float s1 = sin(bundle);
  float thread = 3.3 * bundle + 1.3 * sin(surfaceVS.x * 0.11 + 0.7 * s1);
  float s2 = sin(thread);
  float seam = s1 * s1; seam = seam * seam; seam = seam * seam * coarse;
  float grain = coarse * (0.125 * s1 - 0.03) + fine * 0.06 * s2;
  base *= 1.0 + grain * (0.45 + 0.55 * flesh);
  base += vec3(0.075, 0.062, 0.052) * seam * step(s1, 0.0) * flesh;
  N.xy += across * (coarse * 0.25 * cos(bundle) + fine * 0.10 * cos(thread))
        * (0.35 + 0.65 * flesh);
  N = normalize(N);
  gloss = mix(0.045, 0.10, surfaceVS.z);
"""

_PATTERNS = {
    "muscle": _FIBRES,
    "sheet": """
  float mmpp = length(vec2(dFdx(surfaceVS.y), dFdy(surfaceVS.y)));
  float seen = clamp(2.0 - mmpp * 1.1, 0.0, 1.0);
  float silk = sin(surfaceVS.y * 1.7 + 1.2 * sin(surfaceVS.x * 0.05 + surfaceVS.y * 0.13));
  base *= 1.0 + 0.035 * seen * silk;
  gloss = 0.09;
""",
    "bone": """
  vec3 p = placeVS * 0.083;
  float grain = sin(p.x + 1.7 * sin(p.y * 0.9)) * sin(p.y * 1.3 + 1.1 * sin(p.z * 1.1))
              + 0.6 * sin(p.z * 2.3 + p.x * 1.9 + p.y);
  base *= 1.0 + 0.016 * grain;
  base.b *= 1.0 - 0.012 * grain;
  gloss = 0.03;
""",
    "film": """
  float mmpp = length(dFdx(placeVS)) + 1e-5;
  float weave = sin(dot(placeVS, vec3(0.9, 0.5, 1.3)) + 1.4 * sin(placeVS.z * 0.11));
  base *= 1.0 + 0.05 * clamp(1.6 - mmpp, 0.0, 1.0) * weave;
  gloss = 0.16;
  rim = 0.55;
""",
    "fat": """
  // Lobules: each pixel belongs to the nearest of scattered centres; pale septa part them.
  vec3 q = placeVS * 0.19 + 0.35 * sin(placeVS.zxy * 0.13);
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
  float mmpp = length(dFdx(placeVS)) + 1e-5;
  float seen = clamp(1.75 - 0.9 * mmpp, 0.0, 1.0);
  float drift = sin(placeVS.x * 0.037 + 1.3 * sin(placeVS.z * 0.029))
              * sin(placeVS.z * 0.041 + placeVS.y * 0.03);
  base *= 1.0 + 0.05 * seen * (tint - 0.5) + 0.035 * drift;
  base *= 1.0 - seen * septum * vec3(0.06, 0.09, 0.15);
  float heap = near * near;
  N.xy += 0.9 * seen * vec2(dFdx(heap), dFdy(heap)) / mmpp;
  N = normalize(N);
  gloss = 0.05;
""",
    "skin": """
  vec3 p = placeVS * 0.045;
  float flush = sin(p.x + sin(p.z * 1.3)) * sin(p.z * 1.1 + sin(p.y));
  base *= 1.0 + vec3(0.025, 0.012, 0.006) * flush;
  gloss = 0.035;
""",
    "gristle": "  gloss = 0.07;\n",
    "tube": "  gloss = 0.10;\n",
    "context": "  gloss = 0.0;\n",
}

_TONE = """
  vec3 N = normalVCVSOutput;
  vec3 base = vertexColorVSOutput.rgb;
  float gloss = 0.0;
  float rim = 0.0;
{pattern}
  float open = surfaceVS.w;
  float key = max(0.68 * dot(N, vec3(-0.405, 0.486, 0.774)) + 0.32, 0.0);
  float head = max(N.z, 0.0);
  float fill = 0.5 + 0.5 * N.y;
  float lit = 0.42 * key + 0.33 * head + 0.12 * fill + 0.13;
  lit *= 1.22 - 0.22 * lit;
  float edge = 1.0 - head; edge *= edge;
  lit *= (0.42 + 0.58 * open) * (1.0 - 0.38 * edge * edge);
  vec3 tone = base * lit;
  // Furrows and turned-away faces keep a little of their own warmth instead of going grey.
  tone *= mix(vec3(1.02, 0.93, 0.90), vec3(1.0), clamp(lit * 1.35, 0.0, 1.0));
  float shine = max(dot(N, vec3(-0.215, 0.258, 0.942)), 0.0);
  shine *= shine; shine *= shine; shine *= shine; shine *= shine;
  tone += gloss * shine * open;
  // A film is seen edge-on where it turns away: there it is whiter.
  float cover = {opacity};
  cover += rim * edge * (1.0 - cover);
{door}
  fragOutput0 = vec4(tone, cover);
"""

# An ordered 4 by 4 pattern: as many pixels of each block are kept as the part is opaque.
_SCREEN_DOOR = """
  ivec2 cell = ivec2(gl_FragCoord.xy) & 3;
  int rank = ((cell.x ^ cell.y) & 1) * 8 + (cell.y & 1) * 4 + ((cell.x ^ cell.y) >> 1) * 2
           + (cell.y >> 1);
  if ((float(rank) + 0.5) / 16.0 > cover) discard;
  cover = 1.0;
"""

_OUTLINE_POSITION = """//VTK::PositionVC::Impl
  vec3 outward = normalMatrix * normalMC;
  float flat_length = length(outward.xy) + 1e-4;
  gl_Position.xy += outward.xy / flat_length * outlineStep * gl_Position.w;
  gl_Position.z += outlineBack * gl_Position.w;
"""


def dress(
    actor,
    mapper,
    material: str,
    opacity: str = "solid",
    pattern: bool = True,
    away_mm: float = 0.0,
) -> None:
    """Give an actor the shader of a material.

    Parameters
    ----------
    material : str
        One of ``looks.MATERIALS``.
    opacity : {"solid", "screen_door", "blended"}
        How the alpha of the vertex colours is used: not at all, as a share of
        pixels (cheap, while moving), or blended (depth peeling, when still).
    pattern : bool
        False leaves the procedural pattern out, to measure what it costs.
    away_mm : float
        Drawn as if so much further from the eye.
    """
    from vtkmodules.vtkCommonDataModel import vtkDataObject

    mapper.MapDataArrayToVertexAttribute(
        SURFACE_ARRAY, SURFACE_ARRAY, vtkDataObject.FIELD_ASSOCIATION_POINTS, -1
    )
    shader = actor.GetShaderProperty()
    shader.AddVertexShaderReplacement("//VTK::Normal::Dec", True, _VERTEX_DECLARE, False)
    shader.AddVertexShaderReplacement("//VTK::Normal::Impl", True, _VERTEX_BODY, False)
    if away_mm:
        shader.AddVertexShaderReplacement(
            "//VTK::PositionVC::Impl", True, _LAYER_DEPTH.format(away=away_mm), False
        )
    shader.AddFragmentShaderReplacement("//VTK::Normal::Dec", True, _FRAGMENT_DECLARE, False)
    tone = _TONE.format(
        pattern=_PATTERNS[material] if pattern else "",
        opacity="1.0" if opacity == "solid" else "vertexColorVSOutput.a",
        door=_SCREEN_DOOR if opacity == "screen_door" else "",
    )
    shader.AddFragmentShaderReplacement("//VTK::Light::Impl", True, tone, False)


def dress_outline(actor, colour: tuple[float, float, float]) -> None:
    """Make an actor the outline of its mesh: back faces pushed out by a step in the picture."""
    shader = actor.GetShaderProperty()
    shader.AddVertexShaderReplacement("//VTK::PositionVC::Impl", True, _OUTLINE_POSITION, False)
    red, green, blue = colour
    shader.AddFragmentShaderReplacement(
        "//VTK::Light::Impl",
        True,
        f"  fragOutput0 = vec4({red:.4f}, {green:.4f}, {blue:.4f}, 1.0);\n",
        False,
    )
