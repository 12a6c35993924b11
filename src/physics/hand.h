/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The archer's own hand, learnt from bubble checks: the (K, B) that best explain what the bubble
 * showed, with a prior that keeps a single reading honest.
 */
#pragma once

#include <stddef.h>

#include "physics/cant.h"

/** One bubble check: the rig as it was, and what the helper read. */
typedef struct
{
  PhRoll roll;       /* of the rig that was held */
  double bubble_rad; /* read tilt; positive when the top limb tips right, |b| < 60° */
  double sd_rad;     /* its standard deviation, above 0 */
} PhBubbleCheck;

/** What the fitted hand predicts for a check. Where that hand could not hold that rig: 60° the
 * way the torque pushes. */
double ph_check_predict (const PhBubbleCheck *check, double stiffness_nm_per_rad, double bias_nm);

/** Minimises Σ[(b − b̂)/σ]² + (K − 2)²/1.5² + B²/0.3² over K ≥ 0.05 and B; the covariance is
 * (JᵀJ)⁻¹ there, prior rows included. With no checks the prior itself. PH_ERR_NO_CONVERGENCE
 * leaves `*hand` untouched. */
PhStatus ph_hand_fit (const PhBubbleCheck *checks, size_t n, PhHand *hand);

/** (b − b̂)/σ. */
double ph_check_residual (const PhBubbleCheck *check, const PhHand *hand);

/** A check disagrees when its residual exceeds this in size. */
#define PH_CHECK_DISAGREES 2.5
