/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plumbhold-calc steps: what one more of everything does.
 */
#include <stdio.h>
#include <stdlib.h>

#include "base/text.h"
#include "base/units.h"
#include "cli/command.h"
#include "cli/decide.h"
#include "cli/files.h"
#include "cli/options.h"
#include "cli/table.h"

static void
print_json (const PhRig *rig, const PhPartStep *steps, size_t n)
{
  PhJsonNode *root = ph_json_new_object ();
  PhJsonNode *list = ph_json_add_array (root, "adjustables");
  for (size_t i = 0; i < n; i++)
    {
      const PhPartStep *step = &steps[i];
      const PhStepEffect *effect = &step->effect;
      PhVec3 turned = ph_vec3_scale (effect->inertia_part, 100);
      PhJsonNode *node = ph_json_new_object ();
      ph_json_add_text (node, "part", rig->parts[step->part].id);
      ph_json_add_text (node, "key", step->key);
      ph_json_add_number (node, "now", step->now);
      ph_json_add_number (node, "step", step->step);
      ph_json_add_number (node, "lo", step->lo);
      ph_json_add_number (node, "hi", step->hi);
      ph_json_add_number (node, "bubble_deg_per_step", ph_deg_from_rad (effect->bubble_rad));
      ph_json_add_number (node, "front_pull_nm_per_step", effect->front_pull_nm);
      ph_json_add_number (node, "arm_load_n_per_step", effect->arm_load_n);
      ph_json_add_number (node, "mass_g_per_step", ph_to_milli (effect->mass_kg));
      ph_json_add_numbers (node, "inertia_percent_per_step",
                           (double[]){ turned.x, turned.y, turned.z }, 3);
      ph_json_append (list, node);
    }
  ph_decide_print_json (root);
}

static void
add_row (PhTable *table, const PhRig *rig, const PhPartStep *step, PhUnits units)
{
  char cell[PH_CELL];
  const PhStepEffect *effect = &step->effect;
  char *name = ph_text_cut (ph_part_name (&rig->parts[step->part]), 32);
  ph_table_add (table, "%s", name);
  ph_table_add (table, "%s", ph_decide_key_words (step->key));
  ph_table_add (table, "%g", step->now);
  ph_table_add (table, "%g to %g", step->lo, step->hi);
  ph_table_add (
      table, "%s",
      ph_decide_show_change (PH_QUANTITY_ANGLE, units, ph_deg_from_rad (effect->bubble_rad), cell));
  ph_table_add (table, "%s",
                ph_decide_show_change (PH_QUANTITY_MOMENT, units, effect->front_pull_nm, cell));
  ph_table_add (table, "%s",
                ph_decide_show_change (PH_QUANTITY_FORCE, units, effect->arm_load_n, cell));
  ph_table_add (
      table, "%s",
      ph_decide_show_change (PH_QUANTITY_MASS, units, ph_to_milli (effect->mass_kg), cell));
  char roll[PH_CELL], nod[PH_CELL], swing[PH_CELL];
  ph_table_add (table, "%s %s %s", ph_decide_show_signed (100 * effect->inertia_part.x, 2, roll),
                ph_decide_show_signed (100 * effect->inertia_part.y, 2, nod),
                ph_decide_show_signed (100 * effect->inertia_part.z, 2, swing));
  free (name);
}

static void
print_table (const PhRig *rig, const PhPartStep *steps, size_t n, PhUnits units)
{
  static const char *const headings[] = { "Part",      "what",    ">now",
                                          "may be",    ">bubble", ">front pull",
                                          ">arm load", ">mass",   ">roll, nod, swing %" };
  if (n == 0)
    {
      printf ("Nothing on this rig may change: every part is locked or has no step within its "
              "limits.\n");
      return;
    }
  printf (
      "One more degree, or one more weight, does this (bubble: + when the top tips right):\n\n");
  PhTable *table = ph_table_new (sizeof headings / sizeof *headings, headings);
  for (size_t i = 0; i < n; i++)
    add_row (table, rig, &steps[i], units);
  ph_table_print (table, 0);
}

static int
run (const PhCommand *self, char **arguments)
{
  bool json = false;
  PhUnits units = PH_UNITS_METRIC;
  const char *path;
  const PhOption options[] = {
    { "--json", PH_OPTION_FLAG, &json, NULL, "JSON with every digit, instead of a table" },
    { "--units", PH_OPTION_UNITS, &units, "metric|trade|mixed", "of the table" },
  };
  int code = ph_options_read (self, arguments, options, 2, &path);
  if (code != PH_OPTIONS_GO)
    return code;
  PhRig *rig = ph_files_load_rig (path);
  if (!rig)
    return PH_EXIT_ERRORS;
  size_t n;
  PhPartStep *steps = ph_part_steps_of (rig, &n);
  if (json)
    print_json (rig, steps, n);
  else
    print_table (rig, steps, n, units);
  free (steps);
  ph_rig_free (rig);
  return PH_EXIT_FINE;
}

const PhCommand ph_command_steps = {
  .name = "steps",
  .operands = "FILE",
  .summary = "What one more degree or weight of each part that may change does",
  .run = run,
};
