/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The lean seen from behind: the wedge between the plumb line and the bow, and in words. Then what
 * is told of a single part: the selected one's lever arm, and the one too near the string.
 */
#include "widgets/marks-build.h"

#include <glib/gi18n.h>
#include <math.h>

#include "document/format.h"
#include "physics/clearance.h"

#define WEDGE_CORNERS 24
#define WEDGE_ALPHA 0.13
#define WEDGE_LEAST_RAD 0.002f
/* A little beyond the bow's end, so that the wedge shows over it [share of axle to axle]. */
#define WEDGE_COMPOUND 0.5f
#define WEDGE_RECURVE 0.45f
#define ARM_LEAST_PX 6.0f
#define ARM_ASIDE_PX 22.0f
#define ARM_TICK_PX 5.0f

/* Angle of the leaning bow in the picture, from straight up, positive to the right. */
static float
seen_lean (const PhCamera *camera, PhPixel grip)
{
  PhPixel top = ph_camera_project (camera, ph_point (0.0f, 0.0f, 1000.0f), NULL);
  return atan2f (top.x - grip.x, grip.y - top.y);
}

static void
wedge (PhMarks *marks, PhPixel grip, float radius)
{
  float lean = seen_lean (marks->camera, grip);
  PhPixel corners[WEDGE_CORNERS + 1];
  if (fabsf (lean) < WEDGE_LEAST_RAD)
    return;
  corners[0] = grip;
  for (int i = 0; i < WEDGE_CORNERS; i++)
    {
      float angle = lean * (float)i / (WEDGE_CORNERS - 1);
      corners[i + 1] = (PhPixel){ grip.x + radius * sinf (angle), grip.y - radius * cosf (angle) };
    }
  ph_marks_add_fill (marks, corners, WEDGE_CORNERS + 1, WEDGE_ALPHA);
  ph_marks_add_line (marks, grip, corners[WEDGE_CORNERS], PH_DASH_NONE, 0.45, FALSE, TRUE);
}

/* In one line where there is room off the bow, else in narrow ones beside it; over it only in a
 * view that has no room at all. */
static gboolean
add_beside (PhMarks *marks, const char *text, double scale, const PhTextPlace *place,
            PhLabelBox *box)
{
  static const double shares[] = { 1.0, 0.4, 0.28 };
  double width = (double)marks->camera->width_px - 16;
  PhTextStyle style = { .scale = scale, .reach_px = 80, .care = PH_LABEL_NEVER };
  for (gsize i = 0; i < G_N_ELEMENTS (shares); i++)
    {
      style.wrap_px = shares[i] * width;
      if (ph_marks_add_text (marks, text, &style, place, 1, box))
        return TRUE;
    }
  style.wrap_px = width;
  style.care = PH_LABEL_OVER;
  return ph_marks_add_text (marks, text, &style, place, 1, box);
}

/* The lean in words at the bottom; how it is drawn in the upper corner, or above the words. */
static void
say_lean (PhMarks *marks)
{
  const PhMarkFacts *facts = marks->facts;
  double width = (double)marks->camera->width_px, height = (double)marks->camera->height_px;
  g_autofree char *drawing = ph_lean_drawing_said (&facts->settle, facts->lean, facts->lean_factor);
  g_autofree char *said = ph_lean_said (&facts->settle);
  PhLabelBox box = { 0, height, 0, 0 };
  PhTextPlace bottom = { 8, height - 6, 0, 1 };
  add_beside (marks, said, 1.0, &bottom, &box);
  PhTextStyle small = { .scale = 0.85, .care = PH_LABEL_NEVER };
  PhTextPlace corner = { width - 6 - facts->corner_px[0], 8, 1, 0 };
  PhTextPlace above = { 8, box.y - 4, 0, 1 };
  if (!ph_marks_add_text (marks, drawing, &small, &corner, 1, NULL))
    add_beside (marks, drawing, 0.85, &above, NULL);
}

void
ph_marks_lean (PhMarks *marks)
{
  const PhCamera *camera = marks->camera;
  const PhMarkFacts *facts = marks->facts;
  PhPixel grip = ph_camera_project (camera, ph_point (0.0f, 0.0f, 0.0f), NULL);
  const PhBow *bow = &facts->rig->bow;
  float share = bow->kind == PH_BOW_COMPOUND ? WEDGE_COMPOUND : WEDGE_RECURVE;
  float radius = share * ph_bow_axle_to_axle (bow) * camera->px_per_mm;
  wedge (marks, grip, radius);
  /* Plumb through the point it turns about, as long as the bow is tall. */
  ph_marks_add_line (marks, (PhPixel){ grip.x, grip.y - radius },
                     (PhPixel){ grip.x, grip.y + radius }, PH_DASH_PLUMB, 0.8, FALSE, FALSE);
  say_lean (marks);
}

static const PhShare *
share_of (const PhReport *report, int part)
{
  for (size_t i = 0; i < report->n_shares; i++)
    if (report->shares[i].part == part)
      return &report->shares[i];
  return NULL;
}

static PhPixel
moved (PhPixel at, float dx, float dy)
{
  return (PhPixel){ at.x + dx, at.y + dy };
}

/* A dimension line from a to b, set aside by (dx, dy), with its ticks and the lines that lead to
 * it. Returns its middle. */
static PhPixel
dimension (PhMarks *marks, PhPixel a, PhPixel b, float dx, float dy)
{
  float far = hypotf (dx, dy), tx = dx / far * ARM_TICK_PX, ty = dy / far * ARM_TICK_PX;
  PhPixel p = moved (a, dx, dy), q = moved (b, dx, dy);
  ph_marks_add_line (marks, a, moved (p, tx, ty), PH_DASH_NONE, 0.5, TRUE, FALSE);
  ph_marks_add_line (marks, b, moved (q, tx, ty), PH_DASH_NONE, 0.5, TRUE, FALSE);
  ph_marks_add_line (marks, p, q, PH_DASH_NONE, 1.0, TRUE, FALSE);
  return (PhPixel){ (p.x + q.x) / 2.0f, (p.y + q.y) / 2.0f };
}

/* How far the selected part's weight stands beside the bow's plane: what it leans the bow with. */
void
ph_marks_lever (PhMarks *marks)
{
  const PhCamera *camera = marks->camera;
  const PhMarkFacts *facts = marks->facts;
  gboolean behind = camera->view == PH_VIEW_BEHIND, above = camera->view == PH_VIEW_ABOVE;
  const PhShare *share =
      facts->selected >= 0 && (behind || above) ? share_of (facts->report, facts->selected) : NULL;
  if (!share || !(share->mass_kg > 0.0))
    return;
  PhPoint com = ph_point_of_m (share->com_m);
  PhPixel on = ph_camera_project (camera, com, NULL);
  PhPixel plane = ph_camera_project (camera, ph_point (com.x, 0.0f, com.z), NULL);
  float long_px = hypotf (on.x - plane.x, on.y - plane.y);
  if (long_px < ARM_LEAST_PX)
    return;
  /* Aside: below in the view from behind, toward the archer in the view from above. */
  float dx = (plane.y - on.y) / long_px * ARM_ASIDE_PX;
  float dy = (on.x - plane.x) / long_px * ARM_ASIDE_PX;
  if ((behind && dy < 0.0f) || (above && dx > 0.0f))
    {
      dx = -dx;
      dy = -dy;
    }
  PhPixel middle = dimension (marks, plane, on, dx, dy);
  g_autofree char *size = ph_place_said ((double)com.y, facts->units);
  /* Translators: the lever arm of a part's weight about the bow's plane, like "lever 65 mm". */
  g_autofree char *said = g_strdup_printf (_ ("lever %s"), size);
  double x = (double)middle.x, y = (double)middle.y;
  PhTextStyle style = { .accent = TRUE, .scale = 0.95, .reach_px = 120 };
  const PhTextPlace below[] = { { x, y + 6, 0.5, 0 }, { x, y - 6, 0.5, 1 } };
  const PhTextPlace beside[] = { { x - 8, y, 1, 0.5 }, { x + 8, y, 0, 0.5 } };
  ph_marks_add_text (marks, said, &style, behind ? below : beside, 2, NULL);
}

/* Names the part that comes nearest to the string, where that is too near. */
void
ph_marks_near_string (PhMarks *marks)
{
  const PhMarkFacts *facts = marks->facts;
  const PhReport *report = facts->report;
  int part = report->clearance_part;
  if (part < 0 || !(report->clearance_m < PH_CLEARANCE_LEAST_M))
    return;
  const PhShare *share = share_of (report, part);
  if (!share || isnan (share->com_m.x))
    return;
  PhPixel at = ph_camera_project (marks->camera, ph_point_of_m (share->com_m), NULL);
  const char *name = ph_part_name (&facts->rig->parts[part]);
  g_autofree char *size = ph_place_said (report->clearance_m * 1000.0, facts->units);
  g_autofree char *said = report->clearance_m > 0.0
                              ? g_strdup_printf (_ ("%s: %s from the string"), name, size)
                              : g_strdup_printf (_ ("%s: in the string's way"), name);
  double x = (double)at.x, y = (double)at.y;
  PhTextStyle style = { .scale = 0.95,
                        .wrap_px = (double)marks->camera->width_px - 20,
                        .reach_px = 160 };
  const PhTextPlace places[] = { { x, y + 16, 0.5, 0 }, { x, y - 16, 0.5, 1 } };
  ph_marks_add_text (marks, said, &style, places, G_N_ELEMENTS (places), NULL);
}
