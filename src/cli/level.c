/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plumbhold-calc level: the smallest change that brings the bubble where it is wanted.
 */
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

static void
append_answer (PhJsonNode *list, const PhRig *rig, const PhPartAnswer *answer)
{
  const PhOutcome *outcome = &answer->outcome;
  PhVec3 inertia = outcome->inertia_grip_kg_m2;
  PhJsonNode *node = ph_json_new_object ();
  PhJsonNode *changes = ph_json_add_array (node, "changes");
  for (int c = 0; c < answer->n_changes; c++)
    ph_decide_append_change (changes, rig, &answer->changes[c]);
  ph_json_add_number (node, "bubble_deg", ph_deg_from_rad (outcome->bubble_rad));
  ph_json_add_number (node, "chance", answer->chance);
  ph_json_add_number (node, "mass_g", ph_to_milli (outcome->mass_kg));
  ph_json_add_number (node, "front_pull_nm", outcome->front_pull_nm);
  ph_json_add_number (node, "arm_load_n", outcome->arm_load_n);
  ph_json_add_numbers (node, "inertia_grip_kg_m2", (double[]){ inertia.x, inertia.y, inertia.z },
                       3);
  ph_json_add_number (node, "disturbance", answer->disturbance);
  ph_json_append (list, node);
}

static void
print_json (const PhRig *rig, const PhPartAnswers *answers, size_t most)
{
  PhJsonNode *root = ph_json_new_object ();
  ph_json_add_number (root, "now_deg", ph_deg_from_rad (answers->now.bubble_rad));
  ph_json_add_number (root, "target_deg", answers->target_deg);
  PhJsonNode *list = ph_json_add_array (root, "answers");
  for (size_t i = 0; i < answers->n && i < most; i++)
    append_answer (list, rig, &answers->answers[i]);
  ph_json_add_text (root, "reason", answers->reason);
  ph_decide_print_json (root);
}

static double
percent (double from, double to)
{
  return from > 0 ? 100 * (to - from) / from : 0;
}

static void
add_row (PhTable *table, const PhRig *rig, const PhPartAnswers *answers, const PhPartAnswer *answer,
         PhUnits units)
{
  char cell[PH_CELL];
  const PhOutcome *now = &answers->now, *then = &answer->outcome;
  PhVec3 i = now->inertia_grip_kg_m2, j = then->inertia_grip_kg_m2;
  char *one = ph_decide_change_words (rig, &answer->changes[0]);
  char *two = answer->n_changes > 1 ? ph_decide_change_words (rig, &answer->changes[1]) : NULL;
  ph_table_add (table, "%s%s%s", one, two ? "; " : "", two ? two : "");
  ph_table_add (
      table, "%s",
      ph_decide_show (PH_QUANTITY_ANGLE, units, ph_deg_from_rad (then->bubble_rad), cell));
  if (answers->hand_fitted)
    ph_table_add (table, "%.0f %%", 100 * answer->chance);
  else
    ph_table_add (table, "–");
  ph_table_add (table, "%s",
                ph_decide_show_change (PH_QUANTITY_MASS, units,
                                       ph_to_milli (then->mass_kg - now->mass_kg), cell));
  ph_table_add (table, "%s",
                ph_decide_show_change (PH_QUANTITY_MOMENT, units,
                                       then->front_pull_nm - now->front_pull_nm, cell));
  ph_table_add (
      table, "%s",
      ph_decide_show_change (PH_QUANTITY_FORCE, units, then->arm_load_n - now->arm_load_n, cell));
  char roll[PH_CELL], nod[PH_CELL], swing[PH_CELL];
  ph_table_add (table, "%s %s %s", ph_decide_show_signed (percent (i.x, j.x), 1, roll),
                ph_decide_show_signed (percent (i.y, j.y), 1, nod),
                ph_decide_show_signed (percent (i.z, j.z), 1, swing));
  free (one);
  free (two);
}

static void
print_table (const PhRig *rig, const PhPartAnswers *answers, size_t most, PhUnits units)
{
  static const char *const headings[] = {
    "Change", ">bubble", ">chance", ">mass", ">front pull", ">arm load", ">roll, nod, swing %"
  };
  char now[PH_CELL], target[PH_CELL];
  printf ("Bubble now %s, wanted %s (+ when the top tips right)\n",
          ph_decide_show (PH_QUANTITY_ANGLE, units, ph_deg_from_rad (answers->now.bubble_rad), now),
          ph_decide_show (PH_QUANTITY_ANGLE, units, answers->target_deg, target));
  if (!answers->hand_fitted)
    printf ("The hand is only assumed: do one bubble check first.\n");
  if (answers->reason)
    printf ("No answer: %s.\n", answers->reason);
  if (answers->note)
    printf ("Note: %s.\n", answers->note);
  if (answers->n == 0)
    return;
  printf ("\n");
  PhTable *table = ph_table_new (sizeof headings / sizeof *headings, headings);
  for (size_t i = 0; i < answers->n && i < most; i++)
    add_row (table, rig, answers, &answers->answers[i], units);
  ph_table_print (table, 0);
}

typedef struct
{
  bool json, lighter, other_side;
  PhUnits units;
  double target_deg, tolerance_deg, most;
} Asked;

/* PH_OPTIONS_GO, or the exit code after saying what is wrong. */
static int
check (const PhCommand *self, const Asked *asked)
{
  if (asked->lighter && asked->other_side)
    return ph_options_wrong (self, "--lighter and --other-side are two different questions");
  if (fabs (asked->target_deg) >= 60)
    return ph_options_wrong (self, "--target should be between -60 and 60 degrees");
  if (asked->tolerance_deg < 0 || asked->tolerance_deg >= 60)
    return ph_options_wrong (self, "--tolerance should be from 0 to below 60 degrees");
  if (!(asked->most >= 1 && asked->most <= 1e6) || floor (asked->most) != asked->most)
    return ph_options_wrong (self, "--most should be a whole number from 1");
  return PH_OPTIONS_GO;
}

static void
answer (const PhRig *rig, const Asked *asked)
{
  PhLevelQuestion question = { asked->lighter      ? PH_LEVEL_LIGHTER
                               : asked->other_side ? PH_LEVEL_OTHER_SIDE
                                                   : PH_LEVEL_ALL,
                               asked->target_deg, asked->tolerance_deg };
  PhPartAnswers answers = ph_part_answers_of (rig, &question);
  if (asked->json)
    {
      print_json (rig, &answers, (size_t)asked->most);
      if (answers.note)
        fprintf (stderr, "plumbhold-calc level: %s\n", answers.note);
    }
  else
    print_table (rig, &answers, (size_t)asked->most, asked->units);
  ph_part_answers_clear (&answers);
}

static int
run (const PhCommand *self, char **arguments)
{
  Asked asked = { .target_deg = NAN, .tolerance_deg = PH_LEVEL_TOLERANCE_DEG, .most = 10 };
  const char *path;
  const PhOption options[] = {
    { "--target", PH_OPTION_NUMBER, &asked.target_deg, "DEG",
      "where the bubble is wanted; the archer's own wish by default" },
    { "--tolerance", PH_OPTION_NUMBER, &asked.tolerance_deg, "DEG", "how near; 0.5 by default" },
    { "--most", PH_OPTION_NUMBER, &asked.most, "N", "print at most N answers; 10 by default" },
    { "--lighter", PH_OPTION_FLAG, &asked.lighter, NULL,
      "for a level rig: less weight behind the grip" },
    { "--other-side", PH_OPTION_FLAG, &asked.other_side, NULL,
      "what a bar or bracket does on the other side of the bow" },
    { "--json", PH_OPTION_FLAG, &asked.json, NULL, "JSON with every digit, instead of a table" },
    { "--units", PH_OPTION_UNITS, &asked.units, "metric|trade|mixed", "of the table" },
  };
  int code = ph_options_read (self, arguments, options, sizeof options / sizeof *options, &path);
  if (code == PH_OPTIONS_GO)
    code = check (self, &asked);
  if (code != PH_OPTIONS_GO)
    return code;
  PhRig *rig = ph_files_load_rig (path);
  if (!rig)
    return PH_EXIT_ERRORS;
  answer (rig, &asked);
  ph_rig_free (rig);
  return PH_EXIT_FINE;
}

const PhCommand ph_command_level = {
  .name = "level",
  .operands = "FILE",
  .summary = "The smallest changes that bring the bubble where it is wanted",
  .run = run,
};
