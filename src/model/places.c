/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where a part could hang now: mounts of the bow, sockets of brackets, far ends. A place is taken
 * by any part on it that is not itself off, fitted or not: so that switching a host back on never
 * finds two parts on one socket.
 */
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "model/edit.h"

typedef struct
{
  const PhRig *rig;
  const int *hosts;
  int moving;
  int height; /* parts in a row from the moving one to its farthest guest, itself counted */
  char **places;
  size_t n;
} Search;

static bool
hangs_on (const int *hosts, size_t i, int ancestor)
{
  int steps = 0;
  for (int at = (int)i; at >= 0 && steps <= PH_RIG_PARTS_MOST; at = hosts[at], steps++)
    if (at == ancestor)
      return true;
  return false;
}

static int
nesting_of (const int *hosts, int i)
{
  int nesting = 0;
  for (int at = i; at >= 0 && nesting <= PH_RIG_PARTS_MOST; at = hosts[at])
    nesting++;
  return nesting;
}

static int
height_of (const PhRig *rig, const int *hosts, int moving)
{
  int height = 1;
  for (size_t i = 0; moving >= 0 && i < rig->n_parts; i++)
    if (hangs_on (hosts, i, moving))
      {
        int own = nesting_of (hosts, (int)i) - nesting_of (hosts, moving) + 1;
        height = own > height ? own : height;
      }
  return height;
}

static bool
is_taken (const Search *search, const char *place)
{
  for (size_t i = 0; i < search->rig->n_parts; i++)
    {
      const PhPart *part = &search->rig->parts[i];
      if ((int)i != search->moving && !part->off && !ph_part_is_along (part)
          && strcmp (part->on, place) == 0)
        return true;
    }
  return false;
}

/* Takes over `place`. */
static void
offer (Search *search, char *place)
{
  if (is_taken (search, place))
    free (place);
  else
    search->places[search->n++] = place;
}

static void
offer_sockets (Search *search, const char *carrier, const PhSocket *sockets, size_t n)
{
  search->places = ph_realloc (search->places, (search->n + n + 2) * sizeof *search->places);
  for (size_t i = 0; i < n; i++)
    offer (search, ph_text_printf ("%s:%s", carrier, sockets[i].id));
}

static void
offer_part (Search *search, size_t i)
{
  const PhPart *part = &search->rig->parts[i];
  if (part->kind == PH_PART_ACCESSORY
      || nesting_of (search->hosts, (int)i) + search->height > PH_RIG_NESTING_MOST
      || (search->moving >= 0 && hangs_on (search->hosts, i, search->moving)))
    return;
  offer_sockets (search, part->id, part->sockets, part->n_sockets);
  if (part->kind != PH_PART_BRACKET)
    offer (search, ph_text_dup (part->id));
}

char **
ph_edit_places (const PhRig *rig, PhPartKind kind, int moving)
{
  Search search = { .rig = rig, .moving = moving };
  if (kind == PH_PART_ACCESSORY)
    {
      search.places = ph_alloc (2 * sizeof *search.places);
      search.places[search.n++] = ph_text_dup ("bow");
    }
  else
    {
      int *hosts = ph_rig_hosts (rig);
      search.hosts = hosts;
      search.height = height_of (rig, hosts, moving);
      offer_sockets (&search, "bow", rig->bow.mounts, rig->bow.n_mounts);
      for (size_t i = 0; i < rig->n_parts; i++)
        offer_part (&search, i);
      free (hosts);
    }
  search.places[search.n] = NULL;
  return search.places;
}

void
ph_edit_places_free (char **places)
{
  for (char **place = places; place && *place; place++)
    free (*place);
  free (places);
}
