/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Greedy, most important label first. The search for a place is over a grid about the wanted one,
 * some thousand rectangles at most.
 */
#include "widgets/label-place.h"

#include <assert.h>
#include <math.h>

#define EDGE 3.0 /* to the picture's edge [px] */
#define GAP 2.0  /* between two labels [px] */
#define STEP 6.0 /* of the search [px] */

PhLabelPlaces
ph_label_places (double width, double height)
{
  return (PhLabelPlaces){ .width = width, .height = height };
}

void
ph_label_places_take (PhLabelPlaces *places, PhLabelBox box)
{
  if (places->n < PH_LABELS_MOST)
    places->taken[places->n++] = box;
}

static bool
is_free (const PhLabelPlaces *places, const PhLabelMask *mask, const PhLabelBox *box)
{
  if (box->x < EDGE || box->y < EDGE || box->x + box->width > places->width - EDGE
      || box->y + box->height > places->height - EDGE)
    return false;
  for (size_t i = 0; i < places->n; i++)
    {
      const PhLabelBox *other = &places->taken[i];
      if (box->x < other->x + other->width + GAP && other->x < box->x + box->width + GAP
          && box->y < other->y + other->height + GAP && other->y < box->y + box->height + GAP)
        return false;
    }
  return !mask || ph_label_mask_covered (mask, box) == 0;
}

static double
clamped (double value, double size, double whole)
{
  return fmax (EDGE, fmin (value, whole - EDGE - size));
}

static bool
search (const PhLabelPlaces *places, const PhLabelMask *mask, PhLabelBox box, double reach,
        PhLabelBox *found)
{
  double nearest = INFINITY;
  PhLabelBox from = box;
  for (double dy = -reach; dy <= reach; dy += STEP)
    for (double dx = -reach; dx <= reach; dx += STEP)
      {
        /* Along a line of text is nearer than across it. */
        double far = hypot (dx, 2.0 * dy);
        box.x = from.x + dx;
        box.y = from.y + dy;
        if (far < nearest && is_free (places, mask, &box))
          {
            nearest = far;
            *found = box;
          }
      }
  return isfinite (nearest);
}

static bool
find (const PhLabelPlaces *places, const PhLabelMask *mask, const PhLabelBox *wanted, size_t n,
      double reach, PhLabelBox *found)
{
  for (size_t i = 0; i < n; i++)
    if (is_free (places, mask, &wanted[i]))
      {
        *found = wanted[i];
        return true;
      }
  return n > 0 && search (places, mask, wanted[0], reach, found);
}

bool
ph_label_places_find (PhLabelPlaces *places, double width, double height, const PhLabelBox *wanted,
                      size_t n, double reach, PhLabelCare care, PhLabelBox *found)
{
  PhLabelBox inside[PH_LABEL_WANTED_MOST];
  assert (n <= PH_LABEL_WANTED_MOST);
  if (places->n == PH_LABELS_MOST)
    return false;
  for (size_t i = 0; i < n; i++)
    inside[i] = (PhLabelBox){ clamped (wanted[i].x, width, places->width),
                              clamped (wanted[i].y, height, places->height), width, height };
  const PhLabelMask *mask = care == PH_LABEL_OVER ? NULL : places->mask;
  if (!find (places, mask, inside, n, reach, found)
      && (!mask || care == PH_LABEL_NEVER || !find (places, NULL, inside, n, reach, found)))
    return false;
  ph_label_places_take (places, *found);
  return true;
}
