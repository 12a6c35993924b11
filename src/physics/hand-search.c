/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Which valley is the deepest. A predicted bubble rises with B and comes nearer to plumb with K,
 * jumps included, so two corners of a box of hands bound it within, and a sum of squares that no
 * hand of the box can beat is known: branch and bound. A first descent gives the sum to beat; the
 * hands that the prior still allows are halved until a box cannot beat it, or is small and without
 * jumps and shows by its slopes whether it holds the bottom of a valley. 50 checks of stable rigs
 * cost about half a millisecond.
 */
#include "physics/hand-sum.h"

#include <math.h>
#include <stdbool.h>
#include <stdlib.h>

#include "base/text.h"

/* Boxes looked at before the search is content. Stable rigs take some hundred; only a least sum
   on the very edge of toppling takes them all, each halving bringing it nearer. */
#define BOXES 4096
/* A box without jumps is not halved once it is this small a part of all. */
#define SMALL 0.13
/* One with jumps is, down to this many prior standard deviations. */
#define SMALLEST 1e-9

typedef struct
{
  double k[2], b[2];
  double bound; /* no hand of the box has a lower sum */
} Box;

typedef struct
{
  const PhHandData *data;
  PhHandPoint best;
  Box all;
  Box *boxes; /* a heap by bound, the lowest first */
  int n_boxes;
} Search;

static double
beyond (double x, double lo, double hi)
{
  return x < lo ? lo - x : x > hi ? x - hi : 0;
}

/* The bound of a box. Its highest prediction stands at its highest B, with the loose hand if that
   pushes right, else with the firm one; its lowest at its lowest B the other way round. Stops
   where the box cannot beat the best. */
static double
bound_of (const Search *search, const Box *box)
{
  double k = beyond (PH_HAND_STIFFNESS, box->k[0], box->k[1]) / PH_HAND_STIFFNESS_SD;
  double b = beyond (0, box->b[0], box->b[1]) / PH_HAND_BIAS_SD;
  double bound = k * k + b * b;
  for (size_t i = 0; i < search->data->n && bound < search->best.value; i++)
    {
      const PhBubbleCheck *check = &search->data->checks[i];
      double side = check->roll.side_nm;
      double lo = ph_check_predict (check, box->k[box->b[0] >= side], box->b[0]);
      double hi = ph_check_predict (check, box->k[box->b[1] <= side], box->b[1]);
      double r = beyond (check->bubble_rad, lo, hi) / check->sd_rad;
      bound += r * r;
    }
  return bound;
}

/* Which stretch of the torque a check comes to rest on: a number that differs where a jump lies
   between two hands. */
static int
branch_of (const PhRoll *roll, double k, double b)
{
  double cant;
  bool right = b > roll->side_nm;
  if (ph_cant_predict (roll, k, b, &cant) != PH_OK)
    return right ? 3 : -3;
  /* There are two stretches where it falls only if it can rise between; the curvature tells on
     which side of that the bow stands. */
  bool two = roll->side_nm * roll->side_nm + roll->top_nm * roll->top_nm > k * k;
  double level = ph_roll_torque (roll, cant);
  int branch = two && (right ? level > 0 : level < 0) ? 2 : 1;
  /* Where plumb is stable the way of the push is no jump. */
  return right || roll->top_nm < k ? branch : -branch;
}

static bool
has_jumps (const Search *search, const Box *box)
{
  for (size_t i = 0; i < search->data->n; i++)
    {
      const PhRoll *roll = &search->data->checks[i].roll;
      int first = branch_of (roll, box->k[0], box->b[0]);
      for (int c = 1; c < 4; c++)
        if (branch_of (roll, box->k[c / 2], box->b[c % 2]) != first)
          return true;
    }
  return false;
}

static void
push (Search *search, Box box)
{
  box.bound = bound_of (search, &box);
  if (box.bound >= search->best.value || search->n_boxes == BOXES)
    return;
  int at = search->n_boxes++;
  for (; at > 0 && search->boxes[(at - 1) / 2].bound > box.bound; at = (at - 1) / 2)
    search->boxes[at] = search->boxes[(at - 1) / 2];
  search->boxes[at] = box;
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
  PhHandPoint at = { k, b, HUGE_VAL };
  ph_hand_descend (search->data, &at);
  if (at.value < search->best.value)
    search->best = at;
}

static double
part_of (const double range[2], const double all[2])
{
  return (range[1] - range[0]) / (all[1] - all[0]);
}

/* Halves the longer side: of K at its geometric mean, since loose hands differ most. */
static void
halve (Search *search, const Box *box)
{
  Box one = *box, two = *box;
  double ratio = log (box->k[1] / box->k[0]) / log (search->all.k[1] / search->all.k[0]);
  if (ratio > part_of (box->b, search->all.b))
    one.k[1] = two.k[0] = sqrt (box->k[0] * box->k[1]);
  else
    one.b[1] = two.b[0] = 0.5 * (box->b[0] + box->b[1]);
  push (search, one);
  push (search, two);
}

/* A small box without jumps holds a valley's bottom only if the quadratic at its middle points to
   one near by. */
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
try_box (Search *search, const Box *box)
{
  bool small = part_of (box->b, search->all.b) < SMALL
               && log (box->k[1] / box->k[0]) < SMALL * log (search->all.k[1] / search->all.k[0]);
  if (small && !has_jumps (search, box))
    {
      try_smooth (search, box);
      return;
    }
  if (small)
    {
      double k = 0.5 * (box->k[0] + box->k[1]), b = 0.5 * (box->b[0] + box->b[1]);
      if (ph_hand_value (search->data, k, b) < search->best.value)
        descend_from (search, k, b);
    }
  if (box->k[1] - box->k[0] > SMALLEST * PH_HAND_STIFFNESS_SD
      || box->b[1] - box->b[0] > SMALLEST * PH_HAND_BIAS_SD)
    halve (search, box);
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

/* All hands that the prior alone does not rule out against the best so far. */
static Box
allowed (const PhHandPoint *best)
{
  double reach = sqrt (best->value);
  double least = PH_HAND_STIFFNESS - PH_HAND_STIFFNESS_SD * reach;
  return (Box){ { fmax (least, PH_HAND_STIFFNESS_LEAST),
                  PH_HAND_STIFFNESS + PH_HAND_STIFFNESS_SD * reach },
                { -PH_HAND_BIAS_SD * reach, PH_HAND_BIAS_SD * reach },
                0 };
}

PhHandPoint
ph_hand_search (const PhHandData *data)
{
  Search search = { .data = data, .best = { PH_HAND_STIFFNESS, 0, HUGE_VAL } };
  descend_from_linear (&search);
  descend_from (&search, PH_HAND_STIFFNESS, 0);
  if (search.best.value == 0 || !isfinite (search.best.value))
    return search.best;
  search.boxes = ph_alloc (BOXES * sizeof *search.boxes);
  search.all = allowed (&search.best);
  push (&search, search.all);
  for (int seen = 0; search.n_boxes > 0 && seen < BOXES; seen++)
    {
      Box box = pop (&search);
      if (box.bound >= search.best.value)
        break;
      try_box (&search, &box);
    }
  free (search.boxes);
  return search.best;
}
