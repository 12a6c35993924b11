/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A branch put on the other side, over random rigs: every part of it stands where its mirror image
 * in the plane y = 0 was, every other part stays, what Level promised of it holds, and twice is the
 * same rig. The image is taken of the first rig's places, by turning y over: no rule of swings and
 * sockets enters.
 */
#include "base/units.h"
#include "check.h"
#include "model/answer.h"
#include "model/report.h"
#include "random-model.h"

typedef struct
{
  int asked, done, on_an_end, taken, new_seats;
} Tally;

static bool
turns (const PhRig *rig, size_t i)
{
  PhPartKind kind = rig->parts[i].kind;
  return (kind == PH_PART_BAR || kind == PH_PART_BRACKET) && ph_rig_is_fitted (rig, i);
}

static void
check_place (const PhRig *before, const PhRig *after, bool turned, const PhPlace *a,
             const PhPlace *b)
{
  double sign = turned ? -1 : 1;
  CHECK_NEAR (b->root_m.x, a->root_m.x, 1e-13);
  CHECK_NEAR (b->root_m.y, sign * a->root_m.y, 1e-13);
  CHECK_NEAR (b->root_m.z, a->root_m.z, 1e-13);
  CHECK_NEAR (b->end_m.x, a->end_m.x, 1e-13);
  CHECK_NEAR (b->end_m.y, sign * a->end_m.y, 1e-13);
  CHECK_NEAR (b->end_m.z, a->end_m.z, 1e-13);
  CHECK (before->n_parts == after->n_parts);
}

static void
check_image (const PhRig *before, const PhRig *after, size_t branch)
{
  PhCompiled *a = ph_compile_rig (before), *b = ph_compile_rig (after);
  for (size_t i = 0; i < before->n_parts; i++)
    if (a->piece_of_part[i] >= 0)
      {
        int p = a->piece_of_part[i], q = b->piece_of_part[i];
        bool turned = ph_rig_hangs_on (before, i, branch);
        check_place (before, after, turned, ph_assembly_place (a->assembly, p),
                     ph_assembly_place (b->assembly, q));
        const PhMass *m = ph_assembly_mass (a->assembly, p), *n = ph_assembly_mass (b->assembly, q);
        double sign = turned ? -1 : 1;
        CHECK_NEAR (n->moment_kg_m.y, sign * m->moment_kg_m.y, 1e-13);
        CHECK_NEAR (n->inertia_kg_m2.xy, sign * m->inertia_kg_m2.xy, 1e-13);
        CHECK_NEAR (n->inertia_kg_m2.xz, m->inertia_kg_m2.xz, 1e-13);
      }
  ph_compiled_free (a);
  ph_compiled_free (b);
}

static size_t
seats_of (const PhRig *rig)
{
  size_t n = rig->bow.n_mounts;
  for (size_t i = 0; i < rig->n_parts; i++)
    n += rig->parts[i].n_sockets;
  return n;
}

static void
check_refusal (const PhIssues *issues, Tally *tally)
{
  CHECK (issues->n == 1);
  CHECK_TEXT (issues->items[0].key, PH_KEY_MIRROR);
  bool on_an_end = strstr (issues->items[0].text, "hangs on the end of");
  bool taken = strstr (issues->items[0].text, "sits at the place on the other side");
  CHECK (on_an_end != taken, "%s", issues->items[0].text);
  tally->on_an_end += on_an_end;
  tally->taken += taken;
}

static void
turn_one (const PhRig *rig, size_t i, Tally *tally)
{
  PhRig *other = ph_rig_copy (rig);
  PhIssues issues = { 0 };
  tally->asked++;
  if (!ph_edit_mirror_part (other, i, &issues))
    {
      check_refusal (&issues, tally);
      CHECK (ph_rig_equal (other, rig), "a refusal leaves the rig as it was");
    }
  else
    {
      tally->done++;
      tally->new_seats += seats_of (other) > seats_of (rig);
      CHECK (rigs_sound (other, true));
      check_image (rig, other, i);
      CHECK (ph_edit_mirror_part (other, i, &issues));
      CHECK (ph_rig_equal (other, rig), "%s of %s: twice is not the same rig", rig->parts[i].id,
             rig->parts[i].on);
    }
  ph_issues_clear (&issues);
  ph_rig_free (other);
}

static void
every_branch_goes_to_its_mirror_image_and_back (void)
{
  RandomModel random = { .state = 21 };
  Tally tally = { 0 };
  for (int r = 0; r < 300; r++)
    {
      PhRig *rig = random_model_rig (&random);
      for (size_t i = 0; rig && i < rig->n_parts; i++)
        if (turns (rig, i))
          turn_one (rig, i, &tally);
      ph_rig_free (rig);
    }
  PhRig *odd = rigs_odd ();
  CHECK (rigs_sound (odd, true));
  for (size_t i = 0; i < odd->n_parts; i++)
    if (turns (odd, i))
      turn_one (odd, i, &tally);
  ph_rig_free (odd);
  printf ("# %d branches, %d turned, %d on a new seat; %d on an end, %d taken\n", tally.asked,
          tally.done, tally.new_seats, tally.on_an_end, tally.taken);
  CHECK (tally.done > 500 && tally.new_seats > 50 && tally.on_an_end > 10);
}

static void
check_promise (const PhRig *rig, const PhPartAnswer *answer, Tally *tally)
{
  PhRig *changed = ph_rig_copy (rig);
  PhIssues issues = { 0 };
  tally->asked++;
  if (!ph_edit_apply_answer (changed, answer, &issues))
    check_refusal (&issues, tally);
  else
    {
      tally->done++;
      PhCompiled *compiled = ph_compile_rig (changed);
      PhReport *report = ph_report_new (changed, compiled);
      CHECK_NEAR (ph_deg_from_rad (report->bubble_rad),
                  ph_deg_from_rad (answer->outcome.bubble_rad), 1e-9);
      CHECK_REL (report->mass.mass_kg, answer->outcome.mass_kg, 1e-12);
      CHECK_NEAR (report->pitch.moment_nm, answer->outcome.front_pull_nm, 1e-11);
      CHECK_REL (report->mass.inertia_grip_kg_m2.zz, answer->outcome.inertia_grip_kg_m2.z, 1e-11);
      ph_report_free (report);
      ph_compiled_free (compiled);
    }
  ph_issues_clear (&issues);
  ph_rig_free (changed);
}

static void
applied_answer_of_the_other_side_keeps_its_promise (void)
{
  RandomModel random = { .state = 4 };
  Tally tally = { 0 };
  for (int r = 0; r < 300; r++)
    {
      PhRig *rig = random_model_rig (&random);
      for (double target = -12; rig && target <= 12; target += 4)
        {
          PhLevelQuestion question = { PH_LEVEL_OTHER_SIDE, target, NAN };
          PhPartAnswers answers = ph_part_answers_of (rig, &question);
          for (size_t a = 0; a < answers.n; a++)
            check_promise (rig, &answers.answers[a], &tally);
          ph_part_answers_clear (&answers);
        }
      ph_rig_free (rig);
    }
  printf ("# %d answers, %d applied; %d on an end, %d taken\n", tally.asked, tally.done,
          tally.on_an_end, tally.taken);
  CHECK (tally.done > 200);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (every_branch_goes_to_its_mirror_image_and_back);
  CASE (applied_answer_of_the_other_side_keeps_its_promise);
  return check_end ();
}
