/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The rule of mirroring, part by part, for those who mirror a whole rig and those who mirror a
 * branch of it.
 */
#pragma once

#include "model/rig.h"

/** Beyond this |a·y| the frame of an axis takes its left from +x: physics/frame.h. */
#define PH_ACROSS 0.9999

/** Which axes of a part lie along ±y, where swing and own y keep their signs. */
typedef struct
{
  bool seat; /* the axis that the part's swing is on */
  bool own;  /* the part's own axis */
} PhAcross;

/** Of every part, those switched off too: a new array. `rig` must be checked. */
PhAcross *ph_across_of (const PhRig *rig);

/** "Left back bar" → "Right back bar": whole words of a side, exchanged. New string. */
char *ph_mirror_name (const char *name);

/** Turns the part's swing, its limits and its y over, and the sides in its name; what it hangs on
 * is the caller's. */
void ph_mirror_part (PhPart *part, PhAcross across);

/** Turns a sign; 0 keeps its own: a file says 0 and not -0. */
static inline void
ph_mirror_turn (double *value)
{
  if (*value != 0)
    *value = -*value;
}
