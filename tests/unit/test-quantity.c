/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a person types and reads. Conversions are held against the exact values of NIST SP 811
 * appendix B.8 and NIST Handbook 44 appendix C.
 */
#include "base/quantity.h"

#include "base/units.h"
#include "check.h"

typedef struct
{
  const char *text;
  PhQuantity quantity;
  PhUnits units;
  double value;
} Typed;

static void
check_typed (const Typed *rows, size_t n)
{
  for (size_t i = 0; i < n; i++)
    {
      double value = NAN;
      PhTyped typed = ph_quantity_parse (rows[i].text, rows[i].quantity, rows[i].units, &value);
      /* 4e-16: a conversion rounds twice. */
      bool good =
          typed == PH_TYPED_OK && fabs (value - rows[i].value) <= 4e-16 * fabs (rows[i].value);
      CHECK (good, "«%s» gave %d, %.17g, want %.17g", rows[i].text, (int)typed, value,
             rows[i].value);
    }
}
#define CHECK_TYPED(rows) check_typed (rows, sizeof rows / sizeof *rows)

static void
units_are_the_exact_ones_of_the_standards (void)
{
  static const Typed rows[] = {
    { "1 in", PH_QUANTITY_LENGTH, PH_UNITS_METRIC, 25.4 },
    { "1 ft", PH_QUANTITY_LENGTH, PH_UNITS_METRIC, 304.8 },
    { "1 gr", PH_QUANTITY_MASS, PH_UNITS_METRIC, 0.06479891 },
    { "1 lb", PH_QUANTITY_MASS, PH_UNITS_METRIC, 453.59237 },
    { "1 oz", PH_QUANTITY_MASS, PH_UNITS_METRIC, 28.349523125 },
    { "16 oz", PH_QUANTITY_MASS, PH_UNITS_METRIC, 453.59237 },
    { "7000 grains", PH_QUANTITY_MASS, PH_UNITS_METRIC, 453.59237 },
    { "1 lbf", PH_QUANTITY_FORCE, PH_UNITS_METRIC, 4.4482216152605 },
    { "1 rad", PH_QUANTITY_ANGLE, PH_UNITS_METRIC, 57.29577951308232 },
  };
  CHECK_TYPED (rows);
  /* Standard gravity and the derived units of numbers.md section 1. */
  CHECK_NEAR (PH_KG_PER_POUND * PH_GRAVITY, PH_N_PER_POUND_FORCE, 1e-15);
  CHECK_REL (PH_N_PER_POUND_FORCE * PH_M_PER_INCH, 0.1129848, 1e-6);     /* SP 811 B.8 */
  CHECK_REL (PH_N_PER_POUND_FORCE * 12 * PH_M_PER_INCH, 1.355818, 1e-6); /* SP 811 B.8 */
  CHECK_REL (PH_M_S_PER_MILE_H * 3600, 12 * 5280 * PH_M_PER_INCH, 1e-15);
}

static void
typed_numbers_take_units_and_fractions (void)
{
  static const Typed rows[] = {
    { "30in", PH_QUANTITY_LENGTH, PH_UNITS_METRIC, 762 },
    { "28 1/2", PH_QUANTITY_LENGTH, PH_UNITS_TRADE, 723.9 },
    { "28½\"", PH_QUANTITY_LENGTH, PH_UNITS_METRIC, 723.9 },
    { "28-1/2 in", PH_QUANTITY_LENGTH, PH_UNITS_METRIC, 723.9 },
    { "28 ½ inches", PH_QUANTITY_LENGTH, PH_UNITS_METRIC, 723.9 },
    { "½", PH_QUANTITY_LENGTH, PH_UNITS_MIXED, 12.7 },
    { "-1/4\"", PH_QUANTITY_LENGTH, PH_UNITS_METRIC, -6.35 },
    { "3⅞″", PH_QUANTITY_LENGTH, PH_UNITS_METRIC, 98.425 },
    { "1⁄8 in.", PH_QUANTITY_LENGTH, PH_UNITS_METRIC, 3.175 },
    { "5 oz", PH_QUANTITY_MASS, PH_UNITS_METRIC, 141.747615625 },
    { "5", PH_QUANTITY_MASS, PH_UNITS_TRADE, 141.747615625 },
    { "140 g", PH_QUANTITY_MASS, PH_UNITS_TRADE, 140 },
    { "4.2", PH_QUANTITY_BOW_MASS, PH_UNITS_METRIC, 4200 },
    { "2 lb 3 oz", PH_QUANTITY_BOW_MASS, PH_UNITS_METRIC, 992.233309375 },
    { "12 deg", PH_QUANTITY_ANGLE, PH_UNITS_METRIC, 12 },
    { "12°", PH_QUANTITY_ANGLE, PH_UNITS_METRIC, 12 },
    { "\u221212 degrees", PH_QUANTITY_ANGLE, PH_UNITS_METRIC, -12 },
    { "12,5", PH_QUANTITY_ANGLE, PH_UNITS_METRIC, 12.5 },
    { "1,234", PH_QUANTITY_LENGTH, PH_UNITS_METRIC, 1.234 },
    { "  +.5 MM  ", PH_QUANTITY_LENGTH, PH_UNITS_TRADE, 0.5 },
    { "76.2\u00a0cm", PH_QUANTITY_LENGTH, PH_UNITS_METRIC, 762 },
    { "1.72 m", PH_QUANTITY_STATURE, PH_UNITS_METRIC, 1720 },
    { "5'10\"", PH_QUANTITY_STATURE, PH_UNITS_METRIC, 1778 },
    { "5'10", PH_QUANTITY_STATURE, PH_UNITS_METRIC, 1778 },
    { "5 ft 10 1/2 in", PH_QUANTITY_STATURE, PH_UNITS_METRIC, 1790.7 },
    { "5’ 10½”", PH_QUANTITY_STATURE, PH_UNITS_METRIC, 1790.7 },
    { "6 feet", PH_QUANTITY_STATURE, PH_UNITS_METRIC, 1828.8 },
    { "14 lb", PH_QUANTITY_FORCE, PH_UNITS_METRIC, 62.275102613647 },
    { "62 N", PH_QUANTITY_FORCE, PH_UNITS_TRADE, 62 },
    { "14", PH_QUANTITY_FORCE, PH_UNITS_TRADE, 62.275102613647 },
    { "100", PH_QUANTITY_MODULUS, PH_UNITS_TRADE, 100 },
    { "70000 MPa", PH_QUANTITY_MODULUS, PH_UNITS_METRIC, 70 },
    { "2 N·m/rad", PH_QUANTITY_STIFFNESS, PH_UNITS_METRIC, 2 },
    { "280 fps", PH_QUANTITY_SPEED, PH_UNITS_METRIC, 85.344 }, /* 280 · 0.3048 m, exact */
    { "280", PH_QUANTITY_SPEED, PH_UNITS_MIXED, 85.344 },
    { "280 ft/s", PH_QUANTITY_SPEED, PH_UNITS_TRADE, 85.344 },
    { "85", PH_QUANTITY_SPEED, PH_UNITS_METRIC, 85 },
    { "85 m/s", PH_QUANTITY_SPEED, PH_UNITS_TRADE, 85 },
    { "72 km/h", PH_QUANTITY_SPEED, PH_UNITS_TRADE, 20 },
    { "-.3 Nm", PH_QUANTITY_MOMENT, PH_UNITS_METRIC, -0.3 },
    { "8", PH_QUANTITY_COUNT, PH_UNITS_MIXED, 8 },
    { "8.0", PH_QUANTITY_COUNT, PH_UNITS_MIXED, 8 },
    { "1", PH_QUANTITY_DIAMETER, PH_UNITS_MIXED, 1 },
  };
  CHECK_TYPED (rows);
}

static void
what_cannot_be_read_says_why_and_changes_nothing (void)
{
  static const struct
  {
    const char *text;
    PhQuantity quantity;
    PhTyped want;
  } rows[] = {
    { "", PH_QUANTITY_LENGTH, PH_TYPED_EMPTY },
    { " \t\u2009", PH_QUANTITY_LENGTH, PH_TYPED_EMPTY },
    { "abc", PH_QUANTITY_LENGTH, PH_TYPED_NOT_A_NUMBER },
    { "-", PH_QUANTITY_LENGTH, PH_TYPED_NOT_A_NUMBER },
    { "--5", PH_QUANTITY_LENGTH, PH_TYPED_NOT_A_NUMBER },
    { "5 5", PH_QUANTITY_LENGTH, PH_TYPED_NOT_A_NUMBER },
    { "1.2.3", PH_QUANTITY_LENGTH, PH_TYPED_NOT_A_NUMBER },
    { "1,234.5", PH_QUANTITY_LENGTH, PH_TYPED_NOT_A_NUMBER },
    { ",", PH_QUANTITY_LENGTH, PH_TYPED_NOT_A_NUMBER },
    { "1/0", PH_QUANTITY_LENGTH, PH_TYPED_NOT_A_NUMBER },
    { "1/", PH_QUANTITY_LENGTH, PH_TYPED_NOT_A_NUMBER },
    { "1.5 1/2", PH_QUANTITY_LENGTH, PH_TYPED_NOT_A_NUMBER },
    { "nan", PH_QUANTITY_LENGTH, PH_TYPED_NOT_A_NUMBER },
    { "inf", PH_QUANTITY_LENGTH, PH_TYPED_NOT_A_NUMBER },
    { "5 mm 3 mm", PH_QUANTITY_LENGTH, PH_TYPED_NOT_A_NUMBER },
    { "5' 10 mm", PH_QUANTITY_STATURE, PH_TYPED_NOT_A_NUMBER },
    { "5' 10\" 3", PH_QUANTITY_STATURE, PH_TYPED_NOT_A_NUMBER },
    { "5 furlongs", PH_QUANTITY_LENGTH, PH_TYPED_UNKNOWN_UNIT },
    { "0x10", PH_QUANTITY_LENGTH, PH_TYPED_UNKNOWN_UNIT },
    { "5 |", PH_QUANTITY_LENGTH, PH_TYPED_UNKNOWN_UNIT },
    { "5 oz", PH_QUANTITY_LENGTH, PH_TYPED_WRONG_UNIT },
    { "5 mm", PH_QUANTITY_MASS, PH_TYPED_WRONG_UNIT },
    { "5 N", PH_QUANTITY_MOMENT, PH_TYPED_WRONG_UNIT },
    { "280 ft", PH_QUANTITY_SPEED, PH_TYPED_WRONG_UNIT },
    { "5 deg", PH_QUANTITY_COUNT, PH_TYPED_WRONG_UNIT },
    { "2.5", PH_QUANTITY_COUNT, PH_TYPED_NOT_WHOLE },
    { "1/2", PH_QUANTITY_COUNT, PH_TYPED_NOT_WHOLE },
  };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
    {
      double value = 42;
      PhTyped typed = ph_quantity_parse (rows[i].text, rows[i].quantity, PH_UNITS_METRIC, &value);
      CHECK (typed == rows[i].want, "«%s» gave %d, want %d", rows[i].text, (int)typed,
             (int)rows[i].want);
      CHECK_NEAR (value, 42, 0);
    }
}

static void
a_number_too_large_is_said_to_be (void)
{
  char text[420];
  double value = 42;
  memset (text, '9', sizeof text);
  text[sizeof text - 1] = '\0';
  CHECK (ph_quantity_parse (text, PH_QUANTITY_MASS, PH_UNITS_METRIC, &value)
         == PH_TYPED_NOT_FINITE);
  CHECK_NEAR (value, 42, 0);
}

static void
any_bytes_typed_are_survived (void)
{
  /* Fixed seed, so a failure comes back. The alphabet is what the parser looks at. */
  static const char alphabet[] = "0123456789/.,-+ '\"inftozlbgdergkmN°½⅞″\xe2\x80\xff|";
  unsigned state = 1;
  for (int i = 0; i < 200000; i++)
    {
      char text[12];
      size_t n = 0;
      do
        {
          state = state * 1664525u + 1013904223u;
          text[n] = alphabet[(state >> 16) % sizeof alphabet];
        }
      while (text[n] && ++n < sizeof text - 1);
      text[n] = '\0';
      double value = 42;
      PhTyped typed = ph_quantity_parse (text, PH_QUANTITY_LENGTH, PH_UNITS_TRADE, &value);
      CHECK (typed == PH_TYPED_OK ? isfinite (value) : value == 42, "«%s»", text);
    }
}

static void
shown_values_come_back_to_the_file_value (void)
{
  for (int q = PH_QUANTITY_LENGTH; q <= PH_QUANTITY_COUNT; q++)
    for (int u = PH_UNITS_METRIC; u <= PH_UNITS_MIXED; u++)
      {
        double shown = ph_quantity_to_shown ((PhQuantity)q, (PhUnits)u, 123.456);
        /* Two conversions round up to four times. */
        CHECK_REL (ph_quantity_from_shown ((PhQuantity)q, (PhUnits)u, shown), 123.456, 5e-16);
      }
}

static void
a_bare_number_is_in_the_unit_that_is_shown (void)
{
  for (int q = PH_QUANTITY_LENGTH; q < PH_QUANTITY_COUNT; q++)
    for (int u = PH_UNITS_METRIC; u <= PH_UNITS_MIXED; u++)
      {
        char typed[64];
        double bare, with_unit;
        snprintf (typed, sizeof typed, "7 %s", ph_quantity_unit ((PhQuantity)q, (PhUnits)u));
        CHECK (ph_quantity_parse ("7", (PhQuantity)q, (PhUnits)u, &bare) == PH_TYPED_OK);
        CHECK (ph_quantity_parse (typed, (PhQuantity)q, (PhUnits)u, &with_unit) == PH_TYPED_OK,
               "«%s»", typed);
        CHECK_REL (with_unit, bare, 4e-16);
      }
}

static void
check_prints (double value, PhQuantity quantity, PhUnits units, const char *sign, const char *want)
{
  char buffer[64];
  CHECK_TEXT (ph_quantity_print (value, quantity, units, sign, buffer, sizeof buffer), want);
}

static void
values_are_written_with_their_units (void)
{
  check_prints (317.5, PH_QUANTITY_LENGTH, PH_UNITS_TRADE, ".", "12.5 in");
  check_prints (762, PH_QUANTITY_LENGTH, PH_UNITS_METRIC, ".", "762 mm");
  check_prints (7.2, PH_QUANTITY_LENGTH, PH_UNITS_METRIC, ",", "7,2 mm");
  check_prints (140, PH_QUANTITY_MASS, PH_UNITS_METRIC, ".", "140 g");
  check_prints (141.747615625, PH_QUANTITY_MASS, PH_UNITS_MIXED, ".", "5.0 oz");
  check_prints (20, PH_QUANTITY_ANGLE, PH_UNITS_METRIC, ".", "20.0°");
  check_prints (-0.04, PH_QUANTITY_ANGLE, PH_UNITS_METRIC, ",", "0,0°");
  check_prints (-12.25, PH_QUANTITY_ANGLE, PH_UNITS_METRIC, ".", "-12.2°");
  check_prints (1950, PH_QUANTITY_BOW_MASS, PH_UNITS_METRIC, ",", "1,950 kg");
  check_prints (85.344, PH_QUANTITY_SPEED, PH_UNITS_MIXED, ".", "280 ft/s");
  check_prints (85.344, PH_QUANTITY_SPEED, PH_UNITS_TRADE, ".", "280 ft/s");
  check_prints (85.344, PH_QUANTITY_SPEED, PH_UNITS_METRIC, ",", "85,3 m/s");
  check_prints (62, PH_QUANTITY_FORCE, PH_UNITS_METRIC, ".", "62.0 N");
  check_prints (8, PH_QUANTITY_COUNT, PH_UNITS_METRIC, ".", "8");
  check_prints (18, PH_QUANTITY_DIAMETER, PH_UNITS_MIXED, ".", "18 mm");
  char small[5];
  CHECK_TEXT (ph_quantity_print (317.5, PH_QUANTITY_LENGTH, PH_UNITS_TRADE, ".", small, 5), "12.5");
}

static void
presets_have_words (void)
{
  PhUnits units = PH_UNITS_METRIC;
  for (int u = PH_UNITS_METRIC; u <= PH_UNITS_MIXED; u++)
    CHECK (ph_units_from_word (ph_units_word ((PhUnits)u), &units) && (int)units == u);
  CHECK (!ph_units_from_word ("imperial", &units) && units == PH_UNITS_MIXED);
}

/* Common practice, no source: a bar of 12 in is written down as 305 mm, which is 12.008 in. */
static void
bar_in_whole_millimetres_is_shown_as_it_is_sold (void)
{
  char text[40];
  CHECK_TEXT (ph_quantity_print (305, PH_QUANTITY_LENGTH, PH_UNITS_TRADE, ".", text, sizeof text),
              "12 in");
  CHECK_TEXT (ph_quantity_print (724, PH_QUANTITY_LENGTH, PH_UNITS_MIXED, ".", text, sizeof text),
              "28.5 in");
  CHECK_TEXT (ph_quantity_print (307, PH_QUANTITY_LENGTH, PH_UNITS_TRADE, ".", text, sizeof text),
              "12.09 in");
  CHECK_TEXT (ph_quantity_print (305, PH_QUANTITY_LENGTH, PH_UNITS_METRIC, ".", text, sizeof text),
              "305 mm");
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (units_are_the_exact_ones_of_the_standards);
  CASE (typed_numbers_take_units_and_fractions);
  CASE (what_cannot_be_read_says_why_and_changes_nothing);
  CASE (a_number_too_large_is_said_to_be);
  CASE (any_bytes_typed_are_survived);
  CASE (shown_values_come_back_to_the_file_value);
  CASE (a_bare_number_is_in_the_unit_that_is_shown);
  CASE (values_are_written_with_their_units);
  CASE (presets_have_words);
  CASE (bar_in_whole_millimetres_is_shown_as_it_is_sold);
  return check_end ();
}
