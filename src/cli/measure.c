/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plumbhold-calc measure: the bow alone from readings on the rig, what that changes, and writing it
 * into the file.
 */
#include "model/measure.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

#include "base/text.h"
#include "base/units.h"
#include "cli/command.h"
#include "cli/decide.h"
#include "cli/files.h"
#include "cli/options.h"
#include "cli/table.h"
#include "model/report.h"
#include "model/sure.h"
#include "store/readings-file.h"
#include "store/rig-file.h"

static PhJsonNode *
bow_node (const PhRig *rig, const PhMeasured *measured)
{
  const PhBowNumbers *bow = &measured->bow;
  PhJsonNode *node = ph_json_new_object ();
  ph_json_add_numbers (node, "com_mm", bow->com_mm, 3);
  ph_json_add_numbers (node, "gyration_mm", bow->gyration_mm, 3);
  ph_json_add_number (node, "mass_g", bow->mass_g);
  ph_json_add_text (node, "source",
                    ph_source_word (measured->refused ? rig->bow.source : PH_SOURCE_MEASURED));
  PhJsonNode *sd = ph_json_add_object (node, "sd");
  ph_json_add_numbers (sd, "com_mm", bow->sd_com_mm, 3);
  ph_json_add_numbers (sd, "gyration_mm", bow->sd_gyration_mm, 3);
  ph_json_add_number (sd, "mass_g", bow->sd_mass_g);
  return node;
}

static void
add_values (PhJsonNode *root, const char *key, const PhMeasured *measured, const double *values)
{
  if (measured->refused || measured->n == 1)
    ph_json_add_number (root, key, values[0]); /* not finite: null */
  else
    ph_json_add_numbers (root, key, values, 3);
}

static void
print_json (const PhRig *rig, const PhMeasured *measured)
{
  PhJsonNode *root = ph_json_new_object ();
  ph_json_add_text (root, "quantity", measured->quantity);
  add_values (root, "value", measured, measured->value);
  add_values (root, "sd", measured, measured->sd);
  if (!isnan (measured->spread_mm))
    ph_json_add_number (root, "spread_mm", measured->spread_mm);
  if (measured->refused)
    ph_json_add_text (root, "refused", measured->refused);
  ph_json_add (root, "bow", bow_node (rig, measured));
  ph_decide_print_json (root);
}

/* "1.2 ± 0.3 mm" for each number, its axis before it where there are three. */
static void
print_numbers (const char *what, const PhMeasured *measured, const double *value, const double *sd)
{
  static const char *const names[] = { "ahead ", "left ", "up " };
  bool inertia = measured->has_gyration;
  printf ("%s:", what);
  for (int k = 0; k < measured->n; k++)
    printf (inertia ? "%s%s%.4f ± %.4f kg·m²" : "%s%s%+.1f ± %.1f mm", k ? ", " : " ",
            inertia ? "" : names[k], value[k], sd[k]);
  printf ("\n");
}

static void
print_parts (const PhRig *rig, const PhMeasured *measured, PhUnits units)
{
  char mass[PH_CELL];
  if (measured->n_parts == 0)
    {
      printf ("No part is fitted in the file: nothing was taken out.\n");
      return;
    }
  printf ("Taken out by computation, since the reading is of the whole rig as the file has it: "
          "%zu part%s, %s\n ",
          measured->n_parts, measured->n_parts == 1 ? "" : "s",
          ph_decide_show (PH_QUANTITY_MASS, units, measured->parts_mass_g, mass));
  size_t listed = 0;
  for (size_t i = 0; i < rig->n_parts; i++)
    if (ph_rig_is_fitted (rig, i))
      {
        char *name = ph_text_cut (ph_part_name (&rig->parts[i]), 32);
        printf ("%s %s", listed++ ? "," : "", name);
        free (name);
      }
  printf ("\n");
}

static void
add_row (PhTable *table, const char *what, const char *unit, double before, double sd_before,
         double after, double sd_after)
{
  ph_table_add (table, "%s", what);
  ph_table_add (table, "%.1f", before);
  ph_table_add (table, "%.1f", sd_before);
  ph_table_add (table, "%.1f", after);
  ph_table_add (table, "%.1f", sd_after);
  ph_table_add (table, "%s", unit);
}

static const char *const axes[] = { "ahead", "left", "up" };

static void
add_bow_rows (PhTable *table, const PhRig *rig, const PhBowNumbers *bow)
{
  add_row (table, "Bow mass", "g", rig->bow.mass_g, ph_uncertain_sd (rig, -1, "mass_g", 0),
           bow->mass_g, bow->sd_mass_g);
  for (int c = 0; c < 3; c++)
    {
      char *what = ph_text_printf ("Bow balance point, %s", axes[c]);
      add_row (table, what, "mm", rig->bow.com_mm[c], ph_uncertain_sd (rig, -1, "com_mm", c),
               bow->com_mm[c], bow->sd_com_mm[c]);
      free (what);
    }
  for (int c = 0; c < 3; c++)
    {
      char *what = ph_text_printf ("Bow gyration about %c", "xyz"[c]);
      add_row (table, what, "mm", rig->bow.gyration_mm[c],
               ph_uncertain_sd (rig, -1, "gyration_mm", c), bow->gyration_mm[c],
               bow->sd_gyration_mm[c]);
      free (what);
    }
}

/* What follows for the rig. */
typedef struct
{
  double com_mm[3], cant_deg;
  PhSure sure;
} Follows;

static Follows
follows_of (const PhRig *rig)
{
  PhCompiled *compiled = ph_compile_rig (rig);
  PhReport *report = ph_report_new (rig, compiled);
  PhVec3 com = report->mass.com_m;
  Follows follows = { { ph_to_milli (com.x), ph_to_milli (com.y), ph_to_milli (com.z) },
                      ph_deg_from_rad (report->cant_rad),
                      ph_sure_of (rig) };
  ph_report_free (report);
  ph_compiled_free (compiled);
  return follows;
}

static void
print_changes (const PhRig *rig, const PhRig *after, const PhMeasured *measured)
{
  static const char *const headings[] = { "", ">before", ">±", ">after", ">±", "" };
  Follows was = follows_of (rig), is = follows_of (after);
  PhTable *table = ph_table_new (6, headings);
  add_bow_rows (table, rig, &measured->bow);
  for (int c = 0; c < 3; c++)
    {
      char *what = ph_text_printf ("Rig balance point, %s", axes[c]);
      add_row (table, what, "mm", was.com_mm[c], ph_to_milli (was.sure.com_sd_m[c]), is.com_mm[c],
               ph_to_milli (is.sure.com_sd_m[c]));
      free (what);
    }
  if (was.sure.settles && is.sure.settles)
    add_row (table, "Lean, + top to the right (hand apart)", "°", was.cant_deg,
             ph_deg_from_rad (was.sure.cant_sd_rad), is.cant_deg,
             ph_deg_from_rad (is.sure.cant_sd_rad));
  printf ("\n");
  ph_table_print (table, 0);
  ph_sure_clear (&was.sure);
  ph_sure_clear (&is.sure);
}

static void
print_table (const PhRig *rig, const PhRig *after, const PhMeasured *measured, PhUnits units)
{
  if (!isnan (measured->spread_mm))
    printf ("Plumb lines miss their common point by at most %.1f mm\n", measured->spread_mm);
  if (measured->refused)
    {
      printf ("Refused: %s.\n", measured->refused);
      return;
    }
  bool inertia = measured->has_gyration;
  print_numbers (inertia ? "Inertia of all that was read" : "Balance point of all that was read",
                 measured, measured->whole, measured->whole_sd);
  print_parts (rig, measured, units);
  print_numbers (inertia ? "Inertia of the bow alone" : "Balance point of the bow alone", measured,
                 measured->value, measured->sd);
  print_changes (rig, after, measured);
  printf ("\nWeighed and hung undrawn: at full draw limbs and cams stand farther back and the "
          "balance point\nmoves some millimetres; that is not modelled. Bow and parts count as "
          "independent, which for the\n"
          "very rig that was read makes ± of the rig too wide rather than too narrow.\n");
}

typedef struct
{
  bool json, write;
  PhUnits units;
} Asked;

static int
answer (const Asked *asked, const PhRig *rig, const PhReadings *readings, const char *path)
{
  PhMeasured measured = ph_measure (rig, readings);
  PhRig *after = ph_rig_copy (rig);
  char *why = NULL;
  int code = PH_EXIT_FINE;
  if (!measured.refused)
    ph_edit_use_measured (after, &measured);
  if (asked->write && !measured.refused && ph_rig_save (after, path, &why) != PH_OK)
    {
      fprintf (stderr, "plumbhold-calc measure: %s\n", why);
      free (why);
      code = PH_EXIT_ERRORS;
    }
  else if (asked->json)
    print_json (rig, &measured);
  else
    print_table (rig, after, &measured, asked->units);
  ph_rig_free (after);
  ph_measured_clear (&measured);
  return code;
}

static bool
load_readings (const char *path, PhReadings *readings)
{
  PhIssues issues = { 0 };
  bool fine = ph_readings_load (path, readings, &issues) == PH_OK;
  if (!fine)
    ph_files_print_errors (path, &issues);
  for (size_t i = 0; fine && i < issues.n; i++)
    {
      char *line = ph_issue_line (&issues.items[i]);
      fprintf (stderr, "plumbhold-calc measure: %s\n", line);
      free (line);
    }
  ph_issues_clear (&issues);
  return fine;
}

static int
run (const PhCommand *self, char **arguments)
{
  Asked asked = { 0 };
  const char *paths[2];
  const PhOption options[] = {
    { "--write", PH_OPTION_FLAG, &asked.write, NULL,
      "write the measured bow into FILE (a refused reading changes nothing)" },
    { "--json", PH_OPTION_FLAG, &asked.json, NULL, "JSON with every digit, instead of a table" },
    { "--units", PH_OPTION_UNITS, &asked.units, "metric|trade|mixed", "of the table" },
  };
  int code = ph_options_read (self, arguments, options, sizeof options / sizeof *options, paths);
  if (code != PH_OPTIONS_GO)
    return code;
  PhReadings readings;
  PhRig *rig = ph_files_load_rig (paths[0]);
  if (!rig)
    return PH_EXIT_ERRORS;
  code = PH_EXIT_ERRORS;
  if (load_readings (paths[1], &readings))
    {
      code = answer (&asked, rig, &readings, paths[0]);
      ph_readings_clear (&readings);
    }
  ph_rig_free (rig);
  return code;
}

const PhCommand ph_command_measure = {
  .name = "measure",
  .operands = "FILE READINGS",
  .summary = "The bow's own balance point or inertia from readings taken on the rig",
  .run = run,
};
