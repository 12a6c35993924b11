/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Edits of numbers, names and flags. A number is set in place, checked with what it is tied to,
 * and put back when refused: a few microseconds, so that a drag can do it each frame. Anything
 * else works on a copy of the rig and the whole check.
 */
#include "model/edit.h"

#include <assert.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "model/check-own.h"
#include "model/check.h"
#include "model/edit-own.h"
#include "model/fields.h"

bool
ph_edit_commit (PhRig *rig, PhRig *draft, PhIssues *issues)
{
  PhIssues found = { 0 };
  bool sound = ph_check_rig (draft, &found);
  if (sound)
    {
      PhRig old = *rig;
      *rig = *draft;
      *draft = old;
      ph_issues_clear (&found); /* notes: the report has them */
    }
  ph_issues_move (&found, issues);
  ph_rig_free (draft);
  return sound;
}

/* The default may be outside the range (a modulus of 0, NAN): then it means "not in the file". */
static bool
means_absent (const PhField *field, double value)
{
  if (isnan (field->fallback))
    return isnan (value);
  return value == field->fallback && !ph_field_accepts (field, value, NULL);
}

/* A vector that was absent becomes present with its other components 0. */
static void
write_number (const PhField *field, void *owner, uint64_t *given, uint64_t bit, int component,
              double value)
{
  if (means_absent (field, value))
    {
      for (int c = 0; c < ph_field_components (field); c++)
        ph_field_set_number (field, owner, c, field->fallback);
      *given &= ~bit;
      return;
    }
  for (int c = 0; c < ph_field_components (field); c++)
    if (isnan (ph_field_number (field, owner, c)))
      ph_field_set_number (field, owner, c, 0);
  ph_field_set_number (field, owner, component, value);
  *given |= bit;
}

/* After a bar's length changed: the stacks along it must still be on it. */
static void
check_guests_along (const PhRig *rig, size_t bar, PhIssues *issues)
{
  for (size_t i = 0; i < rig->n_parts; i++)
    if (ph_part_is_along (&rig->parts[i]) && ph_rig_host (rig, i, NULL) == (int)bar)
      ph_check_part_numbers (rig, i, (int)bar, issues);
}

static bool
set_on_copy (PhRig *rig, size_t i, const PhField *field, uint64_t bit, int component, double value,
             PhIssues *issues)
{
  PhRig *draft = ph_rig_copy (rig);
  write_number (field, &draft->parts[i], &draft->parts[i].given, bit, component, value);
  return ph_edit_commit (rig, draft, issues);
}

bool
ph_edit_set_number (PhRig *rig, size_t i, const char *key, int component, double value,
                    PhIssues *issues)
{
  assert (i < rig->n_parts);
  PhPart *part = &rig->parts[i];
  size_t index = 0;
  const PhField *field = ph_field_find_part (part->kind, key, &index);
  assert (field);
  uint64_t bit = (uint64_t)1 << index;
  double before = ph_field_number (field, part, component);
  if (isnan (before) != isnan (value))
    return set_on_copy (rig, i, field, bit, component, value, issues); /* the seat may change */
  uint64_t given_before = part->given;
  PhIssues found = { 0 };
  write_number (field, part, &part->given, bit, component, value);
  ph_check_part_numbers (rig, i, ph_rig_host (rig, i, NULL), &found);
  if (part->kind == PH_PART_BAR && strcmp (key, "length_mm") == 0)
    check_guests_along (rig, i, &found);
  if (!found.n)
    ph_check_total_mass (rig, &found);
  bool refused = found.n > 0;
  if (refused)
    {
      ph_field_set_number (field, part, component, before);
      part->given = given_before;
    }
  else
    ph_limits_stretch (part);
  ph_issues_move (&found, issues);
  return !refused;
}

bool
ph_edit_set_bow_number (PhRig *rig, const char *key, int component, double value, PhIssues *issues)
{
  PhBow *bow = &rig->bow;
  size_t index = 0;
  const PhField *field = ph_field_find (PH_OBJECT_BOW, key, &index);
  assert (field);
  double before = ph_field_number (field, bow, component);
  uint64_t given_before = bow->given;
  PhIssues found = { 0 };
  write_number (field, bow, &bow->given, (uint64_t)1 << index, component, value);
  ph_check_bow (rig, &found);
  if (!found.n)
    ph_check_total_mass (rig, &found);
  bool refused = found.n > 0;
  if (refused)
    {
      ph_field_set_number (field, bow, component, before);
      bow->given = given_before;
    }
  ph_issues_move (&found, issues);
  return !refused;
}

bool
ph_edit_set_archer_number (PhRig *rig, const char *key, double value, PhIssues *issues)
{
  PhArcher *archer = &rig->archer;
  size_t index = 0;
  const PhField *field = ph_field_find (PH_OBJECT_ARCHER, key, &index);
  bool of_hand = !field;
  if (of_hand)
    field = ph_field_find (PH_OBJECT_HAND, key, &index);
  assert (field);
  uint64_t *given = of_hand ? &archer->hand_given : &archer->given;
  double before = ph_field_number (field, archer, 0);
  uint64_t given_before = *given;
  PhIssues found = { 0 };
  write_number (field, archer, given, (uint64_t)1 << index, 0, value);
  ph_check_archer (rig, &found);
  ph_check_bow (rig, &found); /* the brace height lies below the draw length */
  bool refused = found.n > 0;
  if (refused)
    {
      ph_field_set_number (field, archer, 0, before);
      *given = given_before;
    }
  else
    {
      archer->present = true;
      archer->present_by_mirror = false;
      archer->hand_present |= of_hand;
    }
  ph_issues_move (&found, issues);
  return !refused;
}

/* A text for `*place`; empty means none. Refused when longer than `most` or not UTF-8. */
static bool
set_text (char **place, const char *text, size_t most, const PhSite *site, const char *key,
          PhIssues *issues)
{
  if (text && !ph_text_is_utf8 (text, strlen (text), NULL))
    {
      ph_issues_add (issues, site->where, site->part, key, false, "should be UTF-8 text");
      return false;
    }
  if (text && ph_text_length (text) > most)
    {
      ph_check_length (text, key, site, issues);
      return false;
    }
  char *copy = text && *text ? ph_text_dup (text) : NULL;
  free (*place);
  *place = copy;
  return true;
}

bool
ph_edit_set_name (PhRig *rig, size_t i, const char *name, PhIssues *issues)
{
  assert (i < rig->n_parts);
  PhPart *part = &rig->parts[i];
  PhSite site = { PH_WHERE_PART, part->id, "" };
  uint64_t bit = ph_given_bit (PH_OBJECT_PART, "name");
  if (!set_text (&part->name, name, PH_NAME_MOST, &site, "name", issues))
    return false;
  part->given = part->name ? part->given | bit : part->given & ~bit;
  return true;
}

bool
ph_edit_set_rig_name (PhRig *rig, const char *name, PhIssues *issues)
{
  PhSite site = { PH_WHERE_FILE, NULL, "" };
  return set_text (&rig->name, name, PH_NAME_MOST, &site, "name", issues);
}

bool
ph_edit_set_rig_notes (PhRig *rig, const char *notes, PhIssues *issues)
{
  PhSite site = { PH_WHERE_FILE, NULL, "" };
  return set_text (&rig->notes, notes, SIZE_MAX, &site, "notes", issues);
}

static void
set_flag (PhPart *part, bool *flag, const char *key, bool value)
{
  uint64_t bit = ph_given_bit (PH_OBJECT_PART, key);
  *flag = value;
  part->given = value ? part->given | bit : part->given & ~bit;
}

bool
ph_edit_set_off (PhRig *rig, size_t i, bool off, PhIssues *issues)
{
  assert (i < rig->n_parts);
  if (rig->parts[i].off == off)
    return true;
  PhRig *draft = ph_rig_copy (rig);
  PhPart *part = &draft->parts[i];
  set_flag (part, &part->off, "off", off);
  return ph_edit_commit (rig, draft, issues);
}

void
ph_edit_set_locked (PhRig *rig, size_t i, bool locked)
{
  assert (i < rig->n_parts);
  PhPart *part = &rig->parts[i];
  if (part->locked != locked)
    set_flag (part, &part->locked, "locked", locked);
}
