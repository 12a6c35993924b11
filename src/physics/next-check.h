/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Which bubble check would teach most. What matters is how sure the rig is that the archer is
 * about to try: Level's first single answer, or the open rig when it is level or there is none.
 */
#pragma once

#include "physics/level.h"

#define PH_NEXT_CHECKS 3

typedef struct
{
  PhChange change;          /* steps 0: the rig as it is */
  double interval_then_rad; /* half-width of that rig's 90 % cant interval after one more reading */
} PhNextCheck;

typedef struct
{
  PhNextCheck checks[PH_NEXT_CHECKS];
  int n;
  double interval_now_rad; /* NAN where the rig does not settle */
  bool enough;             /* sure already, or the best check would hardly narrow it */
} PhNextChecks;

/** `target_rad` is the archer's wanted bubble; `with_checks`: the hand rests on at least one check,
 * else the only suggestion is the rig as it is. */
PhNextChecks ph_next_checks_of (const PhTask *task, double target_rad, bool with_checks);
