/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Reading by the table of fields. cJSON's lookup walks the list of keys; with at most 40 fields an
 * object that is linear in the file's size.
 */
#include "store/reader.h"

#include <assert.h>
#include <cjson/cJSON.h>
#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"

static char *
key_in (const PhPlace *place, const char *key)
{
  return ph_text_printf ("%s%s", place->inside ? place->inside : "", key);
}

/* A place without a key of its own is named by what stands before it, less the dot. */
static char *
key_of_place (const PhPlace *place)
{
  char *key = ph_text_dup (place->inside);
  if (key && *key)
    key[strlen (key) - 1] = '\0';
  return key;
}

void
ph_place_error (const PhPlace *place, const char *key, const char *format, ...)
{
  char text[600]; /* no sentence of ours is longer: what the user wrote is cut before it goes in */
  va_list arguments;
  va_start (arguments, format);
  vsnprintf (text, sizeof text, format, arguments);
  va_end (arguments);
  char *whole = key ? key_in (place, key) : key_of_place (place);
  ph_issues_add (place->issues, place->where, place->part, whole, false, "%s", text);
  free (whole);
}

PhPlace
ph_place_inside (const PhPlace *place, const char *key, int index, char **inside)
{
  char *whole = key_in (place, key);
  *inside = index < 0 ? ph_text_printf ("%s.", whole) : ph_text_printf ("%s[%d].", whole, index);
  free (whole);
  PhPlace deeper = *place;
  deeper.inside = *inside;
  return deeper;
}

PhJsonNode *
ph_read_key (const PhJsonNode *object, const char *key)
{
  return cJSON_GetObjectItemCaseSensitive (object, key);
}

PhJsonNode *
ph_read_first (const PhJsonNode *node)
{
  return node->child;
}

PhJsonNode *
ph_read_next (const PhJsonNode *node)
{
  return node->next;
}

size_t
ph_read_count (const PhJsonNode *node)
{
  return (size_t)cJSON_GetArraySize (node);
}

const char *
ph_read_name (const PhJsonNode *node)
{
  return node->string;
}

bool
ph_read_looks_like_array (const PhJsonNode *node)
{
  return cJSON_IsArray (node);
}

/* What a value is, in words. */
static const char *
kind_of (const PhJsonNode *node)
{
  switch (node->type & 0xFF)
    {
    case cJSON_Number:
      return "a number";
    case cJSON_String:
      return "a text";
    case cJSON_Array:
      return "a list";
    case cJSON_Object:
      return "an object";
    case cJSON_NULL:
      return "null";
    default:
      return "true or false";
    }
}

static bool
wrong_type (const PhPlace *place, const char *key, const PhJsonNode *node, const char *needs)
{
  ph_place_error (place, key, "is %s; it should be %s", kind_of (node), needs);
  return false;
}

bool
ph_read_is_object (const PhPlace *place, const char *key, const PhJsonNode *node)
{
  if (!cJSON_IsObject (node))
    return wrong_type (place, key, node, "an object in braces");
  const char **keys;
  size_t n = ph_json_repeated_keys (node, &keys);
  char *inside = NULL;
  PhPlace deeper = key ? ph_place_inside (place, key, -1, &inside) : *place;
  for (size_t i = 0; i < n; i++)
    ph_place_error (&deeper, keys[i], "stands twice in one object; keep one of them");
  free (inside);
  free (keys);
  return true;
}

bool
ph_read_is_array (const PhPlace *place, const char *key, const PhJsonNode *node)
{
  return cJSON_IsArray (node) || wrong_type (place, key, node, "a list in square brackets");
}

bool
ph_read_number (const PhPlace *place, const char *key, const PhJsonNode *node, double *value)
{
  if (!cJSON_IsNumber (node))
    return wrong_type (place, key, node, "a number");
  if (!isfinite (node->valuedouble))
    {
      char *token = ph_text_cut (ph_json_token (place->json, node), 40);
      ph_place_error (place, key, "is %s, not a finite number; write a plain number", token);
      free (token);
      return false;
    }
  *value = node->valuedouble;
  return true;
}

bool
ph_read_text (const PhPlace *place, const char *key, const PhJsonNode *node, const char **text)
{
  if (!cJSON_IsString (node))
    return wrong_type (place, key, node, "a text in double quotes");
  *text = node->valuestring;
  return true;
}

bool
ph_read_numbers (const PhPlace *place, const char *key, const PhJsonNode *node, double *values,
                 size_t n)
{
  if (!cJSON_IsArray (node))
    {
      ph_place_error (place, key, "is %s; it should be a list of %zu numbers", kind_of (node), n);
      return false;
    }
  if (ph_read_count (node) != n)
    {
      ph_place_error (place, key, "has %zu entries; it should be a list of %zu numbers",
                      ph_read_count (node), n);
      return false;
    }
  double read[3];
  assert (n <= sizeof read / sizeof *read);
  size_t i = 0;
  for (const cJSON *entry = node->child; entry; entry = entry->next)
    if (!ph_read_number (place, key, entry, &read[i++]))
      return false;
  memcpy (values, read, n * sizeof *values);
  return true;
}

/* Room for every list of words; the longest takes 60. */
#define WORDS_SIZE 200

static void
list_words (const PhField *field, char text[WORDS_SIZE])
{
  size_t at = 0;
  for (size_t i = 0; field->words[i] && at < WORDS_SIZE; i++)
    at += (size_t)snprintf (text + at, WORDS_SIZE - at, "%s\"%s\"",
                            !i                    ? ""
                            : field->words[i + 1] ? ", "
                                                  : " or ",
                            field->words[i]);
}

static bool
read_word (const PhPlace *place, const PhField *field, const PhJsonNode *node, void *target)
{
  const char *word;
  char words[WORDS_SIZE];
  if (!ph_read_text (place, field->key, node, &word))
    return false;
  if (ph_field_set_word (field, target, word))
    return true;
  list_words (field, words);
  char *cut = ph_text_cut (word, 80);
  ph_place_error (place, field->key, "is “%s”; it should be %s", cut, words);
  free (cut);
  return false;
}

static bool
read_flag (const PhPlace *place, const PhField *field, const PhJsonNode *node, void *target)
{
  if (!cJSON_IsBool (node))
    return wrong_type (place, field->key, node, "true or false");
  ph_field_set_flag (field, target, cJSON_IsTrue (node));
  return true;
}

static bool
read_value (const PhPlace *place, const PhField *field, const PhJsonNode *node, void *target)
{
  double v[3];
  const char *text;
  int n = ph_field_components (field);
  switch (field->type)
    {
    case PH_FIELD_FLAG:
      return read_flag (place, field, node, target);
    case PH_FIELD_WORD:
      return read_word (place, field, node, target);
    case PH_FIELD_TEXT:
      if (!ph_read_text (place, field->key, node, &text))
        return false;
      ph_field_set_text (field, target, text);
      return true;
    case PH_FIELD_NUMBER:
    case PH_FIELD_WHOLE:
    case PH_FIELD_VECTOR:
    default:
      if (n == 1 ? !ph_read_number (place, field->key, node, v)
                 : !ph_read_numbers (place, field->key, node, v, (size_t)n))
        return false;
      for (int c = 0; c < n; c++)
        ph_field_set_number (field, target, c, v[c]);
      return true;
    }
}

bool
ph_read_field (const PhPlace *place, const PhField *field, const PhJsonNode *node, void *target)
{
  char words[WORDS_SIZE];
  const PhJsonNode *value = ph_read_key (node, field->key);
  if (value)
    return read_value (place, field, value, target);
  if (field->type == PH_FIELD_WORD && field->required)
    {
      list_words (field, words);
      ph_place_error (place, field->key, "is missing; it should be %s", words);
    }
  return false;
}

void
ph_read_fields (const PhPlace *place, PhObject object, unsigned kinds, const PhJsonNode *node,
                void *target, uint64_t *given)
{
  size_t n;
  const PhField *fields = ph_fields_of (object, &n);
  for (size_t i = 0; i < n; i++)
    if (fields[i].kinds & kinds && ph_read_field (place, &fields[i], node, target))
      *given |= (uint64_t)1 << i;
}

char *
ph_read_optional_text (const PhPlace *place, const PhJsonNode *object, const char *key)
{
  const PhJsonNode *node = ph_read_key (object, key);
  const char *text;
  if (!node || !ph_read_text (place, key, node, &text))
    return NULL;
  return ph_text_dup (text);
}

static bool
is_known (const char *key, bool fields, PhObject object, unsigned kinds, const char *const *also)
{
  const PhField *field = fields ? ph_field_find (object, key, NULL) : NULL;
  if (field && field->kinds & kinds)
    return true;
  for (; also && *also; also++)
    if (strcmp (*also, key) == 0)
      return true;
  return false;
}

/* What is kept without being understood must still be sound all the way down. */
static void
check_kept (const PhPlace *place, const char *key, const PhJsonNode *node)
{
  double ignored;
  if (cJSON_IsNumber (node))
    (void)ph_read_number (place, key, node, &ignored);
  if (cJSON_IsObject (node))
    {
      const char **keys;
      char *first = ph_json_repeated_keys (node, &keys) ? ph_text_cut (keys[0], 80) : NULL;
      if (first)
        ph_place_error (place, key, "has the key “%s” twice in one object; keep one of them",
                        first);
      free (first);
      free (keys);
    }
  for (const cJSON *child = node->child; child; child = child->next)
    {
      if (child->string && ph_text_length (child->string) > PH_KEY_MOST)
        ph_place_error (place, key, "has a key of over %d characters in it", PH_KEY_MOST);
      check_kept (place, key, child);
    }
}

static void
keep (PhExtras *extras, size_t *room, const char *key, char *json)
{
  if (extras->n == *room)
    {
      *room = *room ? 2 * *room : 4;
      extras->items = ph_realloc (extras->items, *room * sizeof *extras->items);
    }
  extras->items[extras->n++] = (PhExtra){ ph_text_dup (key), json };
}

void
ph_read_extras (const PhPlace *place, PhJsonNode *node, bool fields, PhObject object,
                unsigned kinds, const char *const *also, PhExtras *extras)
{
  size_t room = 0;
  assert (extras->n == 0);
  for (cJSON *child = node->child; child; child = child->next)
    {
      if (is_known (child->string, fields, object, kinds, also))
        continue;
      check_kept (place, child->string, child);
      keep (extras, &room, child->string, ph_json_keep (place->json, child));
    }
}
