/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each entry is handed to the reader of readings files as a text of its own.
 */
#include "store/kept-readings.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "store/reader.h"
#include "store/readings-file.h"

static PhExtra *
find_extra (const PhBow *bow)
{
  for (size_t i = 0; i < bow->extras.n; i++)
    if (strcmp (bow->extras.items[i].key, PH_READINGS_KEY) == 0)
      return &bow->extras.items[i];
  return NULL;
}

/* The list's entries as compact texts: a new array. */
static char **
entries_of (const PhBow *bow, size_t *n)
{
  const PhExtra *extra = find_extra (bow);
  char **entries = NULL;
  *n = 0;
  PhJson *json = extra ? ph_json_parse (extra->json, strlen (extra->json), NULL) : NULL;
  const PhJsonNode *list = json ? ph_json_root (json) : NULL;
  if (list && ph_read_looks_like_array (list))
    {
      entries = ph_alloc ((ph_read_count (list) + 1) * sizeof *entries);
      for (PhJsonNode *node = ph_read_first (list); node; node = ph_read_next (node))
        entries[(*n)++] = ph_json_keep (json, node);
    }
  ph_json_free (json);
  return entries;
}

static void
free_entries (char **entries, size_t n)
{
  for (size_t i = 0; i < n; i++)
    free (entries[i]);
  free (entries);
}

static void
mirror (PhReadings *readings)
{
  for (size_t i = 0; i < readings->n_lines; i++)
    {
      readings->lines[i].point_mm[1] = -readings->lines[i].point_mm[1];
      readings->lines[i].direction[1] = -readings->lines[i].direction[1];
    }
}

/* What stands beside the readings in an entry that can be read. */
static void
read_beside (const char *entry, PhBowHand now, PhKeptReadings *kept)
{
  PhIssues issues = { 0 };
  PhJson *json = ph_json_parse (entry, strlen (entry), &issues);
  PhPlace place = { .json = json, .issues = &issues, .where = PH_WHERE_FILE };
  const PhJsonNode *root = ph_json_root (json), *node;
  const char *hand = NULL;
  kept->parts_mass_g = NAN;
  kept->parts_com_mm[0] = kept->parts_com_mm[1] = kept->parts_com_mm[2] = NAN;
  if ((node = ph_read_key (root, "parts_mass_g")))
    ph_read_number (&place, "parts_mass_g", node, &kept->parts_mass_g);
  if ((node = ph_read_key (root, "parts_com_mm")))
    ph_read_numbers (&place, "parts_com_mm", node, kept->parts_com_mm, 3);
  if ((node = ph_read_key (root, "bow_hand")) && ph_read_text (&place, "bow_hand", node, &hand)
      && (strcmp (hand, "right") == 0) != (now == PH_BOW_HAND_RIGHT))
    {
      mirror (&kept->readings);
      kept->parts_com_mm[1] = -kept->parts_com_mm[1];
    }
  ph_json_free (json);
  ph_issues_clear (&issues);
}

PhKeptReadings *
ph_kept_readings_of (const PhRig *rig, size_t *n)
{
  size_t all;
  char **entries = entries_of (&rig->bow, &all);
  PhKeptReadings *kept = ph_alloc_zeroed (all + 1, sizeof *kept);
  *n = 0;
  for (size_t i = 0; i < all; i++)
    if (ph_readings_parse (entries[i], strlen (entries[i]), &kept[*n].readings, NULL) == PH_OK)
      read_beside (entries[i], rig->archer.bow_hand, &kept[(*n)++]);
  free_entries (entries, all);
  if (*n)
    return kept;
  free (kept);
  return NULL;
}

void
ph_kept_readings_free (PhKeptReadings *kept, size_t n)
{
  for (size_t i = 0; i < n; i++)
    ph_readings_clear (&kept[i].readings);
  free (kept);
}

static bool
same_kind (const PhReadings *a, const PhReadings *b)
{
  bool axis = a->method == PH_METHOD_SWING || a->method == PH_METHOD_TWO_STRING;
  return a->method == b->method && (!axis || a->axis == b->axis);
}

static bool
is_replaced (const char *entry, const PhReadings *by)
{
  PhReadings old;
  if (ph_readings_parse (entry, strlen (entry), &old, NULL) != PH_OK)
    return false;
  bool same = same_kind (&old, by);
  ph_readings_clear (&old);
  return same;
}

static PhJsonNode *
entry_of (const PhRig *rig, const PhReadings *readings, const PhMeasured *measured)
{
  PhJsonNode *node = ph_readings_write (readings);
  ph_json_add_text (node, "bow_hand", rig->archer.bow_hand == PH_BOW_HAND_RIGHT ? "right" : "left");
  ph_json_add_number (node, "parts_mass_g", measured->parts_mass_g);
  if (measured->parts_mass_g > 0)
    ph_json_add_numbers (node, "parts_com_mm", measured->parts_com_mm, 3);
  return node;
}

/* Compact, as a rig file that is loaded has it: the very same text either way. */
static char *
compact (const PhJsonNode *list)
{
  size_t size;
  char *text = ph_json_print (list, &size);
  PhJson *json = ph_json_parse (text, size, NULL);
  char *kept = ph_json_keep (json, ph_json_root (json));
  ph_json_free (json);
  free (text);
  return kept;
}

void
ph_kept_readings_put (PhRig *rig, const PhReadings *readings, const PhMeasured *measured)
{
  PhExtras *extras = &rig->bow.extras;
  size_t n;
  char **entries = entries_of (&rig->bow, &n);
  PhJsonNode *list = ph_json_new_array ();
  for (size_t i = 0; i < n; i++)
    if (!is_replaced (entries[i], readings))
      ph_json_append (list, ph_json_kept (entries[i]));
  ph_json_append (list, entry_of (rig, readings, measured));
  PhExtra *extra = find_extra (&rig->bow);
  if (!extra)
    {
      extras->items = ph_realloc (extras->items, (extras->n + 1) * sizeof *extras->items);
      extra = &extras->items[extras->n++];
      *extra = (PhExtra){ ph_text_dup (PH_READINGS_KEY), NULL };
    }
  free (extra->json);
  extra->json = compact (list);
  ph_json_node_free (list);
  free_entries (entries, n);
}
