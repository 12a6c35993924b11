/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A growing list of issues. Room doubles each time the count reaches a power of two, so a file
 * with a hundred thousand unknown keys still costs linear time.
 */
#include "model/issue.h"

#include <assert.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"

#define NAME_MOST 80
#define LINE_MOST 900

static PhIssue *
issues_grow (PhIssues *issues)
{
  if ((issues->n & (issues->n - 1)) == 0)
    issues->items =
        ph_realloc (issues->items, (issues->n ? 2 * issues->n : 1) * sizeof *issues->items);
  return &issues->items[issues->n++];
}

void
ph_issues_add (PhIssues *issues, PhWhere where, const char *part, const char *key, bool is_note,
               const char *format, ...)
{
  if (!issues)
    return;
  va_list arguments;
  va_start (arguments, format);
  va_list again;
  va_copy (again, arguments);
  int length = vsnprintf (NULL, 0, format, arguments);
  va_end (arguments);
  assert (length >= 0);
  char *text = ph_alloc ((size_t)length + 1);
  vsnprintf (text, (size_t)length + 1, format, again);
  va_end (again);
  *issues_grow (issues) = (PhIssue){ .where = where,
                                     .part = part ? ph_text_cut (part, NAME_MOST) : NULL,
                                     .key = key ? ph_text_cut (key, NAME_MOST) : NULL,
                                     .text = text,
                                     .is_note = is_note };
}

void
ph_issues_name_number (PhIssues *issues, const struct PhField *field, int component, double value)
{
  if (!issues)
    return;
  assert (issues->n > 0);
  PhIssue *last = &issues->items[issues->n - 1];
  last->field = field;
  last->component = component;
  last->value = value;
}

void
ph_issues_move (PhIssues *from, PhIssues *to)
{
  for (size_t i = 0; to && i < from->n; i++)
    {
      *issues_grow (to) = from->items[i];
      from->items[i] = (PhIssue){ 0 };
    }
  ph_issues_clear (from);
}

static void
free_texts (PhIssue *issue)
{
  free (issue->part);
  free (issue->key);
  free (issue->text);
}

PhIssue *
ph_issue_take (PhIssues *issues, size_t i)
{
  assert (i < issues->n);
  PhIssue *taken = ph_alloc (sizeof *taken);
  *taken = issues->items[i];
  memmove (issues->items + i, issues->items + i + 1, (--issues->n - i) * sizeof *taken);
  return taken;
}

void
ph_issue_free (PhIssue *issue)
{
  if (!issue)
    return;
  free_texts (issue);
  free (issue);
}

void
ph_issues_clear (PhIssues *issues)
{
  for (size_t i = 0; i < issues->n; i++)
    free_texts (&issues->items[i]);
  free (issues->items);
  *issues = (PhIssues){ 0 };
}

size_t
ph_issues_errors (const PhIssues *issues)
{
  size_t errors = 0;
  for (size_t i = 0; i < issues->n; i++)
    errors += !issues->items[i].is_note;
  return errors;
}

static char *
where_words (const PhIssue *issue)
{
  switch (issue->where)
    {
    case PH_WHERE_BOW:
      return ph_text_dup ("bow: ");
    case PH_WHERE_ARCHER:
      return ph_text_dup ("archer: ");
    case PH_WHERE_PART:
      return ph_text_printf ("part %s: ", issue->part ? issue->part : "");
    case PH_WHERE_FILE:
    default:
      return ph_text_dup ("");
    }
}

char *
ph_issue_line (const PhIssue *issue)
{
  char *where = where_words (issue);
  char *whole = ph_text_printf ("%s%s%s%s", where, issue->key ? issue->key : "",
                                issue->key ? ": " : "", issue->text);
  char *line = ph_text_cut (whole, LINE_MOST);
  free (whole);
  free (where);
  return line;
}

const char *
ph_issue_part_label (const char *id, size_t index, char buffer[PH_ISSUE_LABEL_SIZE])
{
  if (id && *id)
    return id;
  snprintf (buffer, PH_ISSUE_LABEL_SIZE, "#%zu", index + 1);
  return buffer;
}
