/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where things point: the rules of the frame, written a second time word for word.
 */
#include "physics/frame.h"

#include "base/units.h"
#include "check.h"

static unsigned long long random_state = 3;

static double
random_within (double lo, double hi)
{
  /* Knuth's MMIX linear congruence (from memory); the high bits. */
  random_state = random_state * 6364136223846793005ull + 1442695040888963407ull;
  return lo + (hi - lo) * (double)(random_state >> 11) / 9007199254740992.0;
}

static void
check_equal (PhVec3 got, PhVec3 want, double within)
{
  CHECK_NEAR (got.x, want.x, within);
  CHECK_NEAR (got.y, want.y, within);
  CHECK_NEAR (got.z, want.z, within);
}

static PhFrame
by_the_words (PhVec3 a)
{
  PhVec3 base = fabs (a.y) > 0.9999 ? ph_vec3 (1, 0, 0) : ph_vec3 (0, 1, 0);
  PhVec3 l = ph_vec3_unit (ph_vec3_add_scaled (base, a, -ph_vec3_dot (base, a)));
  PhVec3 t = ph_vec3_cross (a, l);
  double up = fabs (t.z) < 1e-9 ? t.x : t.z;
  return (PhFrame){ a, l, ph_vec3_scale (t, up < 0 ? -1 : 1) };
}

static void
check_frame (PhVec3 axis)
{
  PhFrame got = ph_frame_of_axis (axis), want = by_the_words (axis);
  /* The words project and divide by √(1 − a.y²) ≥ 0.014, which magnifies their rounding. */
  check_equal (got.l, want.l, 4e-14);
  check_equal (got.t, want.t, 4e-14);
  const PhVec3 v[3] = { got.a, got.l, got.t };
  for (int i = 0; i < 3; i++)
    for (int j = 0; j <= i; j++)
      CHECK_NEAR (ph_vec3_dot (v[i], v[j]), i == j ? 1.0 : 0.0, 1e-15);
}

static void
any_axis_gets_the_frame_of_the_rules (void)
{
  for (int i = 0; i < 20000; i++)
    check_frame (ph_vec3_unit (
        ph_vec3 (random_within (-1, 1), random_within (-1, 1), random_within (-1, 1))));
}

static void
axes_along_and_near_the_corners_of_the_rules_too (void)
{
  for (int x = -1; x <= 1; x++)
    for (int y = -1; y <= 1; y++)
      for (int z = -1; z <= 1; z++)
        if (x || y || z)
          for (int i = 0; i < 8; i++)
            {
              static const double off[] = { 0, 1e-300, 1e-17, 9e-10, 1.1e-9, 0.01, 0.0142, 0.0141 };
              check_frame (ph_vec3_unit (ph_vec3 (x + off[i], y, z)));
              check_frame (ph_vec3_unit (ph_vec3 (x, y, z - off[i])));
              check_frame (ph_vec3_unit (ph_vec3 (x + off[i], y + off[i], z)));
            }
}

static void
left_and_up_mean_the_same_on_front_and_back_sockets (void)
{
  for (int way = -1; way <= 1; way += 2)
    {
      PhFrame f = ph_frame_of_axis (ph_vec3 (way, 0, 0));
      check_equal (f.l, ph_vec3 (0, 1, 0), 0);
      check_equal (f.t, ph_vec3 (0, 0, 1), 0);
      CHECK (ph_frame_direction (&f, 0.3, 0).y > 0, "swing is to the left");
      CHECK (ph_frame_direction (&f, 0, 0.3).z > 0, "lift is up");
    }
}

static void
sideways_socket_swings_toward_the_target (void)
{
  PhFrame left = ph_frame_of_axis (ph_vec3 (0, 1, 0)),
          right = ph_frame_of_axis (ph_vec3 (0, -1, 0));
  check_equal (left.l, ph_vec3 (1, 0, 0), 0);
  check_equal (right.l, ph_vec3 (1, 0, 0), 0);
  check_equal (left.t, ph_vec3 (0, 0, 1), 0);
  check_equal (right.t, ph_vec3 (0, 0, 1), 0);
}

static void
upright_socket_lifts_toward_the_target (void)
{
  check_equal (ph_frame_of_axis (ph_vec3 (0, 0, 1)).t, ph_vec3 (1, 0, 0), 0);
  check_equal (ph_frame_of_axis (ph_vec3 (0, 0, -1)).t, ph_vec3 (1, 0, 0), 0);
}

static void
direction_follows_its_formula_and_stays_of_unit_length (void)
{
  for (int i = 0; i < 2000; i++)
    {
      PhFrame f = ph_frame_of_axis (ph_vec3_unit (
          ph_vec3 (random_within (-1, 1), random_within (-1, 1), random_within (-1, 1))));
      double swing = random_within (-PH_PI, PH_PI), lift = random_within (-PH_PI, PH_PI);
      PhVec3 d = ph_frame_direction (&f, swing, lift);
      CHECK_NEAR (ph_vec3_length (d), 1, 1e-15);
      CHECK_NEAR (ph_vec3_dot (d, f.a), cos (lift) * cos (swing), 1e-15);
      CHECK_NEAR (ph_vec3_dot (d, f.l), cos (lift) * sin (swing), 1e-15);
      CHECK_NEAR (ph_vec3_dot (d, f.t), sin (lift), 1e-15);
    }
}

static void
no_angle_gives_the_very_axis (void)
{
  PhFrame f = ph_frame_of_axis (ph_vec3_unit (ph_vec3 (0.3, -0.5, 0.2)));
  check_equal (ph_frame_direction (&f, 0, 0), f.a, 0);
}

static void
own_components_run_along_the_columns (void)
{
  PhFrame f = ph_frame_of_axis (ph_vec3 (-1, 0, 0));
  check_equal (ph_frame_apply (&f, ph_vec3 (2, 3, 5)), ph_vec3 (-2, 3, 5), 0);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (any_axis_gets_the_frame_of_the_rules);
  CASE (axes_along_and_near_the_corners_of_the_rules_too);
  CASE (left_and_up_mean_the_same_on_front_and_back_sockets);
  CASE (sideways_socket_swings_toward_the_target);
  CASE (upright_socket_lifts_toward_the_target);
  CASE (direction_follows_its_formula_and_stays_of_unit_length);
  CASE (no_angle_gives_the_very_axis);
  CASE (own_components_run_along_the_columns);
  return check_end ();
}
