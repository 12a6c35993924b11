/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Numbers as files have them: decimal point always, whatever the user's locale. Uses POSIX
 * uselocale () around the C library's own conversions, which are correctly rounded.
 */
#pragma once

#include <stdbool.h>
#include <stddef.h>

/** Enough for any double that ph_number_print writes, with its end. */
#define PH_NUMBER_SIZE 32

/** Shortest of 15, 16 or 17 digits that reads back as the very same double, with a decimal point
 * whatever the locale. `value` must be finite (asserted). Returns `buffer`. */
char *ph_number_print (double value, char buffer[PH_NUMBER_SIZE]);

/** Reads a decimal number that fills `text` wholly ("1.5", "-2e3"; no spaces, no hexadecimal,
 * no "inf" or "nan"). False where it is not one or is not finite; `*value` is then untouched. */
bool ph_number_parse (const char *text, double *value);

/** Makes the calling thread's numbers those of the "C" locale until ph_number_locale_restore,
 * for library calls that follow the locale. Returns what restore needs. Pairs nest. */
void *ph_number_locale_plain (void);
void ph_number_locale_restore (void *before);
