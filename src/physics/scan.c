/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Trying values one by one on the assembly itself. Parts that do not move keep their clearance,
 * which is at least the rig's and so at least what must be kept: only what moves is measured.
 */
#include "physics/scan.h"

#include <assert.h>
#include <float.h>
#include <math.h>
#include <stdlib.h>

#include "base/text.h"
#include "physics/clearance.h"

/* How much nearer than now a rig that stands too near already may come: 1e-6 mm, for rounding. */
#define CLEARANCE_SLACK_M 1e-9

void
ph_task_set (const PhTask *task, int i, int k)
{
  const PhAdjustable *adjustable = &task->adjustables[i];
  PhPiece piece = ph_adjust_piece (ph_assembly_piece (task->assembly, adjustable->piece),
                                   adjustable->key, ph_adjust_value (adjustable, k));
  ph_assembly_set_piece (task->assembly, adjustable->piece, &piece);
}

bool
ph_task_hangs_on (const PhTask *task, int b, int a)
{
  while (b != PH_HOST_BOW && b != a)
    b = ph_assembly_piece (task->assembly, b)->host;
  return b == a;
}

/* The capsule's distance to the sweep is at least the one along x or y to the box around it. */
static bool
is_far (const PhAssembly *assembly, int i, const PhDraw *draw, double least_m)
{
  const PhPlace *place = ph_assembly_place (assembly, i);
  PhVec3 a = place->root_m, b = place->end_m;
  double room = least_m + ph_assembly_piece (assembly, i)->diameter_m / 2;
  return fmin (a.x, b.x) + draw->brace_height_m > room || fmin (a.y, b.y) > room
         || fmax (a.y, b.y) < -room;
}

static bool
keeps_clear (const PhAssembly *assembly, int i, const PhDraw *draw, double least_m)
{
  if (!is_far (assembly, i, draw, least_m))
    {
      double own = ph_clearance_of (assembly, i, draw);
      if (!isnan (own) && own < least_m)
        return false;
    }
  for (int k = ph_assembly_first_guest (assembly, i); k >= 0;
       k = ph_assembly_next_guest (assembly, k))
    if (!keeps_clear (assembly, k, draw, least_m))
      return false;
  return true;
}

bool
ph_scan_keeps_clear (const PhScan *scan, int top)
{
  if (isinf (scan->least_clearance_m))
    return true;
  return keeps_clear (scan->task->assembly, top, &scan->task->draw, scan->least_clearance_m);
}

static double
least_clearance (const PhTask *task)
{
  double now = INFINITY;
  if (isnan (task->draw.brace_height_m) || isnan (task->draw.axle_to_axle_m))
    return -INFINITY;
  for (int i = 0; i < ph_assembly_count (task->assembly); i++)
    now = fmin (now, ph_clearance_of (task->assembly, i, &task->draw)); /* passes over a NAN */
  return now < PH_CLEARANCE_LEAST_M ? now - CLEARANCE_SLACK_M : PH_CLEARANCE_LEAST_M;
}

static void
try_values (const PhScan *scan, int i)
{
  const PhTask *task = scan->task;
  const PhAdjustable *adjustable = &task->adjustables[i];
  for (int k = -adjustable->steps_down; k <= adjustable->steps_up; k++)
    {
      PhTrial *trial = &scan->rows[i].trials[k];
      ph_task_set (task, i, k);
      trial->total = *ph_assembly_total (task->assembly);
      trial->sound = trial->total.mass_kg >= DBL_MIN;
      trial->clear = k == 0 || ph_scan_keeps_clear (scan, adjustable->piece);
      if (trial->sound)
        trial->outcome = ph_outcome_of (&trial->total, &task->draw, &task->hand);
    }
}

PhScan
ph_scan_of (const PhTask *task)
{
  PhScan scan = { .task = task, .total = *ph_assembly_total (task->assembly) };
  assert (scan.total.mass_kg > 0);
  scan.now = ph_outcome_of (&scan.total, &task->draw, &task->hand);
  scan.least_clearance_m = least_clearance (task);
  size_t values = 0;
  for (int i = 0; i < task->n; i++)
    values += (size_t)(task->adjustables[i].steps_down + task->adjustables[i].steps_up + 1);
  scan.rows = ph_alloc_zeroed ((size_t)task->n + 1, sizeof *scan.rows);
  scan.trials = ph_alloc_zeroed (values + 1, sizeof *scan.trials);
  PhTrial *next = scan.trials;
  for (int i = 0; i < task->n; i++)
    {
      const PhAdjustable *adjustable = &task->adjustables[i];
      PhPiece now = *ph_assembly_piece (task->assembly, adjustable->piece);
      scan.rows[i] = (PhScanRow){ adjustable, next + adjustable->steps_down };
      next += adjustable->steps_down + adjustable->steps_up + 1;
      try_values (&scan, i);
      ph_assembly_set_piece (task->assembly, adjustable->piece, &now);
    }
  return scan;
}

void
ph_scan_clear (PhScan *scan)
{
  free (scan->rows);
  free (scan->trials);
  *scan = (PhScan){ 0 };
}
