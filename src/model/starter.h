/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The rig that New makes from four answers. Every number it guesses is marked as guessed.
 * Figures: common practice, no source.
 */
#pragma once

#include "model/rig.h"

/** What the answers must lie within (asserted; the screen that asks keeps to them). */
#define PH_STARTER_DRAW_LEAST_MM 400
#define PH_STARTER_DRAW_MOST_MM 1000
#define PH_STARTER_STATURE_LEAST_MM 800
#define PH_STARTER_STATURE_MOST_MM 2500

typedef struct
{
  PhBowKind kind;
  PhBowHand hand;
  double stated_draw_mm; /* the trade's draw length: 1 3/4 in (44.45 mm) longer than the true one */
  double stature_mm;     /* NAN: not told; the front bar is then 30 in long */
} PhStarter;

/** A checked rig with the guessed bow, its mounts, sight and rest and, but for a barebow, a front
 * bar 0.44 of stature long, to the inch. `name` may be null. Free with ph_rig_free. */
PhRig *ph_starter_rig (const PhStarter *starter, const char *name);
