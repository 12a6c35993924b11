/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The record of predictions. Bands are held against a sum done here by hand: with one check in use
 * the hand's covariance is that of physics section 4, put in from the fit; the band is then
 * 1.645·√(sd of the cant² + σ²). The factor is the normal distribution's 95 % point (NIST/SEMATECH
 * e-Handbook, section 1.3.6.7.1).
 */
#include "model/check-record.h"

#include <math.h>
#include <stdlib.h>

#include "base/units.h"
#include "check.h"
#include "model/checks.h"
#include "model/compile.h"
#include "model/starter.h"

static PhRig *
rig_with (size_t n, const double *bubble_deg, const double *predicted_deg)
{
  PhStarter starter = { PH_BOW_COMPOUND, PH_BOW_HAND_LEFT, 712, NAN };
  PhRig *rig = ph_starter_rig (&starter, NULL);
  for (size_t i = 0; i < n; i++)
    {
      PhIssues issues = { 0 };
      PhReading reading = ph_reading_of (&bubble_deg[i], 1);
      reading.predicted_deg = predicted_deg[i];
      CHECK (ph_edit_add_check (rig, &reading, NULL, &issues));
      ph_issues_clear (&issues);
    }
  return rig;
}

static void
first_prediction_is_of_an_assumed_hand_and_not_counted (void)
{
  size_t held;
  PhRig *rig = rig_with (1, (double[]){ 1.0 }, (double[]){ 1.0 });
  PhCheckRecord *records = ph_check_records_of (rig);
  CHECK (records[0].sealed && !records[0].own_hand && !records[0].held);
  CHECK (isnan (records[0].half_deg));
  CHECK (ph_check_records_count (records, 1, &held) == 0 && held == 0);
  free (records);
  ph_rig_free (rig);
}

static void
band_is_the_cants_interval_with_the_readings_scatter (void)
{
  PhRig *rig = rig_with (2, (double[]){ 1.0, 1.2 }, (double[]){ NAN, 1.0 });
  PhRig *before = ph_rig_copy (rig);
  PhHand hand;
  bool fitted;
  before->archer.checks[1].aside = true;
  CHECK (ph_compile_hand (before, &hand, &fitted) == PH_OK && fitted);
  size_t n;
  PhBubbleCheck *checks = ph_compile_checks (rig, &n, NULL);
  double cant;
  CHECK (ph_cant_predict (&checks[1].roll, hand.stiffness_nm_per_rad, hand.bias_nm, &cant)
         == PH_OK);
  double turn = 1e-6; /* the bubble's turn by the cant's, as a difference */
  double by_cant = (ph_cant_bubble (&checks[1].roll, cant + turn)
                    - ph_cant_bubble (&checks[1].roll, cant - turn))
                   / (2 * turn);
  double sd = ph_deg_from_rad (ph_cant_sd (&checks[1].roll, &hand, cant)) * by_cant;
  PhCheckRecord *records = ph_check_records_of (rig);
  CHECK_REL (records[1].half_deg, 1.6448536 * sqrt (sd * sd + 0.3 * 0.3), 1e-6);
  CHECK (records[1].own_hand && records[1].held);
  CHECK (!records[0].sealed);
  free (records);
  free (checks);
  ph_rig_free (before);
  ph_rig_free (rig);
}

static void
reading_outside_the_band_is_a_miss (void)
{
  size_t held;
  PhRig *rig = rig_with (3, (double[]){ 1.0, 1.0, 9.0 }, (double[]){ NAN, 1.0, 1.0 });
  PhCheckRecord *records = ph_check_records_of (rig);
  CHECK (records[1].held && !records[2].held);
  CHECK (ph_check_records_count (records, 3, &held) == 2 && held == 1);
  CHECK (records[2].disagrees);
  free (records);
  ph_rig_free (rig);
}

/* Each check sealed as the window and the command line do it. */
static PhRig *
rig_sealed (size_t n, const double *bubble_deg)
{
  PhRig *rig = rig_with (0, NULL, NULL);
  for (size_t i = 0; i < n; i++)
    {
      PhCompiled *compiled = ph_compile_rig (rig);
      PhReport *report = ph_report_new (rig, compiled);
      PhReading reading = ph_reading_of (&bubble_deg[i], 1);
      reading.predicted_deg = ph_deg_from_rad (report->bubble_rad);
      reading.predicted_90_deg = ph_checks_sure_deg (report);
      CHECK (isnan (reading.predicted_90_deg) == (i == 0));
      CHECK (ph_edit_add_check (rig, &reading, NULL, NULL));
      ph_report_free (report);
      ph_compiled_free (compiled);
    }
  return rig;
}

static void
verdict_is_that_of_the_sealed_interval (void)
{
  PhRig *rig = rig_sealed (3, (double[]){ 1.0, 1.1, 5.0 });
  PhCheckRecord *records = ph_check_records_of (rig);
  const PhCheck *second = &rig->archer.checks[1];
  CHECK (records[0].sealed && !records[0].own_hand && !records[0].held);
  CHECK_REL (records[1].half_deg,
             sqrt (second->predicted_90_deg * second->predicted_90_deg
                   + 1.6448536269514722 * 1.6448536269514722 * 0.3 * 0.3),
             1e-12);
  CHECK (records[1].held && !records[2].held);
  free (records);
  ph_rig_free (rig);
}

static void
check_same_verdicts (const PhCheckRecord *a, const PhCheckRecord *b, size_t n)
{
  for (size_t i = 0; i < n; i++)
    {
      CHECK (a[i].held == b[i].held && a[i].own_hand == b[i].own_hand, "check %zu", i);
      CHECK (isnan (a[i].half_deg) == isnan (b[i].half_deg));
      CHECK (isnan (a[i].half_deg) || a[i].half_deg == b[i].half_deg, "check %zu", i);
    }
}

/* Sealed with an interval, and as in a file of before intervals were kept. */
static void
what_happens_to_one_check_changes_no_verdict_of_another (void)
{
  for (int kept = 0; kept < 2; kept++)
    {
      PhRig *rig = rig_sealed (4, (double[]){ 1.0, 1.4, -2.0, 0.9 });
      for (size_t i = 0; i < 4 && !kept; i++)
        rig->archer.checks[i].predicted_90_deg = NAN;
      PhCheckRecord *before = ph_check_records_of (rig);
      CHECK (!before[0].own_hand && before[1].own_hand && before[3].own_hand);
      ph_edit_set_check_aside (rig, 0, true);
      ph_edit_set_check_aside (rig, 2, true);
      PhCheckRecord *aside = ph_check_records_of (rig);
      check_same_verdicts (before, aside, 4);
      free (aside);
      ph_edit_set_check_aside (rig, 0, false);
      ph_edit_delete_check (rig, kept ? 0 : 3);
      PhCheckRecord *less = ph_check_records_of (rig);
      check_same_verdicts (kept ? before + 1 : before, less, 3);
      free (less);
      free (before);
      ph_rig_free (rig);
    }
}

/* A long list of before intervals were kept: no fit of everything before each, no number made up. */
static void
late_checks_of_a_long_list_are_not_judged (void)
{
  static double bubble[80], predicted[80];
  for (int i = 0; i < 80; i++)
    bubble[i] = predicted[i] = 0.5 + 0.01 * (i % 9);
  PhRig *rig = rig_with (80, bubble, predicted);
  PhCheckRecord *records = ph_check_records_of (rig);
  size_t held, counted = ph_check_records_count (records, 80, &held);
  CHECK (counted == held && counted > 40 && counted < 79, "%zu counted", counted);
  CHECK (records[79].own_hand && isnan (records[79].half_deg) && !records[79].held);
  free (records);
  ph_rig_free (rig);
}

/* The first was set aside before the second was read: the second's hand was assumed again. */
static void
prediction_after_all_was_set_aside_does_not_count (void)
{
  PhRig *rig = rig_sealed (1, (double[]){ 1.0 });
  ph_edit_set_check_aside (rig, 0, true);
  PhReading reading = ph_reading_of ((double[]){ 1.0 }, 1);
  reading.predicted_deg = ph_checks_predict_deg (rig);
  CHECK (ph_edit_add_check (rig, &reading, NULL, NULL));
  ph_edit_set_check_aside (rig, 0, false);
  PhCheckRecord *records = ph_check_records_of (rig);
  CHECK (records[1].sealed && !records[1].own_hand && isnan (records[1].half_deg));
  free (records);
  ph_rig_free (rig);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (first_prediction_is_of_an_assumed_hand_and_not_counted);
  CASE (band_is_the_cants_interval_with_the_readings_scatter);
  CASE (reading_outside_the_band_is_a_miss);
  CASE (verdict_is_that_of_the_sealed_interval);
  CASE (what_happens_to_one_check_changes_no_verdict_of_another);
  CASE (late_checks_of_a_long_list_are_not_judged);
  CASE (prediction_after_all_was_set_aside_does_not_count);
  return check_end ();
}
