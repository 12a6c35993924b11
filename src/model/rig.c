/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A rig as a value that owns its memory, and the questions about what hangs on what. Hosts are
 * found by walking the list: at most 256 short texts, and the tree is never more than 16 deep.
 */
#include "model/rig.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "model/fields.h"

static void
set_fallbacks (PhObject object, void *struct_of_it)
{
  size_t n;
  const PhField *fields = ph_fields_of (object, &n);
  for (size_t i = 0; i < n; i++)
    for (int c = 0; c < ph_field_components (&fields[i]); c++)
      ph_field_set_number (&fields[i], struct_of_it, c, fields[i].fallback);
}

PhCheck
ph_check_default (void)
{
  PhCheck check = { 0 };
  set_fallbacks (PH_OBJECT_CHECK, &check);
  return check;
}

PhCheck
ph_check_copy (const PhCheck *check)
{
  PhCheck copy = *check;
  copy.date = ph_text_dup (check->date);
  copy.note = ph_text_dup (check->note);
  copy.predicted_at = ph_text_dup (check->predicted_at);
  copy.draws_deg = NULL;
  if (check->n_draws)
    {
      copy.draws_deg = ph_alloc (check->n_draws * sizeof *copy.draws_deg);
      memcpy (copy.draws_deg, check->draws_deg, check->n_draws * sizeof *copy.draws_deg);
    }
  copy.extras = ph_extras_copy (&check->extras);
  return copy;
}

void
ph_check_clear (PhCheck *check)
{
  free (check->date);
  free (check->note);
  free (check->predicted_at);
  free (check->draws_deg);
  ph_extras_clear (&check->extras);
  *check = (PhCheck){ 0 };
}

PhRig *
ph_rig_new (void)
{
  PhRig *rig = ph_alloc_zeroed (1, sizeof *rig);
  set_fallbacks (PH_OBJECT_ARCHER, &rig->archer);
  set_fallbacks (PH_OBJECT_HAND, &rig->archer);
  set_fallbacks (PH_OBJECT_BOW, &rig->bow);
  return rig;
}

static PhArcher
archer_copy (const PhArcher *archer)
{
  PhArcher copy = *archer;
  copy.checks = NULL;
  if (archer->n_checks)
    copy.checks = ph_alloc (archer->n_checks * sizeof *copy.checks);
  for (size_t i = 0; i < archer->n_checks; i++)
    copy.checks[i] = ph_check_copy (&archer->checks[i]);
  copy.extras = ph_extras_copy (&archer->extras);
  copy.hand_extras = ph_extras_copy (&archer->hand_extras);
  return copy;
}

static PhBow
bow_copy (const PhBow *bow)
{
  PhBow copy = *bow;
  copy.mounts = ph_sockets_copy (bow->mounts, bow->n_mounts);
  copy.sds = ph_sds_copy (bow->sds, bow->n_sds);
  copy.extras = ph_extras_copy (&bow->extras);
  return copy;
}

PhRig *
ph_rig_copy (const PhRig *rig)
{
  PhRig *copy = ph_alloc (sizeof *copy);
  *copy = (PhRig){ .name = ph_text_dup (rig->name),
                   .notes = ph_text_dup (rig->notes),
                   .book = ph_text_dup (rig->book),
                   .archer = archer_copy (&rig->archer),
                   .bow = bow_copy (&rig->bow),
                   .n_parts = rig->n_parts,
                   .extras = ph_extras_copy (&rig->extras) };
  if (rig->n_parts)
    copy->parts = ph_alloc (rig->n_parts * sizeof *copy->parts);
  for (size_t i = 0; i < rig->n_parts; i++)
    copy->parts[i] = ph_part_copy (&rig->parts[i]);
  return copy;
}

void
ph_rig_free (PhRig *rig)
{
  if (!rig)
    return;
  free (rig->name);
  free (rig->notes);
  free (rig->book);
  for (size_t i = 0; i < rig->archer.n_checks; i++)
    ph_check_clear (&rig->archer.checks[i]);
  free (rig->archer.checks);
  ph_extras_clear (&rig->archer.extras);
  ph_extras_clear (&rig->archer.hand_extras);
  ph_sockets_free (rig->bow.mounts, rig->bow.n_mounts);
  ph_sds_free (rig->bow.sds, rig->bow.n_sds);
  ph_extras_clear (&rig->bow.extras);
  for (size_t i = 0; i < rig->n_parts; i++)
    ph_part_clear (&rig->parts[i]);
  free (rig->parts);
  ph_extras_clear (&rig->extras);
  free (rig);
}

double
ph_rig_holding_weight_n (const PhRig *rig)
{
  /* Common practice, no source: a compound lets off, the others do not. */
  static const double by_kind[] = {
    [PH_BOW_COMPOUND] = 65, [PH_BOW_RECURVE] = 160, [PH_BOW_BAREBOW] = 160
  };
  if (rig->archer.given & ph_given_bit (PH_OBJECT_ARCHER, "holding_weight_n"))
    return rig->archer.holding_weight_n;
  return by_kind[rig->bow.kind];
}

/* The part whose id is the first `length` bytes of `id`. */
static int
find_prefix (const PhRig *rig, const char *id, size_t length)
{
  for (size_t i = 0; i < rig->n_parts; i++)
    {
      const char *own = rig->parts[i].id;
      if (own && strncmp (own, id, length) == 0 && own[length] == '\0')
        return (int)i;
    }
  return -1;
}

int
ph_rig_find (const PhRig *rig, const char *id)
{
  return find_prefix (rig, id, strlen (id));
}

int
ph_rig_host (const PhRig *rig, size_t i, const char **socket)
{
  const char *on = rig->parts[i].on;
  const char *colon = on ? strchr (on, ':') : NULL;
  if (socket)
    *socket = colon ? colon + 1 : NULL;
  size_t length = !on ? 0 : colon ? (size_t)(colon - on) : strlen (on);
  /* A part that calls itself "bow" is an error of its own; nothing hangs on it. */
  if (!on || (length == 3 && strncmp (on, "bow", 3) == 0))
    return -1;
  return find_prefix (rig, on, length);
}

int *
ph_rig_hosts (const PhRig *rig)
{
  int *hosts = ph_alloc ((rig->n_parts + 1) * sizeof *hosts);
  for (size_t i = 0; i < rig->n_parts; i++)
    hosts[i] = ph_rig_host (rig, i, NULL);
  return hosts;
}

bool
ph_rig_is_fitted (const PhRig *rig, size_t i)
{
  size_t steps = 0;
  for (int at = (int)i; at >= 0; at = ph_rig_host (rig, (size_t)at, NULL))
    if (rig->parts[at].off || steps++ > rig->n_parts)
      return false;
  return true;
}

bool *
ph_rig_fitted (const PhRig *rig, const int *hosts)
{
  bool *fitted = ph_alloc ((rig->n_parts + 1) * sizeof *fitted);
  for (size_t i = 0; i < rig->n_parts; i++)
    {
      size_t steps = 0;
      int at = (int)i;
      while (at >= 0 && !rig->parts[at].off && steps++ <= rig->n_parts)
        at = hosts[at];
      fitted[i] = at < 0;
    }
  return fitted;
}

bool
ph_rig_hangs_on (const PhRig *rig, size_t i, size_t ancestor)
{
  size_t steps = 0;
  for (int at = (int)i; at >= 0 && steps <= rig->n_parts; steps++)
    {
      if ((size_t)at == ancestor)
        return true;
      at = ph_rig_host (rig, (size_t)at, NULL);
    }
  return false;
}

int
ph_rig_nesting (const PhRig *rig, size_t i)
{
  int nesting = 0;
  for (int at = (int)i; at >= 0; at = ph_rig_host (rig, (size_t)at, NULL))
    if (++nesting > (int)rig->n_parts)
      return 0;
  return nesting;
}

void
ph_rig_append (PhRig *rig, PhPart part)
{
  rig->parts = ph_realloc (rig->parts, (rig->n_parts + 1) * sizeof *rig->parts);
  rig->parts[rig->n_parts++] = part;
}

void
ph_rig_drop (PhRig *rig, size_t i)
{
  assert (i < rig->n_parts);
  ph_part_clear (&rig->parts[i]);
  memmove (&rig->parts[i], &rig->parts[i + 1], (rig->n_parts - i - 1) * sizeof *rig->parts);
  rig->n_parts--;
}
