/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Level's pairs of a count that falls and an angle, ordered by what they save.
 */
#include "physics/lighter.h"

#include <math.h>

/* Savings that differ by less are the same discs. */
#define SAME_KG 1e-9

typedef struct
{
  const PhScan *scan;
  int stack;      /* adjustable */
  double most_kg; /* saved, so far */
  PhAnswers kept; /* those that save as much */
} Choice;

static double
saved (const PhScan *scan, const PhAnswer *answer)
{
  return scan->now.mass_kg - answer->outcome.mass_kg;
}

static bool
is_behind (const PhTask *task, int i)
{
  const PhAdjustable *adjustable = &task->adjustables[i];
  const PhMass *mass = ph_assembly_mass (task->assembly, adjustable->piece);
  return adjustable->key == PH_ADJUST_COUNT && mass->mass_kg > 0 && mass->moment_kg_m.x < 0;
}

static bool
allow (int adjustable, int steps, void *data)
{
  const Choice *choice = data;
  return adjustable != choice->stack || steps < 0;
}

static void
weigh (const PhAnswer *answer, void *data)
{
  Choice *choice = data;
  double own = saved (choice->scan, answer);
  if (own < SAME_KG || own < choice->most_kg - SAME_KG)
    return;
  if (own > choice->most_kg + SAME_KG)
    {
      choice->most_kg = own;
      choice->kept.n = 0;
    }
  ph_answers_add (&choice->kept, answer);
}

static void
choose (Choice *choice, PhAnswers *answers)
{
  if (choice->kept.n > 0)
    ph_answers_add (answers, ph_answers_first (&choice->kept));
  choice->most_kg = 0;
  choice->kept.n = 0;
}

static void
try_alone (Choice *choice, const PhWant *want)
{
  const PhScanRow *row = &choice->scan->rows[choice->stack];
  for (int k = -row->adjustable->steps_down; k < 0; k++)
    {
      const PhTrial *trial = &row->trials[k];
      if (!ph_trial_allowed (trial) || ph_want_miss (want, &trial->outcome) > want->tolerance_rad)
        continue;
      PhChange change = { choice->stack, row->adjustable->piece, k };
      PhAnswer answer = ph_answer_of (choice->scan, want, &change, NULL, &trial->outcome);
      weigh (&answer, choice);
    }
}

static void
try_stack (const PhScan *scan, const PhWant *want, int stack, PhAnswers *answers)
{
  Choice choice = { .scan = scan, .stack = stack };
  try_alone (&choice, want);
  choose (&choice, answers);
  for (int i = 0; i < scan->task->n; i++)
    {
      if (scan->task->adjustables[i].key == PH_ADJUST_COUNT)
        continue;
      ph_level_pair (scan, want, i < stack ? i : stack, i < stack ? stack : i, allow, weigh,
                     &choice);
      choose (&choice, answers);
    }
  ph_answers_clear (&choice.kept);
}

/* Level's order inside equal savings: picks the largest saving left, then sorts what shares it. */
static void
sort_by_saving (const PhScan *scan, PhAnswers *answers)
{
  for (size_t from = 0; from < answers->n;)
    {
      double most = -INFINITY;
      for (size_t i = from; i < answers->n; i++)
        most = fmax (most, saved (scan, &answers->items[i]));
      PhAnswers equal = { answers->items + from, 0, 0 };
      for (size_t i = from; i < answers->n; i++)
        if (saved (scan, &answers->items[i]) >= most - SAME_KG)
          {
            PhAnswer answer = answers->items[i];
            answers->items[i] = equal.items[equal.n];
            equal.items[equal.n++] = answer;
          }
      ph_answers_sort (&equal);
      from += equal.n;
    }
}

PhLevel
ph_lighter_of (const PhTask *task, const PhWant *want)
{
  PhScan scan = ph_scan_of (task);
  PhLevel level = { .now = scan.now };
  level.within = ph_want_miss (want, &scan.now) <= want->tolerance_rad;
  for (int i = 0; level.within && i < task->n; i++)
    if (is_behind (task, i))
      try_stack (&scan, want, i, &level.answers);
  sort_by_saving (&scan, &level.answers);
  ph_scan_clear (&scan);
  return level;
}
