/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Measuring in the document: what is promised is what comes, as one undo step; the readings stay
 * with the rig through file, mirror and change of parts.
 */
#include "document/document-measure.h"

#include <stdlib.h>

#include "document-fixture.h"

/* Hung from two points so that the plumb lines cross at (60, 4, -40) mm. */
static PhReadings
hung (void)
{
  PhReadings readings = ph_readings_default (PH_METHOD_HANGING);
  ph_readings_add_line (&readings, &(PhReadLine){ { 60, 4, 300 }, { 0, 0, -200 }, 2 });
  ph_readings_add_line (&readings, &(PhReadLine){ { 300, 4, -40 }, { -150, 0, 0 }, 2 });
  return readings;
}

static void
used_reading_is_one_undo_step_and_keeps_its_promise (void)
{
  Fixture fixture = fixture_new ();
  PhDocument *document = fixture.document;
  PhReadings readings = hung ();
  PhMeasureAnswer answer = ph_document_measure (document, &readings);
  CHECK (!answer.measured.refused && answer.measured.n_parts == 6);
  CHECK_NEAR (answer.after.com_mm[0], 60, 1e-9);
  CHECK_NEAR (answer.after.com_mm[1], 4, 1e-9);
  CHECK_NEAR (answer.after.com_mm[2], -40, 1e-9);
  CHECK (answer.after.settles && answer.after.bubble_deg != answer.before.bubble_deg);
  CHECK (answer.after.bubble_sd_deg > 0);
  CHECK_NEAR (ph_document_get_rig (document)->bow.com_mm[0], -18, 0); /* looking changes nothing */
  CHECK (ph_document_use_readings (document, &readings, NULL));
  const PhReport *report = ph_document_get_report (document);
  CHECK_NEAR (report->mass.com_m.y, 0.004, 1e-12);
  CHECK_NEAR (report->bubble_rad * 180 / G_PI, answer.after.bubble_deg, 1e-12);
  CHECK (ph_document_get_rig (document)->bow.source == PH_SOURCE_MEASURED);
  CHECK_TEXT (ph_document_get_undo_label (document), "bow measured");
  CHECK (ph_document_undo (document));
  CHECK_NEAR (ph_document_get_rig (document)->bow.com_mm[0], -18, 0);
  CHECK (!ph_document_get_unsaved (document) && !ph_document_undo (document));
  CHECK (!ph_document_dup_readings (document, PH_METHOD_HANGING, -1, &readings, NULL));
  ph_measure_answer_clear (&answer);
  ph_readings_clear (&readings);
  fixture_clear (&fixture);
}

static void
readings_come_back_from_the_file_as_they_were (void)
{
  Fixture fixture = fixture_new ();
  PhDocument *document = fixture.document;
  PhReadings readings = hung (), back;
  gboolean changed = TRUE;
  CHECK (ph_document_use_readings (document, &readings, NULL));
  CHECK (ph_document_save (document, NULL, NULL));
  CHECK (ph_document_load (document, fixture.file, NULL));
  CHECK (ph_document_get_issues (document)->n == 0); /* the key is no unknown one */
  CHECK (ph_document_dup_readings (document, PH_METHOD_HANGING, -1, &back, &changed));
  CHECK (!changed && back.n_lines == 2);
  CHECK_NEAR (back.lines[1].point_mm[0], 300, 0);
  CHECK_NEAR (back.lines[1].direction[0], -150, 0);
  /* Used again they change nothing: no undo step, nothing to save. */
  CHECK (ph_document_use_readings (document, &back, NULL));
  CHECK (!ph_document_get_unsaved (document));
  ph_readings_clear (&back);
  ph_readings_clear (&readings);
  fixture_clear (&fixture);
}

static void
kept_readings_follow_the_mirror_and_know_other_parts (void)
{
  Fixture fixture = fixture_new ();
  PhDocument *document = fixture.document;
  PhReadings readings = hung (), back;
  gboolean changed;
  CHECK (ph_document_use_readings (document, &readings, NULL));
  ph_document_mirror (document);
  CHECK (ph_document_dup_readings (document, PH_METHOD_HANGING, -1, &back, &changed));
  CHECK (!changed);
  CHECK_NEAR (back.lines[0].point_mm[1], -4, 0);
  PhMeasureAnswer answer = ph_document_measure (document, &back);
  CHECK_NEAR (answer.after.com_mm[1], -4, 1e-9);
  CHECK_NEAR (answer.after.com_mm[1], answer.before.com_mm[1], 1e-9);
  ph_measure_answer_clear (&answer);
  ph_readings_clear (&back);
  CHECK (ph_document_set_number (document, "front-stack", "count", 0, 7, NULL));
  CHECK (ph_document_dup_readings (document, PH_METHOD_HANGING, -1, &back, &changed));
  CHECK (changed);
  ph_readings_clear (&back);
  ph_readings_clear (&readings);
  fixture_clear (&fixture);
}

static PhReadings
pendulum (int axis, double seconds)
{
  PhReadings readings = ph_readings_default (PH_METHOD_SWING);
  readings.axis = axis;
  readings.mass_g = 3000;
  readings.distance_mm = 400;
  readings.swings = 20;
  readings.seconds = seconds;
  return readings;
}

static void
one_set_of_readings_is_kept_for_each_method_and_axis (void)
{
  Fixture fixture = fixture_new ();
  PhDocument *document = fixture.document;
  PhReadings hanging = hung (), roll = pendulum (0, 33), nod = pendulum (1, 36), back;
  CHECK (ph_document_use_readings (document, &hanging, NULL));
  CHECK (ph_document_use_readings (document, &roll, NULL));
  CHECK (ph_document_use_readings (document, &nod, NULL));
  nod.seconds = 36.5;
  CHECK (ph_document_use_readings (document, &nod, NULL));
  CHECK (ph_document_dup_readings (document, PH_METHOD_SWING, 0, &back, NULL));
  CHECK_NEAR (back.seconds, 33, 0);
  CHECK (ph_document_dup_readings (document, PH_METHOD_SWING, 1, &back, NULL));
  CHECK_NEAR (back.seconds, 36.5, 0);
  CHECK (!ph_document_dup_readings (document, PH_METHOD_SWING, 2, &back, NULL));
  CHECK (ph_document_dup_readings (document, PH_METHOD_HANGING, -1, &back, NULL));
  ph_readings_clear (&back);
  ph_readings_clear (&hanging);
  fixture_clear (&fixture);
}

static void
refused_reading_changes_nothing (void)
{
  Fixture fixture = fixture_new ();
  GError *error = NULL;
  PhReadings quick = pendulum (1, 20);
  CHECK (!ph_document_use_readings (fixture.document, &quick, &error));
  CHECK (g_error_matches (error, PH_DOCUMENT_ERROR, PH_DOCUMENT_ERROR_REFUSED));
  g_clear_error (&error);
  CHECK (!ph_document_get_unsaved (fixture.document));
  fixture_clear (&fixture);
}

static void
guess_that_matters_is_the_bows_side_offset_until_it_is_measured (void)
{
  Fixture fixture = fixture_new ();
  PhMatters matters;
  PhReadings readings = hung ();
  CHECK (ph_document_guess_that_matters (fixture.document, &matters));
  CHECK (matters.part == -1 && matters.component == 1);
  CHECK_TEXT (matters.key, "com_mm");
  PhSure sure = ph_sure_of (ph_document_get_rig (fixture.document));
  CHECK (matters.bubble_sd_rad > 0 && matters.bubble_sd_rad < sure.bubble_sd_rad);
  ph_sure_clear (&sure);
  CHECK (ph_document_use_readings (fixture.document, &readings, NULL));
  /* Hanging tells nothing of the mass: that may be named next. */
  CHECK (!ph_document_guess_that_matters (fixture.document, &matters)
             || strcmp (matters.key, "com_mm") != 0,
         "%s", matters.key);
  ph_readings_clear (&readings);
  fixture_clear (&fixture);
}

static void
a_bow_that_no_rig_can_have_is_refused_in_words (void)
{
  Fixture fixture = fixture_new ();
  ph_document_set_units (fixture.document, PH_UNITS_MIXED);
  PhReadings readings = ph_readings_default (PH_METHOD_SCALES);
  readings.f1_n = readings.f2_n = 150 * 9.80665; /* kilograms taken for ounces, or the like */
  readings.d_mm = 100;
  PhMeasureAnswer answer = ph_document_measure (fixture.document, &readings);
  CHECK (answer.measured.refused && strstr (answer.measured.refused, "mass_g"), "%s",
         answer.measured.refused);
  CHECK (answer.refusal && g_str_has_prefix (answer.refusal, "The bow mass is 29")
             && g_str_has_suffix (answer.refusal, " kg; from 0 kg to 20 kg would be right."),
         "%s", answer.refusal);
  GError *error = NULL;
  CHECK (!ph_document_use_readings (fixture.document, &readings, &error));
  CHECK_TEXT (error->message, answer.refusal);
  g_clear_error (&error);
  ph_measure_answer_clear (&answer);
  ph_readings_clear (&readings);
  fixture_clear (&fixture);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (used_reading_is_one_undo_step_and_keeps_its_promise);
  CASE (readings_come_back_from_the_file_as_they_were);
  CASE (kept_readings_follow_the_mirror_and_know_other_parts);
  CASE (one_set_of_readings_is_kept_for_each_method_and_axis);
  CASE (refused_reading_changes_nothing);
  CASE (a_bow_that_no_rig_can_have_is_refused_in_words);
  CASE (guess_that_matters_is_the_bows_side_offset_until_it_is_measured);
  return check_end ();
}
