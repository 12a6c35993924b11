/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Inertia by swinging, small swings. Compound pendulum: about a fixed axis a distance l from the
 * mass centre, I_pivot = M g l T²/(4π²) (OpenStax University Physics 1, section 15.4), and about
 * the parallel axis through the mass centre I_c = I_pivot − M l². Two strings (bifilar): hung level
 * by two upright strings, the mass centre midway between them, turning about the upright axis:
 * I = M g D² T²/(16π² h) (formula from memory; method: Jardin & Mueller, AIAA 2007-6822).
 * Deviations are of first order, the readings independent.
 */
#pragma once

#include "physics/refused.h"

typedef struct
{
  double mass_kg;    /* of all that swings */
  double distance_m; /* l: from the axis it swings about to the mass centre */
  double swings;     /* full periods */
  double seconds;    /* for all of them; T = seconds/swings */
  double mass_sd_kg, distance_sd_m, seconds_sd_s;
} PhSwing;

typedef struct
{
  double mass_kg;
  double spacing_m; /* D: between the strings */
  double length_m;  /* h: of the strings */
  double swings, seconds;
  double mass_sd_kg, spacing_sd_m, length_sd_m, seconds_sd_s;
} PhTwoString;

typedef struct
{
  PhRefused refused; /* then both numbers are NAN */
  double value, sd;  /* kg·m² about the mass centre */
} PhSwingResult;

/** ∂I_c/∂M = I_c/M, ∂I_c/∂l = I_pivot/l − 2Ml, ∂I_c/∂T = 2 I_pivot/T. A negative I_c is refused. */
PhSwingResult ph_swing_result (const PhSwing *swing);

/** Relative parts: M once, D twice, T twice, h once. */
PhSwingResult ph_two_string_result (const PhTwoString *strings);
