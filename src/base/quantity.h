/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a person types and reads: "30in", "28 1/2", "28½\"", "5 oz", "140 g", "12 deg", a decimal
 * comma. Values are in the rig file's units (mm, g, degrees, N): the same doubles the model keeps.
 * Texts made here use the decimal sign that is passed in, since this floor knows no screen.
 */
#pragma once

#include <stdbool.h>
#include <stddef.h>

/** What kind of thing is measured; the file's unit in brackets. */
typedef enum
{
  PH_QUANTITY_LENGTH,    /* bar lengths and positions [mm] */
  PH_QUANTITY_DIAMETER,  /* tubes, discs: mm even where bars are in inches [mm] */
  PH_QUANTITY_STATURE,   /* a person's height [mm] */
  PH_QUANTITY_MASS,      /* parts and weights [g] */
  PH_QUANTITY_BOW_MASS,  /* bow, whole rig, a person [g] */
  PH_QUANTITY_ANGLE,     /* [deg] */
  PH_QUANTITY_FORCE,     /* [N] */
  PH_QUANTITY_MODULUS,   /* [GPa] */
  PH_QUANTITY_STIFFNESS, /* [N·m/rad] */
  PH_QUANTITY_MOMENT,    /* [N·m] */
  PH_QUANTITY_SPEED,     /* of an arrow [m/s] */
  PH_QUANTITY_COUNT      /* whole, no unit */
} PhQuantity;

/** The unit presets of the program. */
typedef enum
{
  PH_UNITS_METRIC, /* mm, g and kg, N */
  PH_UNITS_TRADE,  /* inches, ounces and pounds, pounds-force */
  PH_UNITS_MIXED   /* inch bars and ounce weights, the rest kg, mm and N */
} PhUnits;

/** "metric", "trade", "mixed" (the words of files and of the command line) to a preset. */
bool ph_units_from_word (const char *word, PhUnits *units);
const char *ph_units_word (PhUnits units);

/** The unit a bare number means, and is shown in: "mm", "in", "g", "oz", "kg", "lb", "°", "N",
 * "lbf", "GPa", "N·m/rad", "N·m", "m/s", "ft/s", "". Plain text, never null. */
const char *ph_quantity_unit (PhQuantity quantity, PhUnits units);

/** From the file's unit to the unit that is shown, and back. */
double ph_quantity_to_shown (PhQuantity quantity, PhUnits units, double file_value);
double ph_quantity_from_shown (PhQuantity quantity, PhUnits units, double shown_value);

/** A shown value as shelves name it: inches within half a millimetre of a quarter inch are that
 * quarter; everything else stays. */
double ph_quantity_as_sold (PhQuantity quantity, PhUnits units, double shown_value);

/** Digits after the decimal sign that a shown value deserves at most (angles 0.1°, masses 0.1 oz
 * or 1 g, loads 0.1 N). Of lengths and moduli ph_quantity_print drops the zeros at the end. */
int ph_quantity_digits (PhQuantity quantity, PhUnits units);

typedef enum
{
  PH_TYPED_OK,
  PH_TYPED_EMPTY,        /* nothing was typed */
  PH_TYPED_NOT_A_NUMBER, /* no number at its start, or something after its end */
  PH_TYPED_UNKNOWN_UNIT, /* a number, then a word that is no unit here */
  PH_TYPED_WRONG_UNIT,   /* a unit, but of another quantity ("5 oz" for a length) */
  PH_TYPED_NOT_WHOLE,    /* a count with a fraction */
  PH_TYPED_NOT_FINITE    /* too large for any number */
} PhTyped;

/** Reads what a person typed. Accepts a sign (also U+2212), digits with a point or a comma, a
 * fraction ("1/2", "28 1/2", "28-1/2", ½ ¼ ¾ ⅛ ⅜ ⅝ ⅞), spaces, then an optional unit: mm cm m in
 * inch " ″ ft ', g kg oz lb gr, deg ° rad, N lbf (for a force also lb), GPa MPa, N·m N·m/rad, and
 * the names in full. Feet may be followed by inches and pounds by ounces (5'10, 5 ft 10 1/2 in,
 * 2 lb 3 oz). `*file_value` is in the file's unit and untouched unless PH_TYPED_OK. A comma with
 * exactly three digits after it and none before the point is still a decimal comma: thousands are
 * never grouped. */
PhTyped ph_quantity_parse (const char *text, PhQuantity quantity, PhUnits units,
                           double *file_value);

/** Writes value and unit ("12.5 in", "140 g", "20.0°"; inches within half a millimetre of a quarter
 * as that quarter) with `decimal_sign` ("." or ","). Returns
 * buffer. Zero is never shown as "-0". `value` must be finite. */
char *ph_quantity_print (double file_value, PhQuantity quantity, PhUnits units,
                         const char *decimal_sign, char *buffer, size_t size);
