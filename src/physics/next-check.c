/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One scan of all values, then a few dozen rank-one updates of the hand's covariance.
 */
#include "physics/next-check.h"

#include <math.h>
#include <stdlib.h>

#include "base/text.h"
#include "base/units.h"

/* Level's own tolerance, whatever is asked of Level elsewhere. */
#define TOLERANCE_DEG 0.5
/* What a helper reads off one draw. */
#define READING_SD_DEG 0.3
/* A changed rig is worth a check only where its bubble can be read well. */
#define BUBBLE_MOST_DEG 6.0
/* Intervals this near the best are as good; then the fewest steps count. */
#define AS_GOOD 1.10
/* Sure enough already; and what is not worth a check. */
#define ENOUGH_DEG 0.3
#define HARDLY 0.05

typedef struct
{
  const PhScan *scan;
  const PhTask *task;
  PhRoll target; /* the rig to be sure of */
  double cant_rad;
  PhNextCheck *found;
  int n;
} Search;

static PhRoll
roll_of (const PhMass *mass, const PhDraw *draw)
{
  return ph_roll_of (mass->mass_kg, ph_vec3_scale (mass->moment_kg_m, 1 / mass->mass_kg), draw);
}

static double
interval (const Search *search, const PhHand *hand)
{
  return PH_SD_90 * ph_cant_sd (&search->target, hand, search->cant_rad);
}

/* The hand after one more reading of a rig: its covariance with the row s⁻¹(φ, −1) added. */
static PhHand
hand_after (const Search *search, const PhMass *mass, double cant)
{
  PhHand hand = search->task->hand;
  PhRoll roll = roll_of (mass, &search->task->draw);
  double s =
      (hand.stiffness_nm_per_rad + ph_roll_stiffness (&roll, 0)) * ph_rad_from_deg (READING_SD_DEG);
  /* Σ r and rᵀ Σ r without 1/s: (Σ⁻¹ + r rᵀ)⁻¹ = Σ − Σr rᵀΣ/(s² + rᵀΣr). */
  double k = hand.kk * cant - hand.kb, b = hand.kb * cant - hand.bb;
  double all = s * s + k * cant - b;
  if (!(all > 0))
    return hand;
  hand.kk -= k * k / all;
  hand.kb -= k * b / all;
  hand.bb -= b * b / all;
  return hand;
}

static void
suggest (Search *search, int adjustable, int piece, int steps, const PhMass *mass,
         const PhOutcome *outcome)
{
  PhHand then = hand_after (search, mass, outcome->cant_rad);
  search->found[search->n++] =
      (PhNextCheck){ { adjustable, piece, steps }, interval (search, &then) };
}

static void
suggest_value (Search *search, int i, int k)
{
  const PhScanRow *row = &search->scan->rows[i];
  if (k == 0 || k < -row->adjustable->steps_down || k > row->adjustable->steps_up)
    return;
  const PhTrial *trial = &row->trials[k];
  if (ph_trial_allowed (trial) && trial->outcome.settles
      && fabs (trial->outcome.bubble_rad) <= ph_rad_from_deg (BUBBLE_MOST_DEG))
    suggest (search, i, row->adjustable->piece, k, &trial->total, &trial->outcome);
}

/* The last step inside a limit and half-way there; C's division rounds toward now. */
static void
suggest_angle (Search *search, int i, int last)
{
  suggest_value (search, i, last);
  if (last / 2 != last)
    suggest_value (search, i, last / 2);
}

static void
suggest_changes (Search *search)
{
  static const int counts[] = { -4, -2, 2, 4 };
  for (int i = 0; i < search->task->n; i++)
    {
      const PhAdjustable *adjustable = &search->task->adjustables[i];
      if (adjustable->key == PH_ADJUST_COUNT)
        for (size_t c = 0; c < sizeof counts / sizeof *counts; c++)
          suggest_value (search, i, counts[c]);
      else
        {
          suggest_angle (search, i, -adjustable->steps_down);
          suggest_angle (search, i, adjustable->steps_up);
        }
    }
}

static int
compare_changes (const PhChange *a, const PhChange *b)
{
  if (a->adjustable != b->adjustable)
    return a->adjustable < b->adjustable ? -1 : 1;
  return (a->steps > b->steps) - (a->steps < b->steps);
}

static int
compare_intervals (const void *a, const void *b)
{
  const PhNextCheck *x = a, *y = b;
  if (x->interval_then_rad != y->interval_then_rad)
    return x->interval_then_rad < y->interval_then_rad ? -1 : 1;
  return compare_changes (&x->change, &y->change);
}

static int
compare_steps (const void *a, const void *b)
{
  const PhNextCheck *x = a, *y = b;
  int steps = abs (x->change.steps) - abs (y->change.steps);
  return steps ? steps : compare_intervals (a, b);
}

static void
sort (PhNextCheck *found, int n)
{
  int as_good = 0;
  qsort (found, (size_t)n, sizeof *found, compare_intervals);
  while (as_good < n && found[as_good].interval_then_rad <= AS_GOOD * found[0].interval_then_rad)
    as_good++;
  qsort (found, (size_t)as_good, sizeof *found, compare_steps);
}

/* Level's first single answer, else the open rig. */
static void
choose_target (Search *search, double target_rad)
{
  PhWant want = { target_rad, ph_rad_from_deg (TOLERANCE_DEG) };
  const PhMass *mass = &search->scan->total;
  const PhOutcome *outcome = &search->scan->now;
  PhAnswer first;
  if (ph_level_first_single (search->scan, &want, &first))
    {
      const PhChange *change = &first.changes[0];
      const PhTrial *trial = &search->scan->rows[change->adjustable].trials[change->steps];
      mass = &trial->total;
      outcome = &trial->outcome;
    }
  search->target = roll_of (mass, &search->task->draw);
  search->cant_rad = outcome->cant_rad;
}

PhNextChecks
ph_next_checks_of (const PhTask *task, double target_rad, bool with_checks)
{
  PhNextChecks next = { .interval_now_rad = NAN };
  PhScan scan = ph_scan_of (task);
  Search search = { .scan = &scan, .task = task };
  search.found = ph_alloc ((4 * (size_t)task->n + 1) * sizeof *search.found);
  choose_target (&search, target_rad);
  next.interval_now_rad = interval (&search, &task->hand);
  bool known = !isnan (next.interval_now_rad);
  if ((known && scan.now.settles) || !with_checks)
    suggest (&search, -1, -1, 0, &scan.total, &scan.now);
  if (known && with_checks)
    suggest_changes (&search);
  double best = INFINITY;
  for (int i = 0; i < search.n; i++)
    best = fmin (best, search.found[i].interval_then_rad);
  sort (search.found, search.n);
  for (; next.n < PH_NEXT_CHECKS && next.n < search.n; next.n++)
    next.checks[next.n] = search.found[next.n];
  next.enough = with_checks
                && (next.interval_now_rad < ph_rad_from_deg (ENOUGH_DEG)
                    || next.interval_now_rad - best < HARDLY * next.interval_now_rad);
  free (search.found);
  ph_scan_clear (&scan);
  return next;
}
