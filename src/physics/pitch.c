/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Statics in the plane of the bow.
 */
#include "physics/pitch.h"

#include "base/units.h"

/* Drillis and Contini (1966), as shares of stature: shoulder to mid-hand 0.186 + 0.146 + 0.108/2;
   shoulder to wrist 0.186 + 0.146. */
#define SHOULDER_TO_HAND 0.386
#define SHOULDER_TO_WRIST 0.332
/* Winter (2009), table 4.1, total arm: mass over body mass, mass centre from the shoulder. */
#define ARM_MASS 0.050
#define ARM_CENTRE 0.530

PhPitch
ph_pitch_of (const PhMassProperties *mass, const PhDraw *draw)
{
  PhPitch pitch;
  double weight = mass->mass_kg * PH_GRAVITY;
  double arm_weight = ARM_MASS * draw->body_mass_kg * PH_GRAVITY;
  pitch.moment_nm = weight * mass->com_m.x;
  pitch.nock_load_n = pitch.moment_nm / draw->draw_length_m;
  pitch.bow_arm_load_n = weight + pitch.nock_load_n;
  pitch.shoulder_moment_nm = pitch.bow_arm_load_n * SHOULDER_TO_HAND * draw->stature_m
                             + arm_weight * ARM_CENTRE * SHOULDER_TO_WRIST * draw->stature_m;
  double inertia = mass->inertia_grip_kg_m2.yy;
  pitch.release_pitch_rad_s2 = inertia > 0 ? pitch.moment_nm / inertia : (double) NAN;
  return pitch;
}
