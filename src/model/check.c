/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The whole rig's check, in the order in which the file stands: rig, archer, bow, parts, tree.
 * Cost: the parts' own numbers, and at most n² short steps for 256 parts; safe on any rig the
 * loader can make, however hostile.
 */
#include "model/check.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "model/check-own.h"

static void
check_key_lengths (const PhExtras *extras, const PhSite *site, PhIssues *issues)
{
  for (size_t i = 0; i < extras->n; i++)
    ph_check_length (extras->items[i].key, extras->items[i].key, site, issues);
}

/* Calls `each` for every list of unknown keys; the same walk serves errors and notes. */
static void
for_each_extras (const PhRig *rig, PhIssues *issues,
                 void (*each) (const PhExtras *, const PhSite *, PhIssues *))
{
  PhSite file = { PH_WHERE_FILE, NULL, "" }, archer = { PH_WHERE_ARCHER, NULL, "" };
  PhSite hand = { PH_WHERE_ARCHER, NULL, "hand." }, bow = { PH_WHERE_BOW, NULL, "" };
  PhSite test = { PH_WHERE_ARCHER, NULL, "hand.bubble_tests." };
  PhSite mount = { PH_WHERE_BOW, NULL, "mounts." };
  each (&rig->extras, &file, issues);
  each (&rig->archer.extras, &archer, issues);
  each (&rig->archer.hand_extras, &hand, issues);
  for (size_t i = 0; i < rig->archer.n_checks; i++)
    each (&rig->archer.checks[i].extras, &test, issues);
  each (&rig->bow.extras, &bow, issues);
  for (size_t i = 0; i < rig->bow.n_mounts; i++)
    each (&rig->bow.mounts[i].extras, &mount, issues);
  for (size_t i = 0; i < rig->n_parts; i++)
    {
      const PhPart *part = &rig->parts[i];
      char buffer[PH_ISSUE_LABEL_SIZE];
      const char *label = ph_issue_part_label (part->id, i, buffer);
      each (&part->extras, &(PhSite){ PH_WHERE_PART, label, "" }, issues);
      each (&part->limits_extras, &(PhSite){ PH_WHERE_PART, label, "limits." }, issues);
      each (&part->price_extras, &(PhSite){ PH_WHERE_PART, label, "price." }, issues);
      for (size_t k = 0; k < part->n_sockets; k++)
        each (&part->sockets[k].extras, &(PhSite){ PH_WHERE_PART, label, "sockets." }, issues);
    }
}

static void
note_unknown_keys (const PhExtras *extras, const PhSite *site, PhIssues *issues)
{
  for (size_t i = 0; i < extras->n; i++)
    {
      /* The store's own: readings that were taken on the bow (store/kept-readings.h). */
      if (site->where == PH_WHERE_BOW && !*site->prefix
          && strcmp (extras->items[i].key, "readings") == 0)
        continue;
      char *cut = ph_text_cut (extras->items[i].key, 80);
      char *key = ph_text_printf ("%s%s", site->prefix, cut);
      ph_issues_add (issues, site->where, site->part, key, true,
                     "is no key of this version; it is kept as it is");
      free (key);
      free (cut);
    }
}

static void
note_unknown_sds (PhObject object, unsigned kind_bit, const PhSd *sds, size_t n, const PhSite *site,
                  PhIssues *issues)
{
  for (size_t i = 0; i < n; i++)
    {
      const PhField *field = ph_field_find (object, sds[i].key, NULL);
      if (field && field->kinds & kind_bit && ph_field_components (field))
        continue;
      char *cut = ph_text_cut (sds[i].key, 80);
      char *key = ph_text_printf ("sd.%s", cut);
      ph_issues_add (issues, site->where, site->part, key, true,
                     "is no number of this object; it is kept as it is");
      free (key);
      free (cut);
    }
}

static void
note_gyration (const PhBow *bow, PhIssues *issues)
{
  static const char *const names[] = { "first", "second", "third" };
  for (int c = 0; c < 3; c++)
    {
      double own = bow->gyration_mm[c], one = bow->gyration_mm[(c + 1) % 3],
             other = bow->gyration_mm[(c + 2) % 3];
      if (own * own > one * one + other * other)
        ph_issues_add (issues, PH_WHERE_BOW, NULL, "gyration_mm", true,
                       "no body has these radii: the square of the %s should be at most the sum "
                       "of the squares of the other two",
                       names[c]);
    }
}

void
ph_check_notes (const PhRig *rig, PhIssues *issues)
{
  PhSite bow = { PH_WHERE_BOW, NULL, "" };
  for_each_extras (rig, issues, note_unknown_keys);
  note_gyration (&rig->bow, issues);
  note_unknown_sds (PH_OBJECT_BOW, ~0u, rig->bow.sds, rig->bow.n_sds, &bow, issues);
  for (size_t i = 0; i < rig->n_parts; i++)
    {
      const PhPart *part = &rig->parts[i];
      char buffer[PH_ISSUE_LABEL_SIZE];
      PhSite site = { PH_WHERE_PART, ph_issue_part_label (part->id, i, buffer), "" };
      note_unknown_sds (PH_OBJECT_PART, 1u << part->kind, part->sds, part->n_sds, &site, issues);
    }
}

static void
stretch (PhLimits *limits, double value)
{
  if (!limits->given)
    return;
  if (value < limits->lo)
    limits->lo = value;
  if (value > limits->hi)
    limits->hi = value;
}

void
ph_limits_stretch (PhPart *part)
{
  if (part->kind == PH_PART_WEIGHTS)
    stretch (&part->limit_count, part->count);
  if (part->kind == PH_PART_ACCESSORY)
    return;
  stretch (&part->limit_swing, part->swing_deg);
  stretch (&part->limit_lift, part->lift_deg);
}

static void
check_parts (const PhRig *rig, PhIssues *issues)
{
  if (rig->n_parts > PH_RIG_PARTS_MOST)
    {
      ph_issues_add (issues, PH_WHERE_FILE, NULL, "parts", false,
                     "holds %zu parts; there should be at most %d", rig->n_parts,
                     PH_RIG_PARTS_MOST);
      return;
    }
  int *hosts = ph_rig_hosts (rig);
  for (size_t i = 0; i < rig->n_parts; i++)
    {
      ph_check_part_texts (rig, i, issues);
      ph_check_part_numbers (rig, i, hosts[i], issues);
    }
  ph_check_tree (rig, hosts, issues);
  free (hosts);
}

bool
ph_check_rig (PhRig *rig, PhIssues *issues)
{
  PhIssues found = { 0 };
  PhSite file = { PH_WHERE_FILE, NULL, "" };
  ph_check_length (rig->name, "name", &file, &found);
  for_each_extras (rig, &found, check_key_lengths);
  ph_check_archer (rig, &found);
  ph_check_bow (rig, &found);
  check_parts (rig, &found);
  if (!ph_issues_errors (&found))
    ph_check_total_mass (rig, &found);
  bool sound = ph_issues_errors (&found) == 0;
  for (size_t i = 0; sound && i < rig->n_parts; i++)
    ph_limits_stretch (&rig->parts[i]);
  if (rig->n_parts <= PH_RIG_PARTS_MOST)
    ph_check_notes (rig, &found);
  ph_issues_move (&found, issues);
  return sound;
}
