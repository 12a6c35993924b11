/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Roll moments sorted for the balance beam: which parts pull to the left, which to the right, and
 * how much, with what is too small to be seen merged into one "rest" a side.
 */
#pragma once

#include "model/report.h"

/** `part` of a block that stands for several parts too small to be shown alone. */
#define PH_BLOCK_REST (-2)

typedef struct
{
  int part;         /* index in rig->parts, −1 the bow, PH_BLOCK_REST */
  double moment_nm; /* size of the share, above 0 */
  size_t merged;    /* PH_BLOCK_REST: how many parts; else 1 */
} PhBlock;

typedef struct
{
  PhBlock *blocks; /* largest first, the rest last */
  size_t n;
  double total_nm; /* sum of the side, exact whatever was merged */
} PhSide;

typedef struct
{
  PhSide left; /* what tips the bow to the archer's left */
  PhSide right;
} PhSides;

/** Shares of the roll moment below `least_share` of the heavier side's total are merged, but never
 * `keep` (a part's index, −1 the bow, PH_BLOCK_REST for none); a rest of a single part stays that
 * part. Shares of 0 are left out. Free with ph_sides_clear. */
PhSides ph_sides_of (const PhReport *report, double least_share, int keep);
void ph_sides_clear (PhSides *sides);

/** What holds the weight's roll moment where the bow comes to rest, about the grip–nock line,
 * positive toward the archer's right. With the shares, which are those of a plumb bow, they sum to
 * 0. */
typedef struct
{
  double hand_nm;      /* −K φ + B */
  double levelling_nm; /* what leaning itself changes in gravity's pull, τ(φ) − τ(0): a weight that
                         hangs low swings back, one that stands high goes on over */
} PhHolding;

/** Both NAN where the rig does not settle. */
PhHolding ph_holding_of (const PhReport *report);

/** The largest size among the shares of the roll moment and of the pitch moment: the scale of a
 * chart of them. 0 where all are 0. */
double ph_shares_largest (const PhReport *report, bool pitch);
