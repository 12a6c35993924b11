/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One function a kind of mark.
 */
#include "widgets/marks-painter.h"

#define PLATE_CORNER 3.0

static void
set_colour (cairo_t *cr, PhShade shade, double alpha)
{
  cairo_set_source_rgba (cr, shade.red, shade.green, shade.blue, alpha);
}

static PhShade
colour_of (const PhPalette *palette, const PhMark *mark)
{
  return mark->accent ? palette->accent : palette->ink;
}

static void
paint_line (cairo_t *cr, const PhPalette *palette, const PhMark *mark)
{
  static const double plumb[] = { 5.0, 3.5 }, turn[] = { 9.0, 3.0, 1.5, 3.0 };
  cairo_save (cr);
  if (mark->dash == PH_DASH_PLUMB)
    cairo_set_dash (cr, plumb, G_N_ELEMENTS (plumb), 0.0);
  else if (mark->dash == PH_DASH_TURN)
    cairo_set_dash (cr, turn, G_N_ELEMENTS (turn), 0.0);
  cairo_move_to (cr, mark->at[0].x, mark->at[0].y);
  cairo_line_to (cr, mark->at[1].x, mark->at[1].y);
  cairo_set_line_width (cr, mark->width_px);
  set_colour (cr, colour_of (palette, mark), mark->alpha);
  cairo_stroke (cr);
  cairo_restore (cr);
}

static void
paint_fill (cairo_t *cr, const PhPalette *palette, const PhMark *mark)
{
  cairo_new_path (cr);
  for (size_t i = 0; i < mark->n_at; i++)
    cairo_line_to (cr, mark->at[i].x, mark->at[i].y);
  cairo_close_path (cr);
  set_colour (cr, colour_of (palette, mark), mark->alpha);
  cairo_fill (cr);
}

/* Two quarters of ink on a disc of ground: engineering drawing's sign for a centre of mass. */
void
ph_mark_paint_balance (cairo_t *cr, const PhPalette *palette, const PhMark *mark)
{
  double x = mark->at[0].x, y = mark->at[0].y, r = mark->width_px;
  cairo_new_path (cr);
  cairo_arc (cr, x, y, r + 1.5, 0, 2 * G_PI);
  set_colour (cr, palette->ground, 1.0);
  cairo_fill (cr);
  set_colour (cr, palette->ink, 1.0);
  for (int quarter = 0; quarter < 4; quarter += 2)
    {
      cairo_move_to (cr, x, y);
      cairo_arc (cr, x, y, r, quarter * G_PI_2, (quarter + 1) * G_PI_2);
      cairo_close_path (cr);
      cairo_fill (cr);
    }
  cairo_new_path (cr);
  cairo_arc (cr, x, y, r, 0, 2 * G_PI);
  cairo_set_line_width (cr, 1.4);
  cairo_stroke (cr);
}

static void
paint_text (cairo_t *cr, const PhPalette *palette, const PhMark *mark)
{
  const PhLabelBox *box = &mark->box;
  double x0 = box->x + PLATE_CORNER, y0 = box->y + PLATE_CORNER;
  double x1 = box->x + box->width - PLATE_CORNER, y1 = box->y + box->height - PLATE_CORNER;
  cairo_new_path (cr);
  cairo_arc (cr, x0, y0, PLATE_CORNER, G_PI, 1.5 * G_PI);
  cairo_arc (cr, x1, y0, PLATE_CORNER, 1.5 * G_PI, 2.0 * G_PI);
  cairo_arc (cr, x1, y1, PLATE_CORNER, 0, G_PI_2);
  cairo_arc (cr, x0, y1, PLATE_CORNER, G_PI_2, G_PI);
  cairo_close_path (cr);
  set_colour (cr, palette->ground, PH_MARK_PLATE_ALPHA);
  cairo_fill (cr);
  cairo_move_to (cr, mark->at[0].x, mark->at[0].y);
  set_colour (cr, colour_of (palette, mark), mark->alpha);
  pango_cairo_show_layout (cr, mark->layout);
}

void
ph_marks_paint (cairo_t *cr, const PhPalette *palette, const PhMarks *marks, gboolean under)
{
  for (size_t i = 0; i < ph_marks_count (marks); i++)
    {
      const PhMark *mark = ph_marks_get (marks, i);
      if (!mark->under != !under)
        continue;
      switch (mark->kind)
        {
        case PH_MARK_LINE:
          paint_line (cr, palette, mark);
          break;
        case PH_MARK_FILL:
          paint_fill (cr, palette, mark);
          break;
        case PH_MARK_BALANCE:
          ph_mark_paint_balance (cr, palette, mark);
          break;
        case PH_MARK_TEXT:
          paint_text (cr, palette, mark);
          break;
        }
    }
}
