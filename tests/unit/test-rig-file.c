/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Rig files read and written: defaults, the examples, every key, every digit.
 */
#include <float.h>
#include <locale.h>

#include "base/text.h"
#include "check.h"
#include "model/fields.h"
#include "rig-file-fixture.h"

#define EXAMPLES "barebow", "demo", "heavy-front", "left-handed", "recurve", "v-bars"

static char *
slurp (const char *path)
{
  FILE *file = fopen (path, "rb");
  CHECK (file, "%s", path);
  if (!file)
    return ph_text_dup ("");
  char *text = ph_alloc (PH_RIG_FILE_MOST);
  text[fread (text, 1, PH_RIG_FILE_MOST - 1, file)] = '\0';
  fclose (file);
  return text;
}

static void
defaults_stand_where_the_file_is_silent (void)
{
  PhRig *rig =
      parse_good_rig ("{\"format\": \"plumbhold-rig\", \"version\": 1, \"bow\": {\"mass_g\": 1, "
                      "\"com_mm\": [0, 0, 0], \"gyration_mm\": [1, 1, 1]}}");
  if (!rig)
    return;
  const PhArcher *archer = &rig->archer;
  CHECK (archer->draw_length_mm == 680 && archer->nock_height_mm == 40);
  CHECK (archer->stature_mm == 1750 && archer->body_mass_g == 72000);
  CHECK (ph_rig_holding_weight_n (rig) == 65 && archer->wanted_bubble_deg == 0);
  CHECK (archer->roll_stiffness_nm_per_rad == 2 && archer->roll_bias_nm == 0);
  CHECK (archer->bow_hand == PH_BOW_HAND_LEFT && rig->bow.kind == PH_BOW_COMPOUND);
  CHECK (isnan (rig->bow.brace_height_mm) && isnan (rig->bow.axle_to_axle_mm));
  CHECK (!rig->name && rig->n_parts == 0 && rig->bow.n_mounts == 0);
  char *text = ph_rig_print (rig, NULL);
  CHECK (!strstr (text, "archer") && !strstr (text, "name") && !strstr (text, "kind"), "%s", text);
  free (text);
  ph_rig_free (rig);
}

/* Loads, prints, loads, prints: the rigs are equal and the texts the same bytes. */
static char *
check_round_trip (const char *text)
{
  PhRig *first = parse_good_rig (text);
  if (!first)
    return ph_text_dup ("");
  size_t size;
  char *once = ph_rig_print (first, &size);
  CHECK (size == strlen (once));
  PhRig *second = parse_good_rig (once);
  CHECK (second && ph_rig_equal (first, second));
  char *twice = second ? ph_rig_print (second, NULL) : ph_text_dup ("");
  CHECK_TEXT (twice, once);
  free (twice);
  ph_rig_free (first);
  ph_rig_free (second);
  return once;
}

static void
examples_load_without_a_note_and_survive_saving (void)
{
  static const char *const names[] = { EXAMPLES };
  for (size_t i = 0; i < sizeof names / sizeof *names; i++)
    {
      PhIssues issues = { 0 };
      char *path = ph_text_printf ("%s/%s.rig.json", DATA_DIR, names[i]);
      char *text = slurp (path);
      PhRig *rig = parse_rig (text, &issues);
      CHECK (rig && issues.n == 0, "%s: %s", names[i], issues.n ? issues.items[0].text : "");
      CHECK (strcmp (names[i], "demo") == 0 || strstr (text, "Invented"), "%s", names[i]);
      free (check_round_trip (text));
      ph_rig_free (rig);
      ph_issues_clear (&issues);
      free (text);
      free (path);
    }
}

static void
file_with_every_key_is_written_as_it_stood (void)
{
  char *text = slurp (DATA_DIR "/../tests/golden/versions/every-key-1.rig.json");
  char *saved = check_round_trip (text);
  CHECK_TEXT (saved, text);
  free (saved);
  free (text);
}

static void
every_double_reads_back_bit_by_bit (void)
{
  static const double hard[] = {
    0.1 + 0.2, 1.0 / 3, 5e-324, DBL_MIN, 2999.9999999999995, -0.0, 1e-7, 123.45600000000002, 9.80665
  };
  PhRig *rig = parse_good_rig (good_rig);
  const char *locale = setlocale (LC_ALL, "de_DE.UTF-8");
  for (size_t i = 0; i < sizeof hard / sizeof *hard && rig; i++)
    {
      rig->parts[0].at_mm[1] = hard[i];
      char *text = ph_rig_print (rig, NULL);
      PhRig *again = parse_good_rig (text);
      CHECK (again && memcmp (&again->parts[0].at_mm[1], &hard[i], sizeof (double)) == 0,
             "%.17g in %s", hard[i], locale ? locale : "C");
      ph_rig_free (again);
      free (text);
    }
  setlocale (LC_ALL, "C");
  ph_rig_free (rig);
}

static void
changed_default_is_written_and_untouched_default_is_not (void)
{
  PhRig *rig = parse_good_rig (good_rig);
  if (!rig)
    return;
  rig->archer.draw_length_mm = 700;
  ph_part_set_number (&rig->parts[1], "swing_deg", 0, 0);
  char *text = ph_rig_print (rig, NULL);
  CHECK (strstr (text, "\"draw_length_mm\": 700") && strstr (text, "\"swing_deg\": 0"), "%s", text);
  CHECK (!strstr (text, "lift_deg") && !strstr (text, "holding_weight_n"), "%s", text);
  free (text);
  ph_rig_free (rig);
}

static void
shared_layout_says_nothing_about_the_archer (void)
{
  PhRig *rig = parse_good_rig (good_rig);
  if (!rig)
    return;
  rig->book = ph_text_dup ("me.book.json");
  PhRig *shared = ph_rig_without_archer (rig);
  char *text = ph_rig_print (shared, NULL);
  CHECK (!strstr (text, "archer") && !strstr (text, "bubble") && !strstr (text, "book"), "%s",
         text);
  CHECK (rig->archer.n_checks == 1 && shared->archer.n_checks == 0 && shared->n_parts == 5);
  free (text);
  ph_rig_free (shared);
  rig->archer.bow_hand = PH_BOW_HAND_RIGHT;
  rig->archer.draw_length_mm = 800;
  rig->bow.brace_height_mm = 700;
  shared = ph_rig_without_archer (rig);
  text = ph_rig_print (shared, NULL);
  CHECK (strstr (text, "\"archer\": {\"bow_hand\": \"right\", \"draw_length_mm\": 800},"), "%s",
         text);
  ph_rig_free (shared);
  shared = parse_good_rig (text);
  CHECK (shared, "a shared layout must load");
  free (text);
  ph_rig_free (shared);
  ph_rig_free (rig);
}

static void
name_of_a_nameless_rig_is_its_files (void)
{
  static const char *const pairs[][2] = { { "/a/b.rig.json", "b" },
                                          { "b.json", "b" },
                                          { "./b", "b" },
                                          { "/a/.rig.json", ".rig" },
                                          { "x/b\xFF.rig.json", "b?" } };
  for (size_t i = 0; i < sizeof pairs / sizeof *pairs; i++)
    {
      char *name = ph_rig_name_of_path (pairs[i][0]);
      CHECK_TEXT (name, pairs[i][1]);
      free (name);
    }
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (defaults_stand_where_the_file_is_silent);
  CASE (examples_load_without_a_note_and_survive_saving);
  CASE (file_with_every_key_is_written_as_it_stood);
  CASE (every_double_reads_back_bit_by_bit);
  CASE (changed_default_is_written_and_untouched_default_is_not);
  CASE (shared_layout_says_nothing_about_the_archer);
  CASE (name_of_a_nameless_rig_is_its_files);
  return check_end ();
}
