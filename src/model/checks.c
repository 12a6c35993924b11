/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Checks are added on a copy of the rig that the whole check must pass; small beside the fit that
 * follows.
 */
#include "model/checks.h"

#include <assert.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "base/units.h"
#include "model/check.h"
#include "model/edit-own.h"
#include "model/fields.h"

bool
ph_is_date (const char *text)
{
  static const int days[] = { 31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31 };
  if (strlen (text) != 10 || text[4] != '-' || text[7] != '-')
    return false;
  for (int i = 0; i < 10; i++)
    if (i != 4 && i != 7 && !(text[i] >= '0' && text[i] <= '9'))
      return false;
  int year = atoi (text), month = atoi (text + 5), day = atoi (text + 8);
  if (year < 1 || month < 1 || month > 12 || day < 1 || day > days[month - 1])
    return false;
  bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
  return month != 2 || day < 29 || leap;
}

PhReading
ph_reading_of (const double *draws_deg, size_t n_draws)
{
  return (PhReading){ .draws_deg = draws_deg,
                      .n_draws = n_draws,
                      .sd_deg = NAN,
                      .predicted_deg = NAN,
                      .predicted_90_deg = NAN };
}

double
ph_reading_mean_deg (const PhReading *reading)
{
  double sum = 0;
  for (size_t i = 0; i < reading->n_draws; i++)
    sum += reading->draws_deg[i];
  return sum / (double)reading->n_draws;
}

double
ph_reading_sd_deg (const PhReading *reading)
{
  if (!isnan (reading->sd_deg))
    return reading->sd_deg;
  if (reading->n_draws < 2)
    return PH_DRAW_SD_DEG;
  double mean = ph_reading_mean_deg (reading), squares = 0, n = (double)reading->n_draws;
  for (size_t i = 0; i < reading->n_draws; i++)
    squares += (reading->draws_deg[i] - mean) * (reading->draws_deg[i] - mean);
  return fmax (PH_DRAWS_SD_LEAST_DEG, sqrt (squares / (n - 1)) / sqrt (n));
}

double
ph_checks_predict_deg (const PhRig *rig)
{
  PhCompiled *compiled = ph_compile_rig (rig);
  PhReport *report = ph_report_new (rig, compiled);
  double predicted = ph_deg_from_rad (report->bubble_rad);
  ph_report_free (report);
  ph_compiled_free (compiled);
  return predicted;
}

double
ph_checks_sure_deg (const PhReport *report)
{
  if (!report->hand_fitted || !report->stable)
    return NAN;
  /* The bubble's turn by the cant's: bubble = asin (cosβ sinφ). */
  double s = report->roll.cos_beta * sin (report->cant_rad);
  double by_cant = report->roll.cos_beta * cos (report->cant_rad) / sqrt (1 - s * s);
  return PH_SD_90 * ph_deg_from_rad (report->cant_sd_rad * by_cant);
}

static void
set_number (PhCheck *check, const char *key, double value)
{
  size_t index = 0;
  const PhField *field = ph_field_find (PH_OBJECT_CHECK, key, &index);
  ph_field_set_number (field, check, 0, value);
  check->given |= (uint64_t)1 << index;
}

static void
set_text (PhCheck *check, const char *key, const char *text)
{
  size_t index = 0;
  const PhField *field = ph_field_find (PH_OBJECT_CHECK, key, &index);
  uint64_t bit = (uint64_t)1 << index;
  ph_field_set_text (field, check, text && *text ? text : NULL);
  check->given = text && *text ? check->given | bit : check->given & ~bit;
}

/* What the field table does not say of a reading; the rest is the rig's check. */
static bool
is_reading (const PhReading *reading, size_t i, PhIssues *issues)
{
  char key[64];
  const PhField *bubble = ph_field_find (PH_OBJECT_CHECK, "bubble_deg", NULL);
  if (reading->n_draws < 1 || reading->n_draws > PH_DRAWS_MOST)
    {
      snprintf (key, sizeof key, "hand.bubble_tests[%zu].draws_deg", i);
      ph_issues_add (issues, PH_WHERE_ARCHER, NULL, key, false,
                     "has %zu numbers; a check should be one to %d draws", reading->n_draws,
                     PH_DRAWS_MOST);
      return false;
    }
  for (size_t k = 0; k < reading->n_draws; k++)
    {
      char *why;
      if (ph_field_accepts (bubble, reading->draws_deg[k], &why))
        continue;
      snprintf (key, sizeof key, "hand.bubble_tests[%zu].bubble_deg", i);
      ph_issues_add (issues, PH_WHERE_ARCHER, NULL, key, false, "%s", why);
      free (why);
      return false;
    }
  if (reading->date && !ph_is_date (reading->date))
    {
      char *shown = ph_text_cut (reading->date, 40);
      snprintf (key, sizeof key, "hand.bubble_tests[%zu].date", i);
      ph_issues_add (issues, PH_WHERE_ARCHER, NULL, key, false,
                     "is \"%s\"; it should be a day such as 2026-03-01", shown);
      free (shown);
      return false;
    }
  return true;
}

static void
write_reading (PhCheck *check, const PhReading *reading)
{
  size_t size = reading->n_draws * sizeof *check->draws_deg;
  set_number (check, "bubble_deg", ph_reading_mean_deg (reading));
  set_number (check, "sd_deg", ph_reading_sd_deg (reading));
  set_text (check, "date", reading->date);
  set_text (check, "note", reading->note);
  double *draws = ph_alloc (size);
  memcpy (draws, reading->draws_deg, size);
  free (check->draws_deg);
  check->draws_deg = draws;
  check->n_draws = reading->n_draws;
}

/* The rig that is held: as its report has it. */
static void
write_rig (PhCheck *check, const PhRig *rig)
{
  PhCompiled *compiled = ph_compile_rig (rig);
  PhMassProperties mass = ph_assembly_properties (compiled->assembly);
  const double com[3] = { mass.com_m.x, mass.com_m.y, mass.com_m.z };
  set_number (check, "mass_g", ph_to_milli (mass.mass_kg));
  for (int c = 0; c < 3; c++)
    check->com_mm[c] = ph_to_milli (com[c]);
  check->given |= ph_given_bit (PH_OBJECT_CHECK, "com_mm");
  set_number (check, "draw_length_mm", rig->archer.draw_length_mm);
  set_number (check, "nock_height_mm", rig->archer.nock_height_mm);
  ph_compiled_free (compiled);
}

bool
ph_edit_add_check (PhRig *rig, const PhReading *reading, size_t *index, PhIssues *issues)
{
  size_t at = rig->archer.n_checks;
  if (!is_reading (reading, at, issues))
    return false;
  PhCheck check = ph_check_default ();
  write_rig (&check, rig);
  write_reading (&check, reading);
  if (!isnan (reading->predicted_deg))
    set_number (&check, "predicted_deg", reading->predicted_deg);
  set_text (&check, "predicted_at", reading->predicted_at);
  if (!isnan (reading->predicted_90_deg))
    set_number (&check, "predicted_90_deg", reading->predicted_90_deg);
  PhRig *draft = ph_rig_copy (rig);
  PhArcher *archer = &draft->archer;
  archer->checks = ph_realloc (archer->checks, (at + 1) * sizeof *archer->checks);
  archer->checks[archer->n_checks++] = check;
  archer->present = archer->hand_present = true;
  archer->present_by_mirror = false;
  if (!ph_edit_commit (rig, draft, issues))
    return false;
  if (index)
    *index = at;
  return true;
}

bool
ph_edit_change_check (PhRig *rig, size_t i, const PhReading *reading, PhIssues *issues)
{
  assert (i < rig->archer.n_checks);
  if (!is_reading (reading, i, issues))
    return false;
  PhRig *draft = ph_rig_copy (rig);
  write_reading (&draft->archer.checks[i], reading);
  return ph_edit_commit (rig, draft, issues);
}

void
ph_edit_set_check_aside (PhRig *rig, size_t i, bool aside)
{
  assert (i < rig->archer.n_checks);
  PhCheck *check = &rig->archer.checks[i];
  uint64_t bit = ph_given_bit (PH_OBJECT_CHECK, "aside");
  if (check->aside == aside)
    return;
  check->aside = aside;
  check->given = aside ? check->given | bit : check->given & ~bit;
}

void
ph_edit_delete_check (PhRig *rig, size_t i)
{
  PhArcher *archer = &rig->archer;
  assert (i < archer->n_checks);
  ph_check_clear (&archer->checks[i]);
  archer->n_checks--;
  memmove (&archer->checks[i], &archer->checks[i + 1],
           (archer->n_checks - i) * sizeof *archer->checks);
}

static PhLimits *
limits_of (PhPart *part, const char *key)
{
  assert (ph_field_find_part (part->kind, key, NULL));
  if (strcmp (key, "swing_deg") == 0)
    return &part->limit_swing;
  if (strcmp (key, "lift_deg") == 0)
    return &part->limit_lift;
  assert (strcmp (key, "count") == 0);
  return &part->limit_count;
}

bool
ph_edit_set_limits (PhRig *rig, size_t i, const char *key, double lo, double hi, PhIssues *issues)
{
  assert (i < rig->n_parts);
  PhRig *draft = ph_rig_copy (rig);
  *limits_of (&draft->parts[i], key) = (PhLimits){ true, lo, hi };
  return ph_edit_commit (rig, draft, issues);
}

void
ph_edit_clear_limits (PhRig *rig, size_t i, const char *key)
{
  assert (i < rig->n_parts);
  *limits_of (&rig->parts[i], key) = (PhLimits){ 0 };
}

void
ph_edit_set_source (PhRig *rig, int i, PhSource source)
{
  PhObject object = i < 0 ? PH_OBJECT_BOW : PH_OBJECT_PART;
  uint64_t bit = ph_given_bit (object, "source");
  assert (i < (int)rig->n_parts);
  uint64_t *given = i < 0 ? &rig->bow.given : &rig->parts[i].given;
  *(i < 0 ? &rig->bow.source : &rig->parts[i].source) = source;
  *given = source == PH_SOURCE_UNSTATED ? *given & ~bit : *given | bit;
}
