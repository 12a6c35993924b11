/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What may be said about the bubble: by weight alone while the hand is unknown, as an interval
 * once it is known, and nothing where the rig topples.
 */
#include "model/settle.h"

#include "base/units.h"
#include "check.h"

static PhRoll
roll_of (double y_mm)
{
  return (PhRoll){ .side_nm = 3.0 * PH_GRAVITY * ph_from_milli (y_mm),
                   .top_nm = 3.0 * PH_GRAVITY * -0.02,
                   .cos_beta = 0.998 };
}

/* A report as ph_report_new fills it, as far as the lean goes. */
static PhReport
report_of (double y_mm, bool fitted, double stiffness, double bias)
{
  PhReport report = { .roll = roll_of (y_mm), .hand_fitted = fitted };
  double cant = NAN;
  report.hand.stiffness_nm_per_rad = stiffness;
  report.hand.bias_nm = bias;
  report.roll_moment_nm = ph_roll_torque (&report.roll, 0.0);
  report.stable = ph_cant_predict (&report.roll, stiffness, bias, &cant) == PH_OK;
  report.cant_rad = cant;
  report.bubble_rad = report.stable ? ph_cant_bubble (&report.roll, cant) : (double)NAN;
  report.cant_90_rad[0] = fitted ? cant - 0.01 : (double)NAN;
  report.cant_90_rad[1] = fitted ? cant + 0.01 : (double)NAN;
  return report;
}

static PhRig
rig_of (PhBowKind kind)
{
  return (PhRig){ .bow = { .kind = kind } };
}

static void
unknown_hand_leans_by_weight_alone (void)
{
  PhRig rig = rig_of (PH_BOW_COMPOUND);
  /* The file assumes a hand with a twist to the right: not used for the picture. */
  PhReport report = report_of (3.0, false, 0.5, 0.4);
  PhSettle settle = ph_settle_of (&rig, &report, NULL);
  CHECK (!settle.hand_known && settle.settles && settle.has_level);
  CHECK (settle.heavy_side == -1);
  /* (K + k) φ = −M g cosβ y for a small lean, k = M g cosβ·0.02 (cosβ is in the roll's numbers
     already): 0.08826/2.588 = 0.0341 rad left; third order terms are under 1e-4. */
  CHECK_NEAR (settle.tilt_rad, -0.0341 * 0.998, 1e-4);
  CHECK (settle.band.lo_rad < settle.tilt_rad && settle.tilt_rad < settle.band.hi_rad);
  CHECK (settle.band.hi_rad < 0.0);
}

static void
known_hand_shows_its_interval (void)
{
  PhRig rig = rig_of (PH_BOW_RECURVE);
  PhReport report = report_of (3.0, true, 2.5, 0.02);
  PhSettle settle = ph_settle_of (&rig, &report, NULL);
  CHECK (settle.hand_known && !settle.has_level);
  CHECK (settle.tilt_rad == report.bubble_rad);
  /* asin is nearly straight here: 0.01 rad of cant is 0.998·0.01 of bubble, to 1e-5. */
  CHECK_NEAR (settle.band.hi_rad - settle.tilt_rad, 0.00998, 1e-5);
  CHECK_NEAR (settle.tilt_rad - settle.band.lo_rad, 0.00998, 1e-5);
}

static void
interval_past_a_quarter_turn_is_cut_there (void)
{
  PhRig rig = rig_of (PH_BOW_COMPOUND);
  PhReport report = report_of (3.0, true, 2.5, 0.02);
  report.cant_90_rad[0] = -4.0;
  report.cant_90_rad[1] = 4.0;
  PhSettle settle = ph_settle_of (&rig, &report, NULL);
  CHECK_NEAR (settle.band.hi_rad, asin (0.998), 1e-12);
  CHECK_NEAR (settle.band.lo_rad, -asin (0.998), 1e-12);
}

static void
toppling_rig_has_no_tilt (void)
{
  PhRig rig = rig_of (PH_BOW_COMPOUND);
  PhReport report = report_of (3.0, true, 2.5, 0.0);
  report.roll.top_nm = 30.0;
  report.stable = false;
  report.cant_90_rad[0] = report.cant_90_rad[1] = NAN;
  PhSettle settle = ph_settle_of (&rig, &report, NULL);
  CHECK (!settle.settles && isnan (settle.tilt_rad) && isnan (settle.band.lo_rad));
  report.hand_fitted = false;
  settle = ph_settle_of (&rig, &report, NULL);
  CHECK (!settle.settles && settle.band.some_topple && isnan (settle.band.lo_rad));
}

static void
reference_is_judged_by_the_open_rigs_hand (void)
{
  PhRig rig = rig_of (PH_BOW_COMPOUND);
  PhReport report = report_of (3.0, true, 2.5, 0.02);
  PhReport reference = report_of (1.0, true, 0.7, -0.3); /* another archer's hand */
  PhReport same_hand = report_of (1.0, true, 2.5, 0.02);
  PhSettle settle = ph_settle_of (&rig, &report, &reference);
  CHECK (settle.has_reference);
  CHECK_NEAR (settle.reference_tilt_rad, same_hand.bubble_rad, 1e-12);
  CHECK (settle.change.lo_rad == settle.change.hi_rad);
  CHECK_NEAR (settle.change.lo_rad, settle.tilt_rad - settle.reference_tilt_rad, 1e-15);
}

static void
unknown_hand_gives_the_change_as_a_range (void)
{
  PhRig rig = rig_of (PH_BOW_COMPOUND);
  PhReport report = report_of (3.0, false, 2.0, 0.0);
  PhReport reference = report_of (1.0, false, 2.0, 0.0);
  PhSettle settle = ph_settle_of (&rig, &report, &reference);
  CHECK (settle.change.lo_rad < settle.change.hi_rad && settle.change.hi_rad < 0.0);
  CHECK (settle.change.lo_rad < settle.tilt_rad - settle.reference_tilt_rad);
  CHECK (settle.change.hi_rad > settle.tilt_rad - settle.reference_tilt_rad);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (unknown_hand_leans_by_weight_alone);
  CASE (known_hand_shows_its_interval);
  CASE (interval_past_a_quarter_turn_is_cut_there);
  CASE (toppling_rig_has_no_tilt);
  CASE (reference_is_judged_by_the_open_rigs_hand);
  CASE (unknown_hand_gives_the_change_as_a_range);
  return check_end ();
}
