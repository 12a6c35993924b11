/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Labels in the views, laid out with real text for every rig at many sizes: none over another, none
 * over the balance mark or the scale bar, none cut, and none over the bow where there is room
 * beside it. Needs no display.
 */
#include "widgets/bow-marks.h"

#include <pango/pangocairo.h>

#include "check.h"
#include "drawn-rig.h"
#include "scene/fit.h"
#include "scene/pick.h"
#include "widgets/view-handles.h"
#include "widgets/views-layout.h"

static PangoContext *context;

static void
set_font (int size)
{
  char name[32];
  snprintf (name, sizeof name, "DejaVu Sans %d", size);
  PangoFontDescription *font = pango_font_description_from_string (name);
  pango_context_set_font_description (context, font);
  pango_font_description_free (font);
}

static PhCamera camera; /* of the last marks */
static const PhMarkHand *hand;

static PhMarks *
marks_of (DrawnRig *drawn, PhView view, float width, float height, int selected, PhUnits units)
{
  double slope = atan2 (drawn->rig->archer.nock_height_mm, drawn->rig->archer.draw_length_mm);
  PhMarkFacts facts = { .rig = drawn->rig,
                        .report = drawn->report,
                        .list = drawn->list,
                        .hand = hand,
                        .corner_px = { view == PH_VIEW_ABOVE ? 52 : 98, 52 },
                        .settle = ph_settle_of (drawn->rig, drawn->report, NULL),
                        .selected = selected,
                        .units = units,
                        .lean_factor = 5.0 };
  facts.lean = ph_lean_drawn_of (&facts.settle, slope, 5.0);
  camera = ph_camera_default (view);
  camera.width_px = width;
  camera.height_px = height;
  camera.slope_rad = (float)slope;
  camera.lean_rad = view == PH_VIEW_BEHIND ? facts.lean.lean_rad : 0.0f;
  ph_camera_update (&camera);
  PhMargins margins = ph_view_margins (view);
  PhExtent extent = ph_extent_of (drawn->list, view, camera.lean_rad, (float)slope);
  camera.px_per_mm = ph_extent_scale (extent, width, height, margins);
  ph_camera_centre (&camera, extent, margins);
  return ph_marks_new (&facts, &camera, context);
}

static bool
overlap (const PhLabelBox *a, const PhLabelBox *b)
{
  return a->x < b->x + b->width && b->x < a->x + a->width && a->y < b->y + b->height
         && b->y < a->y + a->height;
}

/* What a label must keep off: other labels, the balance mark, the scale bar. */
static bool
is_taken (const PhMark *mark, PhLabelBox *box)
{
  if (mark->kind == PH_MARK_TEXT)
    *box = mark->box;
  else if (mark->kind == PH_MARK_BALANCE)
    *box = (PhLabelBox){ (double)mark->at[0].x - mark->width_px,
                         (double)mark->at[0].y - mark->width_px, 2 * mark->width_px,
                         2 * mark->width_px };
  else if (mark->kind == PH_MARK_LINE && mark->dash == PH_DASH_NONE && !mark->accent
           && !mark->under)
    *box = (PhLabelBox){ (double)fminf (mark->at[0].x, mark->at[1].x),
                         (double)fminf (mark->at[0].y, mark->at[1].y),
                         (double)fabsf (mark->at[0].x - mark->at[1].x),
                         (double)fabsf (mark->at[0].y - mark->at[1].y) };
  else
    return false;
  return true;
}

static void
check_labels (const PhMarks *marks, float width, float height, const char *what)
{
  for (size_t i = 0; i < ph_marks_count (marks); i++)
    {
      const PhMark *mark = ph_marks_get (marks, i);
      const PhLabelBox *box = &mark->box;
      if (mark->kind != PH_MARK_TEXT)
        continue;
      const char *text = pango_layout_get_text (mark->layout);
      CHECK (box->x >= 0 && box->y >= 0 && box->x + box->width <= (double)width
                 && box->y + box->height <= (double)height,
             "%s: «%s» is cut at %g x %g", what, text, (double)width, (double)height);
      for (size_t k = 0; k < ph_marks_count (marks); k++)
        {
          PhLabelBox other;
          if (k != i && is_taken (ph_marks_get (marks, k), &other))
            CHECK (!overlap (box, &other), "%s: «%s» lies on another mark (kind %d) at %g x %g",
                   what, text, (int)ph_marks_get (marks, k)->kind, (double)width, (double)height);
        }
    }
}

static bool
says (const PhMarks *marks, const char *text)
{
  for (size_t i = 0; i < ph_marks_count (marks); i++)
    {
      const PhMark *mark = ph_marks_get (marks, i);
      if (mark->kind == PH_MARK_TEXT && strstr (pango_layout_get_text (mark->layout), text))
        return true;
    }
  return false;
}

static void
no_label_covers_another_at_any_size (void)
{
  static const float sizes[][2] = { { 120, 70 },  { 150, 380 }, { 250, 640 },
                                    { 420, 260 }, { 760, 480 }, { 1100, 120 } };
  for (size_t f = 0; f < DRAWN_FILES; f++)
    {
      DrawnRig drawn = drawn_rig_of (drawn_rig_load (drawn_files[f]));
      for (int view = PH_VIEW_SIDE; view <= PH_VIEW_ABOVE; view++)
        for (size_t s = 0; s < G_N_ELEMENTS (sizes); s++)
          for (int part = PH_PART_NONE; part < (int)drawn.rig->n_parts; part++)
            {
              PhMarks *marks = marks_of (&drawn, (PhView)view, sizes[s][0], sizes[s][1], part,
                                         part % 2 ? PH_UNITS_TRADE : PH_UNITS_METRIC);
              check_labels (marks, sizes[s][0], sizes[s][1], drawn_files[f]);
              ph_marks_free (marks);
            }
      drawn_rig_clear (&drawn);
    }
}

/* Asked of the silhouettes, not of the cells the labels were laid out with. */
static void
check_off_the_bow (const DrawnRig *drawn, PhOutlines *outlines, const PhMark *mark)
{
  const char *text = pango_layout_get_text (mark->layout);
  const PhLabelBox *box = &mark->box;
  int under = PH_PART_NONE;
  for (int i = 0; i <= 20 && under == PH_PART_NONE; i++)
    for (int k = 0; k <= 4 && under == PH_PART_NONE; k++)
      {
        PhPixel at = { (float)(box->x + box->width * i / 20),
                       (float)(box->y + box->height * k / 4) };
        under = ph_pick_part (outlines, drawn->list, at, 0.0f);
      }
  CHECK (under == PH_PART_NONE || strcmp (text, ph_view_title (camera.view)) == 0,
         "«%s» lies over %s at %g x %g", text,
         under == PH_PART_BOW ? "the bow" : drawn->rig->parts[under].id, (double)camera.width_px,
         (double)camera.height_px);
}

static void
check_all_off_the_bow (DrawnRig *drawn, PhOutlines *outlines, PhView view, float width,
                       float height)
{
  for (int part = PH_PART_NONE; part < (int)drawn->rig->n_parts; part++)
    {
      PhMarks *marks = marks_of (drawn, view, width, height, part, PH_UNITS_MIXED);
      ph_outlines_update (outlines, drawn->list, &camera);
      for (size_t i = 0; i < ph_marks_count (marks); i++)
        if (ph_marks_get (marks, i)->kind == PH_MARK_TEXT)
          check_off_the_bow (drawn, outlines, ph_marks_get (marks, i));
      ph_marks_free (marks);
    }
}

/* The views' sizes in a window of 1280 × 800, and larger letters there. String and cables do not
 * count: picking finds them, so that they are left out. */
static void
no_label_lies_over_the_bow (void)
{
  PhOutlines *outlines = ph_outlines_new ();
  PhMarkHand hint = {
    .turns = -1, .stack = -1, .hot = { PH_HOLD_NONE, -1 }, .hint = "Drag a bar’s end to turn it"
  };
  hand = &hint;
  for (int size = 10; size <= 15; size += 5)
    {
      set_font (size);
      for (size_t f = 0; f < DRAWN_FILES; f++)
        {
          DrawnRig drawn = drawn_rig_of (drawn_rig_load (drawn_files[f]));
          hint.compiled = drawn.compiled;
          check_all_off_the_bow (&drawn, outlines, PH_VIEW_SIDE, 596, 361);
          check_all_off_the_bow (&drawn, outlines, PH_VIEW_BEHIND, 335, 330);
          drawn_rig_clear (&drawn);
        }
    }
  hand = NULL;
  set_font (10);
  ph_outlines_free (outlines);
}

static void
views_say_what_they_show (void)
{
  DrawnRig drawn = drawn_rig_of (drawn_rig_load ("demo"));
  int bar = ph_rig_find (drawn.rig, "back-bar");
  PhMarks *side = marks_of (&drawn, PH_VIEW_SIDE, 750, 480, bar, PH_UNITS_METRIC);
  PhMarks *behind = marks_of (&drawn, PH_VIEW_BEHIND, 300, 640, bar, PH_UNITS_METRIC);
  PhMarks *above = marks_of (&drawn, PH_VIEW_ABOVE, 750, 150, bar, PH_UNITS_METRIC);
  /* The back bar: root at y = 14, 20° to the left and 12° down, its mass centre half-way along its
   * 305 mm: 14 + 152.5 sin 20° cos 12° = 65.0 mm. */
  CHECK (says (side, "From the side") && says (side, "ahead of the grip"));
  CHECK (says (behind, "From behind") && says (behind, "lever 65 mm")
         && says (behind, "lean drawn 5 times") && says (behind, "leans left"));
  CHECK (says (above, "From above") && says (above, "lever 65 mm"));
  CHECK (says (side, "200 mm") || says (side, "100 mm"));
  CHECK (!says (side, "lever 65 mm"), "a lever arm is not seen from the side");
  ph_marks_free (side);
  ph_marks_free (behind);
  ph_marks_free (above);
  drawn_rig_clear (&drawn);
}

static void
what_is_too_near_the_string_is_named (void)
{
  DrawnRig drawn = drawn_rig_of (drawn_rig_load ("demo"));
  int bar = ph_rig_find (drawn.rig, "back-bar");
  PhIssues issues = { 0 };
  ph_edit_set_number (drawn.rig, (size_t)bar, "swing_deg", 0, -8, &issues);
  ph_issues_clear (&issues);
  drawn_rig_update (&drawn, NULL);
  PhMarks *marks = marks_of (&drawn, PH_VIEW_SIDE, 750, 480, PH_PART_NONE, PH_UNITS_METRIC);
  CHECK (says (marks, "string"));
  CHECK (says (marks, ph_part_name (&drawn.rig->parts[drawn.report->clearance_part])));
  ph_marks_free (marks);
  drawn_rig_clear (&drawn);
}

static void
the_scale_bar_is_as_long_as_it_says (void)
{
  DrawnRig drawn = drawn_rig_of (drawn_rig_load ("demo"));
  PhMarks *marks = marks_of (&drawn, PH_VIEW_SIDE, 750, 480, PH_PART_NONE, PH_UNITS_TRADE);
  PhExtent extent = ph_extent_of (drawn.list, PH_VIEW_SIDE, 0.0f, 0.06f);
  double scale = (double)ph_extent_scale (extent, 750, 480, ph_view_margins (PH_VIEW_SIDE));
  double longest = 0;
  for (size_t i = 0; i < ph_marks_count (marks); i++)
    {
      const PhMark *mark = ph_marks_get (marks, i);
      if (mark->kind == PH_MARK_LINE && mark->dash == PH_DASH_NONE
          && mark->at[0].y == mark->at[1].y)
        longest = fmax (longest, (double)fabsf (mark->at[1].x - mark->at[0].x));
    }
  double inches = longest / scale / 25.4;
  CHECK (says (marks, "8 in") || says (marks, "4 in"));
  CHECK (fabs (inches - 8) < 0.05 || fabs (inches - 4) < 0.05, "%g", inches);
  ph_marks_free (marks);
  drawn_rig_clear (&drawn);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  ph_math_init ();
  context = pango_font_map_create_context (pango_cairo_font_map_get_default ());
  set_font (10);
  CASE (no_label_covers_another_at_any_size);
  CASE (no_label_lies_over_the_bow);
  CASE (views_say_what_they_show);
  CASE (what_is_too_near_the_string_is_named);
  CASE (the_scale_bar_is_as_long_as_it_says);
  g_object_unref (context);
  return check_end ();
}
