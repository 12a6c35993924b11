/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Residuals of the bubble checks with exact first and second derivatives, and Newton's method on
 * their sum of squares, which ends quadratic where Gauss and Newton's would creep.
 */
#include "physics/hand-sum.h"

#include <math.h>
#include <stdbool.h>

/* A residual and its derivatives by K and B. */
typedef struct
{
  double r;
  double k, b;
  double kk, kb, bb;
} Row;

static Row
row_of (const PhBubbleCheck *check, double k, double b)
{
  const PhRoll *roll = &check->roll;
  double cant, scale = -1 / check->sd_rad;
  if (ph_cant_predict (roll, k, b, &cant) != PH_OK)
    return (Row){ .r = (check->bubble_rad - ph_check_predict (check, k, b)) * scale };
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
  return (Row){ .r = (check->bubble_rad - asin (cb * s)) * -scale,
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
add_row (PhHandSum *sum, Row row)
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

PhHandSum
ph_hand_sum (const PhHandData *data, double k, double b)
{
  PhHandSum sum = { 0 };
  add_row (&sum, prior_row (0, k, b));
  add_row (&sum, prior_row (1, k, b));
  for (size_t i = 0; i < data->n; i++)
    add_row (&sum, row_of (&data->checks[i], k, b));
  sum.kk += sum.jkk;
  sum.kb += sum.jkb;
  sum.bb += sum.jbb;
  return sum;
}

double
ph_hand_value (const PhHandData *data, double k, double b)
{
  double first = prior_row (0, k, b).r, second = prior_row (1, k, b).r;
  double value = first * first + second * second;
  PhHand hand = { .stiffness_nm_per_rad = k, .bias_nm = b };
  for (size_t i = 0; i < data->n; i++)
    {
      double r = ph_check_residual (&data->checks[i], &hand);
      value += r * r;
    }
  return value;
}

void
ph_hand_step (const PhHandSum *sum, double k, double *dk, double *db)
{
  /* The exact Hessian where it is positive, else JᵀJ. */
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
  /* At its bound and pressed against it: B alone moves. */
  *dk = 0;
  *db = -sum->b / (sum->bb > 0 ? sum->bb : sum->jbb);
}

void
ph_hand_descend (const PhHandData *data, PhHandPoint *at)
{
  for (int step = 0; step < 60; step++)
    {
      PhHandSum sum = ph_hand_sum (data, at->k, at->b);
      at->value = sum.value;
      double dk, db, part = 1, k = at->k, b = at->b, value = sum.value;
      ph_hand_step (&sum, at->k, &dk, &db);
      for (; part > 1e-13; part /= 2)
        {
          k = fmax (at->k + part * dk, PH_HAND_STIFFNESS_LEAST);
          b = at->b + part * db;
          value = ph_hand_value (data, k, b);
          /* At the bottom the value shows only rounding, which must not turn the last step down. */
          if (value <= sum.value * (1 + 1e-14))
            break;
        }
      if (part <= 1e-13)
        return;
      *at = (PhHandPoint){ k, b, value };
      if (part == 1 && fabs (dk) <= 1e-14 * k && fabs (db) <= 1e-14 * (fabs (b) + 0.01))
        return;
    }
}

void
ph_hand_set_covariance (const PhHandData *data, PhHand *hand)
{
  /* From the triangle R of J = QR, made row by row with Givens rotations: JᵀJ itself has lost
     digits where all checks say nearly the same. */
  double k = hand->stiffness_nm_per_rad, b = hand->bias_nm;
  double rkk = prior_row (0, k, b).k, rkb = 0, rbb = prior_row (1, k, b).b;
  for (size_t i = 0; i < data->n; i++)
    {
      Row row = row_of (&data->checks[i], k, b);
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
