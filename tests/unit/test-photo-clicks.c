/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The points that are set on a photo, one after the other, what is said of them, and where a
 * picture lies in its frame.
 */
#include "widgets/photo-clicks.h"

#include <glib.h>

#include "base/units.h"
#include "check.h"
#include "widgets/photo-place.h"
#include "widgets/photo-words.h"

static PhPhotoPoint
at (double x, double y)
{
  return (PhPhotoPoint){ x, y, 1.5 };
}

/* A string 1° to the left of plumb, its points 1000 px apart. */
static PhPhotoClicks
four_points (void)
{
  PhPhotoClicks clicks = ph_photo_clicks_none (PH_PHOTO_BY_LINES);
  ph_photo_clicks_add (&clicks,
                       at (500 - 1000 * sin (PH_PI / 180), 1100 - 1000 * cos (PH_PI / 180)));
  ph_photo_clicks_add (&clicks, at (500, 1100));
  ph_photo_clicks_add (&clicks, at (900, 100));
  ph_photo_clicks_add (&clicks, at (900, 1100));
  return clicks;
}

static void
points_are_asked_for_one_after_the_other (void)
{
  PhPhotoClicks clicks = ph_photo_clicks_none (PH_PHOTO_BY_LINES);
  const PhPhotoTarget wanted[] = { PH_PHOTO_STRING, PH_PHOTO_STRING, PH_PHOTO_EDGE, PH_PHOTO_EDGE };
  for (int i = 0; i < 4; i++)
    {
      CHECK (ph_photo_clicks_next (&clicks) == wanted[i]);
      CHECK (!ph_photo_clicks_are_complete (&clicks));
      CHECK (ph_photo_clicks_add (&clicks, at (10 * i, 0)) == i);
      CHECK (clicks.clicks[i].on == wanted[i]);
    }
  CHECK (ph_photo_clicks_are_complete (&clicks));
  CHECK (ph_photo_clicks_next (&clicks) == PH_PHOTO_NOTHING);
  CHECK (ph_photo_clicks_add (&clicks, at (0, 0)) == -1);
  CHECK (clicks.n == 4);

  PhPhotoClicks vial = ph_photo_clicks_none (PH_PHOTO_BY_VIAL);
  CHECK (ph_photo_clicks_next (&vial) == PH_PHOTO_VIAL_LINE);
  ph_photo_clicks_add (&vial, at (0, 0));
  ph_photo_clicks_add (&vial, at (9, 0));
  CHECK (ph_photo_clicks_next (&vial) == PH_PHOTO_BUBBLE);
}

static void
the_last_point_is_taken_back_first (void)
{
  PhPhotoClicks clicks = four_points ();
  CHECK (ph_photo_clicks_undo (&clicks));
  CHECK (clicks.n == 3 && ph_photo_clicks_next (&clicks) == PH_PHOTO_EDGE);
  for (int i = 0; i < 3; i++)
    CHECK (ph_photo_clicks_undo (&clicks));
  CHECK (clicks.n == 0 && !ph_photo_clicks_undo (&clicks));
}

static void
a_line_takes_more_points_when_asked (void)
{
  PhPhotoClicks clicks = four_points ();
  CHECK (ph_photo_clicks_can_ask (&clicks, PH_PHOTO_STRING));
  CHECK (!ph_photo_clicks_can_ask (&clicks, PH_PHOTO_BUBBLE));
  ph_photo_clicks_ask (&clicks, PH_PHOTO_STRING);
  CHECK (ph_photo_clicks_next (&clicks) == PH_PHOTO_STRING);
  CHECK (ph_photo_clicks_are_complete (&clicks));
  CHECK (ph_photo_clicks_undo (&clicks)); /* the asking, not a point */
  CHECK (clicks.n == 4 && ph_photo_clicks_next (&clicks) == PH_PHOTO_NOTHING);
  for (guint n = 3; n <= PH_PHOTO_LINE_MOST; n++)
    {
      ph_photo_clicks_ask (&clicks, PH_PHOTO_STRING);
      ph_photo_clicks_add (&clicks, at (500, 1100 + n));
      CHECK (ph_photo_clicks_count (&clicks, PH_PHOTO_STRING) == n);
    }
  CHECK (!ph_photo_clicks_can_ask (&clicks, PH_PHOTO_STRING));
  PhPhotoPoint points[PH_PHOTO_LINE_MOST];
  PhPhotoLine line = ph_photo_clicks_line (&clicks, PH_PHOTO_STRING, points);
  CHECK (line.n == PH_PHOTO_LINE_MOST && points[1].y == 1100 && points[2].y == 1103);
}

static void
complete_points_give_a_reading_in_words (void)
{
  PhPhotoClicks clicks = four_points ();
  PhPhotoReading reading = ph_photo_clicks_read (&clicks, NAN, NAN, FALSE);
  CHECK_NEAR (reading.tilt_rad, -PH_PI / 180, 1e-12);
  /* 1.5 px at both ends of both lines of 1000 px: 1.5·√2·√2/1000 rad = 0.172°. */
  g_autofree char *lean = ph_photo_result_words (&clicks, &reading, FALSE);
  CHECK_TEXT (lean, "Leans 1.0° left ±0.2°");
  CHECK (ph_photo_result_more (&clicks, &reading, FALSE) == NULL);
  /* Trade fact: a bubble runs to the high side, so a bow that leans left shows it on the right.
     Common practice, no source. */
  g_autofree char *bubble = ph_photo_result_words (&clicks, &reading, TRUE);
  g_autofree char *more = ph_photo_result_more (&clicks, &reading, TRUE);
  CHECK_TEXT (bubble, "Bubble 1.0° right ±0.2°");
  CHECK_TEXT (more, "The bow leans 1.0° left.");
  reading = ph_photo_clicks_read (&clicks, NAN, NAN, TRUE);
  g_autofree char *mirrored = ph_photo_result_words (&clicks, &reading, FALSE);
  CHECK_TEXT (mirrored, "Leans 1.0° right ±0.2°");
}

static void
missing_or_bad_points_say_so (void)
{
  PhPhotoClicks clicks = four_points ();
  ph_photo_clicks_move (&clicks, 3, clicks.clicks[2].at);
  PhPhotoReading reading = ph_photo_clicks_read (&clicks, NAN, NAN, FALSE);
  g_autofree char *words = ph_photo_result_words (&clicks, &reading, FALSE);
  CHECK (g_str_has_prefix (words, "This reading cannot be: two of the points"), "%s", words);
  ph_photo_clicks_undo (&clicks);
  CHECK (ph_photo_result_words (&clicks, &reading, FALSE) == NULL);
  CHECK_TEXT (ph_photo_step_words (&clicks), "Click the plumb edge as far down as it is seen.");
}

static void
an_uncalibrated_vial_says_what_is_needed (void)
{
  PhPhotoClicks clicks = ph_photo_clicks_none (PH_PHOTO_BY_VIAL);
  ph_photo_clicks_add (&clicks, at (400, 300));
  ph_photo_clicks_add (&clicks, at (500, 300));
  ph_photo_clicks_add (&clicks, at (370, 300));
  ph_photo_clicks_add (&clicks, at (450, 300));
  PhPhotoReading reading = ph_photo_clicks_read (&clicks, NAN, NAN, FALSE);
  g_autofree char *marks = ph_photo_result_words (&clicks, &reading, TRUE);
  g_autofree char *more = ph_photo_result_more (&clicks, &reading, TRUE);
  /* Ends 1.5/(100√2), left line 1.5·0.9/100, right line 1.5·0.1/100: together 0.017. */
  CHECK_TEXT (marks, "Bubble 0.40 marks left ±0.02");
  CHECK (strstr (more, "What a mark of your vial is worth is not known"), "%s", more);
  reading = ph_photo_clicks_read (&clicks, ph_rad_from_deg (1.5), NAN, FALSE);
  g_autofree char *degrees = ph_photo_result_words (&clicks, &reading, TRUE);
  CHECK_TEXT (degrees, "Bubble 0.6° left ±0.1°");
}

static void
a_point_has_a_name_and_a_place (void)
{
  PhPhotoClicks clicks = four_points ();
  g_autofree char *second = ph_photo_point_words (&clicks, 1);
  g_autofree char *third = ph_photo_point_words (&clicks, 2);
  CHECK_TEXT (second, "String, point 2, at 500 across and 1100 down");
  CHECK_TEXT (third, "Plumb edge, point 1, at 900 across and 100 down");
}

/* Where a picture lies. */

static const PhPhotoFrame frame = { 600, 400, 3000, 4000 };

static void
the_whole_picture_lies_in_the_middle (void)
{
  PhPhotoPlace place = ph_photo_place_fit (&frame);
  CHECK_NEAR (place.scale, 0.1, 1e-15);
  CHECK_NEAR (place.x, 150, 1e-12);
  CHECK_NEAR (place.y, 0, 1e-12);
}

static void
zooming_keeps_what_is_under_the_pointer (void)
{
  PhPhotoPlace fit = ph_photo_place_fit (&frame);
  double px, py, x, y;
  PhPhotoPlace place = ph_photo_place_zoom (&fit, &frame, 8, 300, 200);
  ph_photo_place_to_picture (&place, 330, 180, &px, &py);
  PhPhotoPlace closer = ph_photo_place_zoom (&place, &frame, 2, 330, 180);
  ph_photo_place_to_frame (&closer, px, py, &x, &y);
  CHECK_NEAR (x, 330, 1e-9);
  CHECK_NEAR (y, 180, 1e-9);
  CHECK_NEAR (closer.scale, 1.6, 1e-12);
  /* Never smaller than the whole, never larger than agreed. */
  CHECK_NEAR (ph_photo_place_zoom (&closer, &frame, 0, 0, 0).scale, 0.1, 1e-15);
  CHECK_NEAR (ph_photo_place_zoom (&closer, &frame, 1e6, 0, 0).scale, PH_PHOTO_SCALE_MOST, 0);
}

static void
moving_leaves_no_gap (void)
{
  PhPhotoPlace fit = ph_photo_place_fit (&frame);
  PhPhotoPlace place = ph_photo_place_zoom (&fit, &frame, 10, 300, 200);
  PhPhotoPlace left = ph_photo_place_pan (&place, &frame, 1e6, 1e6);
  PhPhotoPlace right = ph_photo_place_pan (&place, &frame, -1e6, -1e6);
  CHECK (left.x == 0 && left.y == 0);
  CHECK (right.x == 600 - 3000 && right.y == 400 - 4000);
}

static void
a_point_out_of_sight_is_brought_in (void)
{
  PhPhotoPlace fit = ph_photo_place_fit (&frame);
  PhPhotoPlace place = ph_photo_place_zoom (&fit, &frame, 10, 300, 200);
  double x, y;
  place = ph_photo_place_show (&place, &frame, 2000, 3000, 30);
  ph_photo_place_to_frame (&place, 2000, 3000, &x, &y);
  CHECK_NEAR (x, 570, 1e-9);
  CHECK_NEAR (y, 370, 1e-9);
  PhPhotoPlace same = ph_photo_place_show (&place, &frame, 1900, 2900, 30);
  CHECK (same.x == place.x && same.y == place.y);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (points_are_asked_for_one_after_the_other);
  CASE (the_last_point_is_taken_back_first);
  CASE (a_line_takes_more_points_when_asked);
  CASE (complete_points_give_a_reading_in_words);
  CASE (missing_or_bad_points_say_so);
  CASE (an_uncalibrated_vial_says_what_is_needed);
  CASE (a_point_has_a_name_and_a_place);
  CASE (the_whole_picture_lies_in_the_middle);
  CASE (zooming_keeps_what_is_under_the_pointer);
  CASE (moving_leaves_no_gap);
  CASE (a_point_out_of_sight_is_brought_in);
  return check_end ();
}
