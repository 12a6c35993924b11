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

static void
check_that_was_set_aside_teaches_no_later_prediction (void)
{
  PhRig *rig = rig_with (2, (double[]){ 1.0, 1.0 }, (double[]){ NAN, 1.0 });
  ph_edit_set_check_aside (rig, 0, true);
  PhCheckRecord *records = ph_check_records_of (rig);
  CHECK (records[1].sealed && !records[1].own_hand && isnan (records[1].half_deg));
  CHECK (!isnan (records[0].residual_sd));
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
  CASE (check_that_was_set_aside_teaches_no_later_prediction);
  return check_end ();
}
