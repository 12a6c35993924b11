/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How far a slider for a number goes and in which steps. Ranges are what a rig may reasonably have
 * (our own, no source), or the part's own limits; a value outside stretches them. No toolkit here.
 */
#pragma once

#include "widgets/number-ref.h"

G_BEGIN_DECLS

typedef struct
{
  gboolean slider;   /* a slider helps: lo and hi hold */
  double lo, hi;     /* in the file's unit */
  double step, fine; /* in the unit that is shown */
} PhNumberRange;

PhNumberRange ph_number_range (const PhNumberRef *ref, const PhRig *rig, PhUnits units);

/** "one more degree", "half an inch more", "one more weight"; a direction instead of "more" for an
 * angle of 0: "one degree out". `way` is ph_way_word's, or null. New string. */
char *ph_step_words (const PhNumberRef *ref, PhUnits units, const char *way);

G_END_DECLS
