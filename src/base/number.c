/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Numbers of files, through the C library's own conversions under the "C" locale. Costs two
 * changes of the thread's locale a number, some ten nanoseconds.
 */
#include "base/number.h"

#include <assert.h>
#include <locale.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <threads.h>

static locale_t plain;

static void
make_plain (void)
{
  plain = newlocale (LC_ALL_MASK, "C", (locale_t)0);
}

void *
ph_number_locale_plain (void)
{
  static once_flag once = ONCE_FLAG_INIT;
  call_once (&once, make_plain);
  assert (plain);
  return uselocale (plain);
}

void
ph_number_locale_restore (void *before)
{
  uselocale (before);
}

char *
ph_number_print (double value, char buffer[PH_NUMBER_SIZE])
{
  assert (isfinite (value));
  void *before = ph_number_locale_plain ();
  for (int digits = 15; digits <= 17; digits++)
    {
      snprintf (buffer, PH_NUMBER_SIZE, "%.*g", digits, value);
      /* Comparing the numbers would be as good but for the sign of zero, which %g keeps. */
      if (strtod (buffer, NULL) == value)
        break;
    }
  ph_number_locale_restore (before);
  return buffer;
}

static const char *
skip_digits (const char *text)
{
  while (*text >= '0' && *text <= '9')
    text++;
  return text;
}

/* Whether text is a plain decimal number and nothing else; strtod alone takes far more. */
static bool
is_decimal (const char *text)
{
  if (*text == '-' || *text == '+')
    text++;
  const char *end = skip_digits (text);
  long digits = end - text;
  if (*end == '.')
    {
      text = end + 1;
      end = skip_digits (text);
      digits += end - text;
    }
  if (digits == 0)
    return false;
  if (*end == 'e' || *end == 'E')
    {
      text = end + 1;
      if (*text == '-' || *text == '+')
        text++;
      end = skip_digits (text);
      if (end == text)
        return false;
    }
  return *end == '\0';
}

bool
ph_number_parse (const char *text, double *value)
{
  if (!is_decimal (text))
    return false;
  void *before = ph_number_locale_plain ();
  double read = strtod (text, NULL);
  ph_number_locale_restore (before);
  if (!isfinite (read))
    return false;
  *value = read;
  return true;
}
