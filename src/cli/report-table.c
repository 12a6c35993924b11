/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The report for a person at a shell: the archer's words, the digits that the numbers deserve.
 * While the hand is only assumed, every number that rests on it says so.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "base/units.h"
#include "cli/report-print.h"
#include "cli/table.h"
#include "model/front-tip.h"
#include "model/shot-feel.h"

#define CELL 64

typedef struct
{
  const PhRig *rig;
  const PhCompiled *compiled;
  const PhReport *report;
  PhUnits units;
  PhTable *table;
} Page;

/* A value in the file's unit as text; "–" where there is none. */
static const char *
show (const Page *page, PhQuantity quantity, double file_value, char cell[CELL])
{
  if (!isfinite (file_value))
    return "–";
  return ph_quantity_print (file_value, quantity, page->units, ".", cell, CELL);
}

/* The same without a sign, for where a word tells the side. */
static const char *
show_size (const Page *page, PhQuantity quantity, double file_value, char cell[CELL])
{
  return show (page, quantity, fabs (file_value), cell);
}

/* A position in a column: always the same digits, so that the points stand below each other. */
static const char *
show_place (const Page *page, double m, char cell[CELL])
{
  if (isnan (m))
    return "–";
  double shown = ph_quantity_to_shown (PH_QUANTITY_LENGTH, page->units, ph_to_milli (m));
  int digits = ph_quantity_digits (PH_QUANTITY_LENGTH, page->units);
  snprintf (cell, CELL, "%.*f", digits, fabs (shown) < 0.5 * pow (10, -digits) ? 0 : shown);
  return cell;
}

/* Three figures, as a person compares inertias. */
static const char *
show_inertia (double kg_m2, char cell[CELL])
{
  int before = kg_m2 > 0 ? (int)floor (log10 (kg_m2)) + 1 : 1;
  int digits = before >= 3 ? 0 : before > -6 ? 3 - before : 9;
  snprintf (cell, CELL, "%.*f", digits, kg_m2);
  return cell;
}

static const char *
name_of (const PhRig *rig, int part)
{
  return part < 0 ? "Bow" : ph_part_name (&rig->parts[part]);
}

static void
add (Page *page, const char *label, const char *text)
{
  ph_table_add (page->table, "%s", label);
  ph_table_add (page->table, "%s", text);
}

static void
add_mass (Page *page)
{
  const PhReport *r = page->report;
  char a[CELL], b[CELL], c[CELL];
  add (page, "Mass", show (page, PH_QUANTITY_BOW_MASS, ph_to_milli (r->mass.mass_kg), a));
  char *text = ph_text_printf (
      "front %s, back %s, side %s", show (page, PH_QUANTITY_MASS, r->front_g, a),
      show (page, PH_QUANTITY_MASS, r->back_g, b), show (page, PH_QUANTITY_MASS, r->side_g, c));
  add (page, "Added weights", text);
  free (text);
}

static void
add_balance (Page *page)
{
  const PhVec3 *com = &page->report->mass.com_m;
  char a[CELL], b[CELL], c[CELL];
  char *text = ph_text_printf ("from the grip throat %s %s, %s %s, %s %s",
                               show_size (page, PH_QUANTITY_LENGTH, ph_to_milli (com->x), a),
                               com->x < 0 ? "behind" : "ahead",
                               show_size (page, PH_QUANTITY_LENGTH, ph_to_milli (com->y), b),
                               com->y < 0 ? "right" : "left",
                               show_size (page, PH_QUANTITY_LENGTH, ph_to_milli (com->z), c),
                               com->z < 0 ? "below" : "above");
  add (page, "Balance point", text);
  free (text);
}

/* "3.1° to the left, the bubble runs right", or "plumb". */
static char *
lean_words (const Page *page)
{
  const PhReport *r = page->report;
  char a[CELL], b[CELL];
  double cant = ph_deg_from_rad (r->cant_rad), bubble = ph_deg_from_rad (r->bubble_rad);
  show_size (page, PH_QUANTITY_ANGLE, cant, a);
  show_size (page, PH_QUANTITY_ANGLE, bubble, b);
  bool level = strspn (a, "0.°") == strlen (a);
  if (level)
    return ph_text_printf ("none: it stands plumb");
  const char *side = cant < 0 ? "left" : "right", *other = cant < 0 ? "right" : "left";
  if (page->rig->bow.kind != PH_BOW_COMPOUND)
    return ph_text_printf ("%s to the %s", a, side);
  return ph_text_printf ("%s to the %s, the bubble shows %s and sits to the %s", a, side, b, other);
}

static void
add_lean (Page *page)
{
  const PhReport *r = page->report;
  char *words = r->stable ? lean_words (page) : ph_text_printf ("none: %s", r->reason);
  char *text = r->hand_fitted ? ph_text_dup (words)
                              : ph_text_printf ("%s (assumed hand: K %.1f)", words,
                                                r->hand.stiffness_nm_per_rad);
  add (page, "Lean", text);
  free (text);
  free (words);
  if (isnan (r->cant_90_rad[0]))
    return;
  text = ph_text_printf ("%.1f° to %.1f° (to the right positive)",
                         ph_deg_from_rad (r->cant_90_rad[0]), ph_deg_from_rad (r->cant_90_rad[1]));
  add (page, "  9 times in 10", text);
  free (text);
}

static void
add_hand (Page *page)
{
  const PhReport *r = page->report;
  const char *is =
      r->hand_fitted ? "learnt from the bubble checks" : "assumed: do one bubble check to learn it";
  char a[CELL], b[CELL];
  char *text = ph_text_printf ("holds %s, twists %s of its own (%s)",
                               show (page, PH_QUANTITY_STIFFNESS, r->hand.stiffness_nm_per_rad, a),
                               show (page, PH_QUANTITY_MOMENT, r->hand.bias_nm, b), is);
  add (page, "Hand", text);
  free (text);
}

static void
add_roll (Page *page)
{
  static const char *const sides[] = { "left side heavy", "neither side heavy",
                                       "right side heavy" };
  const PhReport *r = page->report;
  char a[CELL], b[CELL];
  double above_mm = ph_to_milli (r->above_line_m);
  char *text = ph_text_printf ("%s: %s when held plumb", sides[ph_report_heavy_side (r) + 1],
                               show_size (page, PH_QUANTITY_MOMENT, r->roll_moment_nm, a));
  add (page, "Weight alone", text);
  free (text);
  text = ph_text_printf ("%s %s the line from grip to nock: %s",
                         show_size (page, PH_QUANTITY_LENGTH, above_mm, b),
                         above_mm > 0 ? "above" : "below",
                         above_mm > 0 ? "only the hand keeps it up" : "it rights itself");
  add (page, "Hangs", text);
  free (text);
}

static void
add_pull (Page *page)
{
  const PhReport *r = page->report;
  PhFrontTip tip = ph_front_tip (page->compiled, r);
  char a[CELL], b[CELL];
  show (page, PH_QUANTITY_MOMENT, r->pitch.moment_nm, a);
  char *text = isnan (tip.weight_kg)
                   ? ph_text_dup (a)
                   : ph_text_printf ("%s, like %s at the front bar's tip", a,
                                     show (page, PH_QUANTITY_MASS, ph_to_milli (tip.weight_kg), b));
  add (page, "Front pull", text);
  free (text);
}

static void
add_loads (Page *page)
{
  const PhPitch *pitch = &page->report->pitch;
  char a[CELL], b[CELL], c[CELL], d[CELL];
  double felt_g = ph_to_milli (pitch->bow_arm_load_n / PH_GRAVITY);
  char *text = ph_text_printf (
      "%s: feels like %s, weighs %s", show (page, PH_QUANTITY_FORCE, pitch->bow_arm_load_n, a),
      show (page, PH_QUANTITY_BOW_MASS, felt_g, b),
      show (page, PH_QUANTITY_BOW_MASS, ph_to_milli (page->report->mass.mass_kg), c));
  add (page, "Arm load", text);
  free (text);
  text = ph_text_printf ("%s %s at the string",
                         show_size (page, PH_QUANTITY_FORCE, pitch->nock_load_n, a),
                         pitch->nock_load_n < 0 ? "up" : "down");
  add (page, "Nock load", text);
  free (text);
  add (page, "Shoulder", show (page, PH_QUANTITY_MOMENT, pitch->shoulder_moment_nm, d));
}

static const char *
shot_words (PhShotFeel feel)
{
  switch (feel)
    {
    case PH_SHOT_STAYS:
      return "stays as it is held";
    case PH_SHOT_FORWARD_SLOWLY:
      return "tips forward, slowly";
    case PH_SHOT_FORWARD_QUICKLY:
      return "tips forward, quickly";
    case PH_SHOT_BACK_SLOWLY:
      return "tips back, slowly";
    case PH_SHOT_BACK_QUICKLY:
      return "tips back, quickly";
    case PH_SHOT_UNKNOWN:
    default:
      return "–";
    }
}

static void
add_motion (Page *page)
{
  const PhReport *r = page->report;
  const PhSym3 *grip = &r->mass.inertia_grip_kg_m2;
  char a[CELL], b[CELL], c[CELL];
  char *text = ph_text_printf ("%s, %s, %s kg·m² about the grip", show_inertia (grip->xx, a),
                               show_inertia (grip->yy, b), show_inertia (grip->zz, c));
  add (page, "Slow to roll, nod, swing", text);
  free (text);
  add (page, "At the shot", shot_words (ph_shot_feel (r->pitch.release_pitch_rad_s2)));
  double clear_mm = ph_to_milli (r->clearance_m);
  if (isnan (clear_mm))
    text = ph_text_dup ("– (nothing to measure, or the bow's brace height or length is not known)");
  else
    text = ph_text_printf ("%s, %s", show (page, PH_QUANTITY_LENGTH, clear_mm, a),
                           name_of (page->rig, r->clearance_part));
  add (page, "Clear of the string by", text);
  free (text);
}

static void
print_parts (const Page *page)
{
  bool inches = page->units != PH_UNITS_METRIC;
  const char *const headings[] = {
    "Part",
    ">mass",
    inches ? ">ahead in" : ">ahead mm",
    inches ? ">left in" : ">left mm",
    inches ? ">up in" : ">up mm",
    ">tips right by",
    ">pulls forward by",
  };
  PhTable *table = ph_table_new (7, headings);
  for (size_t i = 0; i < page->report->n_shares; i++)
    {
      const PhShare *share = &page->report->shares[i];
      char cell[CELL];
      char *name = ph_text_cut (name_of (page->rig, share->part), 32);
      double at[3] = { share->com_m.x, share->com_m.y, share->com_m.z };
      ph_table_add (table, "%s", name);
      ph_table_add (table, "%s",
                    show (page, share->part < 0 ? PH_QUANTITY_BOW_MASS : PH_QUANTITY_MASS,
                          ph_to_milli (share->mass_kg), cell));
      for (int c = 0; c < 3; c++)
        ph_table_add (table, "%s", show_place (page, at[c], cell));
      ph_table_add (table, "%s", show (page, PH_QUANTITY_MOMENT, share->roll_moment_nm, cell));
      ph_table_add (table, "%s", show (page, PH_QUANTITY_MOMENT, share->pitch_moment_nm, cell));
      free (name);
    }
  printf ("\n");
  ph_table_print (table, 0);
}

static void
print_bars (const Page *page)
{
  static const char *const headings[] = { "Bar that bends", ">tip hangs by", ">slope",
                                          ">rings, root clamped" };
  if (!page->report->n_bars)
    return;
  PhTable *table = ph_table_new (4, headings);
  for (size_t i = 0; i < page->report->n_bars; i++)
    {
      const PhBarBend *bar = &page->report->bars[i];
      char cell[CELL];
      char *name = ph_text_cut (name_of (page->rig, bar->part), 32);
      ph_table_add (table, "%s", name);
      ph_table_add (table, "%s",
                    show (page, PH_QUANTITY_DIAMETER, ph_to_milli (bar->beam.droop_m), cell));
      ph_table_add (table, "%.2f°", ph_deg_from_rad (bar->beam.slope_rad));
      ph_table_add (table, "%.1f Hz", bar->beam.clamped_hz);
      free (name);
    }
  printf ("\n");
  ph_table_print (table, 0);
}

static void
print_notes (const PhReport *report)
{
  for (size_t i = 0; i < report->notes.n; i++)
    {
      char *line = ph_issue_line (&report->notes.items[i]);
      printf ("%sNote: %s\n", i ? "" : "\n", line);
      free (line);
    }
}

void
ph_report_print_table (const PhRig *rig, const PhCompiled *compiled, const PhReport *report,
                       const char *name, PhUnits units)
{
  Page page = { rig, compiled, report, units, ph_table_new (2, NULL) };
  char *title = ph_text_cut (name, 80);
  printf ("%s\n\n", title);
  free (title);
  add_mass (&page);
  add_balance (&page);
  add_lean (&page);
  add_hand (&page);
  add_roll (&page);
  add_pull (&page);
  add_loads (&page);
  add_motion (&page);
  ph_table_print (page.table, 0);
  print_parts (&page);
  print_bars (&page);
  print_notes (report);
}
