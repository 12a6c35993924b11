/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Ordering. Disturbances that differ by rounding alone (mirror-like changes of an even rig) count
 * as equal, or the order would hang on the last bit.
 */
#include "physics/answers.h"

#include <math.h>
#include <stdlib.h>

#include "base/text.h"

#define DISTURBANCE_GRAIN 1e-9

void
ph_answers_add (PhAnswers *answers, const PhAnswer *answer)
{
  if (answers->n == answers->room)
    {
      answers->room = answers->room ? 2 * answers->room : 64;
      answers->items = ph_realloc (answers->items, answers->room * sizeof *answers->items);
    }
  answers->items[answers->n++] = *answer;
}

void
ph_answers_clear (PhAnswers *answers)
{
  free (answers->items);
  *answers = (PhAnswers){ 0 };
}

static int
compare_changes (const PhAnswer *a, const PhAnswer *b)
{
  for (int i = 0; i < PH_ANSWER_CHANGES_MOST; i++)
    {
      bool in_a = i < a->n_changes, in_b = i < b->n_changes;
      if (!in_a || !in_b)
        return in_a - in_b;
      const PhChange *x = &a->changes[i], *y = &b->changes[i];
      bool mirrored = x->adjustable < 0 && y->adjustable < 0; /* counted downward */
      if (x->adjustable != y->adjustable)
        return (x->adjustable < y->adjustable) != mirrored ? -1 : 1;
    }
  /* The same numbers changed: the lower values first. */
  for (int i = 0; i < a->n_changes; i++)
    if (a->changes[i].steps != b->changes[i].steps)
      return a->changes[i].steps < b->changes[i].steps ? -1 : 1;
  return 0;
}

int
ph_answer_compare (const PhAnswer *a, const PhAnswer *b)
{
  double left = rint (a->disturbance / DISTURBANCE_GRAIN);
  double right = rint (b->disturbance / DISTURBANCE_GRAIN);
  if (left != right)
    return left < right ? -1 : 1;
  if (a->steps != b->steps)
    return a->steps < b->steps ? -1 : 1;
  return compare_changes (a, b);
}

static int
compare_in_group (const void *a, const void *b)
{
  return ph_answer_compare (a, b);
}

static int
compare_chances (const void *a, const void *b)
{
  const PhAnswer *x = a, *y = b;
  if (x->chance != y->chance)
    return x->chance > y->chance ? -1 : 1;
  return ph_answer_compare (x, y);
}

void
ph_answers_sort (PhAnswers *answers)
{
  PhAnswer *items = answers->items;
  if (answers->n == 0)
    return;
  qsort (items, answers->n, sizeof *items, compare_chances);
  for (size_t from = 0, to; from < answers->n; from = to)
    {
      for (to = from + 1; to < answers->n; to++)
        if (items[to].chance < items[from].chance - PH_CHANCE_GROUP)
          break;
      qsort (items + from, to - from, sizeof *items, compare_in_group);
    }
}

const PhAnswer *
ph_answers_first (const PhAnswers *answers)
{
  double best = 0;
  const PhAnswer *first = NULL;
  for (size_t i = 0; i < answers->n; i++)
    best = fmax (best, answers->items[i].chance);
  for (size_t i = 0; i < answers->n; i++)
    {
      const PhAnswer *answer = &answers->items[i];
      if (answer->chance >= best - PH_CHANCE_GROUP
          && (!first || ph_answer_compare (answer, first) < 0))
        first = answer;
    }
  return first;
}

PhAnswer
ph_answer_of (const PhScan *scan, const PhWant *want, const PhChange *one, const PhChange *two,
              const PhOutcome *outcome)
{
  PhAnswer answer = { .changes = { *one }, .n_changes = 1, .outcome = *outcome };
  answer.steps = abs (one->steps);
  if (two)
    {
      answer.changes[answer.n_changes++] = *two;
      answer.steps += abs (two->steps);
    }
  answer.chance = ph_outcome_chance (outcome, want->target_rad, want->tolerance_rad);
  answer.disturbance = ph_outcome_disturbance (&scan->now, outcome);
  return answer;
}

double
ph_want_miss (const PhWant *want, const PhOutcome *outcome)
{
  return outcome->settles ? fabs (outcome->bubble_rad - want->target_rad) : (double)INFINITY;
}
