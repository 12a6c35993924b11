/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Parts on the clipboard.
 */
#include "check.h"
#include "rig-file-fixture.h"

static void
parts_go_over_the_clipboard_and_come_back_equal (void)
{
  PhRig *rig = parse_good_rig (good_rig);
  PhPart *parts = NULL;
  size_t n = 0;
  PhIssues issues = { 0 };
  if (!rig)
    return;
  char *text = ph_fragment_print (rig->parts + 3, 2);
  CHECK (ph_fragment_parse (text, strlen (text), &parts, &n, &issues) == PH_OK && n == 2);
  char *again = n == 2 ? ph_fragment_print (parts, n) : NULL;
  CHECK_TEXT (again, text);
  for (size_t i = 0; i < n; i++)
    ph_part_clear (&parts[i]);
  free (parts);
  free (again);
  free (text);
  ph_rig_free (rig);
  ph_issues_clear (&issues);
}

static void
what_is_no_fragment_is_refused (void)
{
  static const char *const texts[] = {
    "",
    "hello",
    "{}",
    "{\"format\": \"plumbhold-rig\", \"version\": 1, \"parts\": []}",
    "{\"format\": \"plumbhold-parts\", \"version\": 1}",
    "{\"format\": \"plumbhold-parts\", \"version\": 1, \"parts\": []}",
    "{\"format\": \"plumbhold-parts\", \"version\": 1, \"parts\": [1]}",
    "{\"format\": \"plumbhold-parts\", \"version\": 1, \"parts\": [{\"id\": \"d\", \"kind\": "
    "\"damper\", \"on\": \"x\", \"mass_g\": -1, \"length_mm\": 1, \"diameter_mm\": 1}]}"
  };
  for (size_t i = 0; i < sizeof texts / sizeof *texts; i++)
    {
      PhPart *parts = NULL;
      size_t n = 0;
      PhIssues issues = { 0 };
      CHECK (ph_fragment_parse (texts[i], strlen (texts[i]), &parts, &n, &issues) != PH_OK, "%s",
             texts[i]);
      CHECK (!parts && n == 0 && ph_issues_errors (&issues) >= 1, "%s", texts[i]);
      ph_issues_clear (&issues);
    }
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (parts_go_over_the_clipboard_and_come_back_equal);
  CASE (what_is_no_fragment_is_refused);
  return check_end ();
}
