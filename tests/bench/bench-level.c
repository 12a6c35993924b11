/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How long deciding takes, beside its targets; prints and never fails. The best of several runs:
 * what the code costs, not what else the machine was doing.
 */
#include <time.h>

#include "model/answer.h"
#include "random-model.h"

static PhRig *rig;
static PhLevelQuestion question = { PH_LEVEL_ALL, 0, 0 };
static size_t sink;

static double
now (void)
{
  struct timespec t;
  clock_gettime (CLOCK_MONOTONIC, &t);
  return (double)t.tv_sec + 1e-9 * (double)t.tv_nsec;
}

static void
print_best (const char *what, void (*run) (void), int runs, double target_ms)
{
  double best = INFINITY;
  for (int i = 0; i < runs; i++)
    {
      double start = now ();
      run ();
      best = fmin (best, now () - start);
    }
  printf ("%-66s %8.3f ms   target %6.1f   %s\n", what, best * 1e3, target_ms,
          best * 1e3 <= target_ms ? "met" : "MISSED");
}

/* A bow with a bracket and three bars behind it: 12 numbers that may change, the front bar's none
   but its weights. */
static void
make_rig (void)
{
  rig = ph_rig_new ();
  PhBow *bow = &rig->bow;
  rigs_set_bow (rig, 1950, RIGS_3 (-18, -3, 12), RIGS_3 (290, 295, 60));
  rigs_set_reach (rig, 940, 178);
  rigs_add_socket (&bow->mounts, &bow->n_mounts, "front", RIGS_3 (62, 0, -72), RIGS_3 (1, 0, 0));
  rigs_add_socket (&bow->mounts, &bow->n_mounts, "rear", RIGS_3 (-28, 0, -150), RIGS_3 (-1, 0, 0));
  rigs_set_archer (rig, "draw_length_mm", 660);
  rigs_set_archer (rig, "nock_height_mm", 42);
  ph_rig_append (rig, rigs_sight ("sight"));
  ph_rig_append (rig, rigs_bar ("front-bar", "bow:front", 0, -8, 762, 165));
  ph_rig_append (rig, rigs_stack ("front-stack", "front-bar", 8));
  PhPart block = rigs_bracket ("block", "bow:rear", 0, 0);
  rigs_add_socket (&block.sockets, &block.n_sockets, "b", RIGS_3 (20, -14, 0), RIGS_3 (1, 0, 0));
  rigs_add_socket (&block.sockets, &block.n_sockets, "c", RIGS_3 (20, 0, -8), RIGS_3 (1, 0, -1));
  ph_rig_append (rig, block);
  ph_rig_append (rig, rigs_bar ("left-bar", "block:a", 25, -12, 305, 95));
  ph_rig_append (rig, rigs_stack ("left-stack", "left-bar", 5));
  ph_rig_append (rig, rigs_bar ("right-bar", "block:b", -35, -20, 305, 95));
  ph_rig_append (rig, rigs_stack ("right-stack", "right-bar", 4));
  ph_rig_append (rig, rigs_bar ("low-bar", "block:c", 12, -30, 152, 60));
  ph_rig_append (rig, rigs_stack ("low-stack", "low-bar", 2));
  PhPart ring = rigs_stack ("ring", "left-bar", 1);
  rigs_set (&ring, "bore_mm", 18.2);
  rigs_set (&ring, "along_mm", 60);
  ph_rig_append (rig, ring);
  rigs_sound (rig, true);
}

static void
level (void)
{
  PhPartAnswers answers = ph_part_answers_of (rig, &question);
  sink += answers.n;
  ph_part_answers_clear (&answers);
}

static void
next_check (void)
{
  PhPartChecks checks = ph_part_checks_of (rig);
  sink += (size_t)checks.n;
}

static PhBubbleCheck checks[50];

static void
fit (void)
{
  PhHand hand;
  sink += ph_hand_fit (checks, 50, &hand) == PH_OK;
}

static void
make_checks (void)
{
  unsigned long long state = 6;
  for (int i = 0; i < 50; i++)
    {
      PhBubbleCheck *c = &checks[i];
      *c = (PhBubbleCheck){ .roll = { rig_random (&state, -0.4, 0.4), rig_random (&state, -2, 0.6),
                                      0.998 },
                            .sd_rad = 0.3 * 3.14159265358979 / 180 };
      c->bubble_rad = ph_check_predict (c, 2.6, 0.1) + c->sd_rad * rig_random (&state, -1.7, 1.7);
    }
}

int
main (void)
{
  make_rig ();
  make_checks ();
  PhReady ready = ph_ready_of (rig);
  int numbers = ready.task.n;
  ph_ready_clear (&ready);
  char what[80];
  /* Far from level and wanted to a tolerance that no single meets: every pair is tried. */
  question.target_deg = 2.345678;
  question.tolerance_deg = 1e-6;
  level ();
  snprintf (what, sizeof what, "level: %d numbers, all pairs, none near enough", numbers);
  print_best (what, level, 20, 30);
  question.tolerance_deg = 0.001;
  snprintf (what, sizeof what, "level: %d numbers, all pairs, tolerance 0.001°", numbers);
  print_best (what, level, 20, 30);
  question.target_deg = -17;
  question.tolerance_deg = 0.5;
  snprintf (what, sizeof what, "level: %d numbers, target 17° away, tolerance 0.5°", numbers);
  print_best (what, level, 20, 30);
  question.target_deg = 0;
  snprintf (what, sizeof what, "level: %d numbers, a single is enough", numbers);
  print_best (what, level, 20, 30);
  print_best ("hand from 50 checks", fit, 50, 1);
  rigs_add_check (rig, 3100, RIGS_3 (70, -4, -55), 660, 42, 1.4);
  rigs_add_check (rig, 3300, RIGS_3 (60, 6, -50), 660, 42, -1.1);
  print_best ("next check", next_check, 20, 20);
  ph_rig_free (rig);
  return sink == 0;
}
