/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The open rig: edits and their results, gestures, undo and its labels, the selection. What the
 * document computes step by step is held against a compilation from nothing, and what it keeps
 * against the rig file written and read again.
 */
#include <locale.h>
#include <time.h>

#include "document-fixture.h"
#include "document/document-hand.h"
#include "model/check.h"
#include "model/fields.h"
#include "store/rig-file.h"

/* How often each signal came. */
typedef struct
{
  int changed, structure, replaced, unsaved, selected, title;
  char *removed;
  char *order; /* first letters, as they came */
} Heard;

static void
hear (Heard *heard, const char *letter, int *count)
{
  char *longer = g_strconcat (heard->order ? heard->order : "", letter, NULL);
  g_free (heard->order);
  heard->order = longer;
  (*count)++;
}

static void
changed_cb (PhDocument *document, Heard *heard)
{
  (void)document;
  hear (heard, "c", &heard->changed);
}

static void
structure_cb (PhDocument *document, Heard *heard)
{
  (void)document;
  hear (heard, "s", &heard->structure);
}

static void
replaced_cb (PhDocument *document, Heard *heard)
{
  (void)document;
  hear (heard, "r", &heard->replaced);
}

static void
removed_cb (PhDocument *document, const char *text, Heard *heard)
{
  (void)document;
  g_free (heard->removed);
  heard->removed = g_strdup (text);
}

static void
notify_cb (PhDocument *document, GParamSpec *pspec, Heard *heard)
{
  (void)document;
  heard->unsaved += g_str_equal (pspec->name, "unsaved");
  heard->selected += g_str_equal (pspec->name, "selected");
  heard->title += g_str_equal (pspec->name, "title");
}

static void
listen (PhDocument *document, Heard *heard)
{
  g_signal_connect (document, "changed", G_CALLBACK (changed_cb), heard);
  g_signal_connect (document, "structure-changed", G_CALLBACK (structure_cb), heard);
  g_signal_connect (document, "replaced", G_CALLBACK (replaced_cb), heard);
  g_signal_connect (document, "removed", G_CALLBACK (removed_cb), heard);
  g_signal_connect (document, "notify", G_CALLBACK (notify_cb), heard);
}

static void
heard_clear (Heard *heard)
{
  g_free (heard->removed);
  g_free (heard->order);
}

/* The document's results against those of its rig compiled from nothing: bit for bit. */
static void
check_results (PhDocument *document)
{
  PhRig *copy = ph_rig_copy (ph_document_get_rig (document));
  PhIssues issues = { 0 };
  CHECK (ph_check_rig (copy, &issues), "the open rig is not sound");
  ph_issues_clear (&issues);
  PhCompiled *compiled = ph_compile_rig (copy);
  PhReport *fresh = ph_report_new (copy, compiled);
  const PhReport *own = ph_document_get_report (document);
  CHECK_NEAR (own->mass.mass_kg, fresh->mass.mass_kg, 0);
  CHECK_NEAR (own->mass.com_m.x, fresh->mass.com_m.x, 0);
  CHECK_NEAR (own->mass.com_m.y, fresh->mass.com_m.y, 0);
  CHECK_NEAR (own->mass.com_m.z, fresh->mass.com_m.z, 0);
  CHECK_NEAR (own->cant_rad, fresh->cant_rad, 0);
  CHECK_NEAR (own->mass.inertia_com_kg_m2.xx, fresh->mass.inertia_com_kg_m2.xx, 0);
  CHECK_NEAR (own->pitch.nock_load_n, fresh->pitch.nock_load_n, 0);
  CHECK_NEAR (own->clearance_m, fresh->clearance_m, 0);
  CHECK (own->n_shares == fresh->n_shares);
  ph_report_free (fresh);
  ph_compiled_free (compiled);
  ph_rig_free (copy);
}

static void
every_edit_is_computed_and_told (void)
{
  Fixture f = fixture_new ();
  Heard heard = { 0 };
  listen (f.document, &heard);
  double before = ph_document_get_report (f.document)->cant_rad;
  fixture_set (&f, "back-bar", "swing_deg", 26);
  CHECK (heard.changed == 1 && heard.structure == 0, "%d, %d", heard.changed, heard.structure);
  CHECK (ph_document_get_report (f.document)->cant_rad < before,
         "weight moved to the left must tip the bow further left");
  check_results (f.document);
  fixture_set (&f, "block", "swing_deg", 5);
  fixture_set (&f, "front-bar", "length_mm", 711);
  fixture_set (&f, "front-stack", "count", 9);
  check_results (f.document);
  CHECK (ph_document_set_archer_number (f.document, "draw_length_mm", 670, NULL));
  CHECK (ph_document_set_bow_number (f.document, "com_mm", 1, -5, NULL));
  check_results (f.document);
  CHECK (ph_document_set_off (f.document, "block", TRUE, NULL));
  CHECK (ph_document_set_off (f.document, "block", FALSE, NULL));
  CHECK (heard.structure == 2, "%d", heard.structure);
  check_results (f.document);
  heard_clear (&heard);
  fixture_clear (&f);
}

static void
a_number_set_on_a_part_that_is_off_waits_there (void)
{
  Fixture f = fixture_new ();
  CHECK (ph_document_set_off (f.document, "back-bar", TRUE, NULL));
  double without = ph_document_get_report (f.document)->mass.mass_kg;
  fixture_set (&f, "back-stack", "count", 9);
  CHECK_NEAR (ph_document_get_report (f.document)->mass.mass_kg, without, 0);
  CHECK (ph_document_set_off (f.document, "back-bar", FALSE, NULL));
  check_results (f.document);
  CHECK (fixture_part (&f, "back-stack")->count == 9);
  fixture_clear (&f);
}

static void
a_gesture_is_one_step (void)
{
  Fixture f = fixture_new ();
  ph_document_begin_gesture (f.document);
  for (int i = 21; i <= 26; i++)
    fixture_set (&f, "back-bar", "swing_deg", i);
  CHECK (!ph_document_get_undo_label (f.document), "a step before the gesture has ended");
  ph_document_end_gesture (f.document);
  CHECK_TEXT (ph_document_get_undo_label (f.document), "back bar out 20° → 26°");
  CHECK (ph_document_undo (f.document));
  CHECK_NEAR (fixture_part (&f, "back-bar")->swing_deg, 20, 0);
  CHECK (!ph_document_undo (f.document), "there was only one step");
  CHECK_TEXT (ph_document_get_redo_label (f.document), "back bar out 20° → 26°");
  CHECK (ph_document_redo (f.document));
  CHECK_NEAR (fixture_part (&f, "back-bar")->swing_deg, 26, 0);
  CHECK (!ph_document_get_redo_label (f.document));
  check_results (f.document);
  fixture_clear (&f);
}

static void
a_gesture_that_changed_nothing_leaves_no_step (void)
{
  Fixture f = fixture_new ();
  ph_document_begin_gesture (f.document);
  fixture_set (&f, "back-bar", "swing_deg", 26);
  fixture_set (&f, "back-bar", "swing_deg", 20);
  ph_document_end_gesture (f.document);
  CHECK (!ph_document_get_undo_label (f.document));
  CHECK (!ph_document_get_unsaved (f.document));
  ph_document_end_gesture (f.document); /* without one: nothing */
  fixture_clear (&f);
}

/* The swing of this bar stands nowhere in the file, its lift has limits, and the archer's stature
   is the default: each goes out and comes back, a limit is stretched on the way. */
static void
a_number_that_goes_out_and_comes_back_leaves_no_step (void)
{
  Fixture f = fixture_new ();
  CHECK (ph_document_set_limits (f.document, "back-bar", "lift_deg", -20, 0, NULL));
  CHECK (ph_document_save (f.document, NULL, NULL));
  g_autofree char *saved = fixture_read (f.path);
  for (int twice = 0; twice < 2; twice++)
    {
      ph_document_begin_gesture (f.document);
      CHECK (ph_document_set_number (f.document, "back-stack", "bore_mm", 0, 5, NULL));
      CHECK (ph_document_set_number (f.document, "back-bar", "lift_deg", 0, 30, NULL));
      CHECK (ph_document_set_archer_number (f.document, "stature_mm", 1800, NULL));
      CHECK (ph_document_set_archer_number (f.document, "roll_bias_nm", 0.1, NULL));
      CHECK (ph_document_set_number (f.document, "back-stack", "bore_mm", 0, 0, NULL));
      CHECK (ph_document_set_number (f.document, "back-bar", "lift_deg", 0, -12, NULL));
      CHECK (ph_document_set_archer_number (f.document, "stature_mm", 1750, NULL));
      CHECK (ph_document_set_archer_number (f.document, "roll_bias_nm", 0, NULL));
      ph_document_end_gesture (f.document);
      CHECK_TEXT (ph_document_get_undo_label (f.document), "limits of back bar");
      CHECK (!ph_document_get_unsaved (f.document));
      CHECK_NEAR (fixture_part (&f, "back-bar")->limit_lift.hi, 0, 0);
    }
  CHECK (ph_document_save_anyway (f.document, NULL, NULL));
  g_autofree char *again = fixture_read (f.path);
  CHECK_TEXT (again, saved);
  fixture_clear (&f);
}

static void
a_cancelled_gesture_puts_everything_back (void)
{
  Fixture f = fixture_new ();
  ph_document_select (f.document, "back-bar");
  PhRig *before = ph_rig_copy (ph_document_get_rig (f.document));
  ph_document_begin_gesture (f.document);
  fixture_set (&f, "back-bar", "swing_deg", 26);
  ph_document_remove (f.document, "block");
  ph_document_cancel_gesture (f.document);
  CHECK (ph_rig_equal (before, ph_document_get_rig (f.document)));
  CHECK (!ph_document_get_undo_label (f.document) && !ph_document_get_unsaved (f.document));
  CHECK_TEXT (ph_document_get_selected (f.document), "back-bar");
  check_results (f.document);
  ph_rig_free (before);
  fixture_clear (&f);
}

/* Labels as product wording has them; "out" on either side of the bow. */
static void
labels_say_it_as_an_archer_would (void)
{
  Fixture f = fixture_new ();
  static const struct
  {
    const char *part, *key;
    double value;
    const char *label;
  } steps[] = {
    { "back-bar", "swing_deg", 26, "back bar out 20° → 26°" },
    { "back-bar", "swing_deg", 12.5, "back bar out 26° → 12.5°" },
    { "back-bar", "lift_deg", -20, "back bar down 12° → 20°" },
    { "back-bar", "lift_deg", 3, "back bar down 20° → up 3°" },
    { "front-stack", "count", 9, "front weights 8 → 9" },
    { "front-bar", "length_mm", 711.2, "front bar length 762 → 711.2 mm" },
    { "front-bar", "swing_deg", 0.5, "front bar left 0° → 0.5°" },
    { "front-bar", "swing_deg", -10, "front bar left 0.5° → right 10°" },
    { "front-bar", "swing_deg", -12, "front bar out 10° → 12°" },
    { "front-bar", "swing_deg", -0.5, "front bar out 12° → 0.5°" },
    { "back-bar", "mass_g", 100, "back bar mass 95 → 100 g" },
  };
  for (size_t i = 0; i < G_N_ELEMENTS (steps); i++)
    {
      fixture_set (&f, steps[i].part, steps[i].key, steps[i].value);
      CHECK_TEXT (ph_document_get_undo_label (f.document), steps[i].label);
    }
  CHECK (ph_document_set_archer_number (f.document, "draw_length_mm", 670, NULL));
  CHECK_TEXT (ph_document_get_undo_label (f.document), "draw length 660 → 670 mm");
  CHECK (ph_document_set_bow_number (f.document, "mass_g", 0, 2000, NULL));
  CHECK_TEXT (ph_document_get_undo_label (f.document), "bow mass 1.95 → 2 kg");
  CHECK (ph_document_set_number (f.document, "sight", "at_mm", 0, 155, NULL));
  CHECK_TEXT (ph_document_get_undo_label (f.document), "sight ahead 150 → 155 mm");
  ph_document_set_units (f.document, PH_UNITS_TRADE);
  fixture_set (&f, "front-bar", "length_mm", 762);
  CHECK_TEXT (ph_document_get_undo_label (f.document), "front bar length 28 → 30 in");
  fixture_clear (&f);
}

static void
labels_name_what_came_went_and_moved (void)
{
  Fixture f = fixture_new ();
  PhPart damper = ph_part_default (PH_PART_DAMPER);
  damper.name = g_strdup ("Damper");
  ph_part_set_number (&damper, "mass_g", 0, 45);
  ph_part_set_number (&damper, "length_mm", 0, 40);
  ph_part_set_number (&damper, "diameter_mm", 0, 30);
  CHECK (ph_document_add (f.document, &damper, "front-stack", NULL));
  CHECK_TEXT (ph_document_get_undo_label (f.document), "added damper");
  CHECK_TEXT (ph_document_get_selected (f.document), "damper");
  ph_part_clear (&damper);
  ph_document_remove (f.document, "back-bar");
  CHECK_TEXT (ph_document_get_undo_label (f.document), "removed back bar and its weights");
  CHECK (ph_document_undo (f.document));
  CHECK (ph_document_set_off (f.document, "back-bar", TRUE, NULL));
  CHECK_TEXT (ph_document_get_undo_label (f.document), "took back bar off");
  CHECK (ph_document_rehang (f.document, "back-bar", "block:b", NULL));
  CHECK_TEXT (ph_document_get_undo_label (f.document), "moved back bar");
  CHECK (ph_document_set_part_name (f.document, "back-bar", "Anna's bar", NULL));
  CHECK_TEXT (ph_document_get_undo_label (f.document), "renamed Back bar to Anna's bar");
  fixture_set (&f, "back-bar", "length_mm", 280);
  CHECK_TEXT (ph_document_get_undo_label (f.document), "Anna's bar length 305 → 280 mm");
  CHECK (ph_document_set_title (f.document, "Harbour club outdoor", NULL));
  CHECK_TEXT (ph_document_get_undo_label (f.document), "renamed the rig");
  ph_document_mirror (f.document);
  CHECK_TEXT (ph_document_get_undo_label (f.document), "mirrored for the other hand");
  fixture_clear (&f);
}

static void
two_numbers_of_one_gesture_share_a_label (void)
{
  Fixture f = fixture_new ();
  ph_document_begin_gesture (f.document);
  fixture_set (&f, "back-bar", "swing_deg", 26);
  fixture_set (&f, "back-bar", "lift_deg", -10);
  ph_document_end_gesture (f.document);
  CHECK_TEXT (ph_document_get_undo_label (f.document), "back bar out 20° → 26°, down 12° → 10°");
  ph_document_begin_gesture (f.document);
  fixture_set (&f, "back-bar", "swing_deg", 20);
  fixture_set (&f, "front-bar", "lift_deg", -10);
  ph_document_end_gesture (f.document);
  CHECK_TEXT (ph_document_get_undo_label (f.document), "2 parts");
  fixture_clear (&f);
}

static void
removing_names_the_guests_and_selects_the_host (void)
{
  Fixture f = fixture_new ();
  Heard heard = { 0 };
  ph_document_select (f.document, "back-bar");
  listen (f.document, &heard);
  ph_document_remove (f.document, "back-bar");
  CHECK_TEXT (heard.removed, "Removed back bar and its weights");
  CHECK_TEXT (heard.order, "sc");
  CHECK_TEXT (ph_document_get_selected (f.document), "block");
  CHECK (heard.selected == 1);
  CHECK (ph_document_get_rig (f.document)->n_parts == 4);
  CHECK (ph_document_undo (f.document));
  CHECK_TEXT (ph_document_get_selected (f.document), "back-bar");
  CHECK (ph_document_redo (f.document));
  CHECK_TEXT (ph_document_get_selected (f.document), "block");
  ph_document_remove (f.document, "block");
  CHECK_TEXT (heard.removed, "Removed side mount");
  CHECK_TEXT (ph_document_get_selected (f.document), "bow");
  ph_document_remove (f.document, "nobody");
  CHECK (ph_document_get_rig (f.document)->n_parts == 3);
  heard_clear (&heard);
  fixture_clear (&f);
}

static void
selection_follows_the_rig (void)
{
  Fixture f = fixture_new ();
  CHECK (!ph_document_get_selected (f.document)
         && ph_document_get_selected_part (f.document) == -1);
  ph_document_select (f.document, "front-stack");
  CHECK (ph_document_get_selected_part (f.document) == 2);
  ph_document_select (f.document, "bow");
  CHECK_TEXT (ph_document_get_selected (f.document), "bow");
  CHECK (ph_document_get_selected_part (f.document) == -1);
  ph_document_select (f.document, "nobody");
  CHECK (!ph_document_get_selected (f.document));
  fixture_clear (&f);
}

static void
undo_back_to_the_saved_rig_clears_unsaved (void)
{
  Fixture f = fixture_new ();
  Heard heard = { 0 };
  listen (f.document, &heard);
  CHECK (!ph_document_get_unsaved (f.document));
  fixture_set (&f, "back-bar", "swing_deg", 26);
  CHECK (ph_document_get_unsaved (f.document) && heard.unsaved == 1);
  ph_document_undo (f.document);
  CHECK (!ph_document_get_unsaved (f.document) && heard.unsaved == 2);
  ph_document_redo (f.document);
  CHECK (ph_document_save (f.document, NULL, NULL));
  CHECK (!ph_document_get_unsaved (f.document));
  ph_document_undo (f.document);
  CHECK (ph_document_get_unsaved (f.document), "the disk has the other state now");
  heard_clear (&heard);
  fixture_clear (&f);
}

static bool
add_check (PhRig *rig, gpointer data, PhIssues *issues)
{
  (void)issues;
  PhArcher *archer = &rig->archer;
  PhCheck check = ph_check_default ();
  check.mass_g = 3100;
  check.com_mm[0] = 70;
  check.draw_length_mm = 660;
  check.nock_height_mm = 42;
  check.bubble_deg = *(double *)data;
  check.given = ~(uint64_t)0 & ~ph_given_bit (PH_OBJECT_CHECK, "predicted_deg")
                & ~ph_given_bit (PH_OBJECT_CHECK, "predicted_90_deg")
                & ~ph_given_bit (PH_OBJECT_CHECK, "aside");
  archer->checks = realloc (archer->checks, (archer->n_checks + 1) * sizeof check);
  archer->checks[archer->n_checks++] = check;
  archer->present = archer->hand_present = true;
  return true;
}

static void
undo_covers_bubble_checks_too (void)
{
  Fixture f = fixture_new ();
  double good = 1.4, wrong = 75;
  CHECK (ph_document_edit (f.document, add_check, &good, NULL));
  CHECK (ph_document_get_report (f.document)->hand_fitted);
  CHECK_TEXT (ph_document_get_undo_label (f.document), "added bubble check");
  GError *error = NULL;
  CHECK (!ph_document_edit (f.document, add_check, &wrong, &error),
         "a bubble of 75° is out of the format's range");
  CHECK (g_error_matches (error, PH_DOCUMENT_ERROR, PH_DOCUMENT_ERROR_REFUSED));
  g_clear_error (&error);
  CHECK (ph_document_get_rig (f.document)->archer.n_checks == 1);
  CHECK (ph_document_undo (f.document));
  CHECK (!ph_document_get_report (f.document)->hand_fitted);
  fixture_clear (&f);
}

static void
a_refused_edit_changes_nothing_and_says_what_would_be_right (void)
{
  Fixture f = fixture_new ();
  Heard heard = { 0 };
  listen (f.document, &heard);
  PhRig *before = ph_rig_copy (ph_document_get_rig (f.document));
  GError *error = NULL;
  CHECK (!ph_document_set_number (f.document, "back-bar", "length_mm", 0, 4000, &error));
  CHECK_TEXT (error ? error->message : NULL, "Must lie between 0 mm and 3000 mm.");
  g_clear_error (&error);
  CHECK (!ph_document_set_number (f.document, "back-stack", "count", 0, 1.5, &error));
  CHECK_TEXT (error ? error->message : NULL, "Must be a whole number from 0 to 1000.");
  g_clear_error (&error);
  CHECK (!ph_document_set_number (f.document, "back-bar", "inner_mm", 0, 20, &error));
  CHECK_TEXT (error ? error->message : NULL,
              "The inner diameter (now 16 mm) must stay below the outer (now 18 mm).");
  g_clear_error (&error);
  CHECK (!ph_document_set_archer_number (f.document, "draw_length_mm", 150, &error));
  CHECK_TEXT (error ? error->message : NULL,
              "The brace height must stay below the draw length (now 660 mm).");
  g_clear_error (&error);
  CHECK (!ph_document_rehang (f.document, "back-bar", "bow:front", &error));
  CHECK (error && error->message && !strstr (error->message, "swing"));
  g_clear_error (&error);
  CHECK (!ph_document_set_number (f.document, "gone", "length_mm", 0, 100, &error));
  g_clear_error (&error);
  ph_document_set_units (f.document, PH_UNITS_TRADE);
  CHECK (!ph_document_set_number (f.document, "back-bar", "length_mm", 0, 4000, &error));
  CHECK_TEXT (error ? error->message : NULL, "Must lie between 0 in and 118.11 in.");
  g_clear_error (&error);
  CHECK (ph_rig_equal (before, ph_document_get_rig (f.document)));
  CHECK (heard.changed == 0 && !ph_document_get_undo_label (f.document));
  CHECK (!ph_document_in_gesture (f.document), "a refused edit left its gesture open");
  ph_rig_free (before);
  heard_clear (&heard);
  fixture_clear (&f);
}

static void
steps_are_bounded (void)
{
  Fixture f = fixture_new ();
  for (int i = 1; i <= 250; i++)
    fixture_set (&f, "back-bar", "swing_deg", 20 + i * 0.1);
  int n = 0;
  while (ph_document_undo (f.document))
    n++;
  CHECK (n == 200, "%d", n);
  CHECK_NEAR (fixture_part (&f, "back-bar")->swing_deg, 25, 1e-9); /* the sum of 0.1s */
  fixture_clear (&f);
}

static void
copies_paste_on_the_nearest_free_place (void)
{
  Fixture f = fixture_new ();
  g_autofree char *text = ph_document_copy (f.document, "back-bar");
  CHECK (text && !ph_document_copy (f.document, "nobody"));
  CHECK (ph_document_paste (f.document, text, "block", NULL));
  const char *pasted = ph_document_get_selected (f.document);
  CHECK_TEXT (fixture_part (&f, pasted)->on, "block:b");
  CHECK (ph_document_get_rig (f.document)->n_parts == 8);
  CHECK_TEXT (ph_document_get_undo_label (f.document), "added back bar 2 and its weights");
  check_results (f.document);
  GError *error = NULL;
  CHECK (!ph_document_paste (f.document, "what is this", NULL, &error) && error);
  g_clear_error (&error);
  CHECK (ph_document_duplicate (f.document, "front-stack", NULL));
  CHECK (ph_document_get_rig (f.document)->n_parts == 9);
  fixture_clear (&f);
}

static void
mirrored_twice_is_the_very_same_rig (void)
{
  Fixture f = fixture_new ();
  double lean = ph_document_get_report (f.document)->cant_rad;
  ph_document_mirror (f.document);
  CHECK_REL (ph_document_get_report (f.document)->cant_rad, -lean, 1e-9); /* other rounding */
  ph_document_mirror (f.document);
  CHECK (!ph_document_get_unsaved (f.document));
  fixture_clear (&f);
}

/* A rig of as many parts as the format allows: bars with a stack each, on brackets. */
static GString *
largest_rig (void)
{
  GString *text = g_string_new (
      "{\"format\": \"plumbhold-rig\", \"version\": 1, \"bow\": {\"mass_g\": 2000,"
      " \"com_mm\": [0, 0, 0], \"gyration_mm\": [290, 295, 60], \"brace_height_mm\": 178,"
      " \"mounts\": [{\"id\": \"front\", \"at_mm\": [62, 0, -72], \"axis\": [1, 0, 0]}]},"
      " \"parts\": [{\"id\": \"block\", \"kind\": \"bracket\", \"on\": \"bow:front\","
      " \"mass_g\": 10, \"com_mm\": [0, 0, 0], \"size_mm\": [5, 5, 5], \"sockets\": [");
  for (int i = 0; i < 127; i++)
    g_string_append_printf (text, "%s{\"id\": \"s%d\", \"at_mm\": [1, %d, 0], \"axis\": [1, 0, 0]}",
                            i ? ", " : "", i, i);
  g_string_append (text, "]}");
  for (int i = 0; i < 127; i++)
    g_string_append_printf (
        text,
        ", {\"id\": \"bar%d\", \"kind\": \"bar\", \"on\": \"block:s%d\", \"length_mm\": 300,"
        " \"outer_mm\": 10, \"inner_mm\": 8, \"mass_g\": 20, \"modulus_gpa\": 100},"
        " {\"id\": \"stack%d\", \"kind\": \"weights\", \"on\": \"bar%d\", \"count\": 2,"
        " \"each_g\": 28, \"each_mm\": 7, \"diameter_mm\": 25}",
        i, i, i, i);
  return g_string_append (text,
                          ", {\"id\": \"sight\", \"kind\": \"accessory\", \"on\": \"bow\","
                          " \"mass_g\": 100, \"at_mm\": [1, 2, 3], \"size_mm\": [9, 9, 9]}]}");
}

/* Each step moves the whole tree by what has moved; the sums must not drift away. */
static void
a_drag_of_256_parts_gives_the_numbers_of_a_fresh_rig (void)
{
  Fixture f = fixture_new ();
  GString *text = largest_rig ();
  fixture_write (f.path, text->str);
  g_string_free (text, TRUE);
  GError *error = NULL;
  CHECK (ph_document_load (f.document, f.file, &error), "%s", error ? error->message : "");
  CHECK (ph_document_get_rig (f.document)->n_parts == 256);
  ph_document_begin_gesture (f.document);
  enum
  {
    N = 200
  };
  for (int i = 0; i < N; i++)
    fixture_set (&f, "block", "swing_deg", 0.1 * i); /* everything hangs on it */
  ph_document_end_gesture (f.document);
  check_results (f.document);
  fixture_clear (&f);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  setlocale (LC_ALL, "C.UTF-8");
  CASE (every_edit_is_computed_and_told);
  CASE (a_number_set_on_a_part_that_is_off_waits_there);
  CASE (a_gesture_is_one_step);
  CASE (a_gesture_that_changed_nothing_leaves_no_step);
  CASE (a_number_that_goes_out_and_comes_back_leaves_no_step);
  CASE (a_cancelled_gesture_puts_everything_back);
  CASE (labels_say_it_as_an_archer_would);
  CASE (labels_name_what_came_went_and_moved);
  CASE (two_numbers_of_one_gesture_share_a_label);
  CASE (removing_names_the_guests_and_selects_the_host);
  CASE (selection_follows_the_rig);
  CASE (undo_back_to_the_saved_rig_clears_unsaved);
  CASE (undo_covers_bubble_checks_too);
  CASE (a_refused_edit_changes_nothing_and_says_what_would_be_right);
  CASE (steps_are_bounded);
  CASE (copies_paste_on_the_nearest_free_place);
  CASE (mirrored_twice_is_the_very_same_rig);
  CASE (a_drag_of_256_parts_gives_the_numbers_of_a_fresh_rig);
  return check_end ();
}
