/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What one more step of a number does, found by really taking that step on a copy of the rig. With
 * a hand that is only assumed the bubble's change is a range over loose and firm hands: its
 * direction is to be trusted, its size is not. No toolkit here.
 */
#pragma once

#include "widgets/number-ref.h"

G_BEGIN_DECLS

typedef struct
{
  gboolean has_level;    /* a compound's sight has one; else the words are of the lean */
  gboolean fitted;       /* the hand is this archer's own: lo and hi are one number */
  double lo_rad, hi_rad; /* change of the bubble's tilt; negative: it moves to the right; NAN where
                            no hand holds the rig before and after */
  double sure_rad;       /* half width of the bubble's 90 % interval; NAN while assumed */
  double front_g;        /* change of the front pull as weight at the front bar's tip [g]; NAN
                            without a front bar */
} PhStepEffect;

/** Takes the number at `ref` to `to_value` (file's unit) on a copy. False where that would be
 * refused. Costs a copy, a check and a compilation of the rig: tens of µs for ten parts. */
gboolean ph_step_effect_try (const PhRig *rig, const PhReport *report, const PhCompiled *compiled,
                             const PhNumberRef *ref, double to_value, PhStepEffect *effect);

/** "one more degree: bubble 0.1–0.4° to the right"; `step` is "one more degree". New string. */
char *ph_step_effect_text (const PhStepEffect *effect, const char *step, PhUnits units);

/** The bubble's part of it alone: "bubble 0.1–0.4° to the right". New string. */
char *ph_step_effect_movement (const PhStepEffect *effect);

G_END_DECLS
