/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How far the bow leans when gravity and the hand have come to rest: physics about the line
 * through nock and grip. Angles in rad, torques in N·m. Roll is about +x by the right-hand rule:
 * positive tips the top limb to the archer's right, and the bubble then sits to the left.
 */
#pragma once

#include "base/status.h"
#include "physics/draw.h"

/** What the hand holds against roll: −stiffness·φ + bias. */
typedef struct
{
  double stiffness_nm_per_rad; /* K, above 0 */
  double bias_nm;              /* B, the hand's own twist at plumb */
  double kk, kb, bb;           /* covariance of (K, B), the same units squared */
} PhHand;

/** The prior: K = 2 ± 1.5 N·m/rad, B = 0 ± 0.3 N·m (assumptions, no source). */
#define PH_HAND_STIFFNESS 2.0
#define PH_HAND_STIFFNESS_SD 1.5
#define PH_HAND_BIAS_SD 0.3
#define PH_HAND_STIFFNESS_LEAST 0.05
/** Bow mass and its centre as a roll problem: built once, solved for any hand. */
typedef struct
{
  double side_nm; /* M g cosβ y: torque at φ is −side·cos φ + top·sin φ */
  double top_nm;  /* M g cosβ w */
  double cos_beta;
} PhRoll;

/** 60°: how far a zero is looked for. */
#define PH_CANT_LIMIT_RAD 1.0471975511965976

PhRoll ph_roll_of (double mass_kg, PhVec3 com_m, const PhDraw *draw);

/** Gravity torque at roll φ: −M g cosβ (y cosφ − w sinφ). */
double ph_roll_torque (const PhRoll *roll, double cant_rad);

/** Gravity stiffness k = −dτ/dφ at roll φ; at φ = 0 it is −M g cosβ w. */
double ph_roll_stiffness (const PhRoll *roll, double cant_rad);

/** The predicted cant: the first zero of τ(φ) − Kφ + B met going from 0 the way the torque there
 * pushes, up to ±60°; with no torque there, 0 if that is stable. PH_ERR_TOPPLES where there is no
 * such zero: a result of its own, `*cant_rad` is untouched. */
PhStatus ph_cant_predict (const PhRoll *roll, double stiffness_nm_per_rad, double bias_nm,
                          double *cant_rad);

/** Tilt of the bubble at roll φ: asin(cosβ sinφ). */
double ph_cant_bubble (const PhRoll *roll, double cant_rad);

/** Standard deviation of the cant that comes from the hand's covariance: gᵀ Σ g/(K + k_φ)²,
 * g = (−φ, 1). For the true cant; one more reading scatters besides. */
double ph_cant_sd (const PhRoll *roll, const PhHand *hand, double cant_rad);

/** Half width of the 90 % interval in standard deviations. */
#define PH_SD_90 1.6448536269514722
