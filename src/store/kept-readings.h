/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Readings kept with the rig, so that they can be looked at and typed anew: the bow's key
 * "readings", a list of readings files' objects, each with the hand the bow was held in and the
 * parts that were taken out: {"hanging": {…}, "bow_hand": "left", "parts_mass_g": 1024,
 * "parts_com_mm": [3]}. The rig's loader keeps the key as it is, whatever stands in it.
 */
#pragma once

#include "model/measure.h"

/** The bow's key in the rig file. */
#define PH_READINGS_KEY "readings"

typedef struct
{
  PhReadings readings; /* mirrored to the rig's bow hand where it was kept for the other */
  double parts_mass_g, parts_com_mm[3]; /* NAN where not said */
} PhKeptReadings;

/** Those that can be read, in their order: a new array of `*n`, null where there are none. */
PhKeptReadings *ph_kept_readings_of (const PhRig *rig, size_t *n);
void ph_kept_readings_free (PhKeptReadings *kept, size_t n);

/** Keeps readings and what was taken out of them; those of the same method (and axis) go. */
void ph_kept_readings_put (PhRig *rig, const PhReadings *readings, const PhMeasured *measured);
