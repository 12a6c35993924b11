/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The structures hashed hold floats alone, so no padding enters. A microsecond for some ten solids.
 */
#include "render/solid-print.h"

#define PRIME 1099511628211ULL
/* A part that was added or taken away shifts what follows it by so many solids at most, mostly. */
#define SHIFT 8

uint64_t
ph_print_bytes (uint64_t print, const void *bytes, size_t n)
{
  const unsigned char *at = bytes;
  for (size_t i = 0; i < n; i++)
    print = (print ^ at[i]) * PRIME;
  return print;
}

uint64_t
ph_solid_print (const PhDrawList *list, const PhItem *item)
{
  uint64_t print = ph_print_bytes (PH_PRINT_START, &item->solid, sizeof item->solid);
  switch (item->solid)
    {
    case PH_SOLID_TUBE:
      return ph_print_bytes (print, &item->tube, sizeof item->tube);
    case PH_SOLID_BOX:
      return ph_print_bytes (print, &item->box, sizeof item->box);
    case PH_SOLID_RING:
      return ph_print_bytes (print, &item->ring, sizeof item->ring);
    case PH_SOLID_SPHERE:
      return ph_print_bytes (print, &item->sphere, sizeof item->sphere);
    case PH_SOLID_SWEEP:
      print = ph_print_bytes (print, &item->sweep.round, sizeof item->sweep.round);
      print = ph_print_bytes (print, ph_draw_list_stations (list, item),
                              item->sweep.n * sizeof (PhStation));
      return ph_print_bytes (print, ph_draw_list_holes (list, item),
                             item->sweep.n_holes * sizeof (PhHole));
    case PH_SOLID_LINE:
      break;
    }
  print = ph_print_bytes (print, &item->line.radius, sizeof item->line.radius);
  return ph_print_bytes (print, ph_draw_list_points (list, item), item->line.n * sizeof (PhPoint));
}

static bool
is_same (const PhDrawList *list, const PhItem *item, const PhDrawList *other, size_t i)
{
  const PhItem *candidate = ph_draw_list_item (other, i);
  return candidate->solid == item->solid && (candidate->part >= 0) == (item->part >= 0)
         && ph_solid_print (other, candidate) == ph_solid_print (list, item);
}

bool
ph_solid_is_in (const PhDrawList *list, const PhItem *item, const PhDrawList *other, size_t near)
{
  size_t count = ph_draw_list_count (other);
  size_t from = near > SHIFT ? near - SHIFT : 0;
  for (size_t i = near; i < count && i < near + SHIFT; i++)
    if (is_same (list, item, other, i))
      return true;
  for (size_t i = from; i < count && i < near; i++)
    if (is_same (list, item, other, i))
      return true;
  return false;
}
