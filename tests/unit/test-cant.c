/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where the bow settles, against a walk along the torque in small steps, and against what every
 * archer knows about which way a bow leans.
 */
#include "physics/cant.h"

#include "base/units.h"
#include "check.h"
#include "physics/assembly.h"

static unsigned long long random_state = 5;

static double
random_within (double lo, double hi)
{
  /* Knuth's MMIX linear congruence (from memory); the high bits. */
  random_state = random_state * 6364136223846793005ull + 1442695040888963407ull;
  return lo + (hi - lo) * (double)(random_state >> 11) / 9007199254740992.0;
}

static const PhDraw draw = { .draw_length_m = 0.66, .nock_height_m = 0.042 };

static double
torque (const PhRoll *roll, double k, double b, double cant)
{
  return -roll->side_nm * cos (cant) + roll->top_nm * sin (cant) - k * cant + b;
}

/* Walks the way the torque at plumb pushes and halves the first step over which it changes sign;
   NAN without one. `*margin` is the nearest the torque came to 0 at an earlier turning point. */
static double
walk (const PhRoll *roll, double k, double b, double *margin)
{
  double at = torque (roll, k, b, 0), way = at > 0 ? 1 : -1, step = PH_CANT_LIMIT_RAD / 20000;
  double before = fabs (at);
  *margin = INFINITY;
  for (int i = 1; i <= 20000; i++)
    {
      double lo = (i - 1) * step, hi = i == 20000 ? PH_CANT_LIMIT_RAD : i * step;
      double t = way * torque (roll, k, b, way * hi);
      if (t > 0)
        {
          *margin = fmin (*margin, t);
          before = t;
          continue;
        }
      for (int halving = 0; halving < 60; halving++)
        {
          double middle = 0.5 * (lo + hi);
          if (way * torque (roll, k, b, way * middle) > 0)
            lo = middle;
          else
            hi = middle;
        }
      /* Falling through 0, the last value above it is no turning point. */
      if (before <= *margin)
        *margin = INFINITY;
      return way * 0.5 * (lo + hi);
    }
  return NAN;
}

static void
prediction_is_the_first_zero_of_a_walk (void)
{
  int settled = 0, toppled = 0, looked_behind = 0;
  for (int i = 0; i < 3000; i++)
    {
      double size = pow (10, random_within (-2, 1));
      PhRoll roll = { random_within (-size, size), random_within (-size, size), 0.99 };
      double k = pow (10, random_within (-1.3, 1)), b = random_within (-1, 1), margin, got = NAN;
      double want = walk (&roll, k, b, &margin);
      bool steady = ph_cant_predict (&roll, k, b, &got) == PH_OK;
      if (margin < 1e-6 || fabs (torque (&roll, k, b, PH_CANT_LIMIT_RAD)) < 1e-9)
        continue; /* a touch, which rounding decides */
      CHECK (steady == !isnan (want), "side %g top %g K %g B %g", roll.side_nm, roll.top_nm, k, b);
      if (!steady)
        {
          toppled++;
          continue;
        }
      settled++;
      looked_behind += k < hypot (roll.side_nm, roll.top_nm);
      /* Both find the zero of a sum of four rounded terms over its slope. */
      double slope = k + ph_roll_stiffness (&roll, got);
      CHECK_NEAR (got, want, 8e-16 * (size + k + 1) / slope + 4e-16);
      CHECK (slope > 0, "not stable");
    }
  CHECK (settled > 1000 && toppled > 300 && looked_behind > 300, "%d %d %d", settled, toppled,
         looked_behind);
}

static void
torque_and_stiffness_are_those_of_their_formulas (void)
{
  PhRoll roll = ph_roll_of (3, ph_vec3 (0.1, 0.004, -0.05), &draw);
  double cos_beta = cos (atan2 (0.042, 0.66)), sin_beta = sin (atan2 (0.042, 0.66));
  double pull = 3 * 9.80665 * cos_beta, height = 0.1 * sin_beta - 0.05 * cos_beta;
  CHECK_REL (roll.cos_beta, cos_beta, 1e-15);
  for (double cant = -1; cant < 1.1; cant += 0.25)
    {
      CHECK_NEAR (ph_roll_torque (&roll, cant), -pull * (0.004 * cos (cant) - height * sin (cant)),
                  1e-15);
      double h = 1e-5;
      double slope =
          (ph_roll_torque (&roll, cant + h) - ph_roll_torque (&roll, cant - h)) / (2 * h);
      CHECK_NEAR (ph_roll_stiffness (&roll, cant), -slope, 1e-9);
    }
  CHECK_REL (ph_roll_stiffness (&roll, 0), -pull * height, 1e-15);
}

static double
cant_of (PhRoll roll, double k, double b)
{
  double cant = NAN;
  return ph_cant_predict (&roll, k, b, &cant) == PH_OK ? cant : (double)NAN;
}

static void
no_torque_at_plumb_stays_there_only_if_stable (void)
{
  CHECK_NEAR (cant_of ((PhRoll){ 0, -1, 1 }, 2, 0), 0, 0);
  CHECK_NEAR (cant_of ((PhRoll){ 0.3, 1.9, 1 }, 2, 0.3), 0, 0);
  CHECK (isnan (cant_of ((PhRoll){ 0, 2.5, 1 }, 2, 0)), "balanced on its head");
}

static void
bubble_centres_when_the_hand_cancels_the_side (void)
{
  double cant = cant_of ((PhRoll){ 0.3, 0.5, 1 }, 2, 0.3 + 1e-12);
  CHECK_REL (cant, 1e-12 / 1.5, 1e-3);
}

static void
a_nearer_zero_on_the_other_side_is_not_taken (void)
{
  /* Pushed right from plumb; 0.05 to the left lies a tipping point. */
  PhRoll roll = { -0.1, 4, 1 };
  double k = 2, cant = cant_of (roll, k, 0);
  CHECK (torque (&roll, k, 0, -0.06) < 0 && torque (&roll, k, 0, -0.04) > 0);
  CHECK (isnan (cant) || cant > 0);
}

static void
sixty_degrees_are_still_within (void)
{
  /* No gravity: B = Kφ. */
  PhRoll none = { 0, 0, 1 };
  CHECK_NEAR (cant_of (none, 2, 2 * PH_CANT_LIMIT_RAD), PH_CANT_LIMIT_RAD, 0);
  CHECK_NEAR (cant_of (none, 2, -2 * PH_CANT_LIMIT_RAD), -PH_CANT_LIMIT_RAD, 0);
  CHECK (isnan (cant_of (none, 2, 2.0000001 * PH_CANT_LIMIT_RAD)));
}

static void
toppling_leaves_the_answer_untouched (void)
{
  PhRoll roll = { 1, 5, 1 };
  double cant = 42;
  CHECK (ph_cant_predict (&roll, 1, 0, &cant) == PH_ERR_TOPPLES);
  CHECK_NEAR (cant, 42, 0);
}

static void
mirrored_rig_leans_the_mirrored_way (void)
{
  for (int i = 0; i < 1000; i++)
    {
      PhRoll roll = { random_within (-2, 2), random_within (-3, 3), 1 }, other = roll;
      other.side_nm = -roll.side_nm;
      double b = random_within (-1, 1), cant = cant_of (roll, 2, b);
      CHECK_NEAR (cant_of (other, 2, -b), -cant, 0);
    }
}

static void
bubble_tilt_counts_the_slant_of_the_line (void)
{
  PhRoll roll = { 0, 0, 0.5 };
  CHECK_NEAR (ph_cant_bubble (&roll, PH_PI / 2), PH_PI / 6, 1e-15);
  CHECK_NEAR (ph_cant_bubble (&roll, -0.1), -asin (0.5 * sin (0.1)), 0);
}

static void
spread_of_the_cant_is_first_order_in_the_hand (void)
{
  /* Against differences of the prediction itself. */
  PhRoll roll = { -0.4, 0.6, 0.99 };
  PhHand hand = { 2, 0.1, 0.09, -0.02, 0.01 };
  double cant = cant_of (roll, 2, 0.1), h = 1e-5;
  double by_k = (cant_of (roll, 2 + h, 0.1) - cant_of (roll, 2 - h, 0.1)) / (2 * h);
  double by_b = (cant_of (roll, 2, 0.1 + h) - cant_of (roll, 2, 0.1 - h)) / (2 * h);
  double variance = by_k * by_k * 0.09 + 2 * by_k * by_b * -0.02 + by_b * by_b * 0.01;
  CHECK_REL (ph_cant_sd (&roll, &hand, cant), sqrt (variance), 1e-8);
}

static void
interval_factor_is_the_normal_quantile (void)
{
  /* Φ(1.6448536) = 0.95, any table of the normal distribution. */
  CHECK_NEAR (0.5 * erfc (-PH_SD_90 / sqrt (2)), 0.95, 1e-15);
}

/* A compound bow with its sight on the right, as for a left-hand hold, and perhaps a back bar
   on the left: lean in degrees. */
static double
lean_with (double sight_y, double bar_length, double swing)
{
  PhBowBody bow = { 1.95, { -0.018, 0, 0.012 }, { 0.29, 0.295, 0.06 } };
  PhPiece pieces[2] = { { .kind = PH_PIECE_ACCESSORY,
                          .host = PH_HOST_BOW,
                          .seat = PH_SEAT_FREE,
                          .body = ph_body_box (0.31, ph_vec3 (0.15, sight_y, 0.095),
                                               ph_vec3 (0.26, 0.03, 0.06)) },
                        { .kind = PH_PIECE_BAR,
                          .host = PH_HOST_BOW,
                          .seat = PH_SEAT_SOCKET,
                          .seat_at_m = { -0.028, 0, -0.15 },
                          .seat_axis = { -1, 0, 0 },
                          .swing_rad = swing,
                          .length_m = bar_length,
                          .body = ph_piece_bar_body (0.1, 0, 0.15, 0.02, bar_length, 0.018, 0) } };
  PhAssembly *assembly = ph_assembly_new (&bow, pieces, bar_length > 0 ? 2 : 1);
  PhMassProperties m = ph_assembly_properties (assembly);
  ph_assembly_free (assembly);
  return ph_deg_from_rad (cant_of (ph_roll_of (m.mass_kg, m.com_m, &draw), 2, 0));
}

static void
heavy_right_side_sends_the_bubble_left (void)
{
  /* Common practice, no source: the bow leans to its heavy side, the bubble runs to the high
     one. Positive is top limb right, bubble left. */
  CHECK (lean_with (-0.04, 0, 0) > 0);
  CHECK (lean_with (0.04, 0, 0) < 0);
}

static void
bar_swung_out_tips_the_bow_to_its_side (void)
{
  /* Common practice, no source. Left is +y, positive swing, negative lean. */
  double straight = lean_with (0, 0.3, 0);
  CHECK_NEAR (straight, 0, 0);
  CHECK (lean_with (0, 0.3, 0.35) < straight && lean_with (0, 0.3, -0.35) > straight);
  CHECK (lean_with (0, 0.3, 0.7) < lean_with (0, 0.3, 0.35));
}

static void
back_bar_on_the_bow_hand_side_counters_the_sight (void)
{
  /* Common practice, no source: the bow held in the left hand has its sight on the right. */
  double sight_only = lean_with (-0.04, 0, 0), countered = lean_with (-0.04, 0.3, 0.25);
  CHECK (sight_only > 0 && countered < sight_only, "%g then %g", sight_only, countered);
  CHECK (lean_with (-0.04, 0.3, -0.25) > sight_only, "on the other side it adds");
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (prediction_is_the_first_zero_of_a_walk);
  CASE (torque_and_stiffness_are_those_of_their_formulas);
  CASE (no_torque_at_plumb_stays_there_only_if_stable);
  CASE (bubble_centres_when_the_hand_cancels_the_side);
  CASE (a_nearer_zero_on_the_other_side_is_not_taken);
  CASE (sixty_degrees_are_still_within);
  CASE (toppling_leaves_the_answer_untouched);
  CASE (mirrored_rig_leans_the_mirrored_way);
  CASE (bubble_tilt_counts_the_slant_of_the_line);
  CASE (spread_of_the_cant_is_first_order_in_the_hand);
  CASE (interval_factor_is_the_normal_quantile);
  CASE (heavy_right_side_sends_the_bubble_left);
  CASE (bar_swung_out_tips_the_bow_to_its_side);
  CASE (back_bar_on_the_bow_hand_side_counters_the_sight);
  return check_end ();
}
