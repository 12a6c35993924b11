/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Parts as values that own their texts and lists.
 */
#include "model/part.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "model/fields.h"

PhPart
ph_part_default (PhPartKind kind)
{
  PhPart part = { .kind = kind };
  size_t n;
  const PhField *fields = ph_fields_of (PH_OBJECT_PART, &n);
  for (size_t i = 0; i < n; i++)
    for (int c = 0; c < ph_field_components (&fields[i]); c++)
      ph_field_set_number (&fields[i], &part, c, fields[i].fallback);
  part.given = ph_given_bit (PH_OBJECT_PART, "kind");
  return part;
}

PhExtras
ph_extras_copy (const PhExtras *extras)
{
  PhExtras copy = { NULL, extras->n };
  if (!extras->n)
    return copy;
  copy.items = ph_alloc (extras->n * sizeof *copy.items);
  for (size_t i = 0; i < extras->n; i++)
    copy.items[i] =
        (PhExtra){ ph_text_dup (extras->items[i].key), ph_text_dup (extras->items[i].json) };
  return copy;
}

void
ph_extras_clear (PhExtras *extras)
{
  for (size_t i = 0; i < extras->n; i++)
    {
      free (extras->items[i].key);
      free (extras->items[i].json);
    }
  free (extras->items);
  *extras = (PhExtras){ 0 };
}

PhSocket *
ph_sockets_copy (const PhSocket *sockets, size_t n)
{
  if (!n)
    return NULL;
  PhSocket *copy = ph_alloc (n * sizeof *copy);
  for (size_t i = 0; i < n; i++)
    {
      copy[i] = sockets[i];
      copy[i].id = ph_text_dup (sockets[i].id);
      copy[i].extras = ph_extras_copy (&sockets[i].extras);
    }
  return copy;
}

void
ph_sockets_free (PhSocket *sockets, size_t n)
{
  for (size_t i = 0; i < n; i++)
    {
      free (sockets[i].id);
      ph_extras_clear (&sockets[i].extras);
    }
  free (sockets);
}

int
ph_sockets_find (const PhSocket *sockets, size_t n, const char *id)
{
  for (size_t i = 0; i < n; i++)
    if (sockets[i].id && strcmp (sockets[i].id, id) == 0)
      return (int)i;
  return -1;
}

PhSd *
ph_sds_copy (const PhSd *sds, size_t n)
{
  if (!n)
    return NULL;
  PhSd *copy = ph_alloc (n * sizeof *copy);
  for (size_t i = 0; i < n; i++)
    {
      copy[i] = sds[i];
      copy[i].key = ph_text_dup (sds[i].key);
    }
  return copy;
}

void
ph_sds_free (PhSd *sds, size_t n)
{
  for (size_t i = 0; i < n; i++)
    free (sds[i].key);
  free (sds);
}

void
ph_sds_put (PhSd **sds, size_t *n, const char *key, int numbers, const double *sd)
{
  size_t i = 0;
  while (i < *n && strcmp ((*sds)[i].key, key) != 0)
    i++;
  if (i == *n)
    {
      *sds = ph_realloc (*sds, (i + 1) * sizeof **sds);
      (*sds)[(*n)++] = (PhSd){ .key = ph_text_dup (key) };
    }
  (*sds)[i].n = numbers;
  memcpy ((*sds)[i].v, sd, (size_t)numbers * sizeof *sd);
}

PhPart
ph_part_copy (const PhPart *part)
{
  PhPart copy = *part;
  copy.id = ph_text_dup (part->id);
  copy.name = ph_text_dup (part->name);
  copy.on = ph_text_dup (part->on);
  copy.sockets = ph_sockets_copy (part->sockets, part->n_sockets);
  copy.sds = ph_sds_copy (part->sds, part->n_sds);
  copy.price.currency = ph_text_dup (part->price.currency);
  copy.extras = ph_extras_copy (&part->extras);
  copy.limits_extras = ph_extras_copy (&part->limits_extras);
  copy.price_extras = ph_extras_copy (&part->price_extras);
  return copy;
}

void
ph_part_clear (PhPart *part)
{
  free (part->id);
  free (part->name);
  free (part->on);
  ph_sockets_free (part->sockets, part->n_sockets);
  ph_sds_free (part->sds, part->n_sds);
  free (part->price.currency);
  ph_extras_clear (&part->extras);
  ph_extras_clear (&part->limits_extras);
  ph_extras_clear (&part->price_extras);
  *part = (PhPart){ 0 };
}

const char *
ph_part_name (const PhPart *part)
{
  return part->name && *part->name ? part->name : part->id;
}

const char *
ph_part_kind_word (PhPartKind kind)
{
  PhPart part = { .kind = kind };
  return ph_field_word (ph_field_find (PH_OBJECT_PART, "kind", NULL), &part);
}

bool
ph_part_kind_from_word (const char *word, PhPartKind *kind)
{
  PhPart part = { 0 };
  if (!ph_field_set_word (ph_field_find (PH_OBJECT_PART, "kind", NULL), &part, word))
    return false;
  *kind = part.kind;
  return true;
}

double
ph_part_mass_g (const PhPart *part)
{
  return part->kind == PH_PART_WEIGHTS ? part->count * part->each_g : part->mass_g;
}

double
ph_part_length_mm (const PhPart *part)
{
  switch (part->kind)
    {
    case PH_PART_BAR:
    case PH_PART_DAMPER:
      return part->length_mm;
    case PH_PART_WEIGHTS:
      return part->count * part->each_mm;
    case PH_PART_BRACKET:
    case PH_PART_ACCESSORY:
    default:
      return 0;
    }
}

double
ph_part_fitting_mm (const PhPart *part)
{
  if (part->given & ph_given_bit (PH_OBJECT_PART, "fitting_mm"))
    return part->fitting_mm;
  return fmin (part->fitting_mm, part->length_mm);
}

bool
ph_part_is_along (const PhPart *part)
{
  return part->kind == PH_PART_WEIGHTS && !isnan (part->along_mm);
}
