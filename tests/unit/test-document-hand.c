/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The document's way to checks, limits and answers: each edit is one undo step with a name, and a
 * refusal leaves the rig as it was.
 */
#include "document/document-hand.h"

#include <stdlib.h>

#include "document-fixture.h"
#include "model/fields.h"

static gboolean
add (const Fixture *fixture, double bubble_deg)
{
  GError *error = NULL;
  PhReading reading = ph_reading_of (&bubble_deg, 1);
  reading.date = "2026-03-08";
  gboolean added = ph_document_add_check (fixture->document, &reading, &error);
  CHECK (added == (error == NULL));
  CHECK (added || g_error_matches (error, PH_DOCUMENT_ERROR, PH_DOCUMENT_ERROR_REFUSED));
  g_clear_error (&error);
  return added;
}

static void
check_is_added_changed_set_aside_and_deleted_in_undo_steps (void)
{
  Fixture fixture = fixture_new ();
  PhDocument *document = fixture.document;
  CHECK (!ph_document_get_report (document)->hand_fitted);
  CHECK (add (&fixture, 1.5));
  CHECK (ph_document_get_report (document)->hand_fitted);
  CHECK_TEXT (ph_document_get_undo_label (document), "added bubble check");
  static const double draws[] = { 1, 2, 3 };
  PhReading other = ph_reading_of (draws, 3);
  CHECK (ph_document_change_check (document, 0, &other, NULL));
  CHECK_NEAR (ph_document_get_rig (document)->archer.checks[0].bubble_deg, 2, 0);
  CHECK (ph_document_set_check_aside (document, 0, TRUE, NULL));
  CHECK_TEXT (ph_document_get_undo_label (document), "set a bubble check aside");
  CHECK (!ph_document_get_report (document)->hand_fitted);
  CHECK (ph_document_delete_check (document, 0, NULL));
  CHECK (ph_document_get_rig (document)->archer.n_checks == 0);
  for (int i = 0; i < 4; i++)
    CHECK (ph_document_undo (document));
  CHECK (!ph_document_undo (document));
  CHECK (!ph_document_get_unsaved (document));
  fixture_clear (&fixture);
}

static void
bad_reading_and_missing_check_are_refused (void)
{
  Fixture fixture = fixture_new ();
  GError *error = NULL;
  CHECK (!add (&fixture, 60));
  CHECK (!ph_document_delete_check (fixture.document, 0, &error) && error != NULL);
  g_clear_error (&error);
  CHECK (!ph_document_set_locked (fixture.document, "gone", TRUE, &error) && error != NULL);
  g_clear_error (&error);
  CHECK (!ph_document_set_limits (fixture.document, "back-bar", "swing_deg", 9, -9, &error)
         && error != NULL);
  g_clear_error (&error);
  CHECK (ph_document_get_undo_label (fixture.document) == NULL);
  CHECK (!ph_document_get_unsaved (fixture.document));
  fixture_clear (&fixture);
}

static void
locks_limits_sources_and_the_wanted_bubble_are_steps_too (void)
{
  Fixture fixture = fixture_new ();
  PhDocument *document = fixture.document;
  CHECK (ph_document_set_locked (document, "back-bar", TRUE, NULL));
  CHECK (fixture_part (&fixture, "back-bar")->locked);
  CHECK_TEXT (ph_document_get_undo_label (document), "locked back bar");
  CHECK (ph_document_set_limits (document, "back-weights", "count", 0, 4, NULL) == FALSE);
  CHECK (ph_document_set_limits (document, "back-stack", "count", 0, 4, NULL));
  CHECK_NEAR (fixture_part (&fixture, "back-stack")->limit_count.hi, 5, 0); /* it holds 5 */
  CHECK (ph_document_clear_limits (document, "back-stack", "count", NULL));
  CHECK (!fixture_part (&fixture, "back-stack")->limit_count.given);
  CHECK (ph_document_set_wanted_bubble (document, -2, NULL));
  CHECK (!ph_document_set_wanted_bubble (document, 31, NULL));
  CHECK (ph_document_set_source (document, "bow", PH_SOURCE_GUESSED, NULL));
  CHECK (ph_document_set_source (document, "sight", PH_SOURCE_MEASURED, NULL));
  CHECK (ph_document_get_rig (document)->bow.source == PH_SOURCE_GUESSED);
  for (int i = 0; i < 6; i++)
    CHECK (ph_document_undo (document));
  CHECK (!ph_document_get_unsaved (document));
  fixture_clear (&fixture);
}

static void
answer_is_applied_as_one_named_step (void)
{
  Fixture fixture = fixture_new ();
  PhDocument *document = fixture.document;
  CHECK (ph_document_set_locked (document, "block", TRUE, NULL));
  PhLevelQuestion question = { PH_LEVEL_ALL, NAN, NAN };
  PhPartAnswers answers = ph_document_level (document, &question);
  CHECK (answers.n > 0);
  const PhPartAnswer *first = &answers.answers[0];
  CHECK_TEXT (first->changes[0].key, "swing_deg");
  CHECK (ph_document_apply_answer (document, first, NULL));
  g_autofree char *label = g_strdup_printf ("level: back bar out 20° → %g°", first->changes[0].to);
  CHECK_TEXT (ph_document_get_undo_label (document), label);
  CHECK_NEAR (ph_document_get_report (document)->bubble_rad, first->outcome.bubble_rad, 1e-11);
  GError *error = NULL; /* it starts from what is not there any more */
  CHECK (!ph_document_apply_answer (document, first, &error) && error != NULL);
  g_clear_error (&error);
  CHECK (ph_document_undo (document));
  CHECK_NEAR (fixture_part (&fixture, "back-bar")->swing_deg, 20, 0);
  ph_part_answers_clear (&answers);
  fixture_clear (&fixture);
}

static void
pair_of_two_parts_names_both (void)
{
  Fixture fixture = fixture_new ();
  PhPartAnswer pair = { .n_changes = 2 };
  pair.changes[0] = (PhPartChange){ 4, "swing_deg", 20, 22 };
  pair.changes[1] = (PhPartChange){ 5, "count", 5, 4 };
  CHECK (ph_document_apply_answer (fixture.document, &pair, NULL));
  CHECK_TEXT (ph_document_get_undo_label (fixture.document),
              "level: back bar out 20° → 22°, back weights 5 → 4");
  CHECK (ph_document_undo (fixture.document));
  CHECK (!ph_document_get_unsaved (fixture.document));
  fixture_clear (&fixture);
}

/* The answer that puts the back bar on the other side, of the target for which there is one. */
static PhPartAnswer
other_side_of (PhDocument *document)
{
  PhLevelQuestion question = { PH_LEVEL_OTHER_SIDE, 0, NAN };
  PhPartAnswer found = { 0 };
  for (question.target_deg = -20; question.target_deg <= 20; question.target_deg += 0.5)
    {
      PhPartAnswers answers = ph_document_level (document, &question);
      for (size_t i = 0; i < answers.n; i++)
        if (answers.answers[i].changes[0].part == 4)
          found = answers.answers[i];
      ph_part_answers_clear (&answers);
    }
  CHECK (found.n_changes == 1);
  return found;
}

static void
part_goes_to_the_other_side_and_back_in_one_step (void)
{
  Fixture fixture = fixture_new ();
  PhDocument *document = fixture.document;
  PhPartAnswer answer = other_side_of (document);
  const PhPartAnswer *first = &answer;
  CHECK (ph_document_answer_obstacle (document, first) == NULL);
  ph_document_preview_answer (document, first);
  CHECK_NEAR (ph_document_get_shown (document).rig->parts[4].swing_deg, -20, 0);
  CHECK_NEAR (fixture_part (&fixture, "back-bar")->swing_deg, 20, 0);
  ph_document_preview_answer (document, NULL);
  CHECK_NEAR (ph_document_get_shown (document).rig->parts[4].swing_deg, 20, 0);
  CHECK (ph_document_apply_answer (document, first, NULL));
  CHECK_TEXT (ph_document_get_undo_label (document), "back bar to the other side");
  CHECK_NEAR (fixture_part (&fixture, "back-bar")->swing_deg, -20, 0);
  CHECK_NEAR (ph_document_get_report (document)->bubble_rad, first->outcome.bubble_rad, 1e-11);
  GError *error = NULL; /* of the rig as it was: now it would go back */
  CHECK (!ph_document_apply_answer (document, first, &error) && error != NULL);
  g_clear_error (&error);
  CHECK (ph_document_undo (document));
  CHECK_NEAR (fixture_part (&fixture, "back-bar")->swing_deg, 20, 0);
  CHECK (!ph_document_undo (document) && !ph_document_get_unsaved (document));
  fixture_clear (&fixture);
}

static void
answer_that_has_no_place_says_what_is_in_its_way (void)
{
  Fixture fixture = fixture_new ();
  PhDocument *document = fixture.document;
  PhPart tail = ph_part_default (PH_PART_BAR);
  tail.name = strdup ("Tail");
  ph_part_set_number (&tail, "length_mm", 0, 80);
  ph_part_set_number (&tail, "outer_mm", 0, 10);
  ph_part_set_number (&tail, "inner_mm", 0, 8);
  ph_part_set_number (&tail, "mass_g", 0, 30);
  ph_document_remove (document, "back-stack");
  CHECK (ph_document_add (document, &tail, "back-bar", NULL));
  ph_part_clear (&tail);
  PhPartAnswer answer = { .n_changes = 1 };
  answer.changes[0] =
      (PhPartChange){ ph_rig_find (ph_document_get_rig (document), "tail"), PH_KEY_MIRROR, 0, 1 };
  g_autofree char *text = ph_document_answer_obstacle (document, &answer);
  CHECK_TEXT (text,
              "Tail hangs on the end of Back bar, which stays where it is; put Back bar on the "
              "other side, or hang this elsewhere.");
  GError *error = NULL;
  CHECK (!ph_document_apply_answer (document, &answer, &error));
  CHECK_TEXT (error->message, text);
  g_clear_error (&error);
  CHECK_TEXT (ph_document_get_undo_label (document), "added tail");
  fixture_clear (&fixture);
}

static void
steps_and_next_checks_are_those_of_the_open_rig (void)
{
  Fixture fixture = fixture_new ();
  size_t n;
  PhPartStep *steps = ph_document_steps (fixture.document, &n);
  CHECK (n == 5);
  free (steps);
  CHECK (ph_document_next_checks (fixture.document).n == 1);
  CHECK (add (&fixture, -1));
  CHECK (ph_document_next_checks (fixture.document).n == 3);
  fixture_clear (&fixture);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (check_is_added_changed_set_aside_and_deleted_in_undo_steps);
  CASE (bad_reading_and_missing_check_are_refused);
  CASE (locks_limits_sources_and_the_wanted_bubble_are_steps_too);
  CASE (answer_is_applied_as_one_named_step);
  CASE (pair_of_two_parts_names_both);
  CASE (part_goes_to_the_other_side_and_back_in_one_step);
  CASE (answer_that_has_no_place_says_what_is_in_its_way);
  CASE (steps_and_next_checks_are_those_of_the_open_rig);
  return check_end ();
}
