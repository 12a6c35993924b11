/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Answers to "what brings the bubble where it is wanted", and the order they are given in: the
 * best chance left and all within 10 points of it form a group, sorted by disturbance, then steps,
 * then file order; and so on.
 */
#pragma once

#include <stddef.h>

#include "physics/scan.h"

/** Where the bubble is wanted. */
typedef struct
{
  double target_rad;
  double tolerance_rad; /* 0 or more */
} PhWant;

typedef struct
{
  int adjustable; /* below 0 (−1, −2, … in file order): the piece and all that hangs on it, mirrored
                     in the bow's plane */
  int piece;
  int steps; /* from now, not 0 */
} PhChange;

#define PH_ANSWER_CHANGES_MOST 2

typedef struct
{
  PhChange changes[PH_ANSWER_CHANGES_MOST]; /* in file order */
  int n_changes;
  int steps; /* of all changes together, signs apart */
  PhOutcome outcome;
  double chance; /* that the true bubble lies within the tolerance of the target */
  double disturbance;
} PhAnswer;

typedef struct
{
  PhAnswer *items;
  size_t n, room;
} PhAnswers;

void ph_answers_add (PhAnswers *answers, const PhAnswer *answer);
void ph_answers_clear (PhAnswers *answers);

/** Puts all of them in order. */
void ph_answers_sort (PhAnswers *answers);
/** The one that would come first; `n` must be above 0. */
const PhAnswer *ph_answers_first (const PhAnswers *answers);

/** Below zero where a comes before b inside one group of chances. */
int ph_answer_compare (const PhAnswer *a, const PhAnswer *b);

/** An answer of one or two changes (`two` null: one): steps, chance and disturbance filled in. */
PhAnswer ph_answer_of (const PhScan *scan, const PhWant *want, const PhChange *one,
                       const PhChange *two, const PhOutcome *outcome);

/** How far the bubble is from the target; INFINITY where it does not settle. */
double ph_want_miss (const PhWant *want, const PhOutcome *outcome);
/** Chances this much below the best still belong to its group. */
#define PH_CHANCE_GROUP 0.10
