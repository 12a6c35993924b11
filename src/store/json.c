/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cJSON between a strict scanner and our own printer. cJSON 1.7 follows the locale in both
 * directions and prints 15 digits; numbers are therefore read under the plain locale, and written
 * as raw text. The scanner's list of numbers is tied to the tree through `valueint`, which
 * nothing else here uses: so a number in a key that this version does not know is kept as written.
 */
#include "store/json.h"

#include <assert.h>
#include <cjson/cJSON.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/number.h"
#include "base/text.h"
#include "store/json-scan.h"

struct PhJson
{
  PhJsonScan scan;
  cJSON *root;
};

/* cJSON answers null only when memory is gone, and nothing here can go on without it. */
static cJSON *
need (cJSON *node)
{
  if (!node)
    abort ();
  return node;
}

/* Gives each number its place in the file; both orders are that of the text. */
static void
number_nodes (cJSON *node, size_t *next)
{
  if (cJSON_IsNumber (node))
    node->valueint = (int)(*next)++;
  for (cJSON *child = node->child; child; child = child->next)
    number_nodes (child, next);
}

PhJson *
ph_json_parse (const char *bytes, size_t size, PhIssues *issues)
{
  PhJson *json = ph_alloc_zeroed (1, sizeof *json);
  if (!ph_json_scan (bytes, size, &json->scan, issues))
    {
      free (json);
      return NULL;
    }
  void *before = ph_number_locale_plain ();
  json->root = need (cJSON_ParseWithLengthOpts (json->scan.text, json->scan.size + 1, NULL, true));
  ph_number_locale_restore (before);
  size_t n = 0;
  number_nodes (json->root, &n);
  assert (n == json->scan.n_tokens);
  return json;
}

void
ph_json_free (PhJson *json)
{
  if (!json)
    return;
  cJSON_Delete (json->root);
  ph_json_scan_clear (&json->scan);
  free (json);
}

PhJsonNode *
ph_json_root (const PhJson *json)
{
  return json->root;
}

size_t
ph_json_not_finite (const PhJson *json)
{
  return json->scan.n_not_finite;
}

const char *
ph_json_token (const PhJson *json, const PhJsonNode *node)
{
  assert (cJSON_IsNumber (node) && (size_t)node->valueint < json->scan.n_tokens);
  return json->scan.tokens[node->valueint].text;
}

static int
compare_keys (const void *a, const void *b)
{
  return strcmp (*(const char *const *)a, *(const char *const *)b);
}

/* Sorted, because a hostile file may have a hundred thousand keys. */
size_t
ph_json_repeated_keys (const PhJsonNode *object, const char ***repeated)
{
  size_t n = 0, found = 0;
  *repeated = NULL;
  for (const cJSON *child = object->child; child; child = child->next)
    n++;
  if (n < 2)
    return 0;
  const char **keys = ph_alloc (n * sizeof *keys);
  n = 0;
  for (const cJSON *child = object->child; child; child = child->next)
    keys[n++] = child->string;
  qsort (keys, n, sizeof *keys, compare_keys);
  for (size_t i = 1; i < n; i++)
    if (strcmp (keys[i - 1], keys[i]) == 0
        && (found == 0 || strcmp (keys[found - 1], keys[i]) != 0))
      keys[found++] = keys[i]; /* behind what was read */
  if (found)
    *repeated = keys;
  else
    free (keys);
  return found;
}

/* Turns the numbers of a tree into raw text that cJSON prints as it stands. */
static void
freeze_numbers (const PhJson *json, cJSON *node)
{
  if (cJSON_IsNumber (node))
    {
      const char *token = ph_json_token (json, node);
      node->type = (node->type & ~0xFF) | cJSON_Raw;
      node->valuestring = ph_text_dup (token);
    }
  for (cJSON *child = node->child; child; child = child->next)
    freeze_numbers (json, child);
}

char *
ph_json_keep (const PhJson *json, PhJsonNode *node)
{
  freeze_numbers (json, node);
  char *text = cJSON_PrintUnformatted (node);
  if (!text)
    abort ();
  return text;
}

PhJsonNode *
ph_json_kept (const char *text)
{
  PhIssues issues = { 0 };
  PhJson *json = ph_json_parse (text, strlen (text), &issues);
  ph_issues_clear (&issues);
  if (!json)
    return NULL;
  freeze_numbers (json, json->root);
  cJSON *root = json->root;
  json->root = NULL;
  ph_json_free (json);
  return root;
}

PhJsonNode *
ph_json_new_object (void)
{
  return need (cJSON_CreateObject ());
}

PhJsonNode *
ph_json_new_array (void)
{
  return need (cJSON_CreateArray ());
}

void
ph_json_node_free (PhJsonNode *node)
{
  cJSON_Delete (node);
}

void
ph_json_add (PhJsonNode *object, const char *key, PhJsonNode *value)
{
  assert (cJSON_IsObject (object));
  if (!cJSON_AddItemToObject (object, key, value))
    abort ();
}

void
ph_json_append (PhJsonNode *array, PhJsonNode *value)
{
  assert (cJSON_IsArray (array));
  cJSON_AddItemToArray (array, value);
}

PhJsonNode *
ph_json_add_object (PhJsonNode *object, const char *key)
{
  cJSON *value = ph_json_new_object ();
  ph_json_add (object, key, value);
  return value;
}

PhJsonNode *
ph_json_add_array (PhJsonNode *object, const char *key)
{
  cJSON *value = ph_json_new_array ();
  ph_json_add (object, key, value);
  return value;
}

static cJSON *
new_number (double value)
{
  char buffer[PH_NUMBER_SIZE];
  return need (isfinite (value) ? cJSON_CreateRaw (ph_number_print (value, buffer))
                                : cJSON_CreateNull ());
}

void
ph_json_add_number (PhJsonNode *object, const char *key, double value)
{
  ph_json_add (object, key, new_number (value));
}

PhJsonNode *
ph_json_new_numbers (const double *values, size_t n)
{
  cJSON *array = ph_json_new_array ();
  for (size_t i = 0; i < n; i++)
    ph_json_append (array, new_number (values[i]));
  return array;
}

void
ph_json_add_numbers (PhJsonNode *object, const char *key, const double *values, size_t n)
{
  ph_json_add (object, key, ph_json_new_numbers (values, n));
}

void
ph_json_add_flag (PhJsonNode *object, const char *key, bool value)
{
  ph_json_add (object, key, need (cJSON_CreateBool (value)));
}

static cJSON *
new_text (const char *text)
{
  return need (text ? cJSON_CreateString (text) : cJSON_CreateNull ());
}

void
ph_json_add_text (PhJsonNode *object, const char *key, const char *text)
{
  ph_json_add (object, key, new_text (text));
}

void
ph_json_append_text (PhJsonNode *array, const char *text)
{
  ph_json_append (array, new_text (text));
}
