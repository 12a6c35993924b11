/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Opening and saving as the window does it, and the reference. The disk is real; what another
 * program would do to the file is done with plain writes.
 */
#include <locale.h>
#include <utime.h>

#include "document-fixture.h"
#include "store/rig-file.h"

static void
a_new_document_holds_a_rig_that_nobody_has_to_save (void)
{
  Fixture f = fixture_new ();
  g_autoptr (PhDocument) document = fixture_document (&f);
  CHECK (ph_document_get_rig (document)->n_parts > 0);
  CHECK (ph_document_get_report (document)->mass.mass_kg > 1);
  CHECK (!ph_document_get_unsaved (document) && !ph_document_get_file (document));
  const PhStarter recurve = { PH_BOW_RECURVE, PH_BOW_HAND_RIGHT, 711, NAN };
  ph_document_new_rig (document, &recurve, "Quay club");
  CHECK_TEXT (ph_document_get_title (document), "Quay club");
  CHECK (ph_document_get_rig (document)->bow.kind == PH_BOW_RECURVE);
  CHECK (!ph_document_get_unsaved (document));
  fixture_clear (&f);
}

static void
a_rig_without_a_name_is_called_like_its_file (void)
{
  Fixture f = fixture_new ();
  g_autofree char *text = fixture_read (f.path);
  g_auto (GStrv) around = g_strsplit (text, "\"name\": \"Harbour club indoor\",", 2);
  g_autofree char *nameless = g_strconcat (around[0], around[1], NULL);
  fixture_write (f.path, nameless);
  CHECK (ph_document_load (f.document, f.file, NULL));
  CHECK_TEXT (ph_document_get_title (f.document), "harbour");
  fixture_set (&f, "back-bar", "swing_deg", 26);
  CHECK (ph_document_save (f.document, NULL, NULL));
  g_autofree char *saved = fixture_read (f.path);
  CHECK (saved && !strstr (saved, "\"harbour\""), "the file's name crept into the rig");
  g_autofree char *other = fixture_path (&f, "quay.rig.json");
  g_autoptr (GFile) file = g_file_new_for_path (other);
  CHECK (ph_document_save (f.document, file, NULL));
  CHECK_TEXT (ph_document_get_title (f.document), "quay");
  fixture_clear (&f);
}

static void
what_was_saved_reads_back_as_the_very_same_rig (void)
{
  Fixture f = fixture_new ();
  fixture_set (&f, "back-bar", "swing_deg", 20.1 + 1e-13);
  CHECK (ph_document_save (f.document, NULL, NULL));
  PhRig *rig = NULL;
  CHECK (ph_rig_load (f.path, &rig, NULL) == PH_OK);
  CHECK (rig && ph_rig_equal (rig, ph_document_get_rig (f.document)));
  ph_rig_free (rig);
  fixture_clear (&f);
}

static void
save_as_moves_the_document (void)
{
  Fixture f = fixture_new ();
  g_autofree char *path = fixture_path (&f, "other.rig.json");
  g_autoptr (GFile) other = g_file_new_for_path (path);
  fixture_set (&f, "back-bar", "swing_deg", 26);
  CHECK (ph_document_save (f.document, other, NULL));
  CHECK (g_file_equal (ph_document_get_file (f.document), other));
  CHECK (!ph_document_get_unsaved (f.document));
  g_autofree char *first = fixture_read (f.path);
  CHECK_TEXT (first, FIXTURE_RIG);
  fixture_clear (&f);
}

static void
a_failed_load_leaves_the_open_rig_untouched (void)
{
  Fixture f = fixture_new ();
  fixture_set (&f, "back-bar", "swing_deg", 26);
  ph_document_select (f.document, "back-bar");
  g_autofree char *path = fixture_path (&f, "broken.rig.json");
  g_autoptr (GFile) broken = g_file_new_for_path (path);
  fixture_write (path, "{\"format\": \"plumbhold-rig\", \"version\": 1, \"bow\": {\"mass_g\": -1,"
                       " \"com_mm\": [0, 0, 0], \"gyration_mm\": [1, 1]}}");
  GError *error = NULL;
  CHECK (!ph_document_load (f.document, broken, &error));
  CHECK (g_error_matches (error, PH_DOCUMENT_ERROR, PH_DOCUMENT_ERROR_RIG));
  CHECK (error && strstr (error->message, "gyration_mm") && strstr (error->message, "1 more error"),
         "%s", error ? error->message : "");
  g_clear_error (&error);
  CHECK (ph_issues_errors (ph_document_get_issues (f.document)) == 2);

  CHECK_TEXT (ph_document_get_title (f.document), "Harbour club indoor");
  CHECK_TEXT (ph_document_get_undo_label (f.document), "back bar out 20° → 26°");
  CHECK_TEXT (ph_document_get_selected (f.document), "back-bar");
  CHECK (g_file_equal (ph_document_get_file (f.document), f.file));
  CHECK (ph_document_get_unsaved (f.document));

  g_autofree char *nowhere = fixture_path (&f, "nowhere.rig.json");
  g_autoptr (GFile) missing = g_file_new_for_path (nowhere);
  CHECK (!ph_document_load (f.document, missing, &error));
  CHECK (g_error_matches (error, PH_DOCUMENT_ERROR, PH_DOCUMENT_ERROR_FILE));
  g_clear_error (&error);

  CHECK (ph_document_load (f.document, f.file, NULL));
  CHECK (ph_issues_errors (ph_document_get_issues (f.document)) == 0, "an old error stayed");
  fixture_clear (&f);
}

static void
a_copy_has_no_file_of_its_own (void)
{
  Fixture f = fixture_new ();
  g_autoptr (PhDocument) document = fixture_document (&f);
  CHECK (ph_document_load_copy (document, f.file, NULL));
  CHECK (!ph_document_get_file (document) && !ph_document_get_unsaved (document));
  CHECK_TEXT (ph_document_get_title (document), "Harbour club indoor");
  fixture_clear (&f);
}

static void
a_save_that_fails_says_where_to_go (void)
{
  Fixture f = fixture_new ();
  g_autofree char *path = fixture_path (&f, "no/such/folder/x.rig.json");
  g_autoptr (GFile) file = g_file_new_for_path (path);
  fixture_set (&f, "back-bar", "swing_deg", 26);
  GError *error = NULL;
  CHECK (!ph_document_save (f.document, file, &error));
  CHECK (g_error_matches (error, PH_DOCUMENT_ERROR, PH_DOCUMENT_ERROR_FILE));
  CHECK (error && strstr (error->message, "choose another place to save"), "%s",
         error ? error->message : "");
  g_clear_error (&error);
  CHECK (ph_document_get_unsaved (f.document));
  CHECK (g_file_equal (ph_document_get_file (f.document), f.file));
  g_autoptr (GFile) far_away = g_file_new_for_uri ("sftp://host.invalid/x.rig.json");
  CHECK (!ph_document_save (f.document, far_away, &error) && error);
  g_clear_error (&error);
  fixture_clear (&f);
}

static void
a_file_that_somebody_else_changed_is_not_overwritten_unasked (void)
{
  Fixture f = fixture_new ();
  fixture_set (&f, "back-bar", "swing_deg", 26);
  g_auto (GStrv) around = g_strsplit (FIXTURE_RIG, "\"mass_g\": 1950", 2);
  g_autofree char *theirs = g_strjoinv ("\"mass_g\": 1951", around);
  fixture_write (f.path, theirs);
  GError *error = NULL;
  CHECK (!ph_document_save (f.document, NULL, &error));
  CHECK (g_error_matches (error, PH_DOCUMENT_ERROR, PH_DOCUMENT_ERROR_CHANGED));
  g_clear_error (&error);
  g_autofree char *still = fixture_read (f.path);
  CHECK_TEXT (still, theirs);
  CHECK (ph_document_get_unsaved (f.document));
  CHECK (ph_document_save_anyway (f.document, NULL, NULL));
  CHECK (!ph_document_get_unsaved (f.document));
  fixture_set (&f, "back-bar", "swing_deg", 27);
  CHECK (ph_document_save (f.document, NULL, NULL), "one's own save counted as another's");
  fixture_clear (&f);
}

static void
a_file_that_was_only_touched_or_is_gone_raises_no_question (void)
{
  Fixture f = fixture_new ();
  fixture_set (&f, "back-bar", "swing_deg", 26);
  const struct utimbuf long_ago = { 1000000000, 1000000000 };
  CHECK (utime (f.path, &long_ago) == 0);
  CHECK (ph_document_save (f.document, NULL, NULL));
  fixture_set (&f, "back-bar", "swing_deg", 27);
  CHECK (g_unlink (f.path) == 0);
  CHECK (ph_document_save (f.document, NULL, NULL));
  CHECK (g_file_test (f.path, G_FILE_TEST_EXISTS));
  fixture_clear (&f);
}

static void
a_shared_layout_has_no_archer_in_it (void)
{
  Fixture f = fixture_new ();
  g_autofree char *path = fixture_path (&f, "shared.rig.json");
  g_autoptr (GFile) file = g_file_new_for_path (path);
  fixture_set (&f, "back-bar", "swing_deg", 26);
  CHECK (ph_document_share (f.document, file, NULL));
  g_autofree char *text = fixture_read (path);
  CHECK (text && !strstr (text, "holding_weight_n") && strstr (text, "back-bar"));
  CHECK (ph_document_get_unsaved (f.document), "sharing is not saving");
  CHECK (g_file_equal (ph_document_get_file (f.document), f.file));
  fixture_clear (&f);
}

static void
the_reference_stands_beside_the_open_rig (void)
{
  Fixture f = fixture_new ();
  CHECK (!ph_document_get_reference_rig (f.document));
  ph_document_reference_swap (f.document); /* without one: nothing */
  ph_document_set_flipped (f.document, TRUE);
  CHECK (!ph_document_get_flipped (f.document), "there is nothing to flip to");
  ph_document_reference_take (f.document);
  double before = ph_document_get_report (f.document)->cant_rad;
  fixture_set (&f, "back-bar", "swing_deg", 26);
  CHECK_NEAR (ph_document_get_reference_report (f.document)->cant_rad, before, 0);
  g_autofree char *name = NULL;
  g_object_get (f.document, "reference-name", &name, NULL);
  CHECK_TEXT (name, "Harbour club indoor");
  ph_document_set_flipped (f.document, TRUE);
  CHECK (ph_document_get_flipped (f.document));
  PhShown shown = ph_document_get_shown (f.document);
  PhShown compared = ph_document_get_compared (f.document);
  CHECK_NEAR (shown.report->cant_rad, before, 0);
  CHECK (shown.rig == ph_document_get_reference_rig (f.document), "the reference is looked at");
  CHECK (compared.rig == ph_document_get_rig (f.document), "and the open rig is the outline");
  ph_document_set_flipped (f.document, FALSE);
  CHECK (ph_document_get_shown (f.document).rig == ph_document_get_rig (f.document));
  ph_document_set_flipped (f.document, TRUE);
  ph_document_reference_clear (f.document);
  CHECK (!ph_document_get_compared (f.document).rig);
  CHECK (!ph_document_get_flipped (f.document));
  CHECK (!ph_document_get_reference_report (f.document));
  CHECK (ph_document_reference_load (f.document, f.file, NULL));
  CHECK_NEAR (ph_document_get_reference_report (f.document)->cant_rad, before, 0);
  fixture_clear (&f);
}

static void
a_swap_is_one_step_and_takes_both_rigs_back (void)
{
  Fixture f = fixture_new ();
  ph_document_reference_take (f.document);
  fixture_set (&f, "back-bar", "swing_deg", 26);
  ph_document_reference_swap (f.document);
  CHECK_TEXT (ph_document_get_undo_label (f.document), "swapped with the reference");
  CHECK_NEAR (fixture_part (&f, "back-bar")->swing_deg, 20, 0);
  CHECK (!ph_document_get_unsaved (f.document), "this is the rig on disk");
  const PhRig *reference = ph_document_get_reference_rig (f.document);
  CHECK_NEAR (reference->parts[ph_rig_find (reference, "back-bar")].swing_deg, 26, 0);
  CHECK (ph_document_undo (f.document));
  CHECK_NEAR (fixture_part (&f, "back-bar")->swing_deg, 26, 0);
  reference = ph_document_get_reference_rig (f.document);
  CHECK_NEAR (reference->parts[ph_rig_find (reference, "back-bar")].swing_deg, 20, 0);
  CHECK (ph_document_redo (f.document));
  CHECK_NEAR (fixture_part (&f, "back-bar")->swing_deg, 20, 0);
  fixture_clear (&f);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  setlocale (LC_ALL, "C.UTF-8");
  CASE (a_new_document_holds_a_rig_that_nobody_has_to_save);
  CASE (a_rig_without_a_name_is_called_like_its_file);
  CASE (what_was_saved_reads_back_as_the_very_same_rig);
  CASE (save_as_moves_the_document);
  CASE (a_failed_load_leaves_the_open_rig_untouched);
  CASE (a_copy_has_no_file_of_its_own);
  CASE (a_save_that_fails_says_where_to_go);
  CASE (a_file_that_somebody_else_changed_is_not_overwritten_unasked);
  CASE (a_file_that_was_only_touched_or_is_gone_raises_no_question);
  CASE (a_shared_layout_has_no_archer_in_it);
  CASE (the_reference_stands_beside_the_open_rig);
  CASE (a_swap_is_one_step_and_takes_both_rigs_back);
  return check_end ();
}
