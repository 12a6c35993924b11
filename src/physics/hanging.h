/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Mass centre by hanging: hung from a point at rest, the plumb line through that point passes
 * through the mass centre. Two or more lines fix it by least squares.
 */
#pragma once

#include <stddef.h>

#include "math/sym3.h"
#include "physics/refused.h"

/** Refused beyond this distance from a line, and where no two lines differ by that angle. */
#define PH_HANGING_SPREAD_M 0.030
#define PH_HANGING_ANGLE_DEG 10.0

typedef struct
{
  PhVec3 point_m;   /* any point of the line, bow frame */
  PhVec3 direction; /* of the line in the bow frame; unit length, either way along it */
  double sd_m;      /* how far the line may be off sideways, above 0 */
} PhPlumbLine;

typedef struct
{
  PhRefused refused;
  PhVec3 com_m;         /* argmin Σ |(I − nnᵀ)(c − p)|²/σ²; NANs where refused */
  PhSym3 covariance_m2; /* (Σ (I − nnᵀ)/σ²)⁻¹; NANs where refused */
  double spread_m;      /* greatest distance from a line; NAN only where lines are too alike */
} PhHanging;

/** Two lines at least, else they count as too alike. */
PhHanging ph_hanging_of (const PhPlumbLine *lines, size_t n);
