/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plumbhold-calc report: everything that follows from one rig.
 */
#include <stdlib.h>

#include "base/text.h"
#include "cli/command.h"
#include "cli/files.h"
#include "cli/options.h"
#include "cli/report-print.h"
#include "store/rig-file.h"

static int
run (const PhCommand *self, char **arguments)
{
  bool json = false;
  PhUnits units = PH_UNITS_METRIC;
  const char *path;
  const PhOption options[] = {
    { "--json", PH_OPTION_FLAG, &json, NULL,
      "one JSON object with every digit, instead of a table" },
    { "--units", PH_OPTION_UNITS, &units, "metric|trade|mixed",
      "of the table: metric (default), trade (in, oz, lb), mixed (inch bars, ounce weights)" },
  };
  int code = ph_options_read (self, arguments, options, 2, &path);
  if (code != PH_OPTIONS_GO)
    return code;
  PhRig *rig = ph_files_load_rig (path);
  if (!rig)
    return PH_EXIT_ERRORS;
  PhCompiled *compiled = ph_compile_rig (rig);
  PhReport *report = ph_report_new (rig, compiled);
  char *name = rig->name ? ph_text_dup (rig->name) : ph_rig_name_of_path (path);
  if (json)
    ph_report_print_json (rig, report, name);
  else
    ph_report_print_table (rig, compiled, report, name, units);
  free (name);
  ph_report_free (report);
  ph_compiled_free (compiled);
  ph_rig_free (rig);
  return PH_EXIT_FINE;
}

const PhCommand ph_command_report = {
  .name = "report",
  .operands = "FILE",
  .summary = "Mass, balance, lean, loads and inertia of the rig in FILE, and each part's share",
  .run = run,
};
