/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Aligned columns of text on standard output. Widths are counted in characters, not bytes.
 */
#pragma once

#include <stddef.h>

typedef struct PhTable PhTable;

/** `headings` has `columns` texts; one that begins with ">" is of a column that is flush right
 * (numbers), the sign itself is not printed. A null heading: the table has no heading line. */
PhTable *ph_table_new (size_t columns, const char *const *headings);
/** The next cell, row by row. */
void ph_table_add (PhTable *table, const char *format, ...) __attribute__ ((format (printf, 2, 3)));
/** Prints and frees it. Every line begins with `indent` blanks; none ends with one. */
void ph_table_print (PhTable *table, size_t indent);
