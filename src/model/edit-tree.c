/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Edits of what hangs on what: add, remove, copy, paste, duplicate, re-hang. Each makes its
 * change on a copy of the rig; the whole check decides.
 */
#include <assert.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "model/edit-own.h"
#include "model/edit.h"
#include "model/fields.h"

static void
set_part_text (PhPart *part, const char *key, const char *text)
{
  size_t index = 0;
  const PhField *field = ph_field_find (PH_OBJECT_PART, key, &index);
  uint64_t bit = (uint64_t)1 << index;
  ph_field_set_text (field, part, text);
  part->given = text ? part->given | bit : part->given & ~bit;
}

/* Whether `on` is the far end of a bar; `*length_mm` is then that bar's. */
static bool
is_bar (const PhRig *rig, const char *on, double *length_mm)
{
  int host = ph_rig_find (rig, on);
  if (host < 0 || rig->parts[host].kind != PH_PART_BAR)
    return false;
  *length_mm = rig->parts[host].length_mm;
  return true;
}

/* Puts a part on a place. A stack that lay along a bar stays along if the new place is a bar (at
   most at its end), else it goes to the far end. */
static void
hang_on (const PhRig *rig, PhPart *part, const char *on)
{
  double length_mm;
  set_part_text (part, "on", on);
  if (!ph_part_is_along (part))
    return;
  if (is_bar (rig, on, &length_mm))
    part->along_mm = fmin (part->along_mm, length_mm);
  else
    {
      part->along_mm = NAN;
      part->given &= ~ph_given_bit (PH_OBJECT_PART, "along_mm");
    }
}

bool
ph_edit_add (PhRig *rig, const PhPart *part, const char *on, size_t *index, PhIssues *issues)
{
  PhFragment fragment = { ph_alloc (sizeof *fragment.parts), 1 };
  fragment.parts[0] = ph_part_copy (part);
  set_part_text (&fragment.parts[0], "id", NULL);
  bool added = ph_edit_paste (rig, &fragment, on, index, issues);
  ph_fragment_clear (&fragment);
  return added;
}

size_t
ph_edit_remove (PhRig *rig, size_t i)
{
  assert (i < rig->n_parts);
  size_t removed = 0;
  bool *goes = ph_alloc (rig->n_parts * sizeof *goes);
  for (size_t k = 0; k < rig->n_parts; k++)
    goes[k] = ph_rig_hangs_on (rig, k, i);
  for (size_t k = rig->n_parts; k-- > 0;)
    if (goes[k])
      {
        ph_rig_drop (rig, k);
        removed++;
      }
  free (goes);
  return removed;
}

PhFragment
ph_edit_copy (const PhRig *rig, size_t i)
{
  assert (i < rig->n_parts);
  PhFragment fragment = { ph_alloc (rig->n_parts * sizeof *fragment.parts), 0 };
  fragment.parts[fragment.n++] = ph_part_copy (&rig->parts[i]);
  for (size_t k = 0; k < rig->n_parts; k++)
    if (k != i && ph_rig_hangs_on (rig, k, i))
      fragment.parts[fragment.n++] = ph_part_copy (&rig->parts[k]);
  return fragment;
}

void
ph_fragment_clear (PhFragment *fragment)
{
  for (size_t i = 0; i < fragment->n; i++)
    ph_part_clear (&fragment->parts[i]);
  free (fragment->parts);
  *fragment = (PhFragment){ 0 };
}

/* Index in the fragment of the part that part k hangs on, or −1; `*rest` is ":SOCKET" or "". */
static int
host_within (const PhFragment *fragment, size_t k, const char **rest)
{
  const char *on = fragment->parts[k].on;
  if (!on)
    return -1;
  size_t length = strcspn (on, ":");
  *rest = on + length;
  for (size_t i = 0; i < fragment->n; i++)
    {
      const char *id = fragment->parts[i].id;
      if (id && strlen (id) == length && strncmp (id, on, length) == 0)
        return (int)i;
    }
  return -1;
}

/* A free id that keeps the part's own where it can: a part cut and pasted stays the same part. */
static char *
id_for (const PhRig *rig, const PhPart *part)
{
  if (part->id && ph_rig_find (rig, part->id) < 0)
    return ph_text_dup (part->id);
  return ph_edit_fresh_id (rig, part->name ? part->name : part->id, part->kind);
}

/* Appends the fragment to the draft under fresh ids and names. */
static void
append_fragment (PhRig *draft, const PhFragment *fragment, const char *on)
{
  size_t first = draft->n_parts;
  for (size_t k = 0; k < fragment->n; k++)
    {
      PhPart part = ph_part_copy (&fragment->parts[k]);
      if (part.name)
        {
          char *name = ph_edit_fresh_name (draft, part.name);
          set_part_text (&part, "name", name);
          free (name);
        }
      char *id = id_for (draft, &part);
      set_part_text (&part, "id", id);
      free (id);
      ph_rig_append (draft, part);
    }
  for (size_t k = 1; k < fragment->n; k++)
    {
      const char *rest = "";
      int host = host_within (fragment, k, &rest);
      if (host < 0)
        continue; /* its host is not in the fragment: the check says so */
      char *place = ph_text_printf ("%s%s", draft->parts[first + (size_t)host].id, rest);
      set_part_text (&draft->parts[first + k], "on", place);
      free (place);
    }
  hang_on (draft, &draft->parts[first], on);
}

bool
ph_edit_paste (PhRig *rig, const PhFragment *fragment, const char *on, size_t *index,
               PhIssues *issues)
{
  assert (fragment->n > 0);
  size_t first = rig->n_parts;
  PhRig *draft = ph_rig_copy (rig);
  append_fragment (draft, fragment, on);
  if (!ph_edit_commit (rig, draft, issues))
    return false;
  if (index)
    *index = first;
  return true;
}

bool
ph_edit_insert (PhRig *rig, const PhPart *part, size_t i, const char *socket, size_t *index,
                PhIssues *issues)
{
  assert (i < rig->n_parts && !ph_part_is_along (&rig->parts[i]));
  size_t first = rig->n_parts;
  PhRig *draft = ph_rig_copy (rig);
  PhFragment fragment = { ph_alloc (sizeof *fragment.parts), 1 };
  fragment.parts[0] = ph_part_copy (part);
  set_part_text (&fragment.parts[0], "id", NULL);
  append_fragment (draft, &fragment, rig->parts[i].on);
  ph_fragment_clear (&fragment);
  const char *id = draft->parts[first].id;
  char *on = socket ? ph_text_printf ("%s:%s", id, socket) : ph_text_dup (id);
  hang_on (draft, &draft->parts[i], on);
  free (on);
  if (!ph_edit_commit (rig, draft, issues))
    return false;
  if (index)
    *index = first;
  return true;
}

/* Places are alike when both are sockets or both are far ends. */
static bool
is_socket (const char *on)
{
  return strchr (on, ':') != NULL;
}

static bool
same_carrier (const char *a, const char *b)
{
  size_t length = strcspn (a, ":");
  return length == strcspn (b, ":") && strncmp (a, b, length) == 0;
}

/* The first free place like part i's own, on the same carrier if it can be; null: none. New. */
static char *
free_place_like (const PhRig *rig, size_t i)
{
  const PhPart *part = &rig->parts[i];
  if (part->kind == PH_PART_ACCESSORY || ph_part_is_along (part))
    return ph_text_dup (part->on); /* there is always room */
  char **places = ph_edit_places (rig, part->kind, (int)i);
  const char *best = NULL;
  for (char **place = places; *place; place++)
    if (strcmp (*place, part->on) != 0 && is_socket (*place) == is_socket (part->on)
        && (!best || (same_carrier (*place, part->on) && !same_carrier (best, part->on))))
      best = *place;
  char *found = ph_text_dup (best);
  ph_edit_places_free (places);
  return found;
}

bool
ph_edit_duplicate (PhRig *rig, size_t i, size_t *index, PhIssues *issues)
{
  PhFragment fragment = ph_edit_copy (rig, i);
  char *place = free_place_like (rig, i);
  if (!place)
    {
      place = ph_text_dup (rig->parts[i].on);
      fragment.parts[0].off = true;
      fragment.parts[0].given |= ph_given_bit (PH_OBJECT_PART, "off");
    }
  bool done = ph_edit_paste (rig, &fragment, place, index, issues);
  free (place);
  ph_fragment_clear (&fragment);
  return done;
}

bool
ph_edit_rehang (PhRig *rig, size_t i, const char *on, PhIssues *issues)
{
  assert (i < rig->n_parts);
  PhRig *draft = ph_rig_copy (rig);
  hang_on (draft, &draft->parts[i], on);
  return ph_edit_commit (rig, draft, issues);
}
