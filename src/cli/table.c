/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Cells are kept until all widths are known.
 */
#include "cli/table.h"

#include <assert.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>

#include "base/text.h"

#define COLUMNS_MOST 16
#define GAP 2

struct PhTable
{
  size_t columns, n, room;
  bool right[COLUMNS_MOST];
  char **cells;
};

static void
append (PhTable *table, char *text)
{
  if (table->n == table->room)
    {
      table->room = table->room ? 2 * table->room : 64;
      table->cells = ph_realloc (table->cells, table->room * sizeof *table->cells);
    }
  table->cells[table->n++] = text;
}

PhTable *
ph_table_new (size_t columns, const char *const *headings)
{
  assert (columns > 0 && columns <= COLUMNS_MOST);
  PhTable *table = ph_alloc_zeroed (1, sizeof *table);
  table->columns = columns;
  for (size_t i = 0; headings && i < columns; i++)
    {
      table->right[i] = headings[i][0] == '>';
      append (table, ph_text_dup (headings[i] + table->right[i]));
    }
  return table;
}

void
ph_table_add (PhTable *table, const char *format, ...)
{
  char text[1024];
  va_list arguments;
  va_start (arguments, format);
  vsnprintf (text, sizeof text, format, arguments);
  va_end (arguments);
  append (table, ph_text_dup (text));
}

static void
put_blanks (size_t n)
{
  for (size_t i = 0; i < n; i++)
    putchar (' ');
}

static void
print_row (const PhTable *table, char *const *row, const size_t *widths, size_t indent)
{
  size_t blanks = indent; /* those due before the next text, so that none ends a line */
  for (size_t i = 0; i < table->columns; i++)
    {
      size_t spare = widths[i] - ph_text_length (row[i]);
      if (row[i][0])
        {
          put_blanks (blanks + (table->right[i] ? spare : 0));
          fputs (row[i], stdout);
          blanks = GAP + (table->right[i] ? 0 : spare);
        }
      else
        blanks += widths[i] + GAP;
    }
  putchar ('\n');
}

void
ph_table_print (PhTable *table, size_t indent)
{
  assert (table->n % table->columns == 0);
  size_t widths[COLUMNS_MOST] = { 0 };
  for (size_t i = 0; i < table->n; i++)
    {
      size_t width = ph_text_length (table->cells[i]);
      if (width > widths[i % table->columns])
        widths[i % table->columns] = width;
    }
  for (size_t i = 0; i < table->n; i += table->columns)
    print_row (table, table->cells + i, widths, indent);
  for (size_t i = 0; i < table->n; i++)
    free (table->cells[i]);
  free (table->cells);
  free (table);
}
