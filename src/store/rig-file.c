/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The rig file as a whole: text, disk, check. Reading complains first (types), the check second
 * (everything else); where both have something to say about one key, the first has said it.
 */
#include "store/rig-file.h"

#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "model/check.h"
#include "store/part-json.h"
#include "store/read-file.h"
#include "store/rig-json.h"
#include "store/save-file.h"

/* With more errors of type than this the rest waits until they are mended. */
#define READ_ERRORS_MOST 200

static bool
same_place (const PhIssue *a, const PhIssue *b)
{
  return a->where == b->where && ph_text_equal (a->part, b->part);
}

/* Whether an error of reading leaves open what hangs where. */
static bool
hides_places (const PhIssue *read)
{
  static const char *const keys[] = { "id", "kind", "on", "off", "parts", "length_mm" };
  if (!read->key)
    return read->where != PH_WHERE_ARCHER;
  for (size_t i = 0; i < sizeof keys / sizeof *keys; i++)
    if (strcmp (read->key, keys[i]) == 0)
      return true;
  return strncmp (read->key, "mounts", 6) == 0 || strncmp (read->key, "sockets", 7) == 0;
}

/* Whether what the check found follows from an error of reading: the same key once more, another
 * key of an object that could not be read at all, or a place that may be there after all. */
static bool
follows_from (const PhIssue *found, const PhIssue *read)
{
  bool about_places =
      found->key && (strcmp (found->key, "on") == 0 || strcmp (found->key, "along_mm") == 0);
  if (about_places && hides_places (read))
    return true;
  if (!same_place (found, read))
    return false;
  bool whole = !read->key || (read->where == PH_WHERE_PART && strcmp (read->key, "kind") == 0);
  return whole || ph_text_equal (found->key, read->key);
}

/* Checks a rig with errors of reading in it: adds what does not follow from them. */
static void
check_further (PhRig *rig, PhIssues *issues)
{
  PhIssues found = { 0 };
  size_t n = issues->n;
  if (n > READ_ERRORS_MOST)
    return;
  ph_check_rig (rig, &found);
  for (size_t i = 0; i < found.n; i++)
    {
      const PhIssue *own = &found.items[i];
      bool new = true;
      for (size_t k = 0; k < n && new; k++)
        new = !follows_from (own, &issues->items[k]);
      if (new)
        ph_issues_add (issues, own->where, own->part, own->key, own->is_note, "%s", own->text);
    }
  ph_issues_clear (&found);
}

PhStatus
ph_rig_parse (const char *bytes, size_t size, PhRig **rig, PhIssues *issues)
{
  PhIssues found = { 0 };
  PhJson *json = ph_json_parse (bytes, size, &found);
  if (!json)
    {
      ph_issues_move (&found, issues);
      return PH_ERR_SYNTAX;
    }
  PhRig *read = ph_rig_new ();
  bool fine = ph_rig_read (json, read, &found);
  if (fine && found.n)
    check_further (read, &found);
  else if (fine)
    ph_check_rig (read, &found);
  if (ph_json_not_finite (json) && !ph_issues_errors (&found))
    ph_issues_add (&found, PH_WHERE_FILE, NULL, NULL, false, "a number in it is not finite");
  ph_json_free (json);
  fine = !ph_issues_errors (&found);
  ph_issues_move (&found, issues);
  if (!fine)
    {
      ph_rig_free (read);
      return PH_ERR_INVALID;
    }
  *rig = read;
  return PH_OK;
}

char *
ph_rig_print (const PhRig *rig, size_t *size)
{
  PhJsonNode *root = ph_rig_write (rig);
  char *text = ph_json_print (root, size);
  ph_json_node_free (root);
  return text;
}

PhStatus
ph_rig_load (const char *path, PhRig **rig, PhIssues *issues)
{
  char *bytes, *why;
  size_t size;
  PhStatus status = ph_read_file (path, PH_RIG_FILE_MOST, &bytes, &size, &why);
  if (status != PH_OK)
    {
      ph_issues_add (issues, PH_WHERE_FILE, NULL, NULL, false, "%s", why);
      free (why);
      return status;
    }
  status = ph_rig_parse (bytes, size, rig, issues);
  free (bytes);
  return status;
}

PhStatus
ph_rig_save (const PhRig *rig, const char *path, char **why)
{
  size_t size;
  char *text = ph_rig_print (rig, &size);
  PhStatus status = ph_save_file (path, text, size, why);
  free (text);
  return status;
}

char *
ph_rig_name_of_path (const char *path)
{
  static const char *const suffixes[] = { ".rig.json", ".json" };
  const char *slash = strrchr (path, '/');
  char *name = ph_text_dup (slash ? slash + 1 : path);
  size_t length = strlen (name), bad;
  for (size_t i = 0; i < sizeof suffixes / sizeof *suffixes; i++)
    {
      size_t suffix = strlen (suffixes[i]);
      if (length <= suffix || strcmp (name + length - suffix, suffixes[i]) != 0)
        continue;
      name[length - suffix] = '\0';
      break;
    }
  while (!ph_text_is_utf8 (name, strlen (name), &bad))
    name[bad] = '?';
  return name;
}

PhRig *
ph_rig_without_archer (const PhRig *rig)
{
  PhRig *copy = ph_rig_copy (rig), *fresh = ph_rig_new ();
  PhArcher own = copy->archer;
  copy->archer = fresh->archer;
  fresh->archer = own; /* freed with it */
  free (copy->book);
  copy->book = NULL;
  /* Which hand holds the bow belongs to the layout: all its y depend on it. */
  if (own.bow_hand != PH_BOW_HAND_LEFT)
    {
      copy->archer.bow_hand = own.bow_hand;
      copy->archer.present = true;
      copy->archer.given |= ph_given_bit (PH_OBJECT_ARCHER, "bow_hand");
    }
  /* A brace height beyond the default draw length would be an error: then it must stay. */
  if (copy->bow.brace_height_mm >= copy->archer.draw_length_mm)
    {
      copy->archer.draw_length_mm = own.draw_length_mm;
      copy->archer.present = true;
      copy->archer.given |= ph_given_bit (PH_OBJECT_ARCHER, "draw_length_mm");
    }
  ph_rig_free (fresh);
  return copy;
}
