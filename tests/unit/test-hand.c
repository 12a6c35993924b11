/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The fitted hand against GSL's gsl_multifit_nlinear on the same residuals, against a fine grid,
 * and on checks made by a hand that is known.
 */
#include "physics/hand.h"

#include <gsl/gsl_blas.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_multifit_nlinear.h>

#include "base/units.h"
#include "check.h"

#define MOST 50

typedef struct
{
  PhBubbleCheck checks[MOST];
  size_t n;
} Data;

static unsigned long long random_state = 9;

static double
random_within (double lo, double hi)
{
  /* Knuth's MMIX linear congruence (from memory); the high bits. */
  random_state = random_state * 6364136223846793005ull + 1442695040888963407ull;
  return lo + (hi - lo) * (double)(random_state >> 11) / 9007199254740992.0;
}

static double
random_normal (void)
{
  return sqrt (-2 * log (random_within (1e-16, 1))) * cos (2 * PH_PI * random_within (0, 1));
}

/* Checks of random rigs in the hand (k, b), read with noise of `sd_deg`. A rig's mass stands above
   the line with at most `top` N·m/rad: over K it cannot stand plumb. */
static void
make_checks (Data *data, size_t n, double k, double b, double sd_deg, double top)
{
  data->n = 0;
  while (data->n < n)
    {
      PhBubbleCheck *c = &data->checks[data->n];
      c->roll = (PhRoll){ random_within (-0.5, 0.5), random_within (-2, top), 0.998 };
      c->sd_rad = ph_rad_from_deg (sd_deg);
      c->bubble_rad = ph_check_predict (c, k, b) + c->sd_rad * random_normal ();
      if (fabs (c->bubble_rad) < 1.04)
        data->n++;
    }
}

static double
sum_of_squares (const Data *data, double k, double b)
{
  double sum = (k - 2) * (k - 2) / 2.25 + b * b / 0.09;
  PhHand hand = { .stiffness_nm_per_rad = k, .bias_nm = b };
  for (size_t i = 0; i < data->n; i++)
    {
      double r = ph_check_residual (&data->checks[i], &hand);
      sum += r * r;
    }
  return sum;
}

/* GSL's residuals: b̂ − b over σ, then the prior's two rows. */
static int
residuals (const gsl_vector *x, void *params, gsl_vector *f)
{
  const Data *data = params;
  double k = gsl_vector_get (x, 0), b = gsl_vector_get (x, 1);
  for (size_t i = 0; i < data->n; i++)
    {
      const PhBubbleCheck *c = &data->checks[i];
      gsl_vector_set (f, i, (ph_check_predict (c, fmax (k, 1e-3), b) - c->bubble_rad) / c->sd_rad);
    }
  gsl_vector_set (f, data->n, (k - 2) / 1.5);
  gsl_vector_set (f, data->n + 1, b / 0.3);
  return GSL_SUCCESS;
}

/* dφ/dK = −φ/(K + k_φ), dφ/dB = 1/(K + k_φ), through asin (cosβ sinφ). */
static int
jacobian (const gsl_vector *x, void *params, gsl_matrix *j)
{
  const Data *data = params;
  double k = gsl_vector_get (x, 0), b = gsl_vector_get (x, 1), cant;
  gsl_matrix_set_zero (j);
  for (size_t i = 0; i < data->n; i++)
    {
      const PhBubbleCheck *c = &data->checks[i];
      if (ph_cant_predict (&c->roll, fmax (k, 1e-3), b, &cant) != PH_OK)
        continue;
      double s = c->roll.cos_beta * sin (cant);
      double by_cant = c->roll.cos_beta * cos (cant) / sqrt (1 - s * s) / c->sd_rad;
      double fall = by_cant / (k + ph_roll_stiffness (&c->roll, cant));
      gsl_matrix_set (j, i, 0, -cant * fall);
      gsl_matrix_set (j, i, 1, fall);
    }
  gsl_matrix_set (j, data->n, 0, 1 / 1.5);
  gsl_matrix_set (j, data->n + 1, 1, 1 / 0.3);
  return GSL_SUCCESS;
}

static bool
gsl_fit (Data *data, double k, double b, double answer[2], double covariance[3])
{
  gsl_multifit_nlinear_parameters options = gsl_multifit_nlinear_default_parameters ();
  gsl_multifit_nlinear_fdf problem = {
    .f = residuals, .df = jacobian, .n = data->n + 2, .p = 2, .params = data
  };
  gsl_multifit_nlinear_workspace *w =
      gsl_multifit_nlinear_alloc (gsl_multifit_nlinear_trust, &options, data->n + 2, 2);
  double start[2] = { k, b };
  gsl_vector_view x = gsl_vector_view_array (start, 2);
  int info, status = gsl_multifit_nlinear_init (&x.vector, &problem, w);
  /* No tolerance: until a step no longer gains anything. */
  if (status == GSL_SUCCESS)
    status = gsl_multifit_nlinear_driver (200, 1e-15, 0, 0, NULL, NULL, &info, w);
  gsl_vector *at = gsl_multifit_nlinear_position (w);
  gsl_matrix *c = gsl_matrix_alloc (2, 2);
  gsl_multifit_nlinear_covar (gsl_multifit_nlinear_jac (w), 0, c);
  for (size_t i = 0; i < 2; i++)
    answer[i] = gsl_vector_get (at, i);
  for (size_t i = 0; i < 3; i++)
    covariance[i] = gsl_matrix_get (c, i / 2, (i + 1) / 2);
  gsl_matrix_free (c);
  gsl_multifit_nlinear_free (w);
  return status == GSL_SUCCESS || status == GSL_ENOPROG || status == GSL_EMAXITER;
}

static void
no_checks_give_the_prior (void)
{
  PhHand hand;
  CHECK (ph_hand_fit (NULL, 0, &hand) == PH_OK);
  CHECK_NEAR (hand.stiffness_nm_per_rad, 2, 0);
  CHECK_NEAR (hand.bias_nm, 0, 0);
  CHECK_REL (hand.kk, 1.5 * 1.5, 1e-15);
  CHECK_NEAR (hand.kb, 0, 0);
  CHECK_REL (hand.bb, 0.3 * 0.3, 1e-15);
}

static void
fit_agrees_with_gsl (void)
{
  for (int i = 0; i < 300; i++)
    {
      Data data;
      double k = random_within (0.8, 5), b = random_within (-0.4, 0.4), other[2], covariance[3];
      make_checks (&data, 1 + (size_t)i % MOST, k, b, random_within (0.1, 1), 0.6);
      PhHand hand;
      CHECK (ph_hand_fit (data.checks, data.n, &hand) == PH_OK);
      double value = sum_of_squares (&data, hand.stiffness_nm_per_rad, hand.bias_nm);
      CHECK (
          gsl_fit (&data, hand.stiffness_nm_per_rad * 1.1, hand.bias_nm + 0.02, other, covariance));
      CHECK (value <= sum_of_squares (&data, other[0], other[1]) * (1 + 1e-12));
      /* GSL stops when the sum no longer falls, which is half the digits of where it is least. */
      CHECK_REL (hand.stiffness_nm_per_rad, other[0], 1e-7);
      CHECK_NEAR (hand.bias_nm, other[1], 1e-7);
      CHECK_REL (hand.kk, covariance[0], 1e-6);
      CHECK_NEAR (hand.kb, covariance[1], 1e-6 * sqrt (covariance[0] * covariance[2]));
      CHECK_REL (hand.bb, covariance[2], 1e-6);
    }
}

static void
gradient_vanishes_at_the_fit (void)
{
  for (int i = 0; i < 200; i++)
    {
      Data data;
      make_checks (&data, 1 + (size_t)i % 12, random_within (1, 4), random_within (-0.3, 0.3), 0.3,
                   0.6);
      PhHand hand;
      CHECK (ph_hand_fit (data.checks, data.n, &hand) == PH_OK);
      double gradient[2] = { (hand.stiffness_nm_per_rad - 2) / 2.25, hand.bias_nm / 0.09 };
      double scale[2] = { 1 / 2.25, 1 / 0.09 };
      for (size_t c = 0; c < data.n; c++)
        {
          const PhBubbleCheck *check = &data.checks[c];
          double cant = 0;
          CHECK (ph_cant_predict (&check->roll, hand.stiffness_nm_per_rad, hand.bias_nm, &cant)
                 == PH_OK);
          double s = check->roll.cos_beta * sin (cant);
          double fall = check->roll.cos_beta * cos (cant) / sqrt (1 - s * s) / check->sd_rad
                        / (hand.stiffness_nm_per_rad + ph_roll_stiffness (&check->roll, cant));
          double r = -ph_check_residual (check, &hand);
          gradient[0] -= r * cant * fall;
          gradient[1] += r * fall;
          scale[0] += cant * cant * fall * fall;
          scale[1] += fall * fall;
        }
      /* A gradient of 1e-12 of the curvature is 1e-12 N·m from the bottom. */
      CHECK_NEAR (gradient[0], 0, 1e-12 * scale[0]);
      CHECK_NEAR (gradient[1], 0, 1e-12 * scale[1]);
    }
}

static void
nothing_on_a_fine_grid_is_lower (void)
{
  for (int i = 0; i < 30; i++)
    {
      Data data;
      make_checks (&data, 1 + (size_t)i % 9, random_within (0.3, 4), random_within (-0.4, 0.4),
                   i % 2 ? 0.3 : 2, 3);
      PhHand hand;
      CHECK (ph_hand_fit (data.checks, data.n, &hand) == PH_OK);
      double value = sum_of_squares (&data, hand.stiffness_nm_per_rad, hand.bias_nm);
      double least = INFINITY, at_k = 0, at_b = 0;
      for (int p = 0; p <= 100; p++)
        for (int q = -60; q <= 60; q++)
          {
            double k = 0.05 * pow (160, p / 100.0), b = q * 0.025;
            double v = sum_of_squares (&data, k, b);
            if (v < least)
              {
                least = v;
                at_k = k;
                at_b = b;
              }
          }
      CHECK (value <= least + 1e-9, "case %d: %.9g at K %g B %g, grid %.9g at K %g B %g", i, value,
             hand.stiffness_nm_per_rad, hand.bias_nm, least, at_k, at_b);
    }
}

static void
many_exact_checks_find_the_hand_that_made_them (void)
{
  Data data;
  make_checks (&data, MOST, 3.2, -0.15, 0.3, 0.6);
  for (size_t i = 0; i < data.n; i++)
    {
      data.checks[i].sd_rad = 1e-6;
      data.checks[i].bubble_rad = ph_check_predict (&data.checks[i], 3.2, -0.15);
    }
  PhHand hand;
  CHECK (ph_hand_fit (data.checks, data.n, &hand) == PH_OK);
  CHECK_NEAR (hand.stiffness_nm_per_rad, 3.2, 1e-8);
  CHECK_NEAR (hand.bias_nm, -0.15, 1e-8);
}

static void
one_reading_again_and_again_does_not_loosen_the_hand (void)
{
  /* Linear rows K φ − B = τ would drive K to 0 here. */
  Data data = { .n = MOST };
  for (size_t i = 0; i < MOST; i++)
    {
      data.checks[i] = (PhBubbleCheck){ { -0.2, -0.3, 0.998 }, 0, ph_rad_from_deg (0.3) };
      data.checks[i].bubble_rad =
          ph_check_predict (&data.checks[i], 2.5, 0.05) + data.checks[i].sd_rad * random_normal ();
    }
  PhHand hand;
  CHECK (ph_hand_fit (data.checks, data.n, &hand) == PH_OK);
  CHECK (hand.stiffness_nm_per_rad > 1.2 && hand.stiffness_nm_per_rad < 3.5, "K %g",
         hand.stiffness_nm_per_rad);
  CHECK (sqrt (hand.kk) > 0.8, "one rig does not teach K: sd %g", sqrt (hand.kk));
}

static void
hand_looser_than_its_bound_is_held_there (void)
{
  /* Rigs that hang well below the line and lean as if nobody held them. */
  Data data = { .n = 30 };
  for (size_t i = 0; i < data.n; i++)
    {
      PhBubbleCheck *c = &data.checks[i];
      *c = (PhBubbleCheck){ { random_within (-0.3, 0.3), -1.5, 0.998 }, 0, ph_rad_from_deg (0.05) };
      c->bubble_rad = ph_cant_bubble (&c->roll, atan2 (-c->roll.side_nm, 1.5) * 1.2);
    }
  PhHand hand;
  CHECK (ph_hand_fit (data.checks, data.n, &hand) == PH_OK);
  CHECK_NEAR (hand.stiffness_nm_per_rad, PH_HAND_STIFFNESS_LEAST, 0);
  double value = sum_of_squares (&data, 0.05, hand.bias_nm), h = 1e-5;
  double up = sum_of_squares (&data, 0.05, hand.bias_nm + h);
  double down = sum_of_squares (&data, 0.05, hand.bias_nm - h);
  CHECK (value < up && value < down, "B is not least there");
  CHECK_NEAR ((up - down) / (up - 2 * value + down) * h / 2, 0, 1e-8);
  CHECK (sum_of_squares (&data, 0.06, hand.bias_nm) > value);
}

static void
toppled_check_counts_sixty_degrees_toward_its_push (void)
{
  PhBubbleCheck c = { { 0.4, 5, 0.998 }, 0.1, 0.01 };
  CHECK_NEAR (ph_check_predict (&c, 1, 0), -PH_PI / 3, 1e-15);
  c.roll.side_nm = -0.4;
  CHECK_NEAR (ph_check_predict (&c, 1, 0), PH_PI / 3, 1e-15);
  PhHand hand = { .stiffness_nm_per_rad = 1 };
  CHECK_REL (ph_check_residual (&c, &hand), (0.1 - PH_PI / 3) / 0.01, 1e-14);
}

static void
readings_that_no_hand_explains_still_give_a_hand (void)
{
  Data data = { .n = 2 };
  data.checks[0] = (PhBubbleCheck){ { 0.4, 0, 0.998 }, 0.9, 1e-4 };
  data.checks[1] = (PhBubbleCheck){ { 0.4, 0, 0.998 }, -0.9, 1e-4 };
  PhHand hand;
  CHECK (ph_hand_fit (data.checks, data.n, &hand) == PH_OK);
  CHECK (isfinite (hand.stiffness_nm_per_rad) && isfinite (hand.bias_nm) && hand.kk > 0
         && hand.bb > 0);
  CHECK (fabs (ph_check_residual (&data.checks[0], &hand)) > PH_CHECK_DISAGREES);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  gsl_set_error_handler_off ();
  CASE (no_checks_give_the_prior);
  CASE (fit_agrees_with_gsl);
  CASE (gradient_vanishes_at_the_fit);
  CASE (nothing_on_a_fine_grid_is_lower);
  CASE (many_exact_checks_find_the_hand_that_made_them);
  CASE (one_reading_again_and_again_does_not_loosen_the_hand);
  CASE (hand_looser_than_its_bound_is_held_there);
  CASE (toppled_check_counts_sixty_degrees_toward_its_push);
  CASE (readings_that_no_hand_explains_still_give_a_hand);
  return check_end ();
}
