/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plumbhold-calc hand: what the bubble checks say of the hand, which one to do next, and recording
 * one.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "base/text.h"
#include "base/units.h"
#include "cli/command.h"
#include "cli/decide.h"
#include "cli/files.h"
#include "cli/options.h"
#include "cli/table.h"
#include "model/checks.h"
#include "store/rig-file.h"

typedef struct
{
  const PhRig *rig;
  PhHand hand;
  bool fitted;
  bool known;            /* false: no hand explains the checks */
  PhBubbleCheck *checks; /* every check, those set aside too, in file order */
  PhPartChecks next;
} Page;

static Page
page_of (const PhRig *rig)
{
  Page page = { .rig = rig };
  page.known = ph_compile_hand (rig, &page.hand, &page.fitted) == PH_OK;
  if (!page.known)
    page.hand = (PhHand){ NAN, NAN, NAN, NAN, NAN };
  PhRig *all = ph_rig_copy (rig);
  for (size_t i = 0; i < all->archer.n_checks; i++)
    all->archer.checks[i].aside = false;
  size_t n;
  page.checks = ph_compile_checks (all, &n, NULL);
  page.next = ph_part_checks_of (rig);
  ph_rig_free (all);
  return page;
}

static double
predicted_deg (const Page *page, size_t i)
{
  if (!page->known)
    return NAN;
  return ph_deg_from_rad (
      ph_check_predict (&page->checks[i], page->hand.stiffness_nm_per_rad, page->hand.bias_nm));
}

static double
residual (const Page *page, size_t i)
{
  return page->known ? ph_check_residual (&page->checks[i], &page->hand) : (double)NAN;
}

static void
add_tests (PhJsonNode *root, const Page *page)
{
  PhJsonNode *list = ph_json_add_array (root, "tests");
  for (size_t i = 0; i < page->rig->archer.n_checks; i++)
    {
      PhJsonNode *node = ph_json_new_object ();
      ph_json_add_number (node, "index", (double)i);
      ph_json_add_number (node, "bubble_deg", page->rig->archer.checks[i].bubble_deg);
      ph_json_add_number (node, "predicted_deg", predicted_deg (page, i));
      ph_json_add_number (node, "residual_sd", residual (page, i));
      ph_json_add_flag (node, "disagrees", fabs (residual (page, i)) > PH_CHECK_DISAGREES);
      ph_json_append (list, node);
    }
}

static void
print_json (const Page *page)
{
  const PhHand *hand = &page->hand;
  PhJsonNode *root = ph_json_new_object ();
  ph_json_add_text (root, "is", page->fitted ? "fitted" : "assumed");
  ph_json_add_number (root, "stiffness_nm_per_rad", hand->stiffness_nm_per_rad);
  ph_json_add_number (root, "bias_nm", hand->bias_nm);
  ph_json_add_numbers (root, "covariance", (double[]){ hand->kk, hand->kb, hand->bb }, 3);
  add_tests (root, page);
  PhJsonNode *list = ph_json_add_array (root, "next");
  for (int i = 0; i < page->next.n; i++)
    {
      PhJsonNode *node = ph_json_new_object ();
      PhJsonNode *changes = ph_json_add_array (node, "changes");
      if (page->next.checks[i].changed)
        ph_decide_append_change (changes, page->rig, &page->next.checks[i].change);
      ph_json_add_number (node, "interval_now_deg", page->next.interval_now_deg);
      ph_json_add_number (node, "interval_then_deg", page->next.checks[i].interval_then_deg);
      ph_json_append (list, node);
    }
  ph_json_add_flag (root, "enough", page->next.enough);
  ph_decide_print_json (root);
}

static void
print_tests (const Page *page, PhUnits units)
{
  static const char *const headings[] = { "Check", ">read", ">predicted", ">off by sd", "" };
  if (page->rig->archer.n_checks == 0)
    return;
  PhTable *table = ph_table_new (5, headings);
  for (size_t i = 0; i < page->rig->archer.n_checks; i++)
    {
      const PhCheck *check = &page->rig->archer.checks[i];
      char cell[PH_CELL];
      char *date = ph_text_cut (check->date ? check->date : "no date", 20);
      bool disagrees = fabs (residual (page, i)) > PH_CHECK_DISAGREES;
      ph_table_add (table, "%zu  %s", i + 1, date);
      ph_table_add (table, "%s",
                    ph_decide_show (PH_QUANTITY_ANGLE, units, check->bubble_deg, cell));
      ph_table_add (table, "%s",
                    ph_decide_show (PH_QUANTITY_ANGLE, units, predicted_deg (page, i), cell));
      ph_table_add (table, "%s", ph_decide_show_signed (residual (page, i), 1, cell));
      ph_table_add (table, "%s", check->aside ? "set aside" : disagrees ? "disagrees" : "");
      free (date);
    }
  printf ("\n");
  ph_table_print (table, 0);
}

static void
print_next (const Page *page)
{
  if (page->next.enough)
    printf ("\nEnough checks: another would hardly tell more.\n");
  printf ("\nNext bubble check");
  if (isnan (page->next.interval_now_deg))
    printf (":\n");
  else
    printf (" (the lean is known within %.1f° now):\n", page->next.interval_now_deg);
  for (int i = 0; i < page->next.n; i++)
    {
      const PhPartCheck *check = &page->next.checks[i];
      char *words = check->changed ? ph_decide_change_words (page->rig, &check->change)
                                   : ph_text_dup ("the rig as it is");
      printf ("  %s", words);
      if (!isnan (check->interval_then_deg))
        printf (": then within %.1f°", check->interval_then_deg);
      printf ("\n");
      free (words);
    }
  if (page->next.n == 0)
    printf ("  none: no rig within reach settles\n");
}

static void
print_table (const Page *page, PhUnits units)
{
  const PhHand *hand = &page->hand;
  if (!page->known)
    printf ("No hand could be found that explains the bubble checks.\n");
  else if (page->fitted)
    printf ("Hand: holds against roll with %.2f ± %.2f N·m/rad, own twist %+.3f ± %.3f N·m\n",
            hand->stiffness_nm_per_rad, sqrt (hand->kk), hand->bias_nm, sqrt (hand->bb));
  else
    printf ("Hand: assumed, %.2f N·m/rad, own twist %+.3f N·m; do one bubble check\n",
            hand->stiffness_nm_per_rad, hand->bias_nm);
  print_tests (page, units);
  print_next (page);
}

/* Adding. */

typedef struct
{
  bool json, write;
  PhUnits units;
  double bubble_deg, sd_deg; /* NAN: not given */
  const char *date;
} Asked;

static void
today (char date[16], char at[32])
{
  time_t now = time (NULL);
  struct tm local, utc;
  localtime_r (&now, &local);
  gmtime_r (&now, &utc);
  strftime (date, 16, "%Y-%m-%d", &local);
  strftime (at, 32, "%Y-%m-%dT%H:%M:%SZ", &utc);
}

/* What the hand gave before the reading. */
static void
seal (const PhRig *rig, PhReading *reading)
{
  PhCompiled *compiled = ph_compile_rig (rig);
  PhReport *report = ph_report_new (rig, compiled);
  reading->predicted_deg = ph_deg_from_rad (report->bubble_rad);
  reading->predicted_90_deg = ph_checks_sure_deg (report);
  ph_report_free (report);
  ph_compiled_free (compiled);
}

/* The exit code; PH_OPTIONS_GO where the reading is in the rig. */
static int
add (const PhCommand *self, const Asked *asked, PhRig *rig)
{
  char date[16], at[32];
  PhIssues issues = { 0 };
  today (date, at);
  PhReading reading = ph_reading_of (&asked->bubble_deg, 1);
  reading.sd_deg = asked->sd_deg;
  reading.date = asked->date ? asked->date : date;
  seal (rig, &reading);
  reading.predicted_at = isnan (reading.predicted_deg) ? NULL : at;
  if (ph_edit_add_check (rig, &reading, NULL, &issues))
    return PH_OPTIONS_GO;
  const PhIssue *issue = &issues.items[0];
  for (size_t i = 0; i < issues.n && issue->is_note; i++)
    issue = &issues.items[i];
  char *line = ph_issue_line (issue);
  int code = ph_options_wrong (self, "the reading cannot be recorded: %s", line);
  free (line);
  ph_issues_clear (&issues);
  return code;
}

static int
save (const PhRig *rig, const char *path)
{
  char *why = NULL;
  if (ph_rig_save (rig, path, &why) == PH_OK)
    return PH_OPTIONS_GO;
  fprintf (stderr, "plumbhold-calc hand: %s\n", why);
  free (why);
  return PH_EXIT_ERRORS;
}

static int
answer (const PhCommand *self, const Asked *asked, PhRig *rig, const char *path)
{
  if (!isnan (asked->bubble_deg))
    {
      int code = add (self, asked, rig);
      if (code == PH_OPTIONS_GO && asked->write)
        code = save (rig, path);
      if (code != PH_OPTIONS_GO)
        return code;
    }
  Page page = page_of (rig);
  if (asked->json)
    print_json (&page);
  else
    print_table (&page, asked->units);
  free (page.checks);
  return PH_EXIT_FINE;
}

static int
run (const PhCommand *self, char **arguments)
{
  Asked asked = { .bubble_deg = NAN, .sd_deg = NAN };
  const char *path;
  const PhOption options[] = {
    { "--add", PH_OPTION_NUMBER, &asked.bubble_deg, "BUBBLE",
      "a reading of the rig as it stands, degrees, + when the top tips right" },
    { "--sd", PH_OPTION_NUMBER, &asked.sd_deg, "SD", "its standard deviation; 0.3 by default" },
    { "--date", PH_OPTION_TEXT, &asked.date, "D", "its day, as 2026-03-01; today by default" },
    { "--write", PH_OPTION_FLAG, &asked.write, NULL, "write the reading into FILE" },
    { "--json", PH_OPTION_FLAG, &asked.json, NULL, "JSON with every digit, instead of a table" },
    { "--units", PH_OPTION_UNITS, &asked.units, "metric|trade|mixed", "of the table" },
  };
  int code = ph_options_read (self, arguments, options, sizeof options / sizeof *options, &path);
  if (code != PH_OPTIONS_GO)
    return code;
  if (isnan (asked.bubble_deg) && (asked.write || asked.date || !isnan (asked.sd_deg)))
    return ph_options_wrong (self, "--sd, --date and --write belong to --add");
  PhRig *rig = ph_files_load_rig (path);
  if (!rig)
    return PH_EXIT_ERRORS;
  code = answer (self, &asked, rig, path);
  ph_rig_free (rig);
  return code;
}

const PhCommand ph_command_hand = {
  .name = "hand",
  .operands = "FILE",
  .summary = "What the bubble checks say of the archer's hand, and which check to do next",
  .run = run,
};
