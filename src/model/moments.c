/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Costs one allocation a side and a sort of at most 257 blocks.
 */
#include "model/moments.h"

#include <math.h>
#include <stdlib.h>

#include "base/text.h"

static int
larger_first (const void *a, const void *b)
{
  const PhBlock *left = a, *right = b;
  if (left->moment_nm != right->moment_nm)
    return left->moment_nm < right->moment_nm ? 1 : -1;
  return (left->part > right->part) - (left->part < right->part);
}

/* Sum of one side: positive roll moments tip to the right. */
static double
total_of (const PhReport *report, double sign)
{
  double total = 0.0;
  for (size_t i = 0; i < report->n_shares; i++)
    total += fmax (sign * report->shares[i].roll_moment_nm, 0.0);
  return total;
}

static PhSide
side_of (const PhReport *report, double sign, double least_nm, int keep)
{
  PhSide side = { ph_alloc_zeroed (report->n_shares + 1, sizeof (PhBlock)), 0, 0.0 };
  PhBlock rest = { PH_BLOCK_REST, 0.0, 0 };
  int last_merged = PH_BLOCK_REST;
  side.total_nm = total_of (report, sign);
  for (size_t i = 0; i < report->n_shares; i++)
    {
      const PhShare *share = &report->shares[i];
      double moment = sign * share->roll_moment_nm;
      if (!(moment > 0.0))
        continue;
      if (moment >= least_nm || share->part == keep)
        {
          side.blocks[side.n++] = (PhBlock){ share->part, moment, 1 };
          continue;
        }
      rest.moment_nm += moment;
      rest.merged++;
      last_merged = share->part;
    }
  qsort (side.blocks, side.n, sizeof (PhBlock), larger_first);
  if (rest.merged == 1)
    rest.part = last_merged;
  if (rest.merged > 0)
    side.blocks[side.n++] = rest;
  return side;
}

PhSides
ph_sides_of (const PhReport *report, double least_share, int keep)
{
  double least_nm = least_share * fmax (total_of (report, -1.0), total_of (report, 1.0));
  PhSides sides = { side_of (report, -1.0, least_nm, keep), side_of (report, 1.0, least_nm, keep) };
  return sides;
}

void
ph_sides_clear (PhSides *sides)
{
  free (sides->left.blocks);
  free (sides->right.blocks);
  *sides = (PhSides){ 0 };
}

PhHolding
ph_holding_of (const PhReport *report)
{
  PhHolding holding = { NAN, NAN };
  if (!report->stable)
    return holding;
  holding.hand_nm = report->hand.bias_nm - report->hand.stiffness_nm_per_rad * report->cant_rad;
  holding.levelling_nm =
      ph_roll_torque (&report->roll, report->cant_rad) - ph_roll_torque (&report->roll, 0.0);
  return holding;
}

double
ph_shares_largest (const PhReport *report, bool pitch)
{
  double largest = 0.0;
  for (size_t i = 0; i < report->n_shares; i++)
    {
      const PhShare *share = &report->shares[i];
      largest = fmax (largest, fabs (pitch ? share->pitch_moment_nm : share->roll_moment_nm));
    }
  return largest;
}
