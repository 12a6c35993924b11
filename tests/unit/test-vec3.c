/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Vectors of three doubles.
 */
#include "math/vec3.h"

#include "check.h"

static void
check_equal (PhVec3 got, double x, double y, double z)
{
  CHECK_NEAR (got.x, x, 0);
  CHECK_NEAR (got.y, y, 0);
  CHECK_NEAR (got.z, z, 0);
}

static void
sums_and_products_are_componentwise (void)
{
  PhVec3 a = ph_vec3 (1, -2, 4), b = ph_vec3 (0.5, 8, -1);
  check_equal (ph_vec3_add (a, b), 1.5, 6, 3);
  check_equal (ph_vec3_sub (a, b), 0.5, -10, 5);
  check_equal (ph_vec3_scale (a, -2), -2, 4, -8);
  check_equal (ph_vec3_add_scaled (a, b, 2), 2, 14, 2);
  CHECK_NEAR (ph_vec3_dot (a, b), -19.5, 0);
}

static void
cross_product_is_right_handed (void)
{
  PhVec3 x = ph_vec3 (1, 0, 0), y = ph_vec3 (0, 1, 0), z = ph_vec3 (0, 0, 1);
  check_equal (ph_vec3_cross (x, y), 0, 0, 1);
  check_equal (ph_vec3_cross (y, z), 1, 0, 0);
  check_equal (ph_vec3_cross (z, x), 0, 1, 0);
  PhVec3 a = ph_vec3 (3, -1, 2), b = ph_vec3 (5, 4, -7), c = ph_vec3_cross (a, b);
  CHECK_NEAR (ph_vec3_dot (c, a), 0, 0);
  CHECK_NEAR (ph_vec3_dot (c, b), 0, 0);
}

static void
unit_keeps_direction_down_to_the_smallest_axis_of_a_file (void)
{
  PhVec3 u = ph_vec3_unit (ph_vec3 (3e-6, 0, -4e-6));
  /* Two roundings: of the length's inverse and of the product. */
  CHECK_NEAR (u.x, 0.6, 3e-16);
  CHECK_NEAR (u.z, -0.8, 3e-16);
  CHECK_NEAR (ph_vec3_length (ph_vec3 (2, 3, 6)), 7, 0);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (sums_and_products_are_componentwise);
  CASE (cross_product_is_right_handed);
  CASE (unit_keeps_direction_down_to_the_smallest_axis_of_a_file);
  return check_end ();
}
