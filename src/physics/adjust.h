/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What hands can set on a rig, as plain records: an angle by 1°, a stack by one disc. Values stand
 * in the rig file's units (degrees, discs), so that an answer can be written to the file as it is;
 * they are now + k·step, k whole. Pure functions.
 */
#pragma once

#include "physics/piece.h"

typedef enum
{
  PH_ADJUST_SWING,
  PH_ADJUST_LIFT,
  PH_ADJUST_COUNT
} PhAdjustKey;

typedef struct
{
  int piece; /* index in the assembly */
  PhAdjustKey key;
  double now, step, lo, hi; /* the file's unit; step above 0, lo ≤ now ≤ hi */
  int steps_down, steps_up; /* how many whole steps the limits leave each way, 0 or more */
} PhAdjustable;

/** Fills in steps_down and steps_up from the other numbers; `most` is a value that must not be
 * passed whatever hi says (INFINITY: none). */
void ph_adjust_count_steps (PhAdjustable *adjustable, double most);

/** now + k·step. */
double ph_adjust_value (const PhAdjustable *adjustable, int k);

/** The piece as it is with the key at that value. */
PhPiece ph_adjust_piece (const PhPiece *piece, PhAdjustKey key, double value);
