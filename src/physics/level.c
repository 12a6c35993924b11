/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Singles, which pairs are tried, and the order of it all. The pairs themselves: level-pairs.c.
 */
#include "physics/level.h"

#include <math.h>
#include <stdlib.h>

#include "base/text.h"

/* Misses that differ by less are equally near: rounding is a thousand times smaller. */
#define NEARER_RAD 1e-12

int
ph_level_nearest (const PhScan *scan, const PhWant *want, int i, double *miss)
{
  const PhScanRow *row = &scan->rows[i];
  int down = row->adjustable->steps_down, up = row->adjustable->steps_up, best = 0;
  int farthest = down > up ? down : up;
  *miss = ph_want_miss (want, &row->trials[0].outcome);
  for (int size = 1; size <= farthest; size++)
    for (int k = -size; k <= size; k += 2 * size)
      {
        if (k < -down || k > up || !ph_trial_allowed (&row->trials[k]))
          continue;
        double own = ph_want_miss (want, &row->trials[k].outcome);
        if (own < *miss - NEARER_RAD || (isinf (*miss) && !isinf (own)))
          {
            *miss = own;
            best = k;
          }
      }
  return best;
}

/* Whether the target lies between the bubble at k and that of a neighbouring value. */
static bool
is_passed (const PhScanRow *row, const PhWant *want, int k)
{
  double own = row->trials[k].outcome.bubble_rad - want->target_rad;
  for (int next = k - 1; next <= k + 1; next += 2)
    {
      if (next < -row->adjustable->steps_down || next > row->adjustable->steps_up)
        continue;
      const PhTrial *trial = &row->trials[next];
      if (ph_trial_allowed (trial) && trial->outcome.settles
          && own * (trial->outcome.bubble_rad - want->target_rad) <= 0)
        return true;
    }
  return false;
}

bool
ph_level_singles (const PhScan *scan, const PhWant *want, PhAnswers *answers)
{
  bool landed = false;
  for (int i = 0; i < scan->task->n; i++)
    {
      double miss;
      int k = ph_level_nearest (scan, want, i, &miss);
      bool lands = miss <= want->tolerance_rad;
      if (k == 0 || isinf (miss) || (!lands && !is_passed (&scan->rows[i], want, k)))
        continue;
      landed |= lands;
      PhChange change = { i, scan->rows[i].adjustable->piece, k };
      PhAnswer answer = ph_answer_of (scan, want, &change, NULL, &scan->rows[i].trials[k].outcome);
      ph_answers_add (answers, &answer);
    }
  ph_answers_sort (answers);
  return landed;
}

typedef struct
{
  int adjustable;
  double miss;
} Ranked;

static int
compare_misses (const void *a, const void *b)
{
  const Ranked *x = a, *y = b;
  if (x->miss != y->miss)
    return x->miss < y->miss ? -1 : 1;
  return x->adjustable - y->adjustable;
}

static int
compare_ints (const void *a, const void *b)
{
  return *(const int *)a - *(const int *)b;
}

/* The adjustables that pairs are made of, in file order: a new array. */
static int *
choose_members (const PhScan *scan, const PhWant *want, int *n)
{
  int all = scan->task->n;
  Ranked *ranked = ph_alloc (((size_t)all + 1) * sizeof *ranked);
  int *members = ph_alloc (((size_t)all + 1) * sizeof *members);
  for (int i = 0; i < all; i++)
    {
      ranked[i].adjustable = i;
      ph_level_nearest (scan, want, i, &ranked[i].miss);
    }
  *n = all;
  if (all > PH_LEVEL_PAIRS_AMONG)
    {
      qsort (ranked, (size_t)all, sizeof *ranked, compare_misses);
      *n = PH_LEVEL_PAIRS_AMONG;
    }
  for (int i = 0; i < *n; i++)
    members[i] = ranked[i].adjustable;
  qsort (members, (size_t)*n, sizeof *members, compare_ints);
  free (ranked);
  return members;
}

/* Keeps the answers that may still come first of their pair. */
static void
keep (const PhAnswer *answer, void *data)
{
  PhAnswers *kept = data;
  ph_answers_add (kept, answer);
}

static void
try_pairs (const PhScan *scan, const PhWant *want, PhLevel *level)
{
  int n;
  int *members = choose_members (scan, want, &n);
  PhAnswers kept = { 0 };
  level->limited = n < scan->task->n;
  for (int a = 0; a < n; a++)
    for (int b = a + 1; b < n; b++)
      {
        kept.n = 0;
        ph_level_pair (scan, want, members[a], members[b], NULL, keep, &kept);
        if (kept.n > 0)
          ph_answers_add (&level->answers, ph_answers_first (&kept));
      }
  ph_answers_clear (&kept);
  free (members);
}

PhLevel
ph_level_of_scan (const PhScan *scan, const PhWant *want)
{
  PhLevel level = { .now = scan->now };
  level.within = ph_want_miss (want, &scan->now) <= want->tolerance_rad;
  if (level.within || ph_level_singles (scan, want, &level.answers))
    return level;
  try_pairs (scan, want, &level);
  ph_answers_sort (&level.answers);
  return level;
}

PhLevel
ph_level_of (const PhTask *task, const PhWant *want)
{
  PhScan scan = ph_scan_of (task);
  PhLevel level = ph_level_of_scan (&scan, want);
  ph_scan_clear (&scan);
  return level;
}

bool
ph_level_first_single (const PhScan *scan, const PhWant *want, PhAnswer *first)
{
  PhLevel level = { .now = scan->now };
  if (ph_want_miss (want, &scan->now) <= want->tolerance_rad)
    return false;
  /* Pairs may begin a group of chances elsewhere, and so order several singles otherwise. */
  if (!ph_level_singles (scan, want, &level.answers) && level.answers.n > 1)
    {
      try_pairs (scan, want, &level);
      ph_answers_sort (&level.answers);
    }
  bool found = false;
  for (size_t i = 0; i < level.answers.n && !found; i++)
    if (level.answers.items[i].n_changes == 1)
      {
        *first = level.answers.items[i];
        found = true;
      }
  ph_level_clear (&level);
  return found;
}

void
ph_level_clear (PhLevel *level)
{
  ph_answers_clear (&level->answers);
  *level = (PhLevel){ 0 };
}
