/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Numbers as a person sees them. Conversions are held against NIST SP 811 (1 in = 25.4 mm) and
 * NIST Handbook 44 (1 oz = 28.349523125 g). A German locale is made on the spot where the system
 * can; without localedef that case says so and checks nothing.
 */
#include <glib.h>
#include <glib/gstdio.h>
#include <locale.h>

#include "check.h"
#include "document/format.h"

#define MINUS "\xe2\x88\x92"

#define CHECK_MADE(call, want)                                                                     \
  do                                                                                               \
    {                                                                                              \
      g_autofree char *made = call;                                                                \
      CHECK_TEXT (made, want);                                                                     \
    }                                                                                              \
  while (0)

static void
minus_is_a_true_minus (void)
{
  CHECK_MADE (ph_format_number (-1.5, 1), MINUS "1.5");
  CHECK_MADE (ph_format_quantity (-12, PH_QUANTITY_ANGLE, PH_UNITS_METRIC), MINUS "12.0°");
  CHECK_MADE (ph_format_change (-0.25, 2), MINUS "0.25");
}

static void
zero_has_no_sign (void)
{
  CHECK_MADE (ph_format_number (-0.0, 1), "0.0");
  CHECK_MADE (ph_format_number (-0.04, 1), "0.0");
  CHECK_MADE (ph_format_quantity (-0.001, PH_QUANTITY_ANGLE, PH_UNITS_METRIC), "0.0°");
  CHECK_MADE (ph_format_change (-0.004, 2), "±0");
  CHECK_MADE (ph_format_quantity_change (0, PH_QUANTITY_MASS, PH_UNITS_METRIC), "±0 g");
}

static void
what_cannot_be_computed_is_missing (void)
{
  CHECK_MADE (ph_format_number (NAN, 2), "–");
  CHECK_MADE (ph_format_change (INFINITY, 2), "–");
  CHECK_MADE (ph_format_quantity (NAN, PH_QUANTITY_MASS, PH_UNITS_METRIC), "–");
  CHECK_MADE (ph_format_quantity_short (NAN, PH_QUANTITY_MASS, PH_UNITS_METRIC), "–");
  CHECK_MADE (ph_format_quantity_change (NAN, PH_QUANTITY_MASS, PH_UNITS_METRIC), "–");
}

static void
differences_show_their_sign (void)
{
  CHECK_MADE (ph_format_change (0.25, 2), "+0.25");
  CHECK_MADE (ph_format_quantity_change (4, PH_QUANTITY_MASS, PH_UNITS_METRIC), "+4 g");
  CHECK_MADE (ph_format_quantity_change (-25.4, PH_QUANTITY_LENGTH, PH_UNITS_TRADE),
              MINUS "1.00 in");
  CHECK_MADE (ph_format_quantity_change (1.5, PH_QUANTITY_ANGLE, PH_UNITS_METRIC), "+1.5°");
}

static void
short_numbers_have_no_needless_zeros (void)
{
  CHECK_MADE (ph_format_quantity_short (762, PH_QUANTITY_LENGTH, PH_UNITS_TRADE), "30 in");
  CHECK_MADE (ph_format_quantity_short (317.5, PH_QUANTITY_LENGTH, PH_UNITS_TRADE), "12.5 in");
  CHECK_MADE (ph_format_quantity_short (28.349523125, PH_QUANTITY_MASS, PH_UNITS_TRADE), "1 oz");
  CHECK_MADE (ph_format_quantity_short (100, PH_QUANTITY_MASS, PH_UNITS_METRIC), "100 g");
  CHECK_MADE (ph_format_short (100, 0), "100");
  CHECK_MADE (ph_format_short (0.5, 3), "0.5");
}

static void
a_step_names_its_unit_once (void)
{
  CHECK_MADE (ph_format_quantity_step (660, 670, PH_QUANTITY_LENGTH, PH_UNITS_METRIC),
              "660 → 670 mm");
  CHECK_MADE (ph_format_quantity_step (20, 26, PH_QUANTITY_ANGLE, PH_UNITS_METRIC), "20° → 26°");
  CHECK_MADE (ph_format_quantity_step (8, 9, PH_QUANTITY_COUNT, PH_UNITS_METRIC), "8 → 9");
  CHECK_MADE (ph_format_quantity_step (NAN, 20, PH_QUANTITY_LENGTH, PH_UNITS_METRIC), "– → 20 mm");
}

static void
a_small_step_shows_enough_digits_to_be_one (void)
{
  CHECK_MADE (ph_format_quantity_step (20, 20.01, PH_QUANTITY_ANGLE, PH_UNITS_METRIC),
              "20° → 20.01°");
}

static void
decimal_sign_is_the_locales (void)
{
  g_autofree char *folder = g_dir_make_tmp ("plumbhold-test-XXXXXX", NULL);
  g_autofree char *target = g_build_filename (folder, "de_DE.UTF-8", NULL);
  g_autofree char *command = g_strdup_printf ("localedef -i de_DE -f UTF-8 %s", target);
  int status = 1;
  gboolean known = g_spawn_command_line_sync (command, NULL, NULL, &status, NULL) && status == 0;
  g_setenv ("LOCPATH", folder, TRUE);
  if (known && setlocale (LC_ALL, "de_DE.UTF-8"))
    {
      CHECK_MADE (ph_format_number (-1.5, 1), MINUS "1,5");
      CHECK_MADE (ph_format_quantity (12.5, PH_QUANTITY_ANGLE, PH_UNITS_METRIC), "12,5°");
      CHECK_MADE (ph_format_short (2.50, 2), "2,5");
      CHECK_MADE (ph_format_quantity_step (1.5, 2, PH_QUANTITY_ANGLE, PH_UNITS_METRIC),
                  "1,5° → 2°");
    }
  else
    printf ("# no German locale could be made: not checked\n");
  setlocale (LC_ALL, "C.UTF-8");
  g_unsetenv ("LOCPATH");
  g_autofree char *remove = g_strdup_printf ("rm -r %s", folder);
  g_spawn_command_line_sync (remove, NULL, NULL, NULL, NULL);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  setlocale (LC_ALL, "C.UTF-8");
  CASE (minus_is_a_true_minus);
  CASE (zero_has_no_sign);
  CASE (what_cannot_be_computed_is_missing);
  CASE (differences_show_their_sign);
  CASE (short_numbers_have_no_needless_zeros);
  CASE (a_step_names_its_unit_once);
  CASE (a_small_step_shows_enough_digits_to_be_one);
  CASE (decimal_sign_is_the_locales);
  return check_end ();
}
