/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * From pieces and radians back to parts and the file's units.
 */
#include "model/answer.h"

#include <assert.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/number.h"
#include "base/text.h"
#include "base/units.h"
#include "physics/lighter.h"
#include "physics/other-side.h"

PhReady
ph_ready_of (const PhRig *rig)
{
  PhReady ready = { .compiled = ph_compile_rig (rig) };
  ready.adjustables = ph_adjustables_of (rig, ready.compiled);
  ready.task = (PhTask){ .assembly = ready.compiled->assembly,
                         .draw = ready.compiled->draw,
                         .adjustables = ready.adjustables.items,
                         .n = (int)ready.adjustables.n };
  if (ph_compile_hand (rig, &ready.task.hand, &ready.hand_fitted) != PH_OK)
    {
      ready.task.hand = (PhHand){ NAN, NAN, NAN, NAN, NAN };
      ready.reason = "no hand could be found that explains the bubble checks";
    }
  return ready;
}

void
ph_ready_clear (PhReady *ready)
{
  ph_adjustables_clear (&ready->adjustables);
  ph_compiled_free (ready->compiled);
  *ready = (PhReady){ 0 };
}

PhPartStep *
ph_part_steps_of (const PhRig *rig, size_t *n)
{
  PhReady ready = ph_ready_of (rig);
  PhPartStep *steps = ph_alloc ((ready.adjustables.n + 1) * sizeof *steps);
  PhStepEffect *effects = ph_alloc ((ready.adjustables.n + 1) * sizeof *effects);
  /* Any hand serves for what does not hang on it. */
  if (ready.reason)
    ready.task.hand = (PhHand){ .stiffness_nm_per_rad = PH_HAND_STIFFNESS };
  ph_steps_of (&ready.task, effects);
  *n = ready.adjustables.n;
  for (size_t i = 0; i < *n; i++)
    {
      const PhAdjustable *one = &ready.adjustables.items[i];
      steps[i] = (PhPartStep){ ready.compiled->part_of_piece[one->piece],
                               ph_adjust_key_word (one->key),
                               one->now,
                               one->step,
                               one->lo,
                               one->hi,
                               effects[i] };
      if (ready.reason)
        steps[i].effect.bubble_rad = NAN;
    }
  free (effects);
  ph_ready_clear (&ready);
  return steps;
}

static PhPartChange
part_change_of (const PhReady *ready, const PhChange *change)
{
  int part = ready->compiled->part_of_piece[change->piece];
  if (change->adjustable < 0)
    return (PhPartChange){ part, PH_KEY_MIRROR, 0, 1 };
  const PhAdjustable *one = &ready->adjustables.items[change->adjustable];
  return (PhPartChange){ part, ph_adjust_key_word (one->key), one->now,
                         ph_adjust_value (one, change->steps) };
}

/* The pieces of unlocked brackets and bars, in file order: a new array. */
static int *
turnable (const PhRig *rig, const PhCompiled *compiled, int *n)
{
  int *pieces = ph_alloc ((rig->n_parts + 1) * sizeof *pieces);
  *n = 0;
  for (size_t i = 0; i < rig->n_parts; i++)
    {
      const PhPart *part = &rig->parts[i];
      bool turns = part->kind == PH_PART_BAR || part->kind == PH_PART_BRACKET;
      if (turns && !part->locked && compiled->piece_of_part[i] >= 0)
        pieces[(*n)++] = compiled->piece_of_part[i];
    }
  return pieces;
}

static PhLevel
ask (const PhRig *rig, const PhReady *ready, PhLevelKind kind, const PhWant *want)
{
  if (kind == PH_LEVEL_LIGHTER)
    return ph_lighter_of (&ready->task, want);
  if (kind == PH_LEVEL_ALL)
    return ph_level_of (&ready->task, want);
  int n;
  int *pieces = turnable (rig, ready->compiled, &n);
  PhLevel level = ph_other_side_of (&ready->task, want, pieces, n);
  free (pieces);
  return level;
}

/* `what` is read: a recurve's sight carries no level, its lean is what counts. */
static char *
reason_of (const PhPartAnswers *answers, const PhLevel *level, PhLevelKind kind, size_t adjustables,
           const char *what)
{
  char tolerance[PH_NUMBER_SIZE], target[PH_NUMBER_SIZE];
  ph_number_print (answers->tolerance_deg, tolerance);
  ph_number_print (answers->target_deg, target);
  if (kind == PH_LEVEL_LIGHTER && !level->within)
    return ph_text_printf ("the %s is not within %s° of %s°; level it first", what, tolerance,
                           target);
  if (kind == PH_LEVEL_LIGHTER)
    return ph_text_printf ("no weight behind the grip can be spared with the %s within %s° of %s°",
                           what, tolerance, target);
  if (level->within)
    return ph_text_printf ("the %s is already predicted within %s° of %s°: read it to be sure",
                           what, tolerance, target);
  if (kind == PH_LEVEL_OTHER_SIDE)
    return ph_text_printf ("no bracket or bar, put on the other side, brings the %s to %s°", what,
                           target);
  if (adjustables == 0)
    return ph_text_dup ("nothing on this rig may change: every part is locked or has no step "
                        "within its limits");
  return ph_text_printf ("no change of one or two numbers within their limits brings the %s within "
                         "%s° of %s°",
                         what, tolerance, target);
}

static void
fill_answers (PhPartAnswers *answers, const PhReady *ready, const PhLevel *level)
{
  answers->now = level->now;
  answers->n = level->answers.n;
  answers->answers = ph_alloc_zeroed (answers->n + 1, sizeof *answers->answers);
  for (size_t i = 0; i < answers->n; i++)
    {
      const PhAnswer *from = &level->answers.items[i];
      PhPartAnswer *to = &answers->answers[i];
      *to = (PhPartAnswer){ .n_changes = from->n_changes,
                            .steps = from->steps,
                            .outcome = from->outcome,
                            .chance = from->chance,
                            .disturbance = from->disturbance };
      for (int c = 0; c < from->n_changes; c++)
        to->changes[c] = part_change_of (ready, &from->changes[c]);
    }
}

PhPartAnswers
ph_part_answers_of (const PhRig *rig, const PhLevelQuestion *question)
{
  PhReady ready = ph_ready_of (rig);
  PhPartAnswers answers = { .target_deg = question->target_deg,
                            .tolerance_deg = question->tolerance_deg,
                            .hand_fitted = ready.hand_fitted };
  if (isnan (answers.target_deg))
    answers.target_deg = rig->archer.wanted_bubble_deg;
  if (isnan (answers.tolerance_deg))
    answers.tolerance_deg = PH_LEVEL_TOLERANCE_DEG;
  if (ready.reason)
    {
      answers.now.bubble_rad = answers.now.cant_rad = NAN;
      answers.reason = ph_text_dup (ready.reason);
      ph_ready_clear (&ready);
      return answers;
    }
  PhWant want = { ph_rad_from_deg (answers.target_deg), ph_rad_from_deg (answers.tolerance_deg) };
  PhLevel level = ask (rig, &ready, question->kind, &want);
  fill_answers (&answers, &ready, &level);
  if (answers.n == 0)
    answers.reason = reason_of (&answers, &level, question->kind, ready.adjustables.n,
                                rig->bow.kind == PH_BOW_COMPOUND ? "bubble" : "lean");
  if (level.limited)
    answers.note = ph_text_printf ("this rig has %zu numbers that may change; pairs were tried "
                                   "among the %d that come nearest alone",
                                   ready.adjustables.n, PH_LEVEL_PAIRS_AMONG);
  ph_level_clear (&level);
  ph_ready_clear (&ready);
  return answers;
}

void
ph_part_answers_clear (PhPartAnswers *answers)
{
  free (answers->answers);
  free (answers->reason);
  free (answers->note);
  *answers = (PhPartAnswers){ 0 };
}

bool
ph_edit_apply_change (PhRig *rig, const PhPartChange *change, PhIssues *issues)
{
  assert (change->part >= 0 && (size_t)change->part < rig->n_parts);
  size_t part = (size_t)change->part;
  return strcmp (change->key, PH_KEY_MIRROR) == 0
             ? ph_edit_mirror_part (rig, part, issues)
             : ph_edit_set_number (rig, part, change->key, 0, change->to, issues);
}

bool
ph_edit_apply_answer (PhRig *rig, const PhPartAnswer *answer, PhIssues *issues)
{
  PhRig *draft = ph_rig_copy (rig);
  bool done = true;
  for (int c = 0; c < answer->n_changes && done; c++)
    {
      const PhPartChange *change = &answer->changes[c];
      done = ph_edit_apply_change (draft, change, issues);
    }
  if (done)
    {
      PhRig old = *rig;
      *rig = *draft;
      *draft = old;
    }
  ph_rig_free (draft);
  return done;
}

PhPartChecks
ph_part_checks_of (const PhRig *rig)
{
  PhReady ready = ph_ready_of (rig);
  PhPartChecks checks = { .interval_now_deg = NAN };
  if (!ready.reason)
    {
      PhNextChecks next = ph_next_checks_of (
          &ready.task, ph_rad_from_deg (rig->archer.wanted_bubble_deg), ready.hand_fitted);
      checks.n = next.n;
      checks.interval_now_deg = ph_deg_from_rad (next.interval_now_rad);
      checks.enough = next.enough;
      for (int i = 0; i < next.n; i++)
        {
          PhPartCheck *check = &checks.checks[i];
          check->interval_then_deg = ph_deg_from_rad (next.checks[i].interval_then_rad);
          check->changed = next.checks[i].change.steps != 0;
          if (check->changed)
            check->change = part_change_of (&ready, &next.checks[i].change);
        }
    }
  ph_ready_clear (&ready);
  return checks;
}
