/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bracketed roots.
 */
#include "math/root.h"

#include "check.h"

static double
cosine_less_x (double x, void *data)
{
  (*(int *)data)++;
  return cos (x) - x;
}

static double
cube (double x, void *data)
{
  (void)data;
  return x * x * x;
}

static double
steep (double x, void *data)
{
  (void)data;
  return x < 0.3 ? -1e-300 : 1e300;
}

static double
broken (double x, void *data)
{
  (void)data;
  return x == 0 ? -1 : x == 1 ? 1 : NAN;
}

static void
root_is_good_to_the_last_bits (void)
{
  int calls = 0;
  double root = 0;
  CHECK (ph_root_bracketed (cosine_less_x, &calls, 0, 1, &root) == PH_OK);
  /* The number of Dottie, 0.739085133215160641655… (from memory); its own rounding is 1e-16. */
  CHECK_NEAR (root, 0.739085133215160641655, 2.3e-16);
  CHECK (calls < 20, "%d calls", calls);
}

static void
root_at_an_end_is_taken (void)
{
  double root = 9;
  CHECK (ph_root_bracketed (cube, NULL, 0, 1, &root) == PH_OK && root == 0);
  CHECK (ph_root_bracketed (cube, NULL, -1, 0, &root) == PH_OK && root == 0);
}

static void
flat_root_at_zero_is_found_to_the_width_of_its_bracket (void)
{
  double root = 9;
  CHECK (ph_root_bracketed (cube, NULL, -0.7, 1, &root) == PH_OK);
  CHECK_NEAR (root, 0, 2e-16);
}

static void
jump_is_found_like_a_root (void)
{
  double root = 9;
  CHECK (ph_root_bracketed (steep, NULL, 0, 1, &root) == PH_OK);
  CHECK_NEAR (root, 0.3, 2e-16);
}

static void
function_without_values_is_an_answer_not_an_abort (void)
{
  double root = 42;
  CHECK (ph_root_bracketed (broken, NULL, 0, 1, &root) == PH_ERR_NO_CONVERGENCE);
  CHECK_NEAR (root, 42, 0);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  ph_math_init ();
  CASE (root_is_good_to_the_last_bits);
  CASE (root_at_an_end_is_taken);
  CASE (flat_root_at_zero_is_found_to_the_width_of_its_bracket);
  CASE (jump_is_found_like_a_root);
  CASE (function_without_values_is_an_answer_not_an_abort);
  return check_end ();
}
