/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A mirror image has its record's y odd terms turned, and keeps its distance from the string's
 * sweep, which lies in the plane it is mirrored in.
 */
#include "physics/other-side.h"

#include <math.h>

static bool
stands_aside (const PhTask *task, int piece)
{
  const PhPlace *place = ph_assembly_place (task->assembly, piece);
  return fabs (place->frame.a.y) > PH_ASIDE_DIRECTION || fabs (place->root_m.y) > PH_ASIDE_M;
}

static PhMass
mirrored (PhMass mass)
{
  mass.moment_kg_m.y = -mass.moment_kg_m.y;
  mass.inertia_kg_m2.xy = -mass.inertia_kg_m2.xy;
  mass.inertia_kg_m2.yz = -mass.inertia_kg_m2.yz;
  return mass;
}

static void
try_piece (const PhScan *scan, const PhWant *want, const PhChange *change, PhAnswers *answers)
{
  const PhTask *task = scan->task;
  PhMass branch = ph_assembly_subtree_mass (task->assembly, change->piece);
  PhMass total = ph_mass_add (ph_mass_subtract (scan->total, branch), mirrored (branch));
  PhOutcome outcome = ph_outcome_of (&total, &task->draw, &task->hand);
  double miss = ph_want_miss (want, &outcome), miss_now = ph_want_miss (want, &scan->now);
  if (isinf (miss) || miss >= miss_now)
    return;
  bool passed =
      scan->now.settles
      && (scan->now.bubble_rad - want->target_rad) * (outcome.bubble_rad - want->target_rad) <= 0;
  if (miss > want->tolerance_rad && !passed)
    return;
  PhAnswer answer = ph_answer_of (scan, want, change, NULL, &outcome);
  ph_answers_add (answers, &answer);
}

PhLevel
ph_other_side_of (const PhTask *task, const PhWant *want, const int *pieces, int n)
{
  PhTask still = *task;
  still.n = 0;
  PhScan scan = ph_scan_of (&still);
  PhLevel level = { .now = scan.now };
  level.within = ph_want_miss (want, &scan.now) <= want->tolerance_rad;
  for (int i = 0; !level.within && i < n; i++)
    if (stands_aside (task, pieces[i]))
      try_piece (&scan, want, &(PhChange){ -1 - i, pieces[i], 1 }, &level.answers);
  ph_answers_sort (&level.answers);
  ph_scan_clear (&scan);
  return level;
}
