/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a changed rig would be like, by the same formulas as its report, and how much of a change
 * that is. Pure functions, no allocation; about 200 ns.
 */
#pragma once

#include <stdbool.h>

#include "physics/cant.h"
#include "physics/mass.h"

typedef struct
{
  bool settles;
  double cant_rad, bubble_rad; /* NAN when it does not settle */
  double bubble_sd_rad;        /* from the hand's covariance; NAN when it does not settle */
  double mass_kg;
  double front_pull_nm; /* M g x */
  double arm_load_n;
  PhVec3 inertia_grip_kg_m2; /* Ixx, Iyy, Izz: roll, pitch, yaw about the grip */
} PhOutcome;

/** `mass` is the whole rig's record; its mass must be above 0. */
PhOutcome ph_outcome_of (const PhMass *mass, const PhDraw *draw, const PhHand *hand);

/** Chance that the true bubble lies within `tolerance_rad` of `target_rad`: normal, about the
 * predicted bubble. 0 where it does not settle. */
double ph_outcome_chance (const PhOutcome *outcome, double target_rad, double tolerance_rad);

/** How much else changes: |Δmass|/100 g + |Δfront pull|/0.2 N·m + Σ|ΔI/I|/5 % over the three axes
 * (an axis without inertia adds nothing). */
double ph_outcome_disturbance (const PhOutcome *now, const PhOutcome *then);
