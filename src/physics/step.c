/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two tries an adjustable: about a microsecond each.
 */
#include "physics/step.h"

#include <float.h>
#include <math.h>

/* The rig with adjustable i at k steps. What weighs nothing has no numbers. */
static PhOutcome
outcome_at (const PhTask *task, int i, int k)
{
  static const PhOutcome none = { .cant_rad = NAN,
                                  .bubble_rad = NAN,
                                  .bubble_sd_rad = NAN,
                                  .mass_kg = NAN,
                                  .front_pull_nm = NAN,
                                  .arm_load_n = NAN,
                                  .inertia_grip_kg_m2 = { NAN, NAN, NAN } };
  int piece = task->adjustables[i].piece;
  PhPiece now = *ph_assembly_piece (task->assembly, piece);
  ph_task_set (task, i, k);
  PhMass total = *ph_assembly_total (task->assembly);
  ph_assembly_set_piece (task->assembly, piece, &now);
  return total.mass_kg >= DBL_MIN ? ph_outcome_of (&total, &task->draw, &task->hand) : none;
}

static double
part_of (double change, double now)
{
  return now > 0 ? change / now : (double)NAN;
}

static PhStepEffect
effect_of (const PhTask *task, int i, const PhOutcome *now)
{
  const PhAdjustable *adjustable = &task->adjustables[i];
  int from = adjustable->steps_down > 0 ? -1 : 0, to = adjustable->steps_up > 0 ? 1 : 0;
  PhOutcome lo = from ? outcome_at (task, i, from) : *now;
  PhOutcome hi = to ? outcome_at (task, i, to) : *now;
  double steps = to - from;
  PhVec3 turned = ph_vec3_sub (hi.inertia_grip_kg_m2, lo.inertia_grip_kg_m2);
  PhVec3 still = now->inertia_grip_kg_m2;
  return (PhStepEffect){
    .bubble_rad = (hi.bubble_rad - lo.bubble_rad) / steps,
    .front_pull_nm = (hi.front_pull_nm - lo.front_pull_nm) / steps,
    .arm_load_n = (hi.arm_load_n - lo.arm_load_n) / steps,
    .mass_kg = (hi.mass_kg - lo.mass_kg) / steps,
    .inertia_part =
        ph_vec3 (part_of (turned.x / steps, still.x), part_of (turned.y / steps, still.y),
                 part_of (turned.z / steps, still.z)),
  };
}

void
ph_steps_of (const PhTask *task, PhStepEffect *effects)
{
  PhOutcome now = ph_outcome_of (ph_assembly_total (task->assembly), &task->draw, &task->hand);
  for (int i = 0; i < task->n; i++)
    effects[i] = effect_of (task, i, &now);
}
