/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every whole step of every adjustable, tried once: the rig's record, what comes of it, and
 * whether it stays clear of the string. What Level, the next check and Lighter choose from. Costs
 * about 2 µs a value.
 */
#pragma once

#include "physics/adjust.h"
#include "physics/assembly.h"
#include "physics/outcome.h"

/** A rig with what may change on it. The assembly is changed while something is tried and is bit
 * for bit as it was when a function returns. */
typedef struct
{
  PhAssembly *assembly;
  PhDraw draw;
  PhHand hand;
  const PhAdjustable *adjustables;
  int n;
} PhTask;

typedef struct
{
  bool sound; /* weighs something */
  bool clear; /* of the string: what moves comes no nearer than allowed */
  PhMass total;
  PhOutcome outcome; /* only of a sound one */
} PhTrial;

/** One adjustable's values, from −steps_down to steps_up. */
typedef struct
{
  const PhAdjustable *adjustable;
  PhTrial *trials; /* of step 0: index 0 */
} PhScanRow;

typedef struct
{
  const PhTask *task;
  PhMass total;
  PhOutcome now;
  double least_clearance_m; /* what must be kept; −INFINITY where the bow states no sweep */
  PhScanRow *rows;
  PhTrial *trials; /* of all rows */
} PhScan;

/** The rig now must weigh something (asserted). Free with ph_scan_clear. */
PhScan ph_scan_of (const PhTask *task);
void ph_scan_clear (PhScan *scan);

/** Whether a trial may be proposed. */
static inline bool
ph_trial_allowed (const PhTrial *trial)
{
  return trial->sound && trial->clear;
}

/** Sets an adjustable in the task's assembly at k steps from now (0: back). */
void ph_task_set (const PhTask *task, int i, int k);

/** Whether everything on piece `top` and beyond, as the assembly stands now, keeps the scan's
 * clearance. */
bool ph_scan_keeps_clear (const PhScan *scan, int top);

/** Whether b is a or hangs on it. */
bool ph_task_hangs_on (const PhTask *task, int b, int a);
