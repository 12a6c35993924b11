/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The lean as the views say and draw it: no degrees without a hand, sides after rounding, the stop
 * at 30°, and the drawn roll against the physics' own bubble.
 */
#include "widgets/bow-lean.h"

#include "base/units.h"
#include "check.h"
#include "scene/camera.h"

static double
rad (double deg)
{
  return ph_rad_from_deg (deg);
}

static PhSettle
known (double tilt_deg)
{
  return (PhSettle){ .hand_known = true,
                     .settles = true,
                     .heavy_side = tilt_deg < 0 ? -1 : 1,
                     .tilt_rad = rad (tilt_deg),
                     .reference_tilt_rad = NAN };
}

static PhSettle
unknown (double lo_deg, double hi_deg, bool some_topple)
{
  PhSettle settle = known ((lo_deg + hi_deg) / 2);
  settle.hand_known = false;
  settle.band = (PhLeanRange){ rad (lo_deg), rad (hi_deg), some_topple };
  return settle;
}

static void
check_said (PhSettle settle, const char *want)
{
  g_autofree char *said = ph_lean_said (&settle);
  CHECK_TEXT (said, want);
}

static void
a_known_lean_is_said_with_its_degrees (void)
{
  check_said (known (-1.44), "leans left 1.4°");
  check_said (known (0.36), "leans right 0.4°");
  check_said (known (0.04), "stands plumb");
  check_said (known (-0.04), "stands plumb");
}

static void
an_unknown_hand_gets_a_range_and_no_number (void)
{
  check_said (unknown (-2.5, -0.7, false), "leans left (firm to loose hand: 0.7–2.5°)");
  check_said (unknown (0.7, 2.5, false), "leans right (firm to loose hand: 0.7–2.5°)");
  check_said (unknown (-0.03, -0.01, false), "hangs plumb by its weight alone");
  check_said (unknown (-20, -2, true), "leans left (firm hand: 2.0°; a loose one cannot hold it)");
}

static void
toppling_is_said_instead_of_a_number (void)
{
  PhSettle settle = { .settles = false, .heavy_side = -1, .tilt_rad = NAN };
  check_said (settle, "topples to the left rather than settling");
  settle.heavy_side = 1;
  check_said (settle, "topples to the right rather than settling");
  PhLeanDrawn drawn = ph_lean_drawn_of (&settle, 0.06, 5.0);
  CHECK (drawn.stopped && drawn.lean_rad == PH_LEAN_DRAWN_MOST_RAD);
}

static void
what_is_drawn_is_factor_times_the_roll (void)
{
  PhDraw draw = { .draw_length_m = 0.66, .nock_height_m = 0.2 };
  PhRoll roll = { .cos_beta = ph_draw_cos_beta (&draw) };
  double slope = atan2 (0.2, 0.66), cant = 0.05;
  PhSettle settle = known (0);
  settle.tilt_rad = ph_cant_bubble (&roll, cant);
  CHECK_NEAR ((double)ph_lean_drawn_of (&settle, slope, 5.0).lean_rad, 5 * cant, 1e-6);
  CHECK_NEAR ((double)ph_lean_drawn_of (&settle, slope, 1.0).lean_rad, cant, 1e-7);
  CHECK (!ph_lean_drawn_of (&settle, slope, 5.0).stopped);
  settle.tilt_rad = ph_cant_bubble (&roll, -0.2);
  PhLeanDrawn drawn = ph_lean_drawn_of (&settle, slope, 5.0);
  CHECK (drawn.stopped && drawn.lean_rad == -PH_LEAN_DRAWN_MOST_RAD);
}

static void
the_reference_leans_too_and_stands_plumb_where_there_is_none (void)
{
  PhSettle settle = known (1);
  CHECK (ph_lean_drawn_reference (&settle, 0.0, 5.0).lean_rad == 0.0f);
  settle.has_reference = true;
  settle.reference_tilt_rad = rad (-2);
  CHECK_NEAR ((double)ph_lean_drawn_reference (&settle, 0.0, 5.0).lean_rad, rad (-10), 1e-6);
}

static void
the_factor_the_stop_and_the_assumption_are_said (void)
{
  PhSettle settle = known (1);
  g_autofree char *five = ph_lean_drawing_said (&settle, (PhLeanDrawn){ 0.1f, FALSE }, 5.0);
  CHECK_TEXT (five, "lean drawn 5 times");
  g_autofree char *one = ph_lean_drawing_said (&settle, (PhLeanDrawn){ 0.1f, FALSE }, 1.0);
  CHECK_TEXT (one, "lean drawn as it is");
  settle = unknown (-2, -1, false);
  g_autofree char *stop = ph_lean_drawing_said (&settle, (PhLeanDrawn){ 0.5f, TRUE }, 5.0);
  CHECK_TEXT (stop, "lean drawn 5 times, stopped at 30°, hand assumed");
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (a_known_lean_is_said_with_its_degrees);
  CASE (an_unknown_hand_gets_a_range_and_no_number);
  CASE (toppling_is_said_instead_of_a_number);
  CASE (what_is_drawn_is_factor_times_the_roll);
  CASE (the_reference_leans_too_and_stands_plumb_where_there_is_none);
  CASE (the_factor_the_stop_and_the_assumption_are_said);
  return check_end ();
}
