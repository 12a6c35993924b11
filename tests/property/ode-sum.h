/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The mass properties of a rig summed by the Open Dynamics Engine's dMass functions.
 */
#pragma once

#include "random-rig.h"

/** Mass, mass centre from P, and xx yy zz xy xz yz about that centre. */
typedef struct
{
  double mass, com[3], inertia[6];
} RigSum;

/** Sums bow and solids; a tube is its outer cylinder less its bore. */
void ode_sum (const RandomRig *rig, const RigPlace *places, RigSum *sum);

/** The calls that the solids alone need, one cylinder or box each (a bore not taken off): what the
 * benchmark times. Returns the mass, so that nothing is left out. */
double ode_sum_plain (const RandomRig *rig, const RigPlace *places);
