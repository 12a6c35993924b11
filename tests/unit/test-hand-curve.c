/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The hand's plot: the curve at the open rig's own moment must be what its report says, which is
 * made by other code, and a check's place is its weight times its lever arm, worked out by hand.
 */
#include "widgets/hand-curve.h"

#include "base/units.h"
#include "check.h"
#include "model/checks.h"
#include "model/starter.h"

static PhRig *
rig_with_check (void)
{
  PhStarter starter = { PH_BOW_COMPOUND, PH_BOW_HAND_LEFT, 712, NAN };
  PhRig *rig = ph_starter_rig (&starter, NULL);
  PhIssues issues = { 0 };
  const double bubble[] = { 1.0 };
  PhReading reading = ph_reading_of (bubble, 1);
  CHECK (ph_edit_add_check (rig, &reading, NULL, &issues));
  ph_issues_clear (&issues);
  return rig;
}

static void
open_rig_stands_where_its_report_says (void)
{
  PhRig *rig = rig_with_check ();
  PhCompiled *compiled = ph_compile_rig (rig);
  PhReport *report = ph_report_new (rig, compiled);
  PhHandCurve curve = ph_hand_curve_of (rig, report);
  CHECK_REL (curve.open.moment_nm, report->roll_moment_nm, 1e-12);
  CHECK_REL (curve.open.tilt_deg, ph_deg_from_rad (report->bubble_rad), 1e-12);
  double half_cant = ph_deg_from_rad (report->cant_90_rad[1] - report->cant_90_rad[0]) / 2;
  CHECK_REL (curve.open.half_deg, half_cant, 0.01); /* cosβ is 0.998 */
  CHECK (curve.lo_nm < curve.open.moment_nm && curve.open.moment_nm < curve.hi_nm);
  CHECK (curve.lo_deg < 0 && curve.hi_deg > 0);
  ph_hand_curve_clear (&curve);
  ph_report_free (report);
  ph_compiled_free (compiled);
  ph_rig_free (rig);
}

static void
check_stands_at_weight_times_lever_arm (void)
{
  PhRig *rig = rig_with_check ();
  PhCheck *check = &rig->archer.checks[0];
  check->mass_g = 3000;
  check->com_mm[1] = -10;
  check->draw_length_mm = 660;
  check->nock_height_mm = 0;
  PhCompiled *compiled = ph_compile_rig (rig);
  PhReport *report = ph_report_new (rig, compiled);
  PhHandCurve curve = ph_hand_curve_of (rig, report);
  /* 3 kg, 10 mm right of the plane: 3 · 9.80665 · 0.01 = 0.2942 N·m to the right. */
  CHECK_NEAR (curve.checks[0].moment_nm, 0.2941995, 1e-9);
  CHECK_NEAR (curve.checks[0].half_deg, 1.6448536 * 0.3, 1e-6);
  ph_hand_curve_clear (&curve);
  ph_report_free (report);
  ph_compiled_free (compiled);
  ph_rig_free (rig);
}

static void
assumed_hand_has_no_line (void)
{
  PhRig *rig = rig_with_check ();
  ph_edit_set_check_aside (rig, 0, true);
  PhCompiled *compiled = ph_compile_rig (rig);
  PhReport *report = ph_report_new (rig, compiled);
  PhHandCurve curve = ph_hand_curve_of (rig, report);
  CHECK (isnan (curve.open.tilt_deg) && curve.n == 1);
  for (int i = 0; i < PH_HAND_CURVE_POINTS; i++)
    CHECK (isnan (curve.curve[i].tilt_deg));
  ph_hand_curve_clear (&curve);
  ph_report_free (report);
  ph_compiled_free (compiled);
  ph_rig_free (rig);
}

static void
steps_of_a_plot_are_round (void)
{
  CHECK_NEAR (ph_plot_step (6, 6), 1, 1e-12);
  CHECK_NEAR (ph_plot_step (0.9, 5), 0.2, 1e-12);
  CHECK_NEAR (ph_plot_step (28, 6), 5, 1e-12);
  CHECK_NEAR (ph_plot_step (0.05, 6), 0.01, 1e-12);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (open_rig_stands_where_its_report_says);
  CASE (check_stands_at_weight_times_lever_arm);
  CASE (assumed_hand_has_no_line);
  CASE (steps_of_a_plot_are_round);
  return check_end ();
}
