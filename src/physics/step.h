/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What one more step of each adjustable does: (f(+1) − f(−1))/2, or the one-sided difference where
 * a step leaves the limits. The string is not asked: a step says what would change, not what to do.
 */
#pragma once

#include "physics/scan.h"

typedef struct
{
  double bubble_rad; /* NAN where the rig, so changed, does not settle */
  double front_pull_nm, arm_load_n, mass_kg;
  PhVec3 inertia_part; /* roll, pitch, yaw about the grip, as a part of now; NAN without any */
} PhStepEffect;

/** One for each adjustable of the task, into `effects`. */
void ph_steps_of (const PhTask *task, PhStepEffect *effects);
