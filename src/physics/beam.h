/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A bar as a clamped beam: how far its tip hangs, and the frequency at which it would ring were
 * its root held in a vice. Formulas: Roark, table 8.1 cases 1a and 2a (from memory); tip-mass
 * frequency equation: Karnovsky & Lebed, Formulas for Structural Dynamics (2004), section 7.5.3.
 */
#pragma once

#include <stdbool.h>

#include "physics/assembly.h"

typedef struct
{
  double droop_m;
  double slope_rad;
  double clamped_hz;
} PhBeam;

/** Whether piece i is a bar that bends: a modulus, a length and a tube mass. */
bool ph_beam_bends (const PhAssembly *assembly, int i);

/** Droop, slope and clamped frequency of piece i, which must bend (asserted). Tip mass: the tip
 * fitting and all that hangs beyond the far face, as a point; weights act times the cosine of the
 * bar's elevation; an `along` weight (with what hangs on it) acts at its middle s, at most L. */
PhBeam ph_beam_of (const PhAssembly *assembly, int i);

/** Smallest λ > 0 of 1 + cosλ coshλ − nλ(sinλ coshλ − cosλ sinhλ) = 0, n = tip mass / beam mass
 * ≥ 0 and finite. n = 0 gives 1.875104…, n = 1 gives λ² = 1.557298…. */
double ph_beam_lambda (double n);
