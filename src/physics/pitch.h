/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What gravity asks of hand, string and shoulder in the plane of the bow. Segment data: D. A.
 * Winter, Biomechanics and Motor Control of Human Movement (2009), table 4.1; lengths after
 * Drillis and Contini (1966). A relaxed grip is assumed: what the heel of the hand takes is not
 * counted.
 */
#pragma once

#include "physics/draw.h"
#include "physics/mass.h"

typedef struct
{
  double moment_nm;            /* M g x about P, nose-down positive */
  double nock_load_n;          /* held down at the string when positive */
  double bow_arm_load_n;       /* M g + nock load */
  double shoulder_moment_nm;   /* of the load and the arm's own weight */
  double release_pitch_rad_s2; /* tipping forward when the string lets go; NAN without inertia */
} PhPitch;

PhPitch ph_pitch_of (const PhMassProperties *mass, const PhDraw *draw);
