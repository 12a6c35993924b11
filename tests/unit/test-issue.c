/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Issues and their lines, as the rig file's page words them.
 */
#include "base/text.h"
#include "check.h"
#include "model/issue.h"

static void
check_line (const PhIssues *issues, size_t i, const char *wanted)
{
  char *line = ph_issue_line (&issues->items[i]);
  CHECK_TEXT (line, wanted);
  free (line);
}

static void
line_says_where_and_which_key (void)
{
  PhIssues issues = { 0 };
  ph_issues_add (&issues, PH_WHERE_PART, "back-bar", "swing_deg", false, "is %d°", 200);
  ph_issues_add (&issues, PH_WHERE_BOW, NULL, "mass_g", false, "is missing");
  ph_issues_add (&issues, PH_WHERE_ARCHER, NULL, "hand", true, "is odd");
  ph_issues_add (&issues, PH_WHERE_FILE, NULL, "parts", false, "are many");
  ph_issues_add (&issues, PH_WHERE_FILE, NULL, NULL, false, "is not JSON");
  check_line (&issues, 0, "part back-bar: swing_deg: is 200°");
  check_line (&issues, 1, "bow: mass_g: is missing");
  check_line (&issues, 2, "archer: hand: is odd");
  check_line (&issues, 3, "parts: are many");
  check_line (&issues, 4, "is not JSON");
  CHECK (issues.n == 5 && ph_issues_errors (&issues) == 4);
  ph_issues_clear (&issues);
  CHECK (issues.n == 0 && !issues.items);
}

static void
line_stays_one_short_line_whatever_was_written (void)
{
  char id[5001], text[5001];
  memset (id, 'x', 5000);
  memset (text, 'y', 5000);
  id[5000] = text[5000] = '\0';
  id[10] = '\n';
  text[20] = '\n';
  PhIssues issues = { 0 };
  ph_issues_add (&issues, PH_WHERE_PART, id, id, false, "%s", text);
  CHECK (ph_text_length (issues.items[0].part) <= 80);
  CHECK (ph_text_length (issues.items[0].key) <= 80);
  char *line = ph_issue_line (&issues.items[0]);
  CHECK (ph_text_length (line) <= 900 && !strchr (line, '\n'));
  free (line);
  ph_issues_clear (&issues);
}

static void
moved_issues_keep_their_order (void)
{
  PhIssues from = { 0 }, to = { 0 };
  ph_issues_add (&to, PH_WHERE_FILE, NULL, NULL, false, "0");
  for (int i = 1; i < 100; i++)
    ph_issues_add (&from, PH_WHERE_FILE, NULL, NULL, i % 2, "%d", i);
  ph_issues_move (&from, &to);
  CHECK (from.n == 0 && to.n == 100);
  for (size_t i = 0; i < to.n; i++)
    CHECK (atoi (to.items[i].text) == (int)i);
  CHECK (ph_issues_errors (&to) == 50);
  ph_issues_move (&to, NULL);
  CHECK (to.n == 0, "moved to nobody is dropped");
}

static void
part_without_an_id_is_called_by_its_number (void)
{
  char buffer[PH_ISSUE_LABEL_SIZE];
  CHECK_TEXT (ph_issue_part_label (NULL, 0, buffer), "#1");
  CHECK_TEXT (ph_issue_part_label ("", 11, buffer), "#12");
  CHECK_TEXT (ph_issue_part_label ("rod", 11, buffer), "rod");
  ph_issues_add (NULL, PH_WHERE_FILE, NULL, NULL, false, "nobody asks");
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (line_says_where_and_which_key);
  CASE (line_stays_one_short_line_whatever_was_written);
  CASE (moved_issues_keep_their_order);
  CASE (part_without_an_id_is_called_by_its_number);
  return check_end ();
}
