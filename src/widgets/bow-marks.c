/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The list of marks, and the order in which they are laid out: what must be seen takes its place
 * first.
 */
#include "widgets/marks-build.h"

#include <glib/gi18n.h>

#include "document/format.h"
#include "widgets/label-mask.h"

#define PLATE_PX 3.0

static void
clear_mark (gpointer mark)
{
  g_clear_object (&((PhMark *)mark)->layout);
}

void
ph_marks_add_line (PhMarks *marks, PhPixel a, PhPixel b, PhDash dash, double alpha, gboolean accent,
                   gboolean under)
{
  PhMark mark = { .kind = PH_MARK_LINE,
                  .under = under,
                  .accent = accent,
                  .alpha = alpha,
                  .width_px = accent ? 1.5 : 1.0,
                  .dash = dash,
                  .at = { a, b },
                  .n_at = 2 };
  g_array_append_val (marks->marks, mark);
}

void
ph_marks_add_fill (PhMarks *marks, const PhPixel *at, size_t n, double alpha)
{
  g_assert (n <= PH_MARK_PIXELS_MOST);
  PhMark mark = { .kind = PH_MARK_FILL, .under = TRUE, .alpha = alpha, .n_at = n };
  for (size_t i = 0; i < n; i++)
    mark.at[i] = at[i];
  g_array_append_val (marks->marks, mark);
}

static PangoLayout *
layout_of (PhMarks *marks, const char *text, const PhTextStyle *style)
{
  PangoLayout *layout = pango_layout_new (marks->context);
  PangoAttrList *attributes = pango_attr_list_new ();
  if (style->bold)
    pango_attr_list_insert (attributes, pango_attr_weight_new (PANGO_WEIGHT_BOLD));
  pango_attr_list_insert (attributes, pango_attr_scale_new (style->scale));
  pango_layout_set_attributes (layout, attributes);
  pango_attr_list_unref (attributes);
  pango_layout_set_text (layout, text, -1);
  if (style->wrap_px > 0)
    {
      pango_layout_set_width (layout, (int)(MAX (style->wrap_px, 20) * PANGO_SCALE));
      pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
    }
  return layout;
}

gboolean
ph_marks_add_text (PhMarks *marks, const char *text, const PhTextStyle *style,
                   const PhTextPlace *wanted, size_t n, PhLabelBox *box)
{
  PhMark mark = { .kind = PH_MARK_TEXT, .accent = style->accent, .alpha = 1.0 };
  PhLabelBox places[PH_LABEL_WANTED_MOST];
  PangoRectangle size;
  g_assert (n <= G_N_ELEMENTS (places));
  mark.layout = layout_of (marks, text, style);
  pango_layout_get_pixel_extents (mark.layout, NULL, &size);
  double plate = size.width + 2 * PLATE_PX;
  double width = MAX (plate, style->least_px), height = size.height + style->below_px;
  for (size_t i = 0; i < n; i++)
    places[i] = (PhLabelBox){ wanted[i].x - wanted[i].align_x * width,
                              wanted[i].y - wanted[i].align_y * height, width, height };
  PhLabelBox found;
  if (!ph_label_places_find (&marks->places, width, height, places, n, style->reach_px, style->care,
                             &found))
    {
      clear_mark (&mark);
      return FALSE;
    }
  if (box)
    *box = found;
  mark.box = (PhLabelBox){ found.x + width - plate, found.y, plate, size.height };
  /* Where the letters begin: inside the plate; a wrapped layout starts left of nothing. */
  mark.at[0] = (PhPixel){ (float)(mark.box.x + PLATE_PX - size.x), (float)mark.box.y };
  mark.n_at = 1;
  g_array_append_val (marks->marks, mark);
  return TRUE;
}

const char *
ph_view_title (PhView view)
{
  switch (view)
    {
    case PH_VIEW_SIDE:
      return _ ("From the side");
    case PH_VIEW_BEHIND:
      return _ ("From behind");
    case PH_VIEW_ABOVE:
      return _ ("From above");
    case PH_VIEW_FREE:
      return _ ("Free view");
    }
  g_assert_not_reached ();
}

PhMarks *
ph_marks_new (const PhMarkFacts *facts, const PhCamera *camera, PangoContext *context)
{
  PhMarks *marks = g_new0 (PhMarks, 1);
  marks->marks = g_array_new (FALSE, FALSE, sizeof (PhMark));
  g_array_set_clear_func (marks->marks, clear_mark);
  marks->places = ph_label_places ((double)camera->width_px, (double)camera->height_px);
  PhLabelMask *mask = facts->list ? ph_label_mask_new (facts->list, camera) : NULL;
  marks->places.mask = mask;
  marks->facts = facts;
  marks->camera = camera;
  marks->context = context;
  if (facts->corner_px[0] > 0)
    ph_label_places_take (&marks->places,
                          (PhLabelBox){ (double)camera->width_px - facts->corner_px[0], 0,
                                        facts->corner_px[0], facts->corner_px[1] });
  ph_marks_title (marks);
  ph_marks_hand (marks);
  ph_marks_turn_line (marks);
  if (camera->view == PH_VIEW_BEHIND)
    ph_marks_lean (marks);
  ph_marks_balance (marks);
  ph_marks_lever (marks);
  ph_marks_near_string (marks);
  ph_marks_scale_bar (marks);
  marks->places.mask = NULL;
  ph_label_mask_free (mask);
  /* What they were laid out from is the caller's and may be gone. */
  marks->facts = NULL;
  marks->camera = NULL;
  marks->context = NULL;
  return marks;
}

void
ph_marks_free (PhMarks *marks)
{
  if (!marks)
    return;
  g_array_unref (marks->marks);
  g_free (marks);
}

size_t
ph_marks_count (const PhMarks *marks)
{
  return marks->marks->len;
}

const PhMark *
ph_marks_get (const PhMarks *marks, size_t i)
{
  return &g_array_index (marks->marks, PhMark, i);
}
