/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Numbers of files: shortest that read back, whatever the locale; nothing but plain decimals.
 */
#include "base/number.h"

#include <float.h>
#include <locale.h>
#include <stdint.h>
#include <unistd.h>

#include "check.h"

static double
random_double (uint64_t *state)
{
  /* splitmix64 (S. Vigna, public domain; from memory): any bits, so every exponent alike. */
  uint64_t z = (*state += 0x9e3779b97f4a7c15u);
  z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9u;
  z = (z ^ (z >> 27)) * 0x94d049bb133111ebu;
  z ^= z >> 31;
  double value;
  memcpy (&value, &z, sizeof value);
  return value;
}

static void
check_prints (double value, const char *want)
{
  char buffer[PH_NUMBER_SIZE];
  CHECK_TEXT (ph_number_print (value, buffer), want);
}

static void
printed_number_is_the_shortest_that_reads_back (void)
{
  check_prints (0.1, "0.1");
  check_prints (28.35, "28.35");
  check_prints (-0.0, "-0");
  check_prints (1.0 / 3, "0.3333333333333333");
  check_prints (0.1 + 0.2, "0.30000000000000004");
  check_prints (1e22, "1e+22");
  check_prints (DBL_MAX, "1.7976931348623157e+308");
}

static void
every_finite_double_survives_print_and_parse (void)
{
  uint64_t state = 1;
  for (int i = 0; i < 200000; i++)
    {
      double value = random_double (&state), back;
      char buffer[PH_NUMBER_SIZE];
      if (!isfinite (value))
        continue;
      bool read = ph_number_parse (ph_number_print (value, buffer), &back);
      CHECK (read && memcmp (&value, &back, sizeof value) == 0, "%a came back as %s", value,
             buffer);
    }
}

static void
plain_decimals_are_read_exactly (void)
{
  static const struct
  {
    const char *text;
    double value;
  } rows[] = { { "1.5", 1.5 },  { "-2e3", -2000 }, { "+7", 7 },    { ".5", 0.5 },
               { "5.", 5 },     { "1E-2", 0.01 },  { "0", 0 },     { "4.9e-324", 4.9e-324 },
               { "1e-400", 0 }, { "007", 7 },      { "1e+2", 100 } };
  for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
    {
      double value = NAN;
      CHECK (ph_number_parse (rows[i].text, &value), "%s", rows[i].text);
      CHECK_NEAR (value, rows[i].value, 0);
    }
}

static void
anything_else_is_refused_and_leaves_the_value (void)
{
  static const char *const texts[] = { "",      " 1", "1 ",    "1,5", "0x10", "inf",   "nan",
                                       "-",     ".",  "e5",    "1e",  "1e+",  "1.2.3", "--1",
                                       "1e400", "1f", "1_000", "１",  "\t1",  "+-1" };
  for (size_t i = 0; i < sizeof texts / sizeof *texts; i++)
    {
      double value = 42;
      CHECK (!ph_number_parse (texts[i], &value), "«%s» was read", texts[i]);
      CHECK_NEAR (value, 42, 0);
    }
}

/* Makes and enters a locale with a decimal comma; false where this system has no localedef. */
static bool
enter_comma_locale (char folder[])
{
  char command[200];
  if (!mkdtemp (folder))
    return false;
  snprintf (command, sizeof command, "localedef -i de_DE -f UTF-8 %s/de_DE.UTF-8 >/dev/null 2>&1",
            folder);
  if (system (command) == -1)
    return false;
  setenv ("LOCPATH", folder, 1);
  return setlocale (LC_ALL, "de_DE.UTF-8") != NULL;
}

static void
a_locale_with_a_decimal_comma_changes_nothing (void)
{
  char folder[] = "/tmp/ph-locale-XXXXXX", command[100], text[16];
  if (enter_comma_locale (folder))
    {
      double value = 0;
      snprintf (text, sizeof text, "%.1f", 0.5);
      CHECK_TEXT (text, "0,5");
      check_prints (0.5, "0.5");
      CHECK (ph_number_parse ("0.5", &value) && value == 0.5);
      CHECK (!ph_number_parse ("0,5", &value));
      snprintf (text, sizeof text, "%.1f", 0.5);
      CHECK_TEXT (text, "0,5");
      setlocale (LC_ALL, "C");
    }
  else
    printf ("# no localedef here: the comma locale was not tried\n");
  snprintf (command, sizeof command, "rm -rf %s", folder);
  CHECK (system (command) == 0);
}

static void
plain_locales_nest (void)
{
  locale_t at_start = uselocale ((locale_t)0);
  void *outer = ph_number_locale_plain ();
  locale_t plain = uselocale ((locale_t)0);
  void *inner = ph_number_locale_plain ();
  ph_number_locale_restore (inner);
  CHECK (uselocale ((locale_t)0) == plain);
  ph_number_locale_restore (outer);
  CHECK (uselocale ((locale_t)0) == at_start && plain != at_start);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (printed_number_is_the_shortest_that_reads_back);
  CASE (every_finite_double_survives_print_and_parse);
  CASE (plain_decimals_are_read_exactly);
  CASE (anything_else_is_refused_and_leaves_the_value);
  CASE (a_locale_with_a_decimal_comma_changes_nothing);
  CASE (plain_locales_nest);
  return check_end ();
}
