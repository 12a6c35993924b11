/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A bow's riser from a table: a smooth centreline with depth, width, and how far it bows away from
 * the arrow. Heights in the tables are shares of s, half the riser's height. Only for the scene
 * floor's own sources.
 */
#pragma once

#include "scene/curve.h"
#include "scene/drawlist-build.h"

typedef struct
{
  float at;        /* height of its middle over s */
  float half_long; /* along the riser [mm] */
  float half_open; /* share of the half depth there */
} PhRiserHole;

typedef struct
{
  const PhKnot *line; /* height over s → x [mm]; top first */
  size_t n_line;
  const PhKnot *depth; /* full [mm] */
  size_t n_depth;
  const PhKnot *across; /* full [mm] */
  size_t n_across;
  const PhKnot *away; /* from the arrow's side [mm] */
  size_t n_away;
  const PhRiserHole *holes;
  size_t n_holes;
  const PhSocket *mounts; /* of the bow: their bosses want solid riser */
  size_t n_mounts;
} PhRiserTable;

/** Fills `riser`, bottom to top, and appends it with its holes. `s` in mm, above 0. */
void ph_riser_shape (PhPen pen, const PhRiserTable *table, float s, float left, PhRiserLine *riser);

/** The grip, from above the throat to its heel. */
void ph_grip_shape (PhPen pen);

/** Half sides at the root and at the tip of a limb blade, eased between; `across_mm` is its middle
 * in y. `points` from root to tip. Fills `way` with the unit direction at the root, if given. */
typedef struct
{
  float depth_root, depth_tip, across_root, across_tip, y;
} PhLimbSize;
void ph_limb_shape (PhPen pen, const PhPoint *points, size_t n, const PhLimbSize *size,
                    PhPoint *way);
