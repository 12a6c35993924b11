/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Level's rules one by one, on answers made up and on rigs where the outcome is plain. Against
 * trying everything: tests/property/test-level.c.
 */
#include "model/answer.h"

#include <gsl/gsl_cdf.h>

#include "base/units.h"
#include "check.h"
#include "model/edit.h"
#include "model/report.h"
#include "rigs.h"

static PhPartAnswers
ask (const PhRig *rig, PhLevelKind kind, double target_deg, double tolerance_deg)
{
  PhLevelQuestion question = { kind, target_deg, tolerance_deg };
  return ph_part_answers_of (rig, &question);
}

static PhAnswer
made_up (int adjustable, double chance, double disturbance, int steps)
{
  return (PhAnswer){ .changes = { { adjustable, adjustable, steps } },
                     .n_changes = 1,
                     .steps = steps,
                     .chance = chance,
                     .disturbance = disturbance };
}

static void
answers_are_grouped_by_chance_then_disturbance_then_steps (void)
{
  /* Best chance 0.9: down to 0.80 is one group; 0.79 begins the next, which reaches to 0.69. */
  static const struct
  {
    double chance, disturbance;
    int steps;
  } given[] = {
    { 0.90, 3, 1 }, { 0.79, 2, 1 }, { 0.81, 1, 9 }, { 0.70, 1, 1 },
    { 0.85, 1, 4 }, { 0.85, 1, 4 }, { 0.60, 0, 1 },
  };
  static const int order[] = { 4, 5, 2, 0, 3, 1, 6 };
  PhAnswers answers = { 0 };
  for (int i = 0; i < 7; i++)
    {
      PhAnswer one = made_up (i, given[i].chance, given[i].disturbance, given[i].steps);
      ph_answers_add (&answers, &one);
    }
  CHECK (ph_answers_first (&answers)->changes[0].adjustable == 4);
  ph_answers_sort (&answers);
  for (int i = 0; i < 7; i++)
    CHECK (answers.items[i].changes[0].adjustable == order[i], "place %d: %d", i,
           answers.items[i].changes[0].adjustable);
  ph_answers_clear (&answers);
}

static void
mirrored_branches_that_are_alike_stand_in_file_order (void)
{
  /* −1, −2, … count them as the file does; the pieces stand hosts first, whatever the file does. */
  PhAnswers answers = { 0 };
  for (int i = 1; i <= 3; i++)
    {
      PhAnswer one = made_up (-i, 0.5, 0, 1);
      one.changes[0].piece = 9 - i;
      ph_answers_add (&answers, &one);
    }
  CHECK (ph_answers_first (&answers)->changes[0].adjustable == -1);
  ph_answers_sort (&answers);
  for (int i = 0; i < 3; i++)
    CHECK (answers.items[i].changes[0].adjustable == -1 - i);
  ph_answers_clear (&answers);
}

static void
chance_is_the_normal_share_within_the_tolerance (void)
{
  for (int i = 0; i < 50; i++)
    {
      PhOutcome outcome = { .settles = true,
                            .bubble_rad = 0.002 * i - 0.05,
                            .bubble_sd_rad = 0.001 * (1 + i % 7) };
      double lo = (-0.009 - 0.01 - outcome.bubble_rad) / outcome.bubble_sd_rad;
      double hi = (0.009 - 0.01 - outcome.bubble_rad) / outcome.bubble_sd_rad;
      double want = gsl_cdf_ugaussian_P (hi) - gsl_cdf_ugaussian_P (lo);
      CHECK_NEAR (ph_outcome_chance (&outcome, -0.01, 0.009), want, 1e-14);
    }
  PhOutcome toppled = { .settles = false, .bubble_rad = NAN };
  CHECK_NEAR (ph_outcome_chance (&toppled, 0, 1), 0, 0);
}

static void
disturbance_adds_mass_pull_and_inertia (void)
{
  PhOutcome now = { .mass_kg = 3, .front_pull_nm = 1, .inertia_grip_kg_m2 = { 0.2, 0.4, 0.5 } };
  PhOutcome then = { .mass_kg = 2.9,
                     .front_pull_nm = 1.4,
                     .inertia_grip_kg_m2 = { 0.21, 0.38, 0.5 } };
  /* 1 + 2 + (5 % + 5 %)/5 %. */
  CHECK_NEAR (ph_outcome_disturbance (&now, &then), 5, 1e-12);
}

static void
level_rig_gets_no_answers_and_says_so (void)
{
  PhRig *rig = rigs_example ();
  PhPartAnswers now = ask (rig, PH_LEVEL_ALL, 0, NAN);
  PhPartAnswers answers = ask (rig, PH_LEVEL_ALL, ph_deg_from_rad (now.now.bubble_rad) + 0.49, NAN);
  CHECK (answers.n == 0 && answers.reason && strstr (answers.reason, "already"));
  CHECK (now.n > 0 && !now.reason);
  ph_part_answers_clear (&answers);
  ph_part_answers_clear (&now);
  ph_rig_free (rig);
}

static void
wanted_bubble_is_the_target_when_none_is_asked_for (void)
{
  PhRig *rig = rigs_example ();
  rigs_set_archer (rig, "wanted_bubble_deg", 1.5);
  PhPartAnswers answers = ask (rig, PH_LEVEL_ALL, NAN, NAN);
  CHECK_NEAR (answers.target_deg, 1.5, 0);
  CHECK (answers.n > 0);
  for (size_t i = 0; i < answers.n; i++)
    CHECK (fabs (ph_deg_from_rad (answers.answers[i].outcome.bubble_rad) - 1.5) <= 0.5);
  ph_part_answers_clear (&answers);
  ph_rig_free (rig);
}

static void
all_locked_has_its_own_reason (void)
{
  PhRig *rig = rigs_example ();
  for (size_t i = 0; i < rig->n_parts; i++)
    ph_edit_set_locked (rig, i, true);
  PhPartAnswers answers = ask (rig, PH_LEVEL_ALL, 0, NAN);
  CHECK (answers.n == 0 && answers.reason && strstr (answers.reason, "locked"));
  ph_part_answers_clear (&answers);
  ph_rig_free (rig);
}

/* A back bar right behind the grip that would have to swing through the string's way. */
static PhRig *
rig_near_the_string (void)
{
  PhRig *rig = rigs_example ();
  rig->parts[4].length_mm = 400;
  rig->parts[4].swing_deg = 30;
  rig->parts[4].lift_deg = 20;
  CHECK (rigs_sound (rig, true));
  return rig;
}

static double
clearance_after (const PhRig *rig, const PhPartAnswer *answer)
{
  PhRig *changed = ph_rig_copy (rig);
  CHECK (ph_edit_apply_answer (changed, answer, NULL));
  PhCompiled *compiled = ph_compile_rig (changed);
  PhReport *report = ph_report_new (changed, compiled);
  double clearance = report->clearance_m;
  ph_report_free (report);
  ph_compiled_free (compiled);
  ph_rig_free (changed);
  return clearance;
}

static void
no_answer_brings_the_rig_nearer_the_string_than_it_may (void)
{
  for (int near = 0; near < 2; near++)
    {
      PhRig *rig = rig_near_the_string ();
      if (near)
        rig->parts[4].swing_deg = 4;
      PhCompiled *compiled = ph_compile_rig (rig);
      PhReport *report = ph_report_new (rig, compiled);
      double keep = report->clearance_m < 0.015 ? report->clearance_m - 1e-9 : 0.015;
      CHECK ((report->clearance_m < 0.015) == near, "%g", report->clearance_m);
      int left_out = 0;
      for (double target = -8; target <= 8; target += 0.25)
        {
          PhPartAnswers answers = ask (rig, PH_LEVEL_ALL, target, 0.02);
          for (size_t i = 0; i < answers.n; i++)
            CHECK (clearance_after (rig, &answers.answers[i]) >= keep);
          ph_part_answers_clear (&answers);
          /* The same without a string is what would have been proposed. */
          double brace = rig->bow.brace_height_mm;
          rig->bow.brace_height_mm = NAN;
          PhPartAnswers free = ask (rig, PH_LEVEL_ALL, target, 0.02);
          rig->bow.brace_height_mm = brace;
          for (size_t i = 0; i < free.n; i++)
            left_out += clearance_after (rig, &free.answers[i]) < keep;
          ph_part_answers_clear (&free);
        }
      CHECK (left_out > 10, "the string never mattered: %d", left_out);
      ph_report_free (report);
      ph_compiled_free (compiled);
      ph_rig_free (rig);
    }
}

/* 45 rings along the back bar, each with one disc to give or take. */
static PhRig *
rig_of_many_rings (void)
{
  PhRig *rig = rigs_example ();
  for (size_t i = 0; i < rig->n_parts; i++)
    ph_edit_set_locked (rig, i, true);
  for (int i = 0; i < 45; i++)
    {
      char id[16];
      snprintf (id, sizeof id, "ring-%d", i);
      PhPart ring = rigs_stack (id, "back-bar", 2);
      rigs_set (&ring, "along_mm", (i * 17) % 45 * 6.5);
      rigs_set (&ring, "bore_mm", 18.2);
      rigs_set (&ring, "each_g", 10 + i % 7);
      ring.limit_count = (PhLimits){ true, 1, 3 };
      ph_rig_append (rig, ring);
    }
  CHECK (rigs_sound (rig, true));
  return rig;
}

static void
over_forty_numbers_pairs_are_tried_among_the_nearest (void)
{
  PhRig *rig = rig_of_many_rings ();
  PhReady ready = ph_ready_of (rig);
  CHECK (ready.task.n == 45);
  PhScan scan = ph_scan_of (&ready.task);
  double now = scan.now.bubble_rad, misses[45];
  /* Out of reach of one disc, within reach of two. */
  double reach = 0;
  for (int i = 0; i < 45; i++)
    reach = fmax (reach, scan.rows[i].trials[-1].outcome.bubble_rad - now);
  CHECK (reach > 0);
  PhWant want = { now + 1.6 * reach, 0.3 * reach };
  for (int i = 0; i < 45; i++)
    ph_level_nearest (&scan, &want, i, &misses[i]);
  PhPartAnswers answers = ask (rig, PH_LEVEL_ALL, ph_deg_from_rad (want.target_rad),
                               ph_deg_from_rad (want.tolerance_rad));
  CHECK (answers.note && strstr (answers.note, "45"));
  CHECK (answers.n > 0);
  for (size_t a = 0; a < answers.n; a++)
    for (int c = 0; c < answers.answers[a].n_changes; c++)
      {
        int own = answers.answers[a].changes[c].part - 6, nearer = 0;
        for (int i = 0; i < 45; i++)
          nearer += misses[i] < misses[own] || (misses[i] == misses[own] && i < own);
        CHECK (nearer < 40, "ring %d is the %d. nearest", own, nearer + 1);
      }
  ph_part_answers_clear (&answers);
  ph_scan_clear (&scan);
  ph_ready_clear (&ready);
  ph_rig_free (rig);
}

static void
lighter_is_for_a_level_rig_and_takes_weight_from_behind (void)
{
  PhRig *rig = rigs_example ();
  PhPartAnswers no = ask (rig, PH_LEVEL_LIGHTER, 20, NAN);
  CHECK (no.n == 0 && no.reason && strstr (no.reason, "level it first"));
  ph_part_answers_clear (&no);
  PhPartAnswers now = ask (rig, PH_LEVEL_ALL, 0, NAN);
  PhPartAnswers answers = ask (rig, PH_LEVEL_LIGHTER, ph_deg_from_rad (now.now.bubble_rad), NAN);
  ph_part_answers_clear (&now);
  CHECK (answers.n > 0);
  for (size_t i = 0; i < answers.n; i++)
    {
      const PhPartAnswer *answer = &answers.answers[i];
      int counts = 0;
      for (int c = 0; c < answer->n_changes; c++)
        if (strcmp (answer->changes[c].key, "count") == 0)
          {
            counts++;
            CHECK (answer->changes[c].part == 5 && answer->changes[c].to < answer->changes[c].from);
          }
      CHECK (counts == 1);
    }
  ph_part_answers_clear (&answers);
  ph_rig_free (rig);
}

static void
mirrored_answer_puts_the_branch_on_the_other_side (void)
{
  PhRig *rig = rigs_example (), *before = ph_rig_copy (rig);
  PhPartAnswer answer = { .changes = { { 3, PH_KEY_MIRROR, 0, 1 } }, .n_changes = 1 };
  CHECK (ph_edit_apply_answer (rig, &answer, NULL));
  CHECK (rig->parts[4].swing_deg == -20 && rig->parts[3].sockets[0].at_mm[1] == -14);
  CHECK (ph_edit_apply_answer (rig, &answer, NULL));
  CHECK (ph_rig_equal (rig, before));
  ph_rig_free (rig);
  ph_rig_free (before);
}

static void
step_beyond_a_limit_leaves_a_one_sided_difference (void)
{
  PhRig *rig = rigs_example ();
  rig->parts[5].limit_count = (PhLimits){ true, 0, 5 };
  size_t n;
  PhPartStep *steps = ph_part_steps_of (rig, &n);
  CHECK (n == 5);
  /* One-ounce discs of 28.35 g, on both sides or on one. */
  CHECK_NEAR (steps[4].effect.mass_kg, 0.02835, 1e-15);
  CHECK_NEAR (steps[0].effect.mass_kg, 0.02835, 1e-15);
  rig->parts[5].count = 4;
  PhCompiled *four = ph_compile_rig (rig);
  rig->parts[5].count = 5;
  PhCompiled *five = ph_compile_rig (rig);
  PhReport *less = ph_report_new (rig, four), *more = ph_report_new (rig, five);
  CHECK_NEAR (steps[4].effect.bubble_rad, more->bubble_rad - less->bubble_rad, 1e-13);
  CHECK_NEAR (steps[4].effect.front_pull_nm, more->pitch.moment_nm - less->pitch.moment_nm, 1e-13);
  ph_report_free (less);
  ph_report_free (more);
  ph_compiled_free (four);
  ph_compiled_free (five);
  free (steps);
  ph_rig_free (rig);
}

static void
step_has_no_bubble_where_a_neighbour_topples (void)
{
  /* A heavy head above the line and a soft hand: only just held, or not. */
  PhRig *rig = rigs_example ();
  ph_edit_set_locked (rig, 2, true);
  rig->archer.n_checks = 0;
  rigs_set_archer (rig, "roll_stiffness_nm_per_rad", 0.02);
  rigs_set_archer (rig, "roll_bias_nm", 0.9);
  size_t n, without = 0;
  PhPartStep *steps = ph_part_steps_of (rig, &n);
  for (size_t i = 0; i < n; i++)
    {
      without += isnan (steps[i].effect.bubble_rad);
      CHECK (isfinite (steps[i].effect.front_pull_nm) && isfinite (steps[i].effect.inertia_part.x));
    }
  CHECK (without > 0, "%zu of %zu", without, n);
  free (steps);
  ph_rig_free (rig);
}

static void
first_check_is_the_rig_as_it_is (void)
{
  PhRig *rig = rigs_example ();
  rig->archer.checks[0].aside = true;
  PhPartChecks checks = ph_part_checks_of (rig);
  CHECK (checks.n == 1 && !checks.checks[0].changed && !checks.enough);
  CHECK (checks.checks[0].interval_then_deg < checks.interval_now_deg);
  ph_rig_free (rig);
}

static void
many_checks_of_many_rigs_are_enough (void)
{
  PhRig *rig = rigs_example ();
  CHECK (!ph_part_checks_of (rig).enough);
  for (int i = 0; i < 60; i++)
    rigs_add_check (rig, 3000 + 10 * i, RIGS_3 (60, i % 9 - 4, -40 - i % 5), 660, 42,
                    -0.7 * (i % 9 - 4));
  CHECK (ph_part_checks_of (rig).enough);
  ph_rig_free (rig);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (answers_are_grouped_by_chance_then_disturbance_then_steps);
  CASE (mirrored_branches_that_are_alike_stand_in_file_order);
  CASE (chance_is_the_normal_share_within_the_tolerance);
  CASE (disturbance_adds_mass_pull_and_inertia);
  CASE (level_rig_gets_no_answers_and_says_so);
  CASE (wanted_bubble_is_the_target_when_none_is_asked_for);
  CASE (all_locked_has_its_own_reason);
  CASE (no_answer_brings_the_rig_nearer_the_string_than_it_may);
  CASE (over_forty_numbers_pairs_are_tried_among_the_nearest);
  CASE (lighter_is_for_a_level_rig_and_takes_weight_from_behind);
  CASE (mirrored_answer_puts_the_branch_on_the_other_side);
  CASE (step_beyond_a_limit_leaves_a_one_sided_difference);
  CASE (step_has_no_bubble_where_a_neighbour_topples);
  CASE (first_check_is_the_rig_as_it_is);
  CASE (many_checks_of_many_rigs_are_enough);
  return check_end ();
}
