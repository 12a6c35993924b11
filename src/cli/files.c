/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Loading with errors on standard error, in the form that editors and scripts know.
 */
#include "cli/files.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "cli/command.h"
#include "store/rig-file.h"

#define LINE_MOST 1000
#define PATH_LEAST 80

/* A path as text for a message: well-formed, on one line, at most `most` characters. */
static char *
path_text (const char *path, size_t most)
{
  char *text = ph_text_dup (path);
  size_t bad;
  while (!ph_text_is_utf8 (text, strlen (text), &bad))
    text[bad] = '?';
  char *cut = ph_text_cut (text, most);
  free (text);
  return cut;
}

static void
print_line (const char *path, const char *line)
{
  size_t rest = ph_text_length (line) + 2;
  char *shown = path_text (path, rest + PATH_LEAST < LINE_MOST ? LINE_MOST - rest : PATH_LEAST);
  fprintf (stderr, "%s: %s\n", shown, line);
  free (shown);
}

void
ph_files_print_errors (const char *path, const PhIssues *issues)
{
  size_t printed = 0, errors = ph_issues_errors (issues);
  for (size_t i = 0; i < issues->n && printed < PH_ERROR_LINES_MOST; i++)
    {
      if (issues->items[i].is_note)
        continue;
      char *line = ph_issue_line (&issues->items[i]);
      print_line (path, line);
      free (line);
      printed++;
    }
  if (errors <= printed)
    return;
  char *more = ph_text_printf ("%zu more error%s not listed here", errors - printed,
                               errors - printed == 1 ? " is" : "s are");
  print_line (path, more);
  free (more);
}

PhRig *
ph_files_load_rig (const char *path)
{
  PhRig *rig = NULL;
  PhIssues issues = { 0 };
  if (ph_rig_load (path, &rig, &issues) != PH_OK)
    ph_files_print_errors (path, &issues);
  ph_issues_clear (&issues);
  return rig;
}

int
ph_files_finish (void)
{
  if (fflush (stdout) == 0 && !ferror (stdout))
    return PH_EXIT_FINE;
  fprintf (stderr, "plumbhold-calc: the output cannot be written: %s\n", strerror (errno));
  return PH_EXIT_ERRORS;
}
