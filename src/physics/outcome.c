/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One record to the numbers that an archer chooses by.
 */
#include "physics/outcome.h"

#include <math.h>

#include "physics/pitch.h"

/* What counts as 1 of disturbance (our own, no source). */
#define DISTURBING_KG 0.1
#define DISTURBING_NM 0.2
#define DISTURBING_PART 0.05

#define ROOT_2 1.4142135623730951

static void
settle (PhOutcome *outcome, const PhRoll *roll, const PhHand *hand)
{
  double cant;
  outcome->cant_rad = outcome->bubble_rad = outcome->bubble_sd_rad = NAN;
  if (ph_cant_predict (roll, hand->stiffness_nm_per_rad, hand->bias_nm, &cant) != PH_OK)
    return;
  outcome->settles = true;
  outcome->cant_rad = cant;
  outcome->bubble_rad = ph_cant_bubble (roll, cant);
  double s = roll->cos_beta * sin (cant);
  double by_cant = roll->cos_beta * cos (cant) / sqrt (1 - s * s);
  outcome->bubble_sd_rad = ph_cant_sd (roll, hand, cant) * by_cant;
}

PhOutcome
ph_outcome_of (const PhMass *mass, const PhDraw *draw, const PhHand *hand)
{
  PhOutcome outcome = { .mass_kg = mass->mass_kg };
  PhMassProperties properties = { .mass_kg = mass->mass_kg,
                                  .com_m = ph_vec3_scale (mass->moment_kg_m, 1 / mass->mass_kg),
                                  .inertia_grip_kg_m2 = mass->inertia_kg_m2 };
  PhPitch pitch = ph_pitch_of (&properties, draw);
  outcome.front_pull_nm = pitch.moment_nm;
  outcome.arm_load_n = pitch.bow_arm_load_n;
  outcome.inertia_grip_kg_m2 =
      ph_vec3 (mass->inertia_kg_m2.xx, mass->inertia_kg_m2.yy, mass->inertia_kg_m2.zz);
  PhRoll roll = ph_roll_of (properties.mass_kg, properties.com_m, draw);
  settle (&outcome, &roll, hand);
  return outcome;
}

double
ph_outcome_chance (const PhOutcome *outcome, double target_rad, double tolerance_rad)
{
  if (!outcome->settles)
    return 0;
  double off = outcome->bubble_rad - target_rad, sd = outcome->bubble_sd_rad * ROOT_2;
  if (!(sd > 0))
    return fabs (off) <= tolerance_rad ? 1 : 0;
  /* The far side's small tail, so that a hopeless rig's chance keeps its digits. */
  double near = fabs (off);
  return 0.5 * (erfc ((near - tolerance_rad) / sd) - erfc ((near + tolerance_rad) / sd));
}

static double
part_changed (double now, double then)
{
  return now > 0 ? fabs ((then - now) / now) : 0;
}

double
ph_outcome_disturbance (const PhOutcome *now, const PhOutcome *then)
{
  PhVec3 i = now->inertia_grip_kg_m2, j = then->inertia_grip_kg_m2;
  double turned = part_changed (i.x, j.x) + part_changed (i.y, j.y) + part_changed (i.z, j.z);
  return fabs (then->mass_kg - now->mass_kg) / DISTURBING_KG
         + fabs (then->front_pull_nm - now->front_pull_nm) / DISTURBING_NM
         + turned / DISTURBING_PART;
}
