/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The C library formats in the current locale; what is ours is the minus sign, and that a number
 * that rounds to zero has no sign.
 */
#include "document/format.h"

#include <locale.h>
#include <math.h>
#include <string.h>

#define MINUS "\xe2\x88\x92"   /* U+2212 */
#define MISSING "\xe2\x80\x93" /* U+2013 */

/* More than these digits no label shows. */
#define DIGITS_MOST 6

static const char *
decimal_sign (void)
{
  const struct lconv *locale = localeconv ();
  return *locale->decimal_point != '\0' ? locale->decimal_point : ".";
}

/* The size with that many digits, without a sign; `*zero` where it shows as nothing but zeros. */
static char *
size_text (double value, int digits, gboolean *zero)
{
  char *text = g_strdup_printf ("%.*f", digits, fabs (value));
  *zero = strpbrk (text, "123456789") == NULL;
  return text;
}

char *
ph_format_number (double value, int digits)
{
  if (!isfinite (value))
    return g_strdup (MISSING);
  gboolean zero;
  g_autofree char *size = size_text (value, digits, &zero);
  return g_strconcat (value < 0 && !zero ? MINUS : "", size, NULL);
}

char *
ph_format_change (double value, int digits)
{
  if (!isfinite (value))
    return g_strdup (MISSING);
  gboolean zero;
  g_autofree char *size = size_text (value, digits, &zero);
  if (zero)
    return g_strdup ("±0");
  return g_strconcat (value < 0 ? MINUS : "+", size, NULL);
}

/* "mm" after a space, "°" without one. */
static char *
with_unit (const char *number, PhQuantity quantity, PhUnits units)
{
  const char *unit = ph_quantity_unit (quantity, units);
  const char *space = *unit == '\0' || quantity == PH_QUANTITY_ANGLE ? "" : " ";
  return g_strconcat (number, space, unit, NULL);
}

char *
ph_format_quantity (double file_value, PhQuantity quantity, PhUnits units)
{
  char buffer[128];
  if (!isfinite (file_value))
    return g_strdup (MISSING);
  const char *text =
      ph_quantity_print (file_value, quantity, units, decimal_sign (), buffer, sizeof buffer);
  return *text == '-' ? g_strconcat (MINUS, text + 1, NULL) : g_strdup (text);
}

char *
ph_format_quantity_change (double file_value, PhQuantity quantity, PhUnits units)
{
  if (!isfinite (file_value))
    return g_strdup (MISSING);
  double shown = ph_quantity_to_shown (quantity, units, file_value);
  g_autofree char *number = ph_format_change (shown, ph_quantity_digits (quantity, units));
  return with_unit (number, quantity, units);
}

/* "20.50" → "20.5", "20.00" → "20". */
static void
drop_zeros (char *text)
{
  char *end = text + strlen (text);
  char *sign = strstr (text, decimal_sign ());
  if (sign == NULL)
    return;
  while (end[-1] == '0')
    *--end = '\0';
  if (end == sign + strlen (decimal_sign ()))
    *sign = '\0';
}

char *
ph_format_short (double value, int digits)
{
  char *text = ph_format_number (value, digits);
  drop_zeros (text);
  return text;
}

char *
ph_format_quantity_short (double file_value, PhQuantity quantity, PhUnits units)
{
  if (!isfinite (file_value))
    return g_strdup (MISSING);
  double shown =
      ph_quantity_as_sold (quantity, units, ph_quantity_to_shown (quantity, units, file_value));
  g_autofree char *number = ph_format_short (shown, ph_quantity_digits (quantity, units));
  return with_unit (number, quantity, units);
}

char *
ph_format_quantity_step (double from, double to, PhQuantity quantity, PhUnits units)
{
  double shown_from = ph_quantity_to_shown (quantity, units, from);
  double shown_to = ph_quantity_to_shown (quantity, units, to);
  int digits = ph_quantity_digits (quantity, units);
  g_autofree char *first = ph_format_short (shown_from, digits);
  g_autofree char *second = ph_format_short (shown_to, digits);
  while (strcmp (first, second) == 0 && from != to && digits < DIGITS_MOST)
    {
      digits++;
      g_free (first);
      g_free (second);
      first = ph_format_short (shown_from, digits);
      second = ph_format_short (shown_to, digits);
    }
  gboolean close = quantity == PH_QUANTITY_ANGLE && isfinite (from); /* each ° has its number */
  g_autofree char *start = close ? with_unit (first, quantity, units) : g_strdup (first);
  g_autofree char *end = isfinite (to) ? with_unit (second, quantity, units) : g_strdup (second);
  return g_strdup_printf ("%s → %s", start, end);
}
