/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Colours leave the shaders premultiplied by their alpha.
 */
#include "render/shaders.h"

/* Lit at the corners, not at each pixel: on a processor that paints by itself a frame is then a
   third shorter, and meshes are fine enough not to show it. The numbers of the light are set from
   scene/light.h. */
const char ph_shader_solid_vertex[] =
    "layout(location = 0) in vec3 at;\n"
    "layout(location = 1) in vec3 normal;\n"
    "layout(location = 2) in vec2 hole;\n"
    "layout(location = 3) in vec4 marks;\n"
    "uniform mat4 to_clip;\n"
    "uniform mat3 to_picture;\n"
    "uniform vec3 colours[15];\n"
    "uniform vec3 accent;\n"
    "uniform float selected;\n" /* as ph_mesh_mark has it */
    "uniform vec3 key, fill, shine;\n"
    "uniform vec4 shares;\n" /* ambient, key, fill, shine */
    "uniform float shine_power;\n"
    "out vec3 lit;\n"
    "out vec2 place;\n"
    "flat out float hatched;\n"
    "void main () {\n"
    "  gl_Position = to_clip * vec4 (at, 1.0);\n"
    "  vec3 n = normalize (to_picture * normal);\n"
    "  vec3 colour = colours[int (marks.x + 0.5)];\n"
    "  if (abs (marks.z + 256.0 * marks.w - selected) < 0.5 && selected > 0.5)\n"
    "    colour = mix (colour, accent, 0.28);\n"
    "  float light = shares.x + shares.y * max (0.0, dot (n, key))\n"
    "      + shares.z * max (0.0, dot (n, fill))\n"
    "      + shares.w * pow (max (0.0, dot (n, shine)), shine_power);\n"
    "  lit = light <= 1.0 ? colour * light\n"
    "      : mix (colour, vec3 (1.0), min (1.0, 0.75 * (light - 1.0)));\n"
    "  place = hole;\n"
    "  hatched = marks.y;\n"
    "}\n";

const char ph_shader_solid_fragment[] =
    "in vec3 lit;\n"
    "in vec2 place;\n"
    "flat in float hatched;\n"
    "uniform vec4 holes[32];\n"
    "uniform int n_holes;\n"
    "uniform float pixel;\n" /* device pixels to a logical one */
    "out vec4 result;\n"
    "void main () {\n"
    "  if (place.x > -999.0)\n"
    "    for (int i = 0; i < n_holes; i++) {\n"
    "      vec2 off = (place - vec2 (holes[i].x, 0.0)) / holes[i].yz;\n"
    "      if (dot (off, off) < 1.0) discard;\n"
    "    }\n"
    "  vec3 shown = lit;\n"
    "  if (hatched > 0.5) {\n"
    "    float stripe = mod (gl_FragCoord.x + gl_FragCoord.y, 7.0 * pixel);\n"
    "    if (stripe < 2.5 * pixel) shown = mix (lit, vec3 (step (dot (lit, vec3 (0.333)), 0.5)), "
    "0.85);\n"
    "  }\n"
    "  result = vec4 (shown, 1.0);\n"
    "}\n";

/* One instance a line: four corners about the segment a b, a pixel wider than the line on every
   side for its soft border. */
const char ph_shader_strip_vertex[] =
    "layout(location = 0) in vec3 a;\n"
    "layout(location = 1) in vec3 b;\n"
    "layout(location = 2) in vec4 colour;\n"
    "layout(location = 3) in vec2 line;\n" /* half width in logical pixels; dash */
    "uniform mat4 to_clip;\n"
    "uniform vec2 half_size;\n" /* of the view, device pixels */
    "uniform float pixel;\n"
    "uniform float nearer;\n" /* clip depth toward the eye */
    "uniform float faint;\n"
    "out vec2 off;\n"
    "flat out vec4 ink;\n"
    "flat out vec2 way;\n"
    "flat out vec2 shape;\n" /* half width, half length; device pixels */
    "flat out vec4 dash;\n"  /* period, end of the stroke, start and end of a dot; logical pixels */
    "void main () {\n"
    "  vec4 ca = to_clip * vec4 (a, 1.0), cb = to_clip * vec4 (b, 1.0);\n"
    "  vec2 pa = ca.xy / ca.w * half_size, pb = cb.xy / cb.w * half_size;\n"
    "  float length_px = distance (pa, pb);\n"
    "  way = length_px > 1e-4 ? (pb - pa) / length_px : vec2 (1.0, 0.0);\n"
    "  vec2 side = vec2 (-way.y, way.x);\n"
    "  bool far = gl_VertexID > 1;\n"
    "  float half_width = line.x * pixel, reach = half_width + 1.0;\n"
    "  float s = (gl_VertexID & 1) == 1 ? 1.0 : -1.0, e = far ? 1.0 : -1.0;\n"
    "  vec2 at = (far ? pb : pa) + side * s * reach + way * e * reach;\n"
    "  off = vec2 (e * (0.5 * length_px + reach), s * reach);\n"
    "  shape = vec2 (half_width, 0.5 * length_px);\n"
    "  dash = line.y > 2.5 ? vec4 (16.5, 9.0, 12.0, 13.5)\n"
    "      : line.y > 1.5 ? vec4 (8.5, 5.0, 8.5, 8.5)\n"
    "      : line.y > 0.5 ? vec4 (4.0, 1.6, 4.0, 4.0) : vec4 (1e6, 2e6, 1e6, 1e6);\n"
    "  ink = vec4 (colour.rgb, colour.a * faint);\n"
    "  vec4 c = far ? cb : ca;\n"
    "  gl_Position = vec4 (at / half_size * c.w, c.z - nearer * c.w, c.w);\n"
    "}\n";

/* One way through for every kind of dash: a processor that paints by itself walks all branches. */
const char ph_shader_strip_fragment[] =
    "in vec2 off;\n"
    "flat in vec4 ink;\n"
    "flat in vec2 way;\n"
    "flat in vec2 shape;\n"
    "flat in vec4 dash;\n"
    "uniform float pixel;\n"
    "out vec4 result;\n"
    "void main () {\n"
    "  float beyond = max (0.0, abs (off.x) - shape.y);\n"
    "  float away = length (vec2 (beyond, off.y));\n"
    "  float along = mod (dot (gl_FragCoord.xy, way) / pixel, dash.x);\n"
    "  float inked = 1.0 - step (dash.y, along) + step (dash.z, along) - step (dash.w, along);\n"
    "  float alpha = ink.a * inked * clamp (shape.x + 0.5 - away, 0.0, 1.0);\n"
    "  result = vec4 (ink.rgb * alpha, alpha);\n"
    "}\n";

const char ph_shader_flat_vertex[] = "layout(location = 0) in vec2 at;\n"
                                     "layout(location = 2) in vec4 colour;\n"
                                     "uniform mat4 to_clip;\n"
                                     "out vec4 ink;\n"
                                     "void main () {\n"
                                     "  gl_Position = to_clip * vec4 (at, 0.0, 1.0);\n"
                                     "  ink = colour;\n"
                                     "}\n";

const char ph_shader_flat_fragment[] = "in vec4 ink;\n"
                                       "out vec4 result;\n"
                                       "void main () { result = vec4 (ink.rgb * ink.a, ink.a); }\n";
