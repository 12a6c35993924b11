/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Whether two rigs would be written as the same file: numbers bit by bit (0 and -0 differ), and
 * only those that stand in the file.
 */
#include <string.h>

#include "base/text.h"
#include "model/fields.h"
#include "model/rig.h"

static bool
same_numbers (const double *a, const double *b, size_t n)
{
  return n == 0 || memcmp (a, b, n * sizeof *a) == 0;
}

static bool
same_field (const PhField *field, const void *a, const void *b)
{
  switch (field->type)
    {
    case PH_FIELD_FLAG:
      return ph_field_flag (field, a) == ph_field_flag (field, b);
    case PH_FIELD_TEXT:
      return ph_text_equal (ph_field_text (field, a), ph_field_text (field, b));
    case PH_FIELD_WORD:
      return ph_field_word (field, a) == ph_field_word (field, b);
    case PH_FIELD_NUMBER:
    case PH_FIELD_WHOLE:
    case PH_FIELD_VECTOR:
    default:
      for (int c = 0; c < ph_field_components (field); c++)
        {
          double x = ph_field_number (field, a, c), y = ph_field_number (field, b, c);
          if (!same_numbers (&x, &y, 1))
            return false;
        }
      return true;
    }
}

static bool
same_fields (PhObject object, const void *a, const void *b, uint64_t given_a, uint64_t given_b)
{
  size_t n;
  const PhField *fields = ph_fields_of (object, &n);
  for (size_t i = 0; i < n; i++)
    {
      bool text = fields[i].type == PH_FIELD_TEXT;
      bool in_a = given_a >> i & 1, in_b = given_b >> i & 1;
      if (!text && in_a != in_b)
        return false;
      if ((text || in_a) && !same_field (&fields[i], a, b))
        return false;
    }
  return true;
}

static bool
same_extras (const PhExtras *a, const PhExtras *b)
{
  if (a->n != b->n)
    return false;
  for (size_t i = 0; i < a->n; i++)
    if (!ph_text_equal (a->items[i].key, b->items[i].key)
        || !ph_text_equal (a->items[i].json, b->items[i].json))
      return false;
  return true;
}

static bool
same_sockets (const PhSocket *a, size_t n_a, const PhSocket *b, size_t n_b)
{
  if (n_a != n_b)
    return false;
  for (size_t i = 0; i < n_a; i++)
    if (!ph_text_equal (a[i].id, b[i].id) || !same_numbers (a[i].at_mm, b[i].at_mm, 3)
        || !same_numbers (a[i].axis, b[i].axis, 3) || !same_extras (&a[i].extras, &b[i].extras))
      return false;
  return true;
}

static bool
same_sds (const PhSd *a, size_t n_a, const PhSd *b, size_t n_b)
{
  if (n_a != n_b)
    return false;
  for (size_t i = 0; i < n_a; i++)
    if (!ph_text_equal (a[i].key, b[i].key) || a[i].n != b[i].n
        || !same_numbers (a[i].v, b[i].v, (size_t)a[i].n))
      return false;
  return true;
}

static bool
same_limits (const PhLimits *a, const PhLimits *b)
{
  return a->given == b->given
         && (!a->given || (same_numbers (&a->lo, &b->lo, 1) && same_numbers (&a->hi, &b->hi, 1)));
}

static bool
same_price (const PhPart *a, const PhPart *b)
{
  if (a->price.given != b->price.given || !same_extras (&a->price_extras, &b->price_extras))
    return false;
  return !a->price.given
         || (same_numbers (&a->price.amount, &b->price.amount, 1)
             && ph_text_equal (a->price.currency, b->price.currency));
}

static bool
same_part (const PhPart *a, const PhPart *b)
{
  return a->kind == b->kind && same_fields (PH_OBJECT_PART, a, b, a->given, b->given)
         && same_sockets (a->sockets, a->n_sockets, b->sockets, b->n_sockets)
         && same_limits (&a->limit_swing, &b->limit_swing)
         && same_limits (&a->limit_lift, &b->limit_lift)
         && same_limits (&a->limit_count, &b->limit_count)
         && same_sds (a->sds, a->n_sds, b->sds, b->n_sds) && same_price (a, b)
         && same_extras (&a->extras, &b->extras)
         && same_extras (&a->limits_extras, &b->limits_extras);
}

static bool
same_check (const PhCheck *a, const PhCheck *b)
{
  return same_fields (PH_OBJECT_CHECK, a, b, a->given, b->given) && a->n_draws == b->n_draws
         && same_numbers (a->draws_deg, b->draws_deg, a->n_draws)
         && same_extras (&a->extras, &b->extras);
}

static bool
same_archer (const PhArcher *a, const PhArcher *b)
{
  if (a->present != b->present || a->hand_present != b->hand_present || a->n_checks != b->n_checks
      || !same_extras (&a->extras, &b->extras) || !same_extras (&a->hand_extras, &b->hand_extras)
      || !same_fields (PH_OBJECT_ARCHER, a, b, a->given, b->given)
      || !same_fields (PH_OBJECT_HAND, a, b, a->hand_given, b->hand_given))
    return false;
  for (size_t i = 0; i < a->n_checks; i++)
    if (!same_check (&a->checks[i], &b->checks[i]))
      return false;
  return true;
}

static bool
same_bow (const PhBow *a, const PhBow *b)
{
  return same_fields (PH_OBJECT_BOW, a, b, a->given, b->given)
         && same_sockets (a->mounts, a->n_mounts, b->mounts, b->n_mounts)
         && same_sds (a->sds, a->n_sds, b->sds, b->n_sds) && same_extras (&a->extras, &b->extras);
}

bool
ph_rig_equal (const PhRig *a, const PhRig *b)
{
  if (a->n_parts != b->n_parts || !ph_text_equal (a->name, b->name)
      || !ph_text_equal (a->notes, b->notes) || !ph_text_equal (a->book, b->book)
      || !same_archer (&a->archer, &b->archer) || !same_bow (&a->bow, &b->bow)
      || !same_extras (&a->extras, &b->extras))
    return false;
  for (size_t i = 0; i < a->n_parts; i++)
    if (!same_part (&a->parts[i], &b->parts[i]))
      return false;
  return true;
}
