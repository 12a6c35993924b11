/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The hand as nonlinear least squares in two unknowns, with exact first and second derivatives.
 * Toppled checks make the sum piecewise, so the search starts from a coarse profile over K with
 * several B each and goes down from each of its valleys by Newton's method, which ends quadratic
 * where Gauss and Newton's would creep. 50 checks take about half a millisecond.
 */
#include "physics/hand.h"

#include <assert.h>
#include <math.h>
#include <stdbool.h>
#include <stdlib.h>

#include "base/text.h"

/* A residual and its derivatives by K and B. */
typedef struct
{
  double r;
  double k, b;
  double kk, kb, bb;
} Row;

/* Half the sum of squares' gradient and Hessian; j is the Hessian's part JᵀJ, always positive. */
typedef struct
{
  double value;
  double k, b;
  double kk, kb, bb;
  double jkk, jkb, jbb;
} Sum;

typedef struct
{
  const PhBubbleCheck *checks;
  size_t n;
} Fit;

typedef struct
{
  double k, b, value;
} Point;

static double
toppled_bubble (const PhBubbleCheck *check, double bias)
{
  return bias < check->roll.side_nm ? -PH_CANT_LIMIT_RAD : PH_CANT_LIMIT_RAD;
}

double
ph_check_predict (const PhBubbleCheck *check, double stiffness_nm_per_rad, double bias_nm)
{
  double cant;
  if (ph_cant_predict (&check->roll, stiffness_nm_per_rad, bias_nm, &cant) != PH_OK)
    return toppled_bubble (check, bias_nm);
  return ph_cant_bubble (&check->roll, cant);
}

double
ph_check_residual (const PhBubbleCheck *check, const PhHand *hand)
{
  double predicted = ph_check_predict (check, hand->stiffness_nm_per_rad, hand->bias_nm);
  return (check->bubble_rad - predicted) / check->sd_rad;
}

static Row
row_of (const PhBubbleCheck *check, double k, double b)
{
  const PhRoll *roll = &check->roll;
  double cant;
  if (ph_cant_predict (roll, k, b, &cant) != PH_OK)
    return (Row){ .r = (check->bubble_rad - toppled_bubble (check, b)) / check->sd_rad };
  double s = sin (cant), c = cos (cant), cb = roll->cos_beta;
  /* φ(K, B) from −side·cosφ + top·sinφ − Kφ + B = 0, differentiated once and twice. */
  double fall = 1 / (k - roll->side_nm * s - roll->top_nm * c);
  double curve = roll->side_nm * c - roll->top_nm * s;
  double by_b = fall, by_k = -cant * fall;
  double by_bb = curve * by_b * by_b * fall;
  double by_kb = (curve * by_k * by_b - by_b) * fall;
  double by_kk = (curve * by_k * by_k - 2 * by_k) * fall;
  /* Bubble asin(cosβ sinφ), by φ. */
  double root = sqrt (1 - cb * cb * s * s);
  double first = cb * c / root, second = cb * s * (cb * cb - 1) / (root * root * root);
  double scale = -1 / check->sd_rad;
  return (Row){ .r = (asin (cb * s) - check->bubble_rad) * scale,
                .k = first * by_k * scale,
                .b = first * by_b * scale,
                .kk = (second * by_k * by_k + first * by_kk) * scale,
                .kb = (second * by_k * by_b + first * by_kb) * scale,
                .bb = (second * by_b * by_b + first * by_bb) * scale };
}

static Row
prior_row (int i, double k, double b)
{
  if (i == 0)
    return (Row){ .r = (k - PH_HAND_STIFFNESS) / PH_HAND_STIFFNESS_SD,
                  .k = 1 / PH_HAND_STIFFNESS_SD };
  return (Row){ .r = b / PH_HAND_BIAS_SD, .b = 1 / PH_HAND_BIAS_SD };
}

static void
add_row (Sum *sum, Row row)
{
  sum->value += row.r * row.r;
  sum->k += row.r * row.k;
  sum->b += row.r * row.b;
  sum->jkk += row.k * row.k;
  sum->jkb += row.k * row.b;
  sum->jbb += row.b * row.b;
  sum->kk += row.r * row.kk;
  sum->kb += row.r * row.kb;
  sum->bb += row.r * row.bb;
}

static Sum
sum_at (const Fit *fit, double k, double b)
{
  Sum sum = { 0 };
  add_row (&sum, prior_row (0, k, b));
  add_row (&sum, prior_row (1, k, b));
  for (size_t i = 0; i < fit->n; i++)
    add_row (&sum, row_of (&fit->checks[i], k, b));
  sum.kk += sum.jkk;
  sum.kb += sum.jkb;
  sum.bb += sum.jbb;
  return sum;
}

static double
value_at (const Fit *fit, double k, double b)
{
  double first = prior_row (0, k, b).r, second = prior_row (1, k, b).r;
  double value = first * first + second * second;
  PhHand hand = { .stiffness_nm_per_rad = k, .bias_nm = b };
  for (size_t i = 0; i < fit->n; i++)
    {
      double r = ph_check_residual (&fit->checks[i], &hand);
      value += r * r;
    }
  return value;
}

/* The step to where the quadratic through `sum` is least, K staying at its bound when it would
   leave it from there. The exact Hessian where it is positive, else JᵀJ. */
static void
newton_step (const Sum *sum, double k, double *dk, double *db)
{
  double det = sum->kk * sum->bb - sum->kb * sum->kb;
  bool exact = sum->kk > 0 && sum->bb > 0 && det > 1e-9 * sum->kk * sum->bb;
  double kk = exact ? sum->kk : sum->jkk, kb = exact ? sum->kb : sum->jkb;
  double bb = exact ? sum->bb : sum->jbb;
  det = kk * bb - kb * kb;
  *dk = (kb * sum->b - bb * sum->k) / det;
  *db = (kb * sum->k - kk * sum->b) / det;
  double room = PH_HAND_STIFFNESS_LEAST - k;
  if (*dk >= room)
    return;
  if (room < 0)
    {
      *db *= room / *dk;
      *dk = room;
      return;
    }
  *dk = 0;
  *db = -sum->b / (sum->bb > 0 ? sum->bb : sum->jbb);
}

/* Goes down from *at to the bottom of its valley. */
static void
descend (const Fit *fit, Point *at)
{
  for (int step = 0; step < 60; step++)
    {
      Sum sum = sum_at (fit, at->k, at->b);
      at->value = sum.value;
      double dk, db, part = 1, value = INFINITY;
      newton_step (&sum, at->k, &dk, &db);
      /* At the bottom the value only shows rounding, which must not turn the last step down. */
      for (; part > 1e-12; part /= 2)
        {
          value =
              value_at (fit, fmax (at->k + part * dk, PH_HAND_STIFFNESS_LEAST), at->b + part * db);
          if (value <= sum.value * (1 + 1e-14))
            break;
        }
      if (part <= 1e-12)
        return;
      at->k = fmax (at->k + part * dk, PH_HAND_STIFFNESS_LEAST);
      at->b += part * db;
      at->value = value;
      if (part == 1 && fabs (dk) <= 1e-14 * at->k && fabs (db) <= 1e-14 * (fabs (at->b) + 0.01))
        return;
    }
}

/* The bias that alone would explain what a check read, were the hand's stiffness k. */
static double
bias_of (const PhBubbleCheck *check, double k)
{
  double s = sin (check->bubble_rad) / check->roll.cos_beta;
  double cant = asin (fmin (fmax (s, -1), 1));
  return k * cant - ph_roll_torque (&check->roll, cant);
}

static int
compare (const void *a, const void *b)
{
  double x = *(const double *)a, y = *(const double *)b;
  return (x > y) - (x < y);
}

/* The best of some biases for stiffness k: none, the mean of what the checks say one by one,
   weighted together with the prior, and `quantiles` of them. */
static Point
best_bias (const Fit *fit, double k, double *scratch, int quantiles)
{
  double weight = 1 / (PH_HAND_BIAS_SD * PH_HAND_BIAS_SD), sum = 0;
  for (size_t i = 0; i < fit->n; i++)
    {
      const PhBubbleCheck *check = &fit->checks[i];
      double sd = (k + fabs (ph_roll_stiffness (&check->roll, check->bubble_rad))) * check->sd_rad;
      scratch[i] = bias_of (check, k);
      sum += scratch[i] / (sd * sd);
      weight += 1 / (sd * sd);
    }
  qsort (scratch, fit->n, sizeof *scratch, compare);
  Point best = { k, 0, value_at (fit, k, 0) };
  for (int q = -1; q < quantiles; q++)
    {
      size_t i = q < 1 ? 0 : (size_t)q * (fit->n - 1) / (size_t)(quantiles - 1);
      double b = q < 0 ? sum / weight : scratch[i];
      double value = value_at (fit, k, b);
      if (value < best.value)
        best = (Point){ k, b, value };
    }
  return best;
}

/* (JᵀJ)⁻¹ from the triangle R of J = QR, made row by row with Givens rotations: JᵀJ itself has
   lost digits when all checks say nearly the same. */
static void
set_covariance (const Fit *fit, PhHand *hand)
{
  double k = hand->stiffness_nm_per_rad, b = hand->bias_nm;
  double rkk = prior_row (0, k, b).k, rkb = 0, rbb = prior_row (1, k, b).b;
  for (size_t i = 0; i < fit->n; i++)
    {
      Row row = row_of (&fit->checks[i], k, b);
      double length = hypot (rkk, row.k), c = rkk / length, s = row.k / length;
      double turned = c * row.b - s * rkb;
      rkk = length;
      rkb = c * rkb + s * row.b;
      rbb = hypot (rbb, turned);
    }
  hand->bb = 1 / (rbb * rbb);
  hand->kb = -rkb / rkk * hand->bb;
  hand->kk = 1 / (rkk * rkk) - rkb / rkk * hand->kb;
}

static Point
search (const Fit *fit)
{
  static const double stiffnesses[] = {
    PH_HAND_STIFFNESS_LEAST, 0.1, 0.2, 0.35, 0.6, 1, 1.5, 2, 2.7, 3.6, 5, 7.5, 12, 25
  };
  enum
  {
    COUNT = sizeof stiffnesses / sizeof *stiffnesses
  };
  Point profile[COUNT];
  double *scratch = ph_alloc (fit->n * sizeof *scratch);
  for (int i = 0; i < COUNT; i++)
    profile[i] = best_bias (fit, stiffnesses[i], scratch, fit->n > 20 ? 5 : 15);
  free (scratch);
  Point best = { 0, 0, INFINITY };
  for (int i = 0; i < COUNT; i++)
    {
      if ((i > 0 && profile[i - 1].value < profile[i].value)
          || (i + 1 < COUNT && profile[i + 1].value <= profile[i].value))
        continue;
      descend (fit, &profile[i]);
      if (profile[i].value < best.value)
        best = profile[i];
    }
  return best;
}

PhStatus
ph_hand_fit (const PhBubbleCheck *checks, size_t n, PhHand *hand)
{
  Fit fit = { checks, n };
  Point best = { PH_HAND_STIFFNESS, 0, 0 };
  if (n > 0)
    best = search (&fit);
  if (!isfinite (best.value))
    return PH_ERR_NO_CONVERGENCE;
  hand->stiffness_nm_per_rad = best.k;
  hand->bias_nm = best.b;
  set_covariance (&fit, hand);
  return PH_OK;
}
