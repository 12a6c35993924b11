/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a person types, read: [sign] term, or a term in feet (pounds) and a second one in inches
 * (ounces). A term is a number and perhaps a unit.
 */
#include "base/quantity.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/number.h"
#include "base/text.h"
#include "base/units.h"

typedef enum
{
  KIND_LENGTH,
  KIND_MASS,
  KIND_ANGLE,
  KIND_FORCE,
  KIND_MODULUS,
  KIND_STIFFNESS,
  KIND_MOMENT,
  KIND_SPEED,
  KIND_NONE
} Kind;

static const Kind kind_of[] = {
  [PH_QUANTITY_LENGTH] = KIND_LENGTH,       [PH_QUANTITY_DIAMETER] = KIND_LENGTH,
  [PH_QUANTITY_STATURE] = KIND_LENGTH,      [PH_QUANTITY_MASS] = KIND_MASS,
  [PH_QUANTITY_BOW_MASS] = KIND_MASS,       [PH_QUANTITY_ANGLE] = KIND_ANGLE,
  [PH_QUANTITY_FORCE] = KIND_FORCE,         [PH_QUANTITY_MODULUS] = KIND_MODULUS,
  [PH_QUANTITY_STIFFNESS] = KIND_STIFFNESS, [PH_QUANTITY_MOMENT] = KIND_MOMENT,
  [PH_QUANTITY_SPEED] = KIND_SPEED,         [PH_QUANTITY_COUNT] = KIND_NONE,
};

/* Words of a unit, each between bars; one unit is over/under file units. */
typedef struct
{
  Kind kind;
  double over, under;
  const char *words;
} Unit;

/* Archers say pounds for a draw force too: a mass unit where a mass is asked for, a force where a
   force is. */
static const Unit units_known[] = {
  { KIND_LENGTH, 1, 1, "|mm|millimetre|millimetres|millimeter|millimeters|" },
  { KIND_LENGTH, 10, 1, "|cm|centimetre|centimetres|centimeter|centimeters|" },
  { KIND_LENGTH, 1000, 1, "|m|metre|metres|meter|meters|" },
  { KIND_LENGTH, 254, 10, "|in|inch|inches|\"|″|”|''|" },
  { KIND_LENGTH, 3048, 10, "|ft|foot|feet|'|′|’|" },
  { KIND_MASS, 1, 1, "|g|gram|grams|gramme|grammes|" },
  { KIND_MASS, 1000, 1, "|kg|kilo|kilos|kilogram|kilograms|" },
  { KIND_MASS, PH_KG_PER_OUNCE * 1000, 1, "|oz|ounce|ounces|" },
  { KIND_MASS, PH_KG_PER_POUND * 1000, 1, "|lb|lbs|pound|pounds|" },
  { KIND_MASS, PH_KG_PER_GRAIN * 1000, 1, "|gr|grain|grains|" },
  { KIND_ANGLE, 1, 1, "|°|º|deg|degs|degree|degrees|" },
  { KIND_ANGLE, 180, PH_PI, "|rad|radian|radians|" },
  { KIND_FORCE, 1, 1, "|n|newton|newtons|" },
  { KIND_FORCE, PH_N_PER_POUND_FORCE, 1, "|lbf|lb|lbs|pound|pounds|" },
  { KIND_MODULUS, 1, 1, "|gpa|gigapascal|gigapascals|" },
  { KIND_MODULUS, 1, 1000, "|mpa|megapascal|megapascals|" },
  { KIND_STIFFNESS, 1, 1, "|n·m/rad|nm/rad|n*m/rad|" },
  { KIND_MOMENT, 1, 1, "|n·m|nm|n*m|" },
  { KIND_SPEED, 1, 1, "|m/s|mps|m/sec|" },
  { KIND_SPEED, 3048, 10000, "|fps|ft/s|ft/sec|" },
  { KIND_SPEED, 1000, 3600, "|km/h|kmh|kph|" },
  { KIND_SPEED, PH_M_S_PER_MILE_H, 1, "|mph|" },
};

/* Fractions of one character. */
static const struct
{
  const char *text;
  double over, under;
} vulgar[] = { { "½", 1, 2 }, { "¼", 1, 4 }, { "¾", 3, 4 }, { "⅛", 1, 8 },
               { "⅜", 3, 8 }, { "⅝", 5, 8 }, { "⅞", 7, 8 } };

static size_t
prefix_length (const char *text, const char *prefix)
{
  size_t length = strlen (prefix);
  return strncmp (text, prefix, length) == 0 ? length : 0;
}

/* White space, the no-break and the thin ones too. */
static size_t
space_length (const char *text)
{
  static const char *const wide[] = { "\u00a0", "\u2009", "\u202f" };
  if (*text && strchr (" \t\r\n\v\f", *text))
    return 1;
  for (size_t i = 0; i < sizeof wide / sizeof *wide; i++)
    if (prefix_length (text, wide[i]))
      return prefix_length (text, wide[i]);
  return 0;
}

static const char *
skip_space (const char *text)
{
  for (size_t length; (length = space_length (text));)
    text += length;
  return text;
}

static bool
is_digit (char c)
{
  return c >= '0' && c <= '9';
}

/* A fraction at *at: "3/4" or one character. */
static bool
take_fraction (const char **at, double *over, double *under)
{
  for (size_t i = 0; i < sizeof vulgar / sizeof *vulgar; i++)
    if (prefix_length (*at, vulgar[i].text))
      {
        *at += strlen (vulgar[i].text);
        *over = vulgar[i].over;
        *under = vulgar[i].under;
        return true;
      }
  const char *text = *at;
  size_t first = strspn (text, "0123456789");
  size_t slash = prefix_length (text + first, "/");
  if (!slash)
    slash = prefix_length (text + first, "⁄");
  size_t second = strspn (text + first + slash, "0123456789");
  if (!first || !slash || !second)
    return false;
  *over = strtod (text, NULL); /* digits only: no locale in it */
  *under = strtod (text + first + slash, NULL);
  *at = text + first + slash + second;
  return *under > 0;
}

/* Digits with perhaps one decimal sign at *at; `*whole` where there was none. */
static bool
take_decimal (const char **at, double *value, bool *whole)
{
  size_t length = strspn (*at, "0123456789");
  size_t digits = length;
  *whole = (*at)[length] != '.' && (*at)[length] != ',';
  if (!*whole)
    {
      size_t after = strspn (*at + length + 1, "0123456789");
      digits += after;
      length += 1 + after;
    }
  if (!digits)
    return false;
  char *plain = ph_alloc (length + 1);
  memcpy (plain, *at, length);
  plain[length] = '\0';
  char *comma = strchr (plain, ',');
  if (comma)
    *comma = '.';
  if (!ph_number_parse (plain, value))
    *value = HUGE_VAL;
  free (plain);
  *at += length;
  return true;
}

/* A number without a sign at *at: "28", "28.5", "1/2", "28 1/2", "28-1/2", "28½". */
static bool
take_number (const char **at, double *value)
{
  double over, under;
  if (take_fraction (at, &over, &under))
    {
      *value = over / under;
      return true;
    }
  bool whole;
  if (!take_decimal (at, value, &whole))
    return false;
  const char *next = skip_space (*at);
  if (*next == '-')
    next++;
  if (whole && take_fraction (&next, &over, &under))
    {
      *value = (*value * under + over) / under;
      *at = next;
    }
  return true;
}

/* The word at *at up to a space, a digit or a fraction, lower case and without a last full stop
   ("in."); a new string. */
static char *
take_word (const char **at)
{
  const char *end = *at;
  double unused;
  for (const char *probe = end; *end && !space_length (end) && !is_digit (*end); probe = end)
    {
      if (take_fraction (&probe, &unused, &unused))
        break;
      end++;
    }
  size_t length = (size_t)(end - *at);
  char *word = ph_alloc (length + 1);
  for (size_t i = 0; i < length; i++)
    word[i] = (*at)[i] >= 'A' && (*at)[i] <= 'Z' ? (char)((*at)[i] - 'A' + 'a') : (*at)[i];
  word[length] = '\0';
  if (length > 1 && word[length - 1] == '.')
    word[length - 1] = '\0';
  *at = end;
  return word;
}

/* The unit called `word`, of `kind` where there is such a one, else of another kind, else null. */
static const Unit *
find_unit (const char *word, Kind kind)
{
  char *barred = ph_text_printf ("|%s|", word);
  const Unit *found = NULL;
  for (size_t i = 0; i < sizeof units_known / sizeof *units_known; i++)
    if (strstr (units_known[i].words, barred) && (!found || units_known[i].kind == kind))
      found = &units_known[i];
  free (barred);
  return found;
}

/* The smaller unit that may follow a larger one without being named: 5'10, 2 lb 3. */
static const Unit *
smaller_unit (const Unit *unit)
{
  if (!unit || (unit->kind != KIND_LENGTH && unit->kind != KIND_MASS))
    return NULL;
  if (strstr (unit->words, "|ft|"))
    return find_unit ("in", KIND_LENGTH);
  if (strstr (unit->words, "|lb|"))
    return find_unit ("oz", KIND_MASS);
  return NULL;
}

typedef struct
{
  double number;
  const Unit *unit; /* null where none was typed */
} Term;

static PhTyped
take_term (const char **at, Kind kind, Term *term)
{
  if (!take_number (at, &term->number))
    return PH_TYPED_NOT_A_NUMBER;
  *at = skip_space (*at);
  term->unit = NULL;
  if (!**at)
    return PH_TYPED_OK;
  if (is_digit (**at) || strchr (".,/+-", **at))
    return PH_TYPED_NOT_A_NUMBER;
  char *word = take_word (at);
  term->unit = find_unit (word, kind);
  free (word);
  *at = skip_space (*at);
  if (!term->unit)
    return PH_TYPED_UNKNOWN_UNIT;
  return term->unit->kind == kind ? PH_TYPED_OK : PH_TYPED_WRONG_UNIT;
}

static double
in_file_units (double number, const Unit *unit)
{
  return number * unit->over / unit->under;
}

/* One term, or two where the first unit has a smaller one. */
static PhTyped
take_amount (const char *at, PhQuantity quantity, PhUnits units, double *amount)
{
  Term first, second;
  PhTyped typed = take_term (&at, kind_of[quantity], &first);
  if (typed != PH_TYPED_OK)
    return typed;
  *amount = first.unit ? in_file_units (first.number, first.unit)
                       : ph_quantity_from_shown (quantity, units, first.number);
  if (!*at)
    return PH_TYPED_OK;
  const Unit *smaller = smaller_unit (first.unit);
  if (!smaller)
    return PH_TYPED_NOT_A_NUMBER;
  typed = take_term (&at, kind_of[quantity], &second);
  if (typed != PH_TYPED_OK)
    return typed;
  if (*at || (second.unit && second.unit != smaller))
    return PH_TYPED_NOT_A_NUMBER;
  *amount += in_file_units (second.number, smaller);
  return PH_TYPED_OK;
}

static size_t
sign_length (const char *text, bool *negative)
{
  size_t minus = prefix_length (text, "\u2212");
  *negative = *text == '-' || minus;
  if (minus)
    return minus;
  return *text == '-' || *text == '+';
}

PhTyped
ph_quantity_parse (const char *text, PhQuantity quantity, PhUnits units, double *file_value)
{
  const char *at = skip_space (text);
  if (!*at)
    return PH_TYPED_EMPTY;
  bool negative;
  at = skip_space (at + sign_length (at, &negative));
  double amount;
  PhTyped typed = take_amount (at, quantity, units, &amount);
  if (typed != PH_TYPED_OK)
    return typed;
  if (!isfinite (amount))
    return PH_TYPED_NOT_FINITE;
  if (quantity == PH_QUANTITY_COUNT && amount != floor (amount))
    return PH_TYPED_NOT_WHOLE;
  *file_value = negative ? -amount : amount;
  return PH_TYPED_OK;
}
