/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Unsaved work beside: a run that is killed with SIGKILL in the middle is a real child process
 * here, so that the kernel's own dropping of locks is what is tested.
 */
#include <locale.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include "document-fixture.h"
#include "store/rig-file.h"

#define RIGS ".rig.json"

static char *
recovery_error (PhDocument *document)
{
  char *text = NULL;
  g_object_get (document, "recovery-error", &text, NULL);
  return text;
}

static void
unsaved_work_is_kept_from_gesture_to_gesture (void)
{
  Fixture f = fixture_new ();
  CHECK (fixture_count (f.state, "") == 0, "something was written before anything was done");
  ph_document_begin_gesture (f.document);
  fixture_set (&f, "back-bar", "swing_deg", 26);
  CHECK (fixture_count (f.state, RIGS) == 0, "a write inside a gesture");
  ph_document_end_gesture (f.document);
  CHECK (fixture_count (f.state, RIGS) == 1);
  fixture_set (&f, "back-bar", "swing_deg", 27);
  CHECK (fixture_count (f.state, RIGS) == 1);
  ph_document_undo (f.document);
  CHECK (fixture_count (f.state, RIGS) == 1);
  ph_document_undo (f.document);
  CHECK (fixture_count (f.state, "") == 0, "all is as on disk, nothing is to be kept");
  fixture_clear (&f);
}

static void
saving_opening_and_a_clean_end_leave_nothing_behind (void)
{
  Fixture f = fixture_new ();
  fixture_set (&f, "back-bar", "swing_deg", 26);
  CHECK (ph_document_save (f.document, NULL, NULL));
  CHECK (fixture_count (f.state, "") == 0);
  fixture_set (&f, "back-bar", "swing_deg", 27);
  CHECK (ph_document_load (f.document, f.file, NULL)); /* asked before: discarded */
  CHECK (fixture_count (f.state, "") == 0);
  fixture_set (&f, "back-bar", "swing_deg", 28);
  ph_document_forget_recovery (f.document);
  CHECK (fixture_count (f.state, "") == 0);
  fixture_clear (&f);
}

/* A child edits the fixture's rig and waits to be killed; returns when its edit is kept. */
static pid_t
run_child (const Fixture *f, double swing_deg)
{
  int ready[2];
  if (pipe (ready) != 0)
    g_error ("no pipe");
  pid_t child = fork ();
  if (child == 0)
    {
      PhDocument *own = fixture_document (f);
      bool ok = ph_document_load (own, f->file, NULL)
                && ph_document_set_number (own, "back-bar", "swing_deg", 0, swing_deg, NULL);
      if (write (ready[1], ok ? "y" : "n", 1) == 1)
        pause ();
      _exit (1);
    }
  char answer = 'n';
  CHECK (read (ready[0], &answer, 1) == 1 && answer == 'y', "the child could not edit");
  close (ready[0]);
  close (ready[1]);
  return child;
}

static void
kill_child (pid_t child)
{
  kill (child, SIGKILL);
  waitpid (child, NULL, 0);
}

static void
a_killed_runs_rig_comes_back_as_it_was (void)
{
  Fixture f = fixture_new ();
  pid_t child = run_child (&f, 31);
  g_auto (GStrv) while_alive = ph_document_find_recovered (f.document);
  CHECK (!while_alive[0], "a running document's rig was offered");
  kill_child (child);

  g_auto (GStrv) found = ph_document_find_recovered (f.document);
  CHECK (found[0] && !found[1]);
  g_autofree char *title = ph_document_dup_recovered_title (f.document, found[0]);
  CHECK_TEXT (title, "Harbour club indoor");
  g_autoptr (PhDocument) later = fixture_document (&f);
  CHECK (ph_document_load_recovered (later, found[0], NULL));
  const PhRig *rig = ph_document_get_rig (later);
  CHECK_NEAR (rig->parts[ph_rig_find (rig, "back-bar")].swing_deg, 31, 0);
  CHECK (ph_document_get_unsaved (later));
  CHECK (ph_document_get_file (later) && g_file_equal (ph_document_get_file (later), f.file));
  CHECK (!ph_document_get_undo_label (later));

  g_auto (GStrv) taken = ph_document_find_recovered (f.document);
  CHECK (!taken[0], "offered although a document has it");
  GError *error = NULL;
  CHECK (!ph_document_load_recovered (f.document, found[0], &error));
  CHECK (error && strstr (error->message, "Another window"));
  g_clear_error (&error);
  CHECK (ph_document_save (later, NULL, NULL));
  CHECK (fixture_count (f.state, "") == 0);
  fixture_clear (&f);
}

static void
two_killed_runs_are_both_offered_newest_first (void)
{
  Fixture f = fixture_new ();
  pid_t first = run_child (&f, 31);
  g_usleep (20000); /* two times that differ */
  pid_t second = run_child (&f, 32);
  kill_child (first);
  g_auto (GStrv) one = ph_document_find_recovered (f.document);
  CHECK (g_strv_length (one) == 1);
  kill_child (second);
  g_auto (GStrv) both = ph_document_find_recovered (f.document);
  CHECK (g_strv_length (both) == 2);
  PhRig *rig = NULL;
  CHECK (ph_rig_load (both[0], &rig, NULL) == PH_OK);
  CHECK_NEAR (rig ? rig->parts[ph_rig_find (rig, "back-bar")].swing_deg : 0, 32, 0);
  ph_rig_free (rig);
  ph_document_discard_recovered (f.document, both[0]);
  g_auto (GStrv) left = ph_document_find_recovered (f.document);
  CHECK (g_strv_length (left) == 1 && g_str_equal (left[0], both[1]));
  fixture_clear (&f);
}

/* A document that is let go without a clean end leaves its set as a killed one does. */
static void
abandon (const Fixture *f, double swing_deg)
{
  PhDocument *own = fixture_document (f);
  CHECK (ph_document_load (own, f->file, NULL));
  CHECK (ph_document_set_number (own, "back-bar", "swing_deg", 0, swing_deg, NULL));
  g_object_unref (own);
}

static void
a_recovered_rig_goes_on_being_kept (void)
{
  Fixture f = fixture_new ();
  abandon (&f, 31);
  for (int round = 0; round < 3; round++)
    {
      g_auto (GStrv) found = ph_document_find_recovered (f.document);
      CHECK (g_strv_length (found) == 1, "round %d", round);
      PhDocument *later = fixture_document (&f);
      CHECK (found[0] && ph_document_load_recovered (later, found[0], NULL));
      if (round == 1)
        CHECK (ph_document_set_number (later, "back-bar", "swing_deg", 0, 33, NULL));
      const PhRig *rig = ph_document_get_rig (later);
      CHECK_NEAR (rig->parts[ph_rig_find (rig, "back-bar")].swing_deg, round ? 33 : 31, 0);
      g_object_unref (later);
    }
  fixture_clear (&f);
}

static void
recovering_does_not_overwrite_what_somebody_saved_since (void)
{
  Fixture f = fixture_new ();
  abandon (&f, 31);
  g_auto (GStrv) around = g_strsplit (FIXTURE_RIG, "\"mass_g\": 1950", 2);
  g_autofree char *theirs = g_strjoinv ("\"mass_g\": 1951", around);
  fixture_write (f.path, theirs);
  g_auto (GStrv) found = ph_document_find_recovered (f.document);
  g_autoptr (PhDocument) later = fixture_document (&f);
  CHECK (found[0] && ph_document_load_recovered (later, found[0], NULL));
  GError *error = NULL;
  CHECK (!ph_document_save (later, NULL, &error));
  CHECK (g_error_matches (error, PH_DOCUMENT_ERROR, PH_DOCUMENT_ERROR_CHANGED));
  g_clear_error (&error);
  fixture_clear (&f);
}

static void
a_rig_without_a_file_comes_back_without_one (void)
{
  Fixture f = fixture_new ();
  PhDocument *own = fixture_document (&f);
  CHECK (ph_document_load_copy (own, f.file, NULL));
  CHECK (ph_document_set_number (own, "back-bar", "swing_deg", 0, 31, NULL));
  ph_document_reference_take (own);
  CHECK (ph_document_set_number (own, "back-bar", "swing_deg", 0, 32, NULL));
  g_object_unref (own);
  g_auto (GStrv) found = ph_document_find_recovered (f.document);
  g_autoptr (PhDocument) later = fixture_document (&f);
  CHECK (found[0] && ph_document_load_recovered (later, found[0], NULL));
  CHECK (!ph_document_get_file (later) && ph_document_get_unsaved (later));
  const PhRig *reference = ph_document_get_reference_rig (later);
  CHECK (reference != NULL, "the rig it was compared with is lost");
  if (reference)
    CHECK_NEAR (reference->parts[ph_rig_find (reference, "back-bar")].swing_deg, 31, 0);
  fixture_clear (&f);
}

static void
a_damaged_set_is_told_and_kept (void)
{
  Fixture f = fixture_new ();
  abandon (&f, 31);
  g_auto (GStrv) found = ph_document_find_recovered (f.document);
  fixture_write (found[0], "{\"format\": \"plumb");
  fixture_set (&f, "back-bar", "swing_deg", 22);
  GError *error = NULL;
  CHECK (!ph_document_load_recovered (f.document, found[0], &error) && error);
  g_clear_error (&error);
  CHECK_NEAR (fixture_part (&f, "back-bar")->swing_deg, 22, 0);
  g_auto (GStrv) again = ph_document_find_recovered (f.document);
  CHECK (g_strv_length (again) == 1);
  CHECK (fixture_count (f.state, RIGS) == 2, "its own unsaved work must still be kept");
  fixture_clear (&f);
}

static void
strangers_and_leftovers_in_the_folder_do_no_harm (void)
{
  Fixture f = fixture_new ();
  g_mkdir (f.state, 0700);
  g_autofree char *stranger = g_build_filename (f.state, "mine" RIGS, NULL);
  g_autofree char *name = g_uuid_string_random ();
  g_autofree char *owner = g_strconcat (f.state, "/", name, ".owner", NULL);
  fixture_write (stranger, FIXTURE_RIG);
  fixture_write (owner, "[recovery]\npid=1\n"); /* a run that was killed between two writes */
  g_auto (GStrv) found = ph_document_find_recovered (f.document);
  CHECK (!found[0]);
  CHECK (g_file_test (stranger, G_FILE_TEST_EXISTS), "somebody's own file was removed");
  CHECK (!g_file_test (owner, G_FILE_TEST_EXISTS));
  fixture_clear (&f);
}

static void
count_cb (PhDocument *document, GParamSpec *pspec, int *n)
{
  (void)document;
  (void)pspec;
  (*n)++;
}

static void
a_failing_write_is_told_once_and_then_mended (void)
{
  Fixture f = fixture_new ();
  int told = 0;
  g_signal_connect (f.document, "notify::recovery-error", G_CALLBACK (count_cb), &told);
  fixture_write (f.state, "a file where the folder should be");
  fixture_set (&f, "back-bar", "swing_deg", 26);
  g_autofree char *text = recovery_error (f.document);
  CHECK (text && strstr (text, "Save the rig now"), "%s", text ? text : "(nothing)");
  fixture_set (&f, "back-bar", "swing_deg", 27);
  CHECK (told == 1, "%d", told);
  g_unlink (f.state);
  fixture_set (&f, "back-bar", "swing_deg", 28);
  g_autofree char *none = recovery_error (f.document);
  CHECK (!none && told == 2);
  CHECK (fixture_count (f.state, RIGS) == 1);
  fixture_clear (&f);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  setlocale (LC_ALL, "C.UTF-8");
  CASE (unsaved_work_is_kept_from_gesture_to_gesture);
  CASE (saving_opening_and_a_clean_end_leave_nothing_behind);
  CASE (a_killed_runs_rig_comes_back_as_it_was);
  CASE (two_killed_runs_are_both_offered_newest_first);
  CASE (a_recovered_rig_goes_on_being_kept);
  CASE (recovering_does_not_overwrite_what_somebody_saved_since);
  CASE (a_rig_without_a_file_comes_back_without_one);
  CASE (a_damaged_set_is_told_and_kept);
  CASE (strangers_and_leftovers_in_the_folder_do_no_harm);
  CASE (a_failing_write_is_told_once_and_then_mended);
  return check_end ();
}
