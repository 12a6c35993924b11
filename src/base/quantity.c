/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Units of the presets, and a value with its unit as a person reads it.
 */
#include "base/quantity.h"

#include <assert.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/number.h"
#include "base/text.h"
#include "base/units.h"

/* A shown unit: one file unit is `file_over` / `file_under` shown ones, both exact decimals, so
   that a conversion rounds once or twice. */
typedef struct
{
  const char *word;
  double over, under;
  int digits;
  bool trim;  /* drop trailing zeros: 762 mm, but 7.2 mm */
  bool close; /* no space before it */
} Unit;

static const Unit mm = { "mm", 1, 1, 1, true, false };
static const Unit inch = { "in", 10, 254, 2, true, false };
static const Unit gram = { "g", 1, 1, 0, false, false };
static const Unit ounce = { "oz", 1, PH_KG_PER_OUNCE * 1000, 1, false, false };
static const Unit kilogram = { "kg", 1, 1000, 3, false, false };
static const Unit pound = { "lb", 1, PH_KG_PER_POUND * 1000, 2, false, false };
static const Unit degree = { "°", 1, 1, 1, false, true };
static const Unit newton = { "N", 1, 1, 1, false, false };
static const Unit pound_force = { "lbf", 1, PH_N_PER_POUND_FORCE, 1, false, false };
static const Unit gigapascal = { "GPa", 1, 1, 1, true, false };
static const Unit newton_metre_per_rad = { "N·m/rad", 1, 1, 2, false, false };
static const Unit newton_metre = { "N·m", 1, 1, 2, false, false };
static const Unit metre_per_second = { "m/s", 1, 1, 1, true, false };
static const Unit foot_per_second = { "ft/s", 10000, 3048, 0, false, false };
static const Unit none = { "", 1, 1, 0, false, true };

/* Rows as PhQuantity, columns as PhUnits. */
static const Unit *const shown[][3] = {
  [PH_QUANTITY_LENGTH] = { &mm, &inch, &inch },
  [PH_QUANTITY_DIAMETER] = { &mm, &mm, &mm },
  [PH_QUANTITY_STATURE] = { &mm, &inch, &mm },
  [PH_QUANTITY_MASS] = { &gram, &ounce, &ounce },
  [PH_QUANTITY_BOW_MASS] = { &kilogram, &pound, &kilogram },
  [PH_QUANTITY_ANGLE] = { &degree, &degree, &degree },
  [PH_QUANTITY_FORCE] = { &newton, &pound_force, &newton },
  [PH_QUANTITY_MODULUS] = { &gigapascal, &gigapascal, &gigapascal },
  [PH_QUANTITY_STIFFNESS] = { &newton_metre_per_rad, &newton_metre_per_rad, &newton_metre_per_rad },
  [PH_QUANTITY_MOMENT] = { &newton_metre, &newton_metre, &newton_metre },
  [PH_QUANTITY_SPEED] = { &metre_per_second, &foot_per_second, &foot_per_second },
  [PH_QUANTITY_COUNT] = { &none, &none, &none },
};

static const char *const preset_words[] = { "metric", "trade", "mixed" };

bool
ph_units_from_word (const char *word, PhUnits *units)
{
  for (int i = 0; i < 3; i++)
    if (ph_text_equal (word, preset_words[i]))
      {
        *units = (PhUnits)i;
        return true;
      }
  return false;
}

const char *
ph_units_word (PhUnits units)
{
  assert (units <= PH_UNITS_MIXED);
  return preset_words[units];
}

static const Unit *
unit_of (PhQuantity quantity, PhUnits units)
{
  assert (quantity <= PH_QUANTITY_COUNT && units <= PH_UNITS_MIXED);
  return shown[quantity][units];
}

const char *
ph_quantity_unit (PhQuantity quantity, PhUnits units)
{
  return unit_of (quantity, units)->word;
}

double
ph_quantity_to_shown (PhQuantity quantity, PhUnits units, double file_value)
{
  const Unit *unit = unit_of (quantity, units);
  return file_value * unit->over / unit->under;
}

double
ph_quantity_from_shown (PhQuantity quantity, PhUnits units, double shown_value)
{
  const Unit *unit = unit_of (quantity, units);
  return shown_value * unit->under / unit->over;
}

/* Bars are sold by the inch and written down in whole millimetres: 305 mm is a 12 in bar, not one
   of 12.01 in. What lies within rounding of a quarter inch is shown as that. */
double
ph_quantity_as_sold (PhQuantity quantity, PhUnits units, double shown_value)
{
  double quarter = round (4 * shown_value) / 4;
  bool inches = unit_of (quantity, units) == &inch;
  return inches && fabs (shown_value - quarter) < 0.5 / 25.4 ? quarter : shown_value;
}

int
ph_quantity_digits (PhQuantity quantity, PhUnits units)
{
  return unit_of (quantity, units)->digits;
}

/* Drops zeros at the end of a fraction, and the point when nothing is left after it. */
static void
trim_zeros (char *text)
{
  if (!strchr (text, '.'))
    return;
  size_t end = strlen (text);
  while (text[end - 1] == '0')
    end--;
  if (text[end - 1] == '.')
    end--;
  text[end] = '\0';
}

/* "-0", "-0.0" and the like lose their sign. */
static void
unsign_zero (char *text)
{
  if (text[0] == '-' && strspn (text + 1, "0.") == strlen (text + 1))
    memmove (text, text + 1, strlen (text));
}

char *
ph_quantity_print (double file_value, PhQuantity quantity, PhUnits units, const char *decimal_sign,
                   char *buffer, size_t size)
{
  assert (isfinite (file_value));
  const Unit *unit = unit_of (quantity, units);
  double value =
      ph_quantity_as_sold (quantity, units, ph_quantity_to_shown (quantity, units, file_value));
  void *before = ph_number_locale_plain ();
  char *text = ph_text_printf ("%.*f", unit->digits, value);
  ph_number_locale_restore (before);
  if (unit->trim)
    trim_zeros (text);
  unsign_zero (text);
  char *point = strchr (text, '.');
  size_t whole = point ? (size_t)(point - text) : strlen (text);
  snprintf (buffer, size, "%.*s%s%s%s%s", (int)whole, text, point ? decimal_sign : "",
            point ? point + 1 : "", unit->close ? "" : " ", unit->word);
  free (text);
  return buffer;
}
