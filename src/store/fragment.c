/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Parts on the clipboard: what another program may have put there is read as strictly as a file.
 */
#include <stdlib.h>

#include "store/bench.h"
#include "store/part-json.h"
#include "store/reader.h"
#include "store/rig-file.h"
#include "store/rig-json.h"

#define FORMAT "plumbhold-parts"

char *
ph_fragment_print (const PhPart *parts, size_t n)
{
  PhJsonNode *root = ph_format_write (FORMAT);
  PhJsonNode *list = ph_json_add_array (root, "parts");
  for (size_t i = 0; i < n; i++)
    ph_json_append (list, ph_part_write (&parts[i]));
  char *text = ph_json_print (root, NULL);
  ph_json_node_free (root);
  return text;
}

static void
read_fragment (const PhJson *json, PhPart **parts, size_t *n, PhIssues *issues)
{
  PhPlace place = { .json = json, .issues = issues, .where = PH_WHERE_FILE };
  if (!ph_format_read (json, FORMAT, issues))
    return;
  const PhJsonNode *list = ph_read_key (ph_json_root (json), "parts");
  if (list && ph_read_is_array (&place, "parts", list))
    ph_parts_read (json, list, parts, n, issues);
  if (!*n && !ph_issues_errors (issues))
    ph_place_error (&place, "parts", "is missing or empty; it should be a list of parts");
  else if (!ph_issues_errors (issues))
    ph_bench_check (*parts, *n, NULL, issues);
}

PhStatus
ph_fragment_parse (const char *bytes, size_t size, PhPart **parts, size_t *n, PhIssues *issues)
{
  PhIssues found = { 0 };
  PhPart *read = NULL;
  size_t n_read = 0;
  PhJson *json = size > PH_RIG_FILE_MOST ? NULL : ph_json_parse (bytes, size, &found);
  if (json)
    read_fragment (json, &read, &n_read, &found);
  PhStatus status = size > PH_RIG_FILE_MOST     ? PH_ERR_TOO_LARGE
                    : !json                     ? PH_ERR_SYNTAX
                    : ph_issues_errors (&found) ? PH_ERR_INVALID
                                                : PH_OK;
  if (status == PH_ERR_TOO_LARGE)
    ph_issues_add (&found, PH_WHERE_FILE, NULL, NULL, false,
                   "is too large for a clipboard of parts");
  ph_json_free (json);
  ph_issues_move (&found, issues);
  if (status == PH_OK)
    {
      *parts = read;
      *n = n_read;
      return PH_OK;
    }
  for (size_t i = 0; i < n_read; i++)
    ph_part_clear (&read[i]);
  free (read);
  return status;
}
