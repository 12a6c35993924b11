/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The balance point with its plumb line, the line the held bow turns about, title and scale bar.
 */
#include "widgets/marks-build.h"

#include <glib/gi18n.h>
#include <math.h>

#include "document/format.h"

#define BALANCE_RADIUS_PX 8.0
#define PLUMB_MM 700.0f
#define TURN_BEYOND_MM 170.0f
#define BAR_HANDY_PX 80.0
#define BAR_LEAST_PX 24.0
#define TICK_PX 4.0f
#define MM_PER_INCH 25.4

void
ph_marks_title (PhMarks *marks)
{
  PhTextStyle style = { .bold = TRUE, .scale = 1.0, .care = PH_LABEL_OVER };
  PhTextPlace place = { 8, 6, 0, 0 };
  ph_marks_add_text (marks, ph_view_title (marks->camera->view), &style, &place, 1, NULL);
}

static gboolean
in_millimetres (PhUnits units)
{
  return g_str_equal (ph_quantity_unit (PH_QUANTITY_LENGTH, units), "mm");
}

/* Of the round lengths one finds on a rule, in the unit bars are measured in here, the one that is
 * nearest to a handy size in the picture. */
static double
bar_length_mm (double px_per_mm, double most_px, PhUnits units)
{
  static const double millimetres[] = { 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000 };
  static const double inches[] = { 0.0625, 0.125, 0.25, 0.5, 1, 2, 4, 8, 16, 32, 64 };
  double best = 0, least = INFINITY;
  for (size_t i = 0; i < G_N_ELEMENTS (millimetres); i++)
    {
      double mm = in_millimetres (units) ? millimetres[i] : inches[i] * MM_PER_INCH;
      double off = fabs (log (mm * px_per_mm / BAR_HANDY_PX));
      if (mm * px_per_mm <= most_px && off < least)
        {
          least = off;
          best = mm;
        }
    }
  return best;
}

void
ph_marks_scale_bar (PhMarks *marks)
{
  const PhCamera *camera = marks->camera;
  double width = (double)camera->width_px, height = (double)camera->height_px;
  double most = 0.5 * width, scale = (double)camera->px_per_mm;
  double length_mm = bar_length_mm (scale, most, marks->facts->units);
  double length = length_mm * scale;
  if (camera->view == PH_VIEW_FREE || length < BAR_LEAST_PX)
    return;
  g_autofree char *said =
      ph_format_quantity_short (length_mm, PH_QUANTITY_LENGTH, marks->facts->units);
  PhTextStyle style = { .scale = 0.9,
                        .reach_px = 0.3 * height,
                        .least_px = length + 2.0,
                        .below_px = 2.0 * (double)TICK_PX };
  PhTextPlace place = { width - 8, height - 5, 1, 1 };
  PhLabelBox box;
  if (!ph_marks_add_text (marks, said, &style, &place, 1, &box))
    return;
  float right = (float)(box.x + box.width) - 1.0f, left = right - (float)length;
  float y = (float)(box.y + box.height) - TICK_PX;
  ph_marks_add_line (marks, (PhPixel){ left, y }, (PhPixel){ right, y }, PH_DASH_NONE, 0.8, FALSE,
                     FALSE);
  for (int end = 0; end < 2; end++)
    {
      float x = end ? right : left;
      ph_marks_add_line (marks, (PhPixel){ x, y - TICK_PX }, (PhPixel){ x, y + TICK_PX },
                         PH_DASH_NONE, 0.8, FALSE, FALSE);
    }
}

/* The line from the nock through the grip, and on beyond it: the bow can turn about it alone. Seen
 * from behind it is a point, the wedge's own. */
void
ph_marks_turn_line (PhMarks *marks)
{
  const PhCamera *camera = marks->camera;
  const PhArcher *archer = &marks->facts->rig->archer;
  if (camera->view == PH_VIEW_BEHIND)
    return;
  PhPoint nock = ph_point ((float)-archer->draw_length_mm, 0.0f, (float)archer->nock_height_mm);
  PhPoint beyond = ph_point_scale (ph_point_unit (nock), -TURN_BEYOND_MM);
  ph_marks_add_line (marks, ph_camera_project (camera, nock, NULL),
                     ph_camera_project (camera, beyond, NULL), PH_DASH_TURN, 0.7, FALSE, FALSE);
}

char *
ph_place_said (double mm, PhUnits units)
{
  /* As the readings have it: inches only where all lengths are in inches, not where bars alone are.
   */
  gboolean inches = units == PH_UNITS_TRADE;
  double shown = inches ? fabs (mm) / MM_PER_INCH : fabs (mm);
  g_autofree char *number = ph_format_number (shown, inches ? 1 : 0);
  return g_strdup_printf ("%s %s", number, inches ? _ ("in") : _ ("mm"));
}

char *
ph_balance_said (const PhReport *report, PhUnits units)
{
  double ahead_mm = report->mass.com_m.x * 1000.0;
  g_autofree char *size = ph_place_said (ahead_mm, units);
  g_autofree char *nothing = ph_place_said (0.0, units);
  if (g_str_equal (size, nothing))
    return g_strdup (_ ("over the grip"));
  return ahead_mm > 0.0 ? g_strdup_printf (_ ("%s ahead of the grip"), size)
                        : g_strdup_printf (_ ("%s behind the grip"), size);
}

static void
add_balance_mark (PhMarks *marks, PhPixel at)
{
  PhMark mark = { .kind = PH_MARK_BALANCE, .alpha = 1.0, .width_px = BALANCE_RADIUS_PX };
  double r = BALANCE_RADIUS_PX;
  mark.at[0] = at;
  mark.n_at = 1;
  g_array_append_val (marks->marks, mark);
  ph_label_places_take (&marks->places,
                        (PhLabelBox){ (double)at.x - r, (double)at.y - r, 2 * r, 2 * r });
}

void
ph_marks_balance (PhMarks *marks)
{
  const PhCamera *camera = marks->camera;
  PhPixel at = ph_camera_project (camera, ph_point_of_m (marks->facts->report->mass.com_m), NULL);
  PhPixel below = { at.x, camera->height_px };
  if (camera->view == PH_VIEW_FREE)
    {
      PhPoint under = ph_point_of_m (marks->facts->report->mass.com_m);
      under.z -= PLUMB_MM;
      below = ph_camera_project (camera, under, NULL);
    }
  if (camera->view == PH_VIEW_SIDE || camera->view == PH_VIEW_FREE)
    ph_marks_add_line (marks, at, below, PH_DASH_PLUMB, 0.8, FALSE, FALSE);
  add_balance_mark (marks, at);
  if (camera->view != PH_VIEW_SIDE && camera->view != PH_VIEW_FREE)
    return;
  g_autofree char *said = ph_balance_said (marks->facts->report, marks->facts->units);
  double x = (double)at.x, y = (double)at.y, aside = BALANCE_RADIUS_PX + 5;
  PhTextStyle style = { .scale = 0.95, .reach_px = 300 };
  const PhTextPlace places[] = { { x + aside, y - 2, 0, 0.75 },
                                 { x + aside, y - aside, 0, 1 },
                                 { x + aside, y + aside, 0, 0 },
                                 { x - aside, y, 1, 0.5 } };
  ph_marks_add_text (marks, said, &style, places, G_N_ELEMENTS (places), NULL);
}
