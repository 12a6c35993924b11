/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plumbhold-calc sure: how sure balance point and lean are, and which number matters most.
 */
#include "model/sure.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "base/units.h"
#include "cli/command.h"
#include "cli/decide.h"
#include "cli/files.h"
#include "cli/options.h"
#include "cli/table.h"

/** The table names these many at least, and all with this share. */
#define NAMED_LEAST 3
#define NAMED_SHARE 0.005

static const char *
id_of (const PhRig *rig, int part)
{
  return part < 0 ? "bow" : rig->parts[part].id;
}

static void
print_json (const PhRig *rig, const PhSure *sure)
{
  PhJsonNode *root = ph_json_new_object ();
  ph_json_add_number (root, "cant_sd_deg", ph_deg_from_rad (sure->cant_sd_rad));
  ph_json_add_numbers (root, "com_sd_mm",
                       (double[]){ ph_to_milli (sure->com_sd_m[0]), ph_to_milli (sure->com_sd_m[1]),
                                   ph_to_milli (sure->com_sd_m[2]) },
                       3);
  PhJsonNode *list = ph_json_add_array (root, "from");
  for (size_t i = 0; i < sure->n; i++)
    {
      const PhSureFrom *from = &sure->from[i];
      PhJsonNode *node = ph_json_new_object ();
      ph_json_add_text (node, "what", id_of (rig, from->part));
      ph_json_add_text (node, "key", from->key);
      ph_json_add_text (node, "source", ph_source_word (from->source));
      ph_json_add_number (node, "share_of_cant_variance", from->share);
      ph_json_add_number (node, "if_measured_cant_sd_deg",
                          ph_deg_from_rad (from->if_measured_cant_sd_rad));
      ph_json_append (list, node);
    }
  ph_decide_print_json (root);
}

static void
print_from (const PhRig *rig, const PhSure *sure)
{
  static const char *const headings[] = { "What matters most", "", "known as", ">of the lean",
                                          ">if measured" };
  PhTable *table = ph_table_new (5, headings);
  for (size_t i = 0; i < sure->n && (i < NAMED_LEAST || sure->from[i].share >= NAMED_SHARE); i++)
    {
      const PhSureFrom *from = &sure->from[i];
      char *name =
          ph_text_cut (from->part < 0 ? "Bow" : ph_part_name (&rig->parts[from->part]), 32);
      ph_table_add (table, "%s", name);
      ph_table_add (table, "%s", from->key);
      bool angle = strstr (from->key, "_deg") != NULL;
      ph_table_add (table, "%s", angle ? "set by hand" : ph_source_word (from->source));
      ph_table_add (table, "%.0f %%", 100 * from->share);
      ph_table_add (table, "±%.2f°", ph_deg_from_rad (from->if_measured_cant_sd_rad));
      free (name);
    }
  printf ("\n");
  ph_table_print (table, 0);
}

static void
print_table (const PhRig *rig, const PhSure *sure, PhUnits units)
{
  char x[PH_CELL], y[PH_CELL], z[PH_CELL];
  printf ("Balance point known within (one standard deviation): ahead %s, sideways %s, up %s\n",
          ph_decide_show (PH_QUANTITY_LENGTH, units, ph_to_milli (sure->com_sd_m[0]), x),
          ph_decide_show (PH_QUANTITY_LENGTH, units, ph_to_milli (sure->com_sd_m[1]), y),
          ph_decide_show (PH_QUANTITY_LENGTH, units, ph_to_milli (sure->com_sd_m[2]), z));
  if (!sure->settles)
    {
      printf ("This rig does not settle: there is no lean to be sure of.\n");
      return;
    }
  printf ("Lean known within ±%.2f° as far as the rig's numbers go;\n"
          "beside that the hand, %s: ±%.2f°\n",
          ph_deg_from_rad (sure->cant_sd_rad), sure->hand_fitted ? "fitted" : "only assumed",
          ph_deg_from_rad (sure->hand_cant_sd_rad));
  if (sure->absorbed_by >= 0)
    printf ("Bubble check %d was read on this very rig (mass within %.1f g, balance point within "
            "%.2f mm):\nthe hand fitted to it has taken up the bow's own side offset, which is "
            "not counted twice.\n",
            sure->absorbed_by + 1, PH_SAME_RIG_G, PH_SAME_RIG_MM);
  print_from (rig, sure);
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
  int code = ph_options_read (self, arguments, options, sizeof options / sizeof *options, &path);
  if (code != PH_OPTIONS_GO)
    return code;
  PhRig *rig = ph_files_load_rig (path);
  if (!rig)
    return PH_EXIT_ERRORS;
  PhSure sure = ph_sure_of (rig);
  if (json)
    print_json (rig, &sure);
  else
    print_table (rig, &sure, units);
  ph_sure_clear (&sure);
  ph_rig_free (rig);
  return PH_EXIT_FINE;
}

const PhCommand ph_command_sure = {
  .name = "sure",
  .operands = "FILE",
  .summary = "How sure the balance point and the lean are, and what measuring would tell most",
  .run = run,
};
