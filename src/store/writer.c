/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Writing by the table of fields. Numbers that are not finite mean "absent" in the model and are
 * left out.
 */
#include "store/writer.h"

#include <math.h>
#include <string.h>

static bool
same_number (double a, double b)
{
  return a == b || (isnan (a) && isnan (b));
}

static bool
differs (const PhField *field, const void *owner)
{
  const char *word;
  switch (field->type)
    {
    case PH_FIELD_FLAG:
      return ph_field_flag (field, owner);
    case PH_FIELD_TEXT:
      return true; /* null is its default, and null is not written */
    case PH_FIELD_WORD:
      /* The first word is the default, but for a source, which may have none at all. */
      word = ph_field_word (field, owner);
      return word && (field->words_from > 0 || strcmp (word, field->words[0]) != 0);
    case PH_FIELD_NUMBER:
    case PH_FIELD_WHOLE:
    case PH_FIELD_VECTOR:
    default:
      for (int c = 0; c < ph_field_components (field); c++)
        if (!same_number (ph_field_number (field, owner, c), field->fallback))
          return true;
      return false;
    }
}

static void
write_numbers (const PhField *field, const void *owner, PhJsonNode *node)
{
  double v[3];
  int n = ph_field_components (field);
  for (int c = 0; c < n; c++)
    {
      v[c] = ph_field_number (field, owner, c);
      if (!isfinite (v[c]))
        return;
    }
  if (n == 1)
    ph_json_add_number (node, field->key, v[0]);
  else
    ph_json_add_numbers (node, field->key, v, (size_t)n);
}

static void
write_field (const PhField *field, const void *owner, PhJsonNode *node)
{
  const char *text = NULL;
  if (field->type == PH_FIELD_FLAG)
    ph_json_add_flag (node, field->key, ph_field_flag (field, owner));
  else if (ph_field_components (field))
    write_numbers (field, owner, node);
  else
    text =
        field->type == PH_FIELD_TEXT ? ph_field_text (field, owner) : ph_field_word (field, owner);
  if (text)
    ph_json_add_text (node, field->key, text);
}

void
ph_write_fields (PhObject object, unsigned kinds, const void *owner, uint64_t given,
                 PhJsonNode *node)
{
  size_t n;
  const PhField *fields = ph_fields_of (object, &n);
  for (size_t i = 0; i < n; i++)
    if (fields[i].kinds & kinds
        && (given >> i & 1 || fields[i].required & kinds || differs (&fields[i], owner)))
      write_field (&fields[i], owner, node);
}

void
ph_write_extras (const PhExtras *extras, PhJsonNode *node)
{
  for (size_t i = 0; i < extras->n; i++)
    {
      PhJsonNode *kept = ph_json_kept (extras->items[i].json);
      if (kept)
        ph_json_add (node, extras->items[i].key, kept);
    }
}
