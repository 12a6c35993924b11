/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * {"format": "plumbhold-catalogue", "version": 1, "basis": […], "items": [{"group", "search", …the
 * fields of a part but id and on}]}. "basis" says for people where the numbers come from; "search"
 * is optional.
 */
#include "store/catalogue.h"

#include <stdio.h>
#include <stdlib.h>

#include "base/text.h"
#include "store/bench.h"
#include "store/part-json.h"
#include "store/read-file.h"
#include "store/reader.h"
#include "store/rig-json.h"

#define FORMAT "plumbhold-catalogue"
#define FILE_MOST (1024 * 1024)

static void
read_item (const PhPlace *place, PhJsonNode *node, PhCatalogueItem *item)
{
  static const char *const also[] = { "group", "basis", "search", NULL };
  size_t errors = place->issues->n;
  bool known = ph_part_read (place, node, also, &item->part);
  if (!known)
    return;
  item->group = ph_read_optional_text (place, node, "group");
  item->search = ph_read_optional_text (place, node, "search");
  if (!item->group && place->issues->n == errors)
    ph_place_error (place, "group", "is missing; it should be a text such as \"Front bars\"");
  if (!item->part.name && place->issues->n == errors)
    ph_place_error (place, "name", "is missing; it should be a text");
  if (place->issues->n == errors)
    ph_bench_check (&item->part, 1, place->part, place->issues);
}

static void
read_items (const PhJson *json, PhCatalogue *catalogue, PhIssues *issues)
{
  PhPlace place = { .json = json, .issues = issues, .where = PH_WHERE_FILE };
  if (!ph_format_read (json, FORMAT, issues))
    return;
  const PhJsonNode *list = ph_read_key (ph_json_root (json), "items");
  if (!list)
    ph_place_error (&place, "items", "is missing; it should be a list of parts");
  if (!list || !ph_read_is_array (&place, "items", list))
    return;
  catalogue->items = ph_alloc_zeroed (ph_read_count (list) + 1, sizeof *catalogue->items);
  for (PhJsonNode *node = ph_read_first (list); node; node = ph_read_next (node))
    {
      char label[PH_ISSUE_LABEL_SIZE];
      snprintf (label, sizeof label, "#%zu", catalogue->n + 1);
      PhPlace inside = place;
      inside.where = PH_WHERE_PART;
      inside.part = label;
      read_item (&inside, node, &catalogue->items[catalogue->n++]);
    }
}

PhStatus
ph_catalogue_parse (const char *bytes, size_t size, PhCatalogue *catalogue, PhIssues *issues)
{
  PhIssues found = { 0 };
  PhCatalogue read = { 0 };
  PhJson *json = ph_json_parse (bytes, size, &found);
  if (json)
    read_items (json, &read, &found);
  PhStatus status = !json ? PH_ERR_SYNTAX : ph_issues_errors (&found) ? PH_ERR_INVALID : PH_OK;
  ph_json_free (json);
  ph_issues_move (&found, issues);
  if (status == PH_OK)
    *catalogue = read;
  else
    ph_catalogue_clear (&read);
  return status;
}

PhStatus
ph_catalogue_load (const char *path, PhCatalogue *catalogue, PhIssues *issues)
{
  char *bytes, *why;
  size_t size;
  PhStatus status = ph_read_file (path, FILE_MOST, &bytes, &size, &why);
  if (status != PH_OK)
    {
      ph_issues_add (issues, PH_WHERE_FILE, NULL, NULL, false, "%s", why);
      free (why);
      return status;
    }
  status = ph_catalogue_parse (bytes, size, catalogue, issues);
  free (bytes);
  return status;
}

void
ph_catalogue_clear (PhCatalogue *catalogue)
{
  for (size_t i = 0; i < catalogue->n; i++)
    {
      free (catalogue->items[i].group);
      free (catalogue->items[i].search);
      ph_part_clear (&catalogue->items[i].part);
    }
  free (catalogue->items);
  *catalogue = (PhCatalogue){ 0 };
}
