/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Which valley is the deepest. A predicted bubble rises with B and comes nearer to plumb with K,
 * jumps included, so its values at the corners of a box of hands bound it within, and a sum of
 * squares that no hand of the box can beat is known: branch and bound. A first descent gives the
 * sum to beat, a grid over all hands that the prior still allows is cut down by it, and only boxes
 * in which a prediction jumps are halved. With stable rigs that ends after the grid.
 */
#include "physics/hand-sum.h"

#include <math.h>
#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"

enum
{
  K_POINTS = 8,
  B_POINTS = 10,
  BOXES = 4096 /* at most looked at */
};

/* What a check does at one hand. Where `branch` differs the prediction has jumped, or may have. */
typedef struct
{
  double bubble;
  int branch;
} Prediction;

typedef struct
{
  double k[2], b[2];
  double bound; /* no hand of the box has a lower sum */
  bool jumps;
} Box;

typedef struct
{
  const PhHandData *data;
  PhHandPoint best;
  Prediction *corners; /* room for four corners of every check */
  Box *boxes;          /* a heap by bound, the lowest first */
  int n_boxes, seen;
} Search;

static Prediction
predict (const PhBubbleCheck *check, double k, double b)
{
  const PhRoll *roll = &check->roll;
  double cant;
  bool right = b > roll->side_nm;
  if (ph_cant_predict (roll, k, b, &cant) != PH_OK)
    return (Prediction){ ph_check_predict (check, k, b), right ? 3 : -3 };
  /* Torque has a second stretch where it falls only where it can rise between; the curvature tells
     on which side of that the bow stands. */
  bool two = roll->side_nm * roll->side_nm + roll->top_nm * roll->top_nm > k * k;
  double level = roll->top_nm * sin (cant) - roll->side_nm * cos (cant);
  int branch = two && (right ? level > 0 : level < 0) ? 2 : 1;
  return (Prediction){ ph_cant_bubble (roll, cant), right ? branch : -branch };
}

static double
beyond (double x, double lo, double hi)
{
  return x < lo ? lo - x : x > hi ? x - hi : 0;
}

/* Bound and jumps of a box from its corners' predictions. */
static void
judge (const Search *search, Box *box, const Prediction *const corners[4])
{
  const PhHandData *data = search->data;
  double k = beyond (PH_HAND_STIFFNESS, box->k[0], box->k[1]) / PH_HAND_STIFFNESS_SD;
  double b = beyond (0, box->b[0], box->b[1]) / PH_HAND_BIAS_SD;
  box->bound = k * k + b * b;
  box->jumps = false;
  for (size_t i = 0; i < data->n; i++)
    {
      double lo = corners[0][i].bubble, hi = lo;
      for (int c = 1; c < 4; c++)
        {
          lo = fmin (lo, corners[c][i].bubble);
          hi = fmax (hi, corners[c][i].bubble);
          box->jumps |= corners[c][i].branch != corners[0][i].branch;
        }
      double r = beyond (data->checks[i].bubble_rad, lo, hi) / data->checks[i].sd_rad;
      box->bound += r * r;
    }
}

static void
push (Search *search, const Box *box)
{
  if (box->bound >= search->best.value || search->n_boxes == BOXES)
    return;
  int at = search->n_boxes++;
  for (; at > 0 && search->boxes[(at - 1) / 2].bound > box->bound; at = (at - 1) / 2)
    search->boxes[at] = search->boxes[(at - 1) / 2];
  search->boxes[at] = *box;
}

static Box
pop (Search *search)
{
  Box top = search->boxes[0], last = search->boxes[--search->n_boxes];
  int at = 0;
  for (int child; (child = 2 * at + 1) < search->n_boxes; at = child)
    {
      if (child + 1 < search->n_boxes
          && search->boxes[child + 1].bound < search->boxes[child].bound)
        child++;
      if (last.bound <= search->boxes[child].bound)
        break;
      search->boxes[at] = search->boxes[child];
    }
  search->boxes[at] = last;
  return top;
}

static void
descend_from (Search *search, double k, double b)
{
  PhHandPoint at = { k, b, INFINITY };
  ph_hand_descend (search->data, &at);
  if (at.value < search->best.value)
    search->best = at;
}

static void
fill (const PhHandData *data, double k, double b, Prediction *corner)
{
  for (size_t i = 0; i < data->n; i++)
    corner[i] = predict (&data->checks[i], k, b);
}

static void
push_judged (Search *search, double k0, double k1, double b0, double b1)
{
  Box box = { .k = { k0, k1 }, .b = { b0, b1 } };
  const Prediction *corners[4];
  for (int c = 0; c < 4; c++)
    {
      Prediction *corner = search->corners + (size_t)c * search->data->n;
      fill (search->data, box.k[c / 2], box.b[c % 2], corner);
      corners[c] = corner;
    }
  judge (search, &box, corners);
  push (search, &box);
}

/* A box without jumps holds a valley's bottom only if the quadratic at its middle points to one
   near by. */
static void
try_smooth (Search *search, const Box *box)
{
  double k = 0.5 * (box->k[0] + box->k[1]), b = 0.5 * (box->b[0] + box->b[1]), dk, db;
  double wide = box->k[1] - box->k[0], high = box->b[1] - box->b[0];
  PhHandSum sum = ph_hand_sum (search->data, k, b);
  ph_hand_step (&sum, k, &dk, &db);
  bool near = fabs (dk) < wide && fabs (db) < high;
  bool known =
      fabs (k + dk - search->best.k) < wide / 2 && fabs (b + db - search->best.b) < high / 2;
  if (sum.value < search->best.value || (near && !known))
    descend_from (search, k, b);
}

static void
try_jumping (Search *search, const Box *box)
{
  double k = 0.5 * (box->k[0] + box->k[1]), b = 0.5 * (box->b[0] + box->b[1]);
  double wide = (box->k[1] - box->k[0]) / PH_HAND_STIFFNESS_SD;
  double high = (box->b[1] - box->b[0]) / PH_HAND_BIAS_SD;
  if (ph_hand_value (search->data, k, b) < search->best.value)
    descend_from (search, k, b);
  if (wide < 1e-9 && high < 1e-9)
    return;
  bool upright = wide > high;
  push_judged (search, box->k[0], upright ? k : box->k[1], box->b[0], upright ? box->b[1] : b);
  push_judged (search, upright ? k : box->k[0], box->k[1], upright ? box->b[0] : b, box->b[1]);
}

/* A grid over all hands that the prior alone does not rule out against the best so far. Even in
   ln K, since loose hands differ most. */
static void
push_grid (Search *search)
{
  size_t n = search->data->n;
  double reach = sqrt (search->best.value);
  double k_lo = fmax (PH_HAND_STIFFNESS - PH_HAND_STIFFNESS_SD * reach, PH_HAND_STIFFNESS_LEAST);
  double k_hi = PH_HAND_STIFFNESS + PH_HAND_STIFFNESS_SD * reach;
  double k[K_POINTS], b[B_POINTS];
  for (int i = 0; i < K_POINTS; i++)
    k[i] = k_lo * pow (k_hi / k_lo, (double)i / (K_POINTS - 1));
  for (int j = 0; j < B_POINTS; j++)
    b[j] = PH_HAND_BIAS_SD * reach * (2.0 * j / (B_POINTS - 1) - 1);
  Prediction *table = ph_alloc (K_POINTS * B_POINTS * n * sizeof *table);
  for (size_t i = 0; i < K_POINTS * B_POINTS; i++)
    fill (search->data, k[i / B_POINTS], b[i % B_POINTS], table + i * n);
  for (size_t i = 0; i + 1 < K_POINTS; i++)
    for (size_t j = 0; j + 1 < B_POINTS; j++)
      {
        const Prediction *at = table + (i * B_POINTS + j) * n;
        const Prediction *corners[4] = { at, at + n, at + B_POINTS * n, at + (B_POINTS + 1) * n };
        Box box = { .k = { k[i], k[i + 1] }, .b = { b[j], b[j + 1] } };
        judge (search, &box, corners);
        push (search, &box);
      }
  free (table);
}

/* Least squares of the rows Kφ − B = τ at the read angles: no answer (their noise also scales K),
   but a good place to start. */
static void
descend_from_linear (Search *search)
{
  const PhHandData *data = search->data;
  double kk = 1 / (PH_HAND_STIFFNESS_SD * PH_HAND_STIFFNESS_SD), kb = 0;
  double bb = 1 / (PH_HAND_BIAS_SD * PH_HAND_BIAS_SD), k = PH_HAND_STIFFNESS * kk, b = 0;
  for (size_t i = 0; i < data->n; i++)
    {
      const PhBubbleCheck *check = &data->checks[i];
      double s = sin (check->bubble_rad) / check->roll.cos_beta;
      double cant = asin (fmin (fmax (s, -1), 1)), torque = ph_roll_torque (&check->roll, cant);
      double sd =
          check->sd_rad * (PH_HAND_STIFFNESS + fabs (ph_roll_stiffness (&check->roll, cant)));
      double weight = 1 / (sd * sd);
      kk += weight * cant * cant;
      kb -= weight * cant;
      bb += weight;
      k += weight * cant * torque;
      b -= weight * torque;
    }
  double det = kk * bb - kb * kb;
  descend_from (search, fmax ((bb * k - kb * b) / det, PH_HAND_STIFFNESS_LEAST),
                (kk * b - kb * k) / det);
}

PhHandPoint
ph_hand_search (const PhHandData *data)
{
  Search search = { .data = data, .best = { PH_HAND_STIFFNESS, 0, INFINITY } };
  search.corners = ph_alloc (4 * data->n * sizeof *search.corners);
  search.boxes = ph_alloc (BOXES * sizeof *search.boxes);
  descend_from_linear (&search);
  descend_from (&search, PH_HAND_STIFFNESS, 0);
  push_grid (&search);
  while (search.n_boxes > 0 && search.seen++ < BOXES)
    {
      Box box = pop (&search);
      if (box.bound >= search.best.value)
        break;
      if (box.jumps)
        try_jumping (&search, &box);
      else
        try_smooth (&search, &box);
    }
  free (search.boxes);
  free (search.corners);
  return search.best;
}
