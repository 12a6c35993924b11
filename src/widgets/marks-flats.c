/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A wedge is a fan of triangles from its tip, which is its first corner.
 */
#include "widgets/marks-flats.h"

void
ph_shade_bytes (PhShade shade, uint8_t bytes[3])
{
  bytes[0] = (uint8_t)(shade.red * 255.0 + 0.5);
  bytes[1] = (uint8_t)(shade.green * 255.0 + 0.5);
  bytes[2] = (uint8_t)(shade.blue * 255.0 + 0.5);
}

static PhStripDash
dash_of (PhDash dash)
{
  switch (dash)
    {
    case PH_DASH_PLUMB:
      return PH_STRIP_DASHES;
    case PH_DASH_TURN:
      return PH_STRIP_DASH_DOT;
    case PH_DASH_NONE:
      break;
    }
  return PH_STRIP_WHOLE;
}

void
ph_marks_add_flats (const PhMarks *marks, const PhPalette *palette, GArray *flats)
{
  for (size_t i = 0; i < ph_marks_count (marks); i++)
    {
      const PhMark *mark = ph_marks_get (marks, i);
      if (mark->kind != PH_MARK_LINE && mark->kind != PH_MARK_FILL)
        continue;
      PhFlat flat = { .at = mark->at,
                      .n = mark->n_at,
                      .half_px = (float)mark->width_px / 2.0f,
                      .dash = dash_of (mark->dash),
                      .under = mark->under };
      ph_shade_bytes (mark->accent ? palette->accent : palette->ink, flat.colour);
      flat.colour[3] = (uint8_t)(mark->alpha * 255.0 + 0.5);
      g_array_append_val (flats, flat);
    }
}

PhRenderColours
ph_render_colours_of (const PhPalette *palette)
{
  PhRenderColours colours;
  ph_shade_bytes (palette->edge, colours.edge);
  ph_shade_bytes (palette->ink, colours.outline);
  ph_shade_bytes (palette->accent, colours.accent);
  for (int i = 0; i < PH_ROLES; i++)
    ph_shade_bytes (palette->role[i], colours.role[i]);
  return colours;
}
