/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The shaders' sources, without their version line: GLSL 3.30 and ES 3.00 both take them.
 */
#pragma once

/** Solids: lit as scene/light.h says, pierced, hatched. */
extern const char ph_shader_solid_vertex[];
extern const char ph_shader_solid_fragment[];

/** Lines of a width in pixels with soft sides, dotted or dashed: silhouettes, strings, marks. */
extern const char ph_shader_strip_vertex[];
extern const char ph_shader_strip_fragment[];

/** Flat polygons in pixels. */
extern const char ph_shader_flat_vertex[];
extern const char ph_shader_flat_fragment[];

/** Attributes' places, the same in every program. */
enum
{
  PH_ATTRIBUTE_AT,
  PH_ATTRIBUTE_NORMAL,
  PH_ATTRIBUTE_HOLE,
  PH_ATTRIBUTE_MARKS,
  PH_ATTRIBUTE_A = 0,
  PH_ATTRIBUTE_B,
  PH_ATTRIBUTE_COLOUR,
  PH_ATTRIBUTE_LINE
};
