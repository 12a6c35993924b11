/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One part's numbers and texts. What ties two numbers together is looked at only where both
 * stand in the file, so that one mistake makes one message.
 */
#include <math.h>
#include <stdlib.h>

#include "base/number.h"
#include "model/check-own.h"

static bool
has (const PhPart *part, const char *key)
{
  return part->given & ph_given_bit (PH_OBJECT_PART, key);
}

/* "is 18 mm; it should be less than outer_mm, 16 mm". */
static void
add_tie (PhIssues *issues, const PhSite *site, const char *key, double value, const char *relation,
         double other, const char *unit)
{
  char own[PH_NUMBER_SIZE], its[PH_NUMBER_SIZE];
  if (!isfinite (value) || !isfinite (other))
    return; /* said already */
  ph_issues_add (issues, site->where, site->part, key, false, "is %s %s; it should be %s, %s %s",
                 ph_number_print (value, own), unit, relation, ph_number_print (other, its), unit);
}

static void
check_bar (const PhPart *part, const PhSite *site, PhIssues *issues)
{
  if (has (part, "inner_mm") && has (part, "outer_mm") && !(part->inner_mm < part->outer_mm))
    add_tie (issues, site, "inner_mm", part->inner_mm, "less than outer_mm", part->outer_mm, "mm");
  if (has (part, "fitting_mm") && has (part, "length_mm") && part->fitting_mm > part->length_mm)
    add_tie (issues, site, "fitting_mm", part->fitting_mm, "at most length_mm", part->length_mm,
             "mm");
  double fittings = part->root_fitting_g + part->tip_fitting_g;
  if (has (part, "mass_g") && fittings > part->mass_g * (1 + PH_FITTING_SLACK))
    add_tie (issues, site, has (part, "root_fitting_g") ? "root_fitting_g" : "tip_fitting_g",
             fittings, "for both fittings together at most mass_g", part->mass_g, "g");
}

static void
check_along (const PhRig *rig, const PhPart *part, int host, const PhSite *site, PhIssues *issues)
{
  if (!ph_part_is_along (part))
    return;
  const PhPart *bar = host >= 0 ? &rig->parts[host] : NULL;
  if (!bar || bar->kind != PH_PART_BAR)
    ph_issues_add (issues, site->where, site->part, "along_mm", false,
                   "belongs to weights on a bar; \"on\" should be the id of a bar, or along_mm "
                   "left out");
  else if (has (bar, "length_mm") && part->along_mm > bar->length_mm)
    add_tie (issues, site, "along_mm", part->along_mm, "at most the bar's length", bar->length_mm,
             "mm");
}

static void
check_weights (const PhRig *rig, const PhPart *part, int host, const PhSite *site, PhIssues *issues)
{
  static const double most_g = 20000;
  if (has (part, "diameter_mm") && !(part->bore_mm < part->diameter_mm))
    add_tie (issues, site, has (part, "bore_mm") ? "bore_mm" : "diameter_mm",
             has (part, "bore_mm") ? part->bore_mm : part->diameter_mm,
             has (part, "bore_mm") ? "less than diameter_mm" : "more than bore_mm",
             has (part, "bore_mm") ? part->diameter_mm : part->bore_mm, "mm");
  if (has (part, "count") && has (part, "each_g") && part->each_g <= most_g
      && ph_part_mass_g (part) > most_g)
    add_tie (issues, site, "count", ph_part_mass_g (part),
             "for count times each_g at most the "
             "mass of a part",
             most_g, "g");
  check_along (rig, part, host, site, issues);
}

void
ph_check_part_numbers (const PhRig *rig, size_t i, int host, PhIssues *issues)
{
  const PhPart *part = &rig->parts[i];
  char label[PH_ISSUE_LABEL_SIZE];
  PhSite site = { PH_WHERE_PART, ph_issue_part_label (part->id, i, label), "" };
  ph_check_fields (PH_OBJECT_PART, part, part->given, 1u << part->kind, &site, issues);
  if (part->kind == PH_PART_BAR)
    check_bar (part, &site, issues);
  if (part->kind == PH_PART_WEIGHTS)
    check_weights (rig, part, host, &site, issues);
}

static void
check_limits (const PhLimits *limits, const char *key, const char *name, const PhSite *site,
              PhIssues *issues)
{
  if (!limits->given)
    return;
  PhField field = *ph_field_find (PH_OBJECT_PART, key, NULL);
  field.type = PH_FIELD_NUMBER; /* limits of a count need not be whole */
  char *range = ph_field_range (&field);
  if (!ph_field_accepts (&field, limits->lo, NULL) || !ph_field_accepts (&field, limits->hi, NULL))
    ph_issues_add (issues, site->where, site->part, name, false, "should be two finite numbers %s",
                   range);
  else if (limits->lo > limits->hi)
    ph_issues_add (issues, site->where, site->part, name, false,
                   "should have the lower number first");
  free (range);
}

void
ph_check_part_texts (const PhRig *rig, size_t i, PhIssues *issues)
{
  const PhPart *part = &rig->parts[i];
  char label[PH_ISSUE_LABEL_SIZE];
  PhSite site = { PH_WHERE_PART, ph_issue_part_label (part->id, i, label), "" };
  if (part->id)
    ph_check_id (part->id, "id", &site, issues);
  ph_check_length (part->name, "name", &site, issues);
  if (part->kind == PH_PART_BRACKET)
    ph_check_sockets (part->sockets, part->n_sockets, "sockets", &site, issues);
  check_limits (&part->limit_swing, "swing_deg", "limits.swing_deg", &site, issues);
  check_limits (&part->limit_lift, "lift_deg", "limits.lift_deg", &site, issues);
  check_limits (&part->limit_count, "count", "limits.count", &site, issues);
  ph_check_sds (PH_OBJECT_PART, 1u << part->kind, part->sds, part->n_sds, &site, issues);
  if (part->price.given && !isfinite (part->price.amount))
    ph_issues_add (issues, site.where, site.part, "price.amount", false,
                   "should be a finite number");
}
