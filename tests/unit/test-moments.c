/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Blocks of the balance beam: nothing lost, nothing on the wrong side.
 */
#include "model/moments.h"

#include "check.h"

static PhShare shares[] = {
  { .part = -1, .roll_moment_nm = 0.06, .pitch_moment_nm = -0.34 },
  { .part = 0, .roll_moment_nm = 0.115, .pitch_moment_nm = 0.46 },
  { .part = 1, .roll_moment_nm = 0.0, .pitch_moment_nm = 0.7 },
  { .part = 2, .roll_moment_nm = -0.01, .pitch_moment_nm = -0.05 },
  { .part = 3, .roll_moment_nm = -0.07, .pitch_moment_nm = -0.2 },
  { .part = 4, .roll_moment_nm = -0.16, .pitch_moment_nm = -0.5 },
  { .part = 5, .roll_moment_nm = -0.004, .pitch_moment_nm = 0.01 },
};

static PhReport
some_report (void)
{
  return (PhReport){ .shares = shares, .n_shares = sizeof shares / sizeof *shares };
}

static double
sum_of (const PhSide *side)
{
  double sum = 0.0;
  for (size_t i = 0; i < side->n; i++)
    sum += side->blocks[i].moment_nm;
  return sum;
}

static void
sides_hold_every_moment_once (void)
{
  PhReport report = some_report ();
  double total = 0.0;
  for (size_t i = 0; i < report.n_shares; i++)
    total += shares[i].roll_moment_nm;
  for (double least = 0.0; least < 1.1; least += 0.1)
    {
      PhSides sides = ph_sides_of (&report, least, PH_BLOCK_REST);
      /* Sums of a few numbers below 1: rounding stays under 1e-15. */
      CHECK_NEAR (sum_of (&sides.right) - sum_of (&sides.left), total, 1e-15);
      CHECK_NEAR (sides.right.total_nm - sides.left.total_nm, total, 1e-15);
      ph_sides_clear (&sides);
    }
}

static void
positive_moments_stand_right_and_the_largest_first (void)
{
  PhReport report = some_report ();
  PhSides sides = ph_sides_of (&report, 0.0, PH_BLOCK_REST);
  CHECK (sides.right.n == 2 && sides.left.n == 4);
  CHECK (sides.right.blocks[0].part == 0 && sides.right.blocks[1].part == -1);
  CHECK (sides.left.blocks[0].part == 4 && sides.left.blocks[1].part == 3);
  ph_sides_clear (&sides);
}

static void
small_ones_become_one_rest (void)
{
  PhReport report = some_report ();
  /* A fifth of the heavier side, 0.244 N·m. */
  PhSides sides = ph_sides_of (&report, 0.2, PH_BLOCK_REST);
  CHECK (sides.left.n == 3);
  PhBlock rest = sides.left.blocks[2];
  CHECK (rest.part == PH_BLOCK_REST && rest.merged == 2);
  CHECK_NEAR (rest.moment_nm, 0.014, 1e-15);
  ph_sides_clear (&sides);
}

static void
selected_part_is_never_merged (void)
{
  PhReport report = some_report ();
  PhSides sides = ph_sides_of (&report, 0.2, 5);
  CHECK (sides.left.n == 4);
  CHECK (sides.left.blocks[2].part == 5 && sides.left.blocks[2].merged == 1);
  /* The one that is left over keeps its name. */
  CHECK (sides.left.blocks[3].part == 2 && sides.left.blocks[3].merged == 1);
  ph_sides_clear (&sides);
}

static void
rig_on_the_plane_has_no_blocks (void)
{
  PhShare flat[] = { { .part = -1, .roll_moment_nm = 0.0 }, { .part = 0, .roll_moment_nm = -0.0 } };
  PhReport report = { .shares = flat, .n_shares = 2 };
  PhSides sides = ph_sides_of (&report, 0.1, PH_BLOCK_REST);
  CHECK (sides.left.n == 0 && sides.right.n == 0 && sides.left.total_nm == 0.0);
  ph_sides_clear (&sides);
  CHECK (ph_shares_largest (&report, false) == 0.0);
}

static void
hand_and_levelling_hold_what_the_weight_pulls (void)
{
  for (double bias = -0.1; bias <= 0.1; bias += 0.05)
    for (double top = -1.0; top <= 1.0; top += 0.5)
      {
        PhReport report = { .roll = { 0.09, top, 0.998 }, .hand = { 2.0, bias, 0, 0, 0 } };
        report.stable = ph_cant_predict (&report.roll, 2.0, bias, &report.cant_rad) == PH_OK;
        PhHolding holding = ph_holding_of (&report);
        CHECK (report.stable);
        /* The equilibrium itself; the root finder leaves its last bits. */
        CHECK_NEAR (ph_roll_torque (&report.roll, 0.0) + holding.hand_nm + holding.levelling_nm,
                    0.0, 1e-12);
        /* The weight leans it left, to −φ: what hangs low (top < 0) swings back to the right. */
        if (top < 0.0 && report.cant_rad < 0.0)
          CHECK (holding.levelling_nm > 0.0);
      }
  PhReport topples = { .stable = false };
  CHECK (isnan (ph_holding_of (&topples).hand_nm));
}

static void
largest_share_sets_the_scale (void)
{
  PhReport report = some_report ();
  CHECK (ph_shares_largest (&report, false) == 0.16);
  CHECK (ph_shares_largest (&report, true) == 0.7);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (sides_hold_every_moment_once);
  CASE (positive_moments_stand_right_and_the_largest_first);
  CASE (small_ones_become_one_rest);
  CASE (selected_part_is_never_merged);
  CASE (rig_on_the_plane_has_no_blocks);
  CASE (hand_and_levelling_hold_what_the_weight_pulls);
  CASE (largest_share_sets_the_scale);
  return check_end ();
}
