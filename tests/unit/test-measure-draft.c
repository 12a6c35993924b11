/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Readings while they are typed, and the words of the measuring page.
 */
#include "widgets/measure-draft.h"

#include "check.h"
#include "widgets/measure-words.h"

static void
type_line (PhMeasureDraft *draft, int i, double x, double z, double to_x, double to_z)
{
  const double points[2][3] = { { x, 1, z }, { to_x, 2, to_z } };
  memcpy (draft->points[i], points, sizeof points);
}

static void
draft_wants_two_whole_lines_and_takes_a_third (void)
{
  PhMeasureDraft draft = ph_measure_draft_empty (PH_METHOD_HANGING);
  PhReadings readings;
  CHECK (ph_measure_draft_finish (&draft, &readings) != NULL);
  type_line (&draft, 0, 60, 300, 62, 0);
  CHECK (ph_measure_draft_finish (&draft, &readings) != NULL);
  type_line (&draft, 1, 300, -40, 40, -30);
  CHECK (ph_measure_draft_finish (&draft, &readings) == NULL);
  CHECK (readings.n_lines == 2);
  CHECK_NEAR (readings.lines[1].direction[0], -260, 0);
  CHECK_NEAR (readings.lines[1].direction[1], 1, 0);
  PhMeasureDraft back = ph_measure_draft_of (&readings);
  CHECK_NEAR (back.points[1][1][0], 40, 0);
  CHECK (isnan (back.points[2][0][0]));
  ph_readings_clear (&readings);
  draft.points[2][0][0] = 5;
  CHECK (ph_measure_draft_finish (&draft, &readings) != NULL);
  type_line (&draft, 2, 5, 5, 5, 10);
  CHECK (ph_measure_draft_finish (&draft, &readings) != NULL); /* 5 mm apart */
  type_line (&draft, 2, 5, 5, 5, 100);
  CHECK (ph_measure_draft_finish (&draft, &readings) == NULL && readings.n_lines == 3);
  ph_readings_clear (&readings);
  draft.line_sds[0] = 0;
  CHECK (ph_measure_draft_finish (&draft, &readings) != NULL);
}

/* By the frame of the physics page: x ahead, y to the archer's left, z up. */
static void
angles_make_the_direction_that_they_say (void)
{
  double d[3], side, across;
  ph_measure_direction (0, 0, d);
  CHECK (d[0] == 0 && d[1] == 0 && d[2] == -1);
  ph_measure_direction (30, 0, d);
  CHECK_NEAR (d[0], 0.5, 1e-15);
  CHECK_NEAR (d[2], -sqrt (0.75), 1e-15);
  ph_measure_direction (0, 30, d);
  CHECK_NEAR (d[1], 0.5, 1e-15);
  for (double a = -172.5; a <= 180; a += 7.5)
    for (double b = -80; b <= 80; b += 3.3)
      {
        ph_measure_direction (a, b, d);
        CHECK_NEAR (d[0] * d[0] + d[1] * d[1] + d[2] * d[2], 1, 1e-14);
        ph_measure_angles ((double[]){ 7 * d[0], 7 * d[1], 7 * d[2] }, &side, &across);
        CHECK_NEAR (side, a, 1e-9);
        CHECK_NEAR (across, b, 1e-9);
      }
}

/* A line by its angles is the line by two points on it, and comes back as it was typed. */
static void
line_may_be_typed_as_a_point_and_its_angles (void)
{
  PhMeasureDraft draft = ph_measure_draft_empty (PH_METHOD_HANGING);
  PhReadings readings;
  type_line (&draft, 0, 60, 300, 62, 0);
  type_line (&draft, 1, 300, -40, NAN, NAN);
  draft.by_angle[1] = TRUE;
  CHECK (ph_measure_draft_finish (&draft, &readings) != NULL); /* no angle yet */
  draft.angles[1][0] = -88.5;
  draft.angles[1][1] = 91;
  CHECK (ph_measure_draft_finish (&draft, &readings) != NULL);
  draft.angles[1][1] = 0.7;
  CHECK (ph_measure_draft_finish (&draft, &readings) == NULL && readings.n_lines == 2);
  PhMeasureDraft back = ph_measure_draft_of (&readings);
  CHECK (back.by_angle[1] && !back.by_angle[0]);
  CHECK (back.angles[1][0] == -88.5 && back.angles[1][1] == 0.7);
  CHECK (back.points[1][0][0] == 300 && isnan (back.points[1][1][0]));
  CHECK (back.points[0][1][0] == 62);
  ph_readings_clear (&readings);
}

static void
draft_wants_every_number_of_its_method (void)
{
  PhReadings readings;
  PhMeasureDraft scales = ph_measure_draft_empty (PH_METHOD_SCALES);
  scales.readings.f1_n = scales.readings.f2_n = 10;
  CHECK (ph_measure_draft_finish (&scales, &readings) != NULL);
  scales.readings.d_mm = 300;
  CHECK (ph_measure_draft_finish (&scales, &readings) == NULL);
  PhMeasureDraft strings = ph_measure_draft_empty (PH_METHOD_TWO_STRING);
  strings.readings.mass_g = strings.readings.spacing_mm = strings.readings.length_mm = 300;
  strings.readings.swings = 20;
  CHECK (ph_measure_draft_finish (&strings, &readings) != NULL);
  strings.readings.seconds = 40;
  CHECK (ph_measure_draft_finish (&strings, &readings) == NULL);
}

static void
words_name_number_source_and_angle (void)
{
  PhRig *rig = ph_rig_new ();
  PhMatters matters = { -1, "com_mm", 1, PH_SOURCE_GUESSED, 1.1 * G_PI / 180 };
  g_autofree char *words = ph_matters_words (rig, &matters);
  CHECK_TEXT (words, "The guess that matters most now: the bow’s own side offset, guessed: ±1.1° "
                     "of bubble.");
  rig->bow.kind = PH_BOW_BAREBOW;
  matters.source = PH_SOURCE_UNSTATED;
  g_autofree char *lean = ph_matters_words (rig, &matters);
  CHECK (strstr (lean, "of lean") && strstr (lean, "catalogue"));
  ph_rig_free (rig);
}

static void
refusal_is_said_with_its_reason (void)
{
  PhMeasureAnswer answer = { .measured = { .spread_mm = 41.2, .n = 3 } };
  answer.measured.refused = (char *)"the plumb lines miss each other";
  g_autofree char *words = ph_measure_result_words (&answer, PH_UNITS_METRIC);
  CHECK (strstr (words, "41.2 mm") && strstr (words, "cannot be: the plumb lines miss"), "%s",
         words);
  for (int m = 0; m < PH_METHODS; m++)
    CHECK (strlen (ph_measure_how ((PhMethod)m)) > 100 && *ph_measure_gives ((PhMethod)m));
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (draft_wants_two_whole_lines_and_takes_a_third);
  CASE (angles_make_the_direction_that_they_say);
  CASE (line_may_be_typed_as_a_point_and_its_angles);
  CASE (draft_wants_every_number_of_its_method);
  CASE (words_name_number_source_and_angle);
  CASE (refusal_is_said_with_its_reason);
  return check_end ();
}
