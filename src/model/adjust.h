/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Which numbers of a rig may be proposed for change: the unlocked swings of bars and brackets,
 * lifts of bars and counts of stacks among the fitted parts, in file order, swing before lift. A
 * bar or bracket that points forward turns only by keys its `limits` name: a front bar screwed to
 * a riser has no joint.
 */
#pragma once

#include "model/compile.h"
#include "physics/adjust.h"

/** Limits where the file states none (a present value outside stretches them). */
#define PH_LIMIT_SWING_DEG 60.0
#define PH_LIMIT_LIFT_DEG 45.0
#define PH_LIMIT_COUNT 12.0

typedef struct
{
  PhAdjustable *items;
  size_t n;
} PhAdjustables;

/** `compiled` must be that of `rig`, which must be checked. One without a whole step inside its
 * limits is left out. Free with ph_adjustables_clear. */
PhAdjustables ph_adjustables_of (const PhRig *rig, const PhCompiled *compiled);
void ph_adjustables_clear (PhAdjustables *adjustables);

/** The file's key: "swing_deg", "lift_deg", "count". */
const char *ph_adjust_key_word (PhAdjustKey key);
