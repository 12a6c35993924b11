/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Whatever the bytes, loading ends with a rig or with reasons; and a rig that loads can be
 * computed, saved and loaded again as the same rig. Breaks are abort (). With Clang:
 *   meson setup --native-file … BUILD && ninja -C BUILD fuzz-rig-libfuzzer
 *   BUILD/tests/fuzz/fuzz-rig-libfuzzer -dict=tests/fuzz/rig.dict CORPUS tests/fuzz/seeds
 */
#include "fuzz/fuzz-rig.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "model/report.h"
#include "store/catalogue.h"
#include "store/rig-file.h"

#define REQUIRE(condition)                                                                         \
  do                                                                                               \
    {                                                                                              \
      if (!(condition))                                                                            \
        {                                                                                          \
          fprintf (stderr, "%s:%d: does not hold: %s\n", __FILE__, __LINE__, #condition);          \
          abort ();                                                                                \
        }                                                                                          \
    }                                                                                              \
  while (0)

/* Every message fits on its line and is well-formed text. */
static void
require_good_issues (const PhIssues *issues)
{
  for (size_t i = 0; i < issues->n; i++)
    {
      char *line = ph_issue_line (&issues->items[i]);
      size_t bad;
      REQUIRE (*line && ph_text_is_utf8 (line, strlen (line), &bad));
      REQUIRE (ph_text_length (line) <= 900);
      REQUIRE (!strchr (line, '\n'));
      free (line);
    }
}

static void
require_report (const PhRig *rig)
{
  PhCompiled *compiled = ph_compile_rig (rig);
  PhReport *report = ph_report_new (rig, compiled);
  REQUIRE (isfinite (report->mass.mass_kg) && report->mass.mass_kg > 0);
  REQUIRE (isfinite (report->mass.com_m.x) && isfinite (report->pitch.shoulder_moment_nm));
  for (int i = 0; i < 3; i++)
    REQUIRE (isfinite (report->mass.principal_kg_m2[i]));
  REQUIRE (report->stable == isfinite (report->cant_rad));
  REQUIRE (report->stable == (report->reason == NULL));
  require_good_issues (&report->notes);
  ph_report_free (report);
  ph_compiled_free (compiled);
}

static void
require_round_trip (const PhRig *rig)
{
  PhIssues issues = { 0 };
  PhRig *again = NULL;
  size_t size;
  char *once = ph_rig_print (rig, &size);
  REQUIRE (ph_rig_parse (once, size, &again, &issues) == PH_OK);
  REQUIRE (ph_rig_equal (rig, again));
  char *twice = ph_rig_print (again, NULL);
  REQUIRE (strcmp (once, twice) == 0);
  free (once);
  free (twice);
  ph_rig_free (again);
  ph_issues_clear (&issues);
}

static void
require_parts (const char *bytes, size_t size)
{
  PhIssues issues = { 0 };
  PhPart *parts = NULL;
  size_t n = 0;
  PhCatalogue catalogue = { 0 };
  if (ph_fragment_parse (bytes, size, &parts, &n, &issues) != PH_OK)
    REQUIRE (!parts && ph_issues_errors (&issues));
  for (size_t i = 0; i < n; i++)
    ph_part_clear (&parts[i]);
  free (parts);
  ph_issues_clear (&issues);
  if (ph_catalogue_parse (bytes, size, &catalogue, &issues) != PH_OK)
    REQUIRE (!catalogue.items && ph_issues_errors (&issues));
  require_good_issues (&issues);
  ph_catalogue_clear (&catalogue);
  ph_issues_clear (&issues);
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  const char *bytes = (const char *)data;
  PhIssues issues = { 0 };
  PhRig *rig = NULL;
  if (size > PH_RIG_FILE_MOST)
    return 0;
  PhStatus status = ph_rig_parse (bytes, size, &rig, &issues);
  REQUIRE ((status == PH_OK) == (rig != NULL));
  REQUIRE ((status == PH_OK) == (ph_issues_errors (&issues) == 0));
  require_good_issues (&issues);
  ph_issues_clear (&issues);
  if (rig)
    {
      require_report (rig);
      require_round_trip (rig);
    }
  ph_rig_free (rig);
  require_parts (bytes, size);
  return 0;
}
