/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a step does, what centres the bubble and which check to do next, of a rig, in the words and
 * units of the rig file; from the same physics for every screen and command. Each call compiles
 * the rig and fits the hand anew: milliseconds.
 */
#pragma once

#include "model/adjust.h"
#include "model/edit.h"
#include "model/issue.h"
#include "physics/level.h"
#include "physics/next-check.h"
#include "physics/step.h"

/** A rig made ready for the physics of deciding. */
typedef struct
{
  PhCompiled *compiled;
  PhAdjustables adjustables;
  PhTask task;
  bool hand_fitted;
  const char *reason; /* why there is no hand; null: there is one. Without one the task's is NAN */
} PhReady;

/** `rig` must be checked. Free with ph_ready_clear. */
PhReady ph_ready_of (const PhRig *rig);
void ph_ready_clear (PhReady *ready);

/** An adjustable with what one more step of it does. */
typedef struct
{
  int part;        /* index in rig->parts */
  const char *key; /* the file's */
  double now, step, lo, hi;
  PhStepEffect effect; /* bubble NAN where a neighbour does not settle, or there is no hand */
} PhPartStep;

/** One for each adjustable, in file order: a new array, `*n` of them. */
PhPartStep *ph_part_steps_of (const PhRig *rig, size_t *n);

typedef struct
{
  int part;
  const char *key; /* "swing_deg", "lift_deg", "count"; PH_KEY_MIRROR: with all that hangs on it */
  double from, to; /* the file's unit; mirrored: 0 and 1 */
} PhPartChange;

typedef enum
{
  PH_LEVEL_ALL,       /* singles, and pairs where no single is enough */
  PH_LEVEL_LIGHTER,   /* less weight behind the grip for a rig that is level */
  PH_LEVEL_OTHER_SIDE /* brackets and bars mirrored */
} PhLevelKind;

typedef struct
{
  PhLevelKind kind;
  double target_deg;    /* NAN: the archer's wanted bubble */
  double tolerance_deg; /* 0 or more; NAN: PH_LEVEL_TOLERANCE_DEG */
} PhLevelQuestion;
#define PH_LEVEL_TOLERANCE_DEG 0.5

typedef struct
{
  PhPartChange changes[PH_ANSWER_CHANGES_MOST];
  int n_changes;
  int steps;
  PhOutcome outcome;
  double chance, disturbance;
} PhPartAnswer;

typedef struct
{
  double target_deg, tolerance_deg;
  bool hand_fitted;
  PhOutcome now; /* bubble NAN where it does not settle or there is no hand */
  PhPartAnswer *answers;
  size_t n;
  char *reason; /* why there is none; else null */
  char *note;   /* what was left out, or null */
} PhPartAnswers;

/** Free with ph_part_answers_clear. */
PhPartAnswers ph_part_answers_of (const PhRig *rig, const PhLevelQuestion *question);
void ph_part_answers_clear (PhPartAnswers *answers);

/** Writes an answer into the rig it was made for. False: refused, `*issues` says why. */
bool ph_edit_apply_change (PhRig *rig, const PhPartChange *change, PhIssues *issues);
bool ph_edit_apply_answer (PhRig *rig, const PhPartAnswer *answer, PhIssues *issues);

typedef struct
{
  bool changed;        /* false: the rig as it is */
  PhPartChange change; /* where changed */
  double interval_then_deg;
} PhPartCheck;

typedef struct
{
  PhPartCheck checks[PH_NEXT_CHECKS];
  int n;
  double interval_now_deg; /* half-width of the 90 % cant interval of the rig about to be tried;
                              NAN where it does not settle */
  bool enough;
} PhPartChecks;

PhPartChecks ph_part_checks_of (const PhRig *rig);
