/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Ids and names for parts that are added: readable, and not yet taken.
 */
#include <ctype.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "model/edit-own.h"

/** Characters of an id that come from the name: leaves room for a number within the 64. */
#define STEM_MOST 48
/** A longer name gets no number: it would grow past what a name may have. */
#define NUMBERED_MOST 900

/* Lower case, runs of anything but letters and digits as one hyphen. Letters beyond ASCII stay as
   they are: an id is for people too. */
static char *
slug_of (const char *name, PhPartKind kind)
{
  char *cut = ph_text_cut (name, STEM_MOST);
  char *slug = ph_alloc (strlen (cut) + 1);
  size_t n = 0;
  for (const char *c = cut; *c; c++)
    {
      unsigned char byte = (unsigned char)*c;
      if (byte >= 0x80 || (byte < 0x80 && isalnum (byte)))
        slug[n++] = byte < 0x80 ? (char)tolower (byte) : *c;
      else if (n > 0 && slug[n - 1] != '-')
        slug[n++] = '-';
    }
  while (n > 0 && slug[n - 1] == '-')
    n--;
  slug[n] = '\0';
  free (cut);
  if (n > 0)
    return slug;
  free (slug);
  return ph_text_dup (ph_part_kind_word (kind));
}

char *
ph_edit_fresh_id (const PhRig *rig, const char *name, PhPartKind kind)
{
  char *stem = slug_of (name ? name : "", kind);
  char *id = ph_text_dup (stem);
  for (int number = 2; strcmp (id, "bow") == 0 || ph_rig_find (rig, id) >= 0; number++)
    {
      free (id);
      id = ph_text_printf ("%s-%d", stem, number);
    }
  free (stem);
  return id;
}

static bool
name_taken (const PhRig *rig, const char *name)
{
  for (size_t i = 0; i < rig->n_parts; i++)
    if (rig->parts[i].name && strcmp (rig->parts[i].name, name) == 0)
      return true;
  return false;
}

/* Length of the name without a number that was put after it before: " 2" of "Back bar 2". */
static size_t
stem_length (const char *name)
{
  size_t n = strlen (name), end = n;
  while (n > 0 && isdigit ((unsigned char)name[n - 1]))
    n--;
  return n > 1 && n < end && end - n < 4 && name[n - 1] == ' ' ? n - 1 : end;
}

char *
ph_edit_fresh_name (const PhRig *rig, const char *name)
{
  char *fresh = ph_text_dup (name);
  if (strlen (name) > NUMBERED_MOST)
    return fresh;
  int stem = (int)stem_length (name);
  for (int number = 2; name_taken (rig, fresh); number++)
    {
      free (fresh);
      fresh = ph_text_printf ("%.*s %d", stem, name, number);
    }
  return fresh;
}
