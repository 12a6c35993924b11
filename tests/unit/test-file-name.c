/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The name a rig is first saved under. What a file name may hold: POSIX.1-2017 3.170 (no slash, no
 * null) and 3.282 (the portable set holds letters, digits, hyphen and full stop; no leading
 * hyphen).
 */
#include "app/file-name.h"
#include "check.h"

static void
check_name (const char *title, const char *want)
{
  g_autofree char *name = ph_file_name_for (title);
  CHECK_TEXT (name, want);
}

static void
words_are_joined_by_hyphens (void)
{
  check_name ("Harbour club indoor", "harbour-club-indoor.rig.json");
  check_name ("  two   spaces  ", "two-spaces.rig.json");
  check_name ("v2.1 (wet)", "v2-1-wet.rig.json");
}

static void
nothing_of_a_title_can_leave_the_folder (void)
{
  check_name ("../../etc/passwd", "etc-passwd.rig.json");
  check_name ("-rf *", "rf.rig.json");
}

static void
letters_of_every_script_are_kept (void)
{
  check_name ("Größe Übung", "größe-übung.rig.json");
  check_name ("弓の設定", "弓の設定.rig.json");
}

static void
a_title_without_letters_still_gives_a_name (void)
{
  check_name ("", "rig.rig.json");
  check_name ("???", "rig.rig.json");
  check_name (NULL, "rig.rig.json");
}

static void
a_long_title_is_cut_at_a_whole_letter (void)
{
  g_autofree char *title = g_strnfill (1000, 'a');
  g_autofree char *name = ph_file_name_for (title);
  /* NAME_MAX is 255 bytes on every Linux file system in use (limits.h). */
  CHECK (strlen (name) < 80);
  GString *wide = g_string_new (NULL);
  for (int i = 0; i < 200; i++)
    g_string_append (wide, "弓");
  g_autofree char *wide_name = ph_file_name_for (wide->str);
  CHECK (g_utf8_validate (wide_name, -1, NULL));
  CHECK (strlen (wide_name) < 80);
  g_string_free (wide, TRUE);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (words_are_joined_by_hyphens);
  CASE (nothing_of_a_title_can_leave_the_folder);
  CASE (letters_of_every_script_are_kept);
  CASE (a_title_without_letters_still_gives_a_name);
  CASE (a_long_title_is_cut_at_a_whole_letter);
  return check_end ();
}
