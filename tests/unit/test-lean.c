/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The lean of an unknown hand, held against the torque equation itself and against a plain
 * bisection of it, and its cost on the target against the law of free fall.
 */
#include "physics/lean.h"

#include "base/units.h"
#include "check.h"

/* A rig of 3 kg whose centre lies 2 mm left and 23 mm below the grip–nock line. */
static PhRoll
hanging_left (void)
{
  return (PhRoll){ .side_nm = 3.0 * PH_GRAVITY * 0.002,
                   .top_nm = 3.0 * PH_GRAVITY * -0.023,
                   .cos_beta = 0.998 };
}

/* The same centre above the line: gravity pushes it over with 0.4 N·m/rad. */
static PhRoll
standing_left (double top_nm)
{
  return (PhRoll){ .side_nm = 0.06, .top_nm = top_nm, .cos_beta = 1.0 };
}

/* Our own road: the first zero met going left in steps of 1e-5 rad. */
static double
walk_to_zero (const PhRoll *roll, double stiffness)
{
  for (double cant = 0.0; cant > -PH_CANT_LIMIT_RAD; cant -= 1e-5)
    if (-roll->side_nm * cos (cant) + roll->top_nm * sin (cant) - stiffness * cant >= 0.0)
      return asin (roll->cos_beta * sin (cant));
  return NAN;
}

static void
range_of_an_unknown_hand_runs_from_the_loose_to_the_firm_one (void)
{
  PhRoll roll = hanging_left ();
  PhLeanRange range = ph_lean_range (&roll);
  CHECK (!range.some_topple);
  /* 1e-5 rad is the step of the walk. */
  CHECK_NEAR (range.lo_rad, walk_to_zero (&roll, 1.0), 1.1e-5);
  CHECK_NEAR (range.hi_rad, walk_to_zero (&roll, 4.0), 1.1e-5);
  CHECK (range.lo_rad < range.hi_rad && range.hi_rad < 0.0);
}

static void
every_hand_between_lies_inside_the_range (void)
{
  PhRoll rolls[] = { hanging_left (), standing_left (0.4), standing_left (-1.0) };
  for (size_t i = 0; i < sizeof rolls / sizeof *rolls; i++)
    {
      PhLeanRange range = ph_lean_range (&rolls[i]);
      for (double hand = 1.0; hand <= 4.0; hand += 0.125)
        {
          double tilt = ph_lean_tilt (&rolls[i], hand);
          CHECK (tilt >= range.lo_rad && tilt <= range.hi_rad, "hand %g: %g", hand, tilt);
        }
    }
}

static void
range_is_open_where_the_loosest_hands_cannot_hold (void)
{
  /* 0.9 N·m to the left, 1.5 N·m/rad of gravity pushing it over: K = 1 cannot hold it near
     plumb, K = 4 can. */
  PhRoll roll = { .side_nm = 0.9, .top_nm = 1.5, .cos_beta = 1.0 };
  PhLeanRange range = ph_lean_range (&roll);
  CHECK (isnan (ph_lean_tilt (&roll, 1.0)));
  CHECK (range.some_topple);
  CHECK (range.lo_rad < range.hi_rad && range.hi_rad < 0.0);
  CHECK_NEAR (range.hi_rad, walk_to_zero (&roll, 4.0), 1.1e-5);
}

static void
range_is_missing_where_no_hand_holds (void)
{
  PhRoll roll = { .side_nm = 1.0, .top_nm = 9.0, .cos_beta = 1.0 };
  PhLeanRange range = ph_lean_range (&roll);
  CHECK (isnan (range.lo_rad) && isnan (range.hi_rad) && range.some_topple);
}

static void
plumb_rig_stays_plumb_in_every_hand (void)
{
  PhRoll roll = { .side_nm = 0.0, .top_nm = -0.7, .cos_beta = 1.0 };
  PhLeanRange range = ph_lean_range (&roll);
  CHECK (range.lo_rad == 0.0 && range.hi_rad == 0.0 && !range.some_topple);
}

static void
change_of_an_equal_rig_is_nothing_and_mirrors_with_the_sides (void)
{
  PhRoll left = hanging_left (), plumb = left, right = left;
  plumb.side_nm = 0.0;
  right.side_nm = -left.side_nm;
  PhLeanRange none = ph_lean_change_range (&left, &left);
  CHECK (none.lo_rad == 0.0 && none.hi_rad == 0.0);
  PhLeanRange there = ph_lean_change_range (&plumb, &left);
  PhLeanRange back = ph_lean_change_range (&plumb, &right);
  /* Mirror symmetry of the equation; the root finder's own last bits. */
  CHECK_NEAR (there.lo_rad, -back.hi_rad, 1e-12);
  CHECK_NEAR (there.hi_rad, -back.lo_rad, 1e-12);
  /* From plumb the change is the lean itself. */
  PhLeanRange lean = ph_lean_range (&left);
  CHECK_NEAR (there.lo_rad, lean.lo_rad, 1e-12);
  CHECK_NEAR (there.hi_rad, lean.hi_rad, 1e-12);
}

static void
change_leaves_out_hands_that_cannot_hold_either_rig (void)
{
  PhRoll steady = hanging_left ();
  PhRoll tippy = { .side_nm = 0.9, .top_nm = 1.5, .cos_beta = 1.0 };
  PhLeanRange change = ph_lean_change_range (&steady, &tippy);
  CHECK (change.some_topple && change.hi_rad < 0.0 && change.lo_rad < change.hi_rad);
}

static void
drop_is_that_of_free_fall (void)
{
  /* Free fall from rest: 4.90 m after one second, 19.6 m after two (OpenStax University Physics
     vol. 1, section 3.5, from memory; to the digits given there). */
  CHECK_NEAR (ph_lean_drop (60.0, 60.0), 4.90, 0.005);
  CHECK_NEAR (ph_lean_drop (120.0, 60.0), 19.6, 0.05);
  CHECK (ph_lean_drop (0.0, 60.0) == 0.0);
}

static void
miss_goes_where_the_top_limb_leans (void)
{
  /* 1.70 m of drop and 1° to the right: 2.97 cm to the right. */
  CHECK_NEAR (ph_lean_miss (1.70, ph_rad_from_deg (1.0), 0.0), 0.02967, 1e-5);
  CHECK (ph_lean_miss (1.70, ph_rad_from_deg (-1.0), 0.0) < 0.0);
  /* A sight set at the lean that is wanted misses nothing at it. */
  CHECK (ph_lean_miss (1.70, 0.05, 0.05) == 0.0);
  /* Tiny: the sine is the angle. */
  CHECK_REL (ph_lean_miss (2.0, 1e-8, 0.0), 2e-8, 1e-12);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (range_of_an_unknown_hand_runs_from_the_loose_to_the_firm_one);
  CASE (every_hand_between_lies_inside_the_range);
  CASE (range_is_open_where_the_loosest_hands_cannot_hold);
  CASE (range_is_missing_where_no_hand_holds);
  CASE (plumb_rig_stays_plumb_in_every_hand);
  CASE (change_of_an_equal_rig_is_nothing_and_mirrors_with_the_sides);
  CASE (change_leaves_out_hands_that_cannot_hold_either_rig);
  CASE (drop_is_that_of_free_fall);
  CASE (miss_goes_where_the_top_limb_leans);
  return check_end ();
}
