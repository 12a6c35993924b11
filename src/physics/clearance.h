/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How near the rig comes to where the string goes. Between rest and full draw the string sweeps
 * the triangle (−draw length, 0, nock height), (−brace height, 0, ±axle to axle/2). Cables and
 * limbs are not counted, nor are brackets and accessories, nor stacks without discs.
 */
#pragma once

#include "physics/assembly.h"
#include "physics/draw.h"

/** Below this it is a warning. */
#define PH_CLEARANCE_LEAST_M 0.015

/** Distance of piece i's capsule from the triangle [m]: segment distance minus radius, negative
 * when it crosses. NAN where the bow lacks brace height or axle to axle, or the piece is not
 * counted. A piece of length 0 counts as a sphere. */
double ph_clearance_of (const PhAssembly *assembly, int i, const PhDraw *draw);
