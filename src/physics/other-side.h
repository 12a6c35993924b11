/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The rare archer whose bar belongs on the odd side: a bracket or bar that stands to one side,
 * with all that hangs on it, put where its mirror image in the bow's plane is.
 */
#pragma once

#include "physics/level.h"

/** Pieces with more than this |d·y|, or with their root farther off the bow's plane, count. */
#define PH_ASIDE_DIRECTION 0.02
#define PH_ASIDE_M 0.005

/** `pieces`: the brackets and bars that may be proposed, in file order. Each is a single of two
 * values, as it is and mirrored, and an answer by Level's rule for singles. */
PhLevel ph_other_side_of (const PhTask *task, const PhWant *want, const int *pieces, int n);
