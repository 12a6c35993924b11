/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Weight and balance by two scales: the bow lies level, its grip pivot over the first, the second
 * a distance d ahead of it (negative behind). Moments about the first: x = F₂ d/(F₁ + F₂).
 * Standard deviations are of first order, the three readings independent.
 */
#pragma once

#include "physics/refused.h"

typedef struct
{
  double f1_n, f2_n; /* what the scales carry: under the pivot, and at x = d */
  double d_m;        /* not 0; negative behind the grip */
  double sd_n;       /* of each of the two */
  double sd_m;       /* of d */
} PhScales;

typedef struct
{
  PhRefused refused; /* then all numbers are NAN */
  double mass_kg, mass_sd_kg;
  double x_m, x_sd_m; /* mass centre ahead of the grip pivot */
} PhScalesResult;

/** What is left when parts of `parts_kg` with the first moment `parts_kg_m` (Σ m x) that lay on
 * the scales too are taken out; 0 and 0: all of it, x_sd then from ∂x/∂F₁ = −F₂d/F²,
 * ∂x/∂F₂ = F₁d/F², ∂x/∂d = F₂/F. Of the parts no uncertainty is counted here. */
PhScalesResult ph_scales_result (const PhScales *scales, double parts_kg, double parts_kg_m);
