/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Parts between JSON and the model. The table of fields does most of it; here is what a table
 * cannot say: sockets, limits, deviations, price.
 */
#include "store/part-json.h"

#include <assert.h>
#include <stdlib.h>

#include "base/text.h"
#include "store/writer.h"

static void
read_socket (const PhPlace *place, PhJsonNode *node, PhSocket *socket)
{
  static const char *const known[] = { "id", "at_mm", "axis", NULL };
  if (!ph_read_is_object (place, NULL, node))
    return;
  const PhJsonNode *at = ph_read_key (node, "at_mm"), *axis = ph_read_key (node, "axis");
  socket->id = ph_read_optional_text (place, node, "id");
  if (at)
    ph_read_numbers (place, "at_mm", at, socket->at_mm, 3);
  else
    ph_place_error (place, "at_mm", "is missing; it should be a list of three numbers");
  if (axis)
    ph_read_numbers (place, "axis", axis, socket->axis, 3);
  else
    ph_place_error (place, "axis", "is missing; it should be a list of three numbers");
  ph_read_extras (place, node, false, PH_OBJECT_PART, 0, known, &socket->extras);
}

void
ph_sockets_read (const PhPlace *place, const PhJsonNode *object, const char *key,
                 PhSocket **sockets, size_t *n, uint64_t *given)
{
  const PhJsonNode *list = ph_read_key (object, key);
  *sockets = NULL;
  *n = 0;
  if (!list || !ph_read_is_array (place, key, list))
    return;
  *given |= PH_GIVEN_LIST;
  *sockets = ph_alloc_zeroed (ph_read_count (list) + 1, sizeof **sockets);
  for (PhJsonNode *node = ph_read_first (list); node; node = ph_read_next (node))
    {
      char *inside;
      PhPlace deeper = ph_place_inside (place, key, (int)*n, &inside);
      read_socket (&deeper, node, &(*sockets)[(*n)++]);
      free (inside);
    }
}

void
ph_sockets_write (const PhSocket *sockets, size_t n, const char *key, uint64_t given,
                  PhJsonNode *object)
{
  if (!n && !(given & PH_GIVEN_LIST))
    return;
  PhJsonNode *list = ph_json_add_array (object, key);
  for (size_t i = 0; i < n; i++)
    {
      PhJsonNode *node = ph_json_new_object ();
      ph_json_add_text (node, "id", sockets[i].id);
      ph_json_add_numbers (node, "at_mm", sockets[i].at_mm, 3);
      ph_json_add_numbers (node, "axis", sockets[i].axis, 3);
      ph_write_extras (&sockets[i].extras, node);
      ph_json_append (list, node);
    }
}

/* A number, or as many as the value has. */
static bool
read_sd (const PhPlace *place, const PhJsonNode *node, const char *key, PhSd *sd)
{
  sd->n = ph_read_looks_like_array (node) ? 3 : 1;
  if (sd->n == 3)
    return ph_read_numbers (place, key, node, sd->v, 3);
  return ph_read_number (place, key, node, sd->v);
}

void
ph_sds_read (const PhPlace *place, const PhJsonNode *object, PhSd **sds, size_t *n, uint64_t *given)
{
  const PhJsonNode *all = ph_read_key (object, "sd");
  if (!all || !ph_read_is_object (place, "sd", all))
    return;
  *given |= PH_GIVEN_SD;
  *sds = ph_alloc_zeroed (ph_read_count (all) + 1, sizeof **sds);
  char *inside;
  PhPlace deeper = ph_place_inside (place, "sd", -1, &inside);
  for (PhJsonNode *node = ph_read_first (all); node; node = ph_read_next (node))
    {
      PhSd sd = { 0 };
      if (!read_sd (&deeper, node, ph_read_name (node), &sd))
        continue;
      sd.key = ph_text_dup (ph_read_name (node));
      (*sds)[(*n)++] = sd;
    }
  free (inside);
}

void
ph_sds_write (const PhSd *sds, size_t n, uint64_t given, PhJsonNode *object)
{
  if (!n && !(given & PH_GIVEN_SD))
    return;
  PhJsonNode *node = ph_json_add_object (object, "sd");
  for (size_t i = 0; i < n; i++)
    if (sds[i].n == 1)
      ph_json_add_number (node, sds[i].key, sds[i].v[0]);
    else
      ph_json_add_numbers (node, sds[i].key, sds[i].v, (size_t)sds[i].n);
}

static void
read_limit (const PhPlace *place, const PhJsonNode *object, const char *key, PhLimits *limits)
{
  const PhJsonNode *node = ph_read_key (object, key);
  double pair[2];
  if (!node || !ph_read_numbers (place, key, node, pair, 2))
    return;
  *limits = (PhLimits){ true, pair[0], pair[1] };
}

static void
read_limits (const PhPlace *place, const PhJsonNode *object, PhPart *part)
{
  static const char *const known[] = { "swing_deg", "lift_deg", "count", NULL };
  PhJsonNode *node = ph_read_key (object, "limits");
  if (!node || !ph_read_is_object (place, "limits", node))
    return;
  part->given |= PH_GIVEN_LIMITS;
  char *inside;
  PhPlace deeper = ph_place_inside (place, "limits", -1, &inside);
  read_limit (&deeper, node, "swing_deg", &part->limit_swing);
  read_limit (&deeper, node, "lift_deg", &part->limit_lift);
  read_limit (&deeper, node, "count", &part->limit_count);
  ph_read_extras (&deeper, node, false, PH_OBJECT_PART, 0, known, &part->limits_extras);
  free (inside);
}

static void
write_limit (const PhLimits *limits, const char *key, PhJsonNode *node)
{
  if (limits->given)
    ph_json_add_numbers (node, key, (double[]){ limits->lo, limits->hi }, 2);
}

static void
write_limits (const PhPart *part, PhJsonNode *object)
{
  if (!part->limit_swing.given && !part->limit_lift.given && !part->limit_count.given
      && !part->limits_extras.n && !(part->given & PH_GIVEN_LIMITS))
    return;
  PhJsonNode *node = ph_json_add_object (object, "limits");
  write_limit (&part->limit_swing, "swing_deg", node);
  write_limit (&part->limit_lift, "lift_deg", node);
  write_limit (&part->limit_count, "count", node);
  ph_write_extras (&part->limits_extras, node);
}

static void
read_price (const PhPlace *place, const PhJsonNode *object, PhPart *part)
{
  static const char *const known[] = { "amount", "currency", NULL };
  PhJsonNode *node = ph_read_key (object, "price");
  if (!node || !ph_read_is_object (place, "price", node))
    return;
  char *inside;
  PhPlace deeper = ph_place_inside (place, "price", -1, &inside);
  const PhJsonNode *amount = ph_read_key (node, "amount");
  if (!amount)
    ph_place_error (&deeper, "amount", "is missing; it should be a number");
  else if (ph_read_number (&deeper, "amount", amount, &part->price.amount))
    part->price.given = true;
  part->price.currency = ph_read_optional_text (&deeper, node, "currency");
  if (!ph_read_key (node, "currency"))
    ph_place_error (&deeper, "currency", "is missing; it should be a text such as \"EUR\"");
  ph_read_extras (&deeper, node, false, PH_OBJECT_PART, 0, known, &part->price_extras);
  free (inside);
}

static void
write_price (const PhPart *part, PhJsonNode *object)
{
  if (!part->price.given)
    return;
  PhJsonNode *node = ph_json_add_object (object, "price");
  ph_json_add_number (node, "amount", part->price.amount);
  if (part->price.currency)
    ph_json_add_text (node, "currency", part->price.currency);
  ph_write_extras (&part->price_extras, node);
}

const char *
ph_part_read_label (const PhJsonNode *node, size_t index, char buffer[PH_ISSUE_LABEL_SIZE])
{
  PhPlace silent = { 0 };
  const PhJsonNode *id = ph_read_key (node, "id");
  const char *text = NULL;
  if (id)
    ph_read_text (&silent, "id", id, &text);
  return ph_issue_part_label (text, index, buffer);
}

#define ALSO_MOST 8

static void
read_part_extras (const PhPlace *place, PhJsonNode *node, const char *const *also, PhPart *part)
{
  const char *known[4 + ALSO_MOST + 1] = { "limits", "sd", "price" };
  size_t n = 3;
  if (part->kind == PH_PART_BRACKET)
    known[n++] = "sockets";
  for (; also && *also && n < 4 + ALSO_MOST; also++)
    known[n++] = *also;
  assert (!also || !*also);
  ph_read_extras (place, node, true, PH_OBJECT_PART, 1u << part->kind, known, &part->extras);
}

bool
ph_part_read (const PhPlace *place, PhJsonNode *node, const char *const *also, PhPart *part)
{
  uint64_t given = 0;
  *part = ph_part_default (PH_PART_BAR);
  if (!ph_read_is_object (place, NULL, node))
    return false;
  if (!ph_read_field (place, ph_field_find (PH_OBJECT_PART, "kind", NULL), node, part))
    {
      part->id = ph_read_optional_text (place, node, "id");
      part->on = ph_read_optional_text (place, node, "on");
      return false;
    }
  *part = ph_part_default (part->kind);
  unsigned kinds = 1u << part->kind;
  ph_read_fields (place, PH_OBJECT_PART, kinds, node, part, &given);
  part->given = given;
  if (part->kind == PH_PART_BRACKET)
    ph_sockets_read (place, node, "sockets", &part->sockets, &part->n_sockets, &part->given);
  ph_sds_read (place, node, &part->sds, &part->n_sds, &part->given);
  read_limits (place, node, part);
  read_price (place, node, part);
  read_part_extras (place, node, also, part);
  return true;
}

PhJsonNode *
ph_part_write (const PhPart *part)
{
  PhJsonNode *node = ph_json_new_object ();
  ph_write_fields (PH_OBJECT_PART, 1u << part->kind, part, part->given, node);
  if (part->kind == PH_PART_BRACKET)
    ph_sockets_write (part->sockets, part->n_sockets, "sockets", part->given, node);
  write_limits (part, node);
  ph_sds_write (part->sds, part->n_sds, part->given, node);
  write_price (part, node);
  ph_write_extras (&part->extras, node);
  return node;
}
