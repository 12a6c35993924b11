/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The outlines' arrays and their order. Each solid's own geometry is in outline-solid.c and
 * outline-sweep.c.
 */
#include <assert.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "scene/hull.h"
#include "scene/outline-build.h"

/* In the order of drawing the grip is wrapped about the riser, and the hand is behind it all [mm].
 */
#define GRIP_AHEAD 8.0f
#define HAND_BEHIND 1e6f

static void *
grown (void *block, size_t n, size_t more, size_t *room, size_t size)
{
  if (n + more <= *room)
    return block;
  while (*room < n + more)
    *room = *room ? *room * 2 : 256;
  return ph_realloc (block, *room * size);
}

PhOutlines *
ph_outlines_new (void)
{
  return ph_alloc_zeroed (1, sizeof (PhOutlines));
}

void
ph_outlines_free (PhOutlines *outlines)
{
  if (!outlines)
    return;
  free (outlines->outlines);
  free (outlines->pixels);
  free (outlines->holes);
  free (outlines->facets);
  free (outlines->lights);
  free (outlines);
}

PhPath
ph_outlines_add_path (PhOutlines *outlines, const PhPixel *pixels, size_t n)
{
  outlines->pixels = grown (outlines->pixels, outlines->n_pixels, n, &outlines->pixels_room,
                            sizeof *outlines->pixels);
  memcpy (outlines->pixels + outlines->n_pixels, pixels, n * sizeof *pixels);
  outlines->n_pixels += n;
  return (PhPath){ outlines->n_pixels - n, n };
}

PhPath
ph_outlines_add_hull (PhOutlines *outlines, PhPixel *pixels, size_t n)
{
  PhPixel hull[PH_HULL_MOST + 1];
  return ph_outlines_add_path (outlines, hull, ph_hull_of (pixels, n, hull));
}

void
ph_outlines_add_hole (PhOutlines *outlines, PhOutline *outline, PhPath path)
{
  if (outline->n_holes == 0)
    outline->first_hole = outlines->n_holes;
  outlines->holes =
      grown (outlines->holes, outlines->n_holes, 1, &outlines->holes_room, sizeof *outlines->holes);
  outlines->holes[outlines->n_holes++] = path;
  outline->n_holes++;
}

void
ph_outlines_add_shaded (PhOutlines *outlines, PhOutline *outline, PhPath path, PhPixel from,
                        PhPixel to, const float *lights, size_t n_lights)
{
  if (outline->n_facets == 0)
    outline->first_facet = outlines->n_facets;
  outlines->facets = grown (outlines->facets, outlines->n_facets, 1, &outlines->facets_room,
                            sizeof *outlines->facets);
  outlines->lights = grown (outlines->lights, outlines->n_lights, n_lights, &outlines->lights_room,
                            sizeof *outlines->lights);
  memcpy (outlines->lights + outlines->n_lights, lights, n_lights * sizeof *lights);
  outlines->facets[outlines->n_facets++] =
      (PhFacet){ path, from, to, outlines->n_lights, n_lights, false };
  outlines->n_lights += n_lights;
  outline->n_facets++;
}

void
ph_outlines_last_is_holed (PhOutlines *outlines)
{
  assert (outlines->n_facets > 0);
  outlines->facets[outlines->n_facets - 1].holed = true;
}

void
ph_outlines_add_flat (PhOutlines *outlines, PhOutline *outline, PhPath path, float light)
{
  PhPixel nowhere = { 0.0f, 0.0f };
  ph_outlines_add_shaded (outlines, outline, path, nowhere, nowhere, &light, 1);
}

static PhOutline
outline_of (PhOutlines *outlines, const PhDrawList *list, size_t i, const PhCamera *camera)
{
  const PhItem *item = ph_draw_list_item (list, i);
  PhOutline outline = { .item = i };
  switch (item->solid)
    {
    case PH_SOLID_TUBE:
      ph_outline_tube (outlines, &outline, camera, &item->tube);
      break;
    case PH_SOLID_BOX:
      ph_outline_box (outlines, &outline, camera, &item->box);
      break;
    case PH_SOLID_SWEEP:
      ph_outline_sweep (outlines, &outline, camera, ph_draw_list_stations (list, item),
                        ph_draw_list_holes (list, item), &item->sweep);
      break;
    case PH_SOLID_RING:
      ph_outline_ring (outlines, &outline, camera, &item->ring);
      break;
    case PH_SOLID_SPHERE:
      ph_outline_sphere (outlines, &outline, camera, &item->sphere);
      break;
    case PH_SOLID_LINE:
      ph_outline_line (outlines, &outline, camera, ph_draw_list_points (list, item), &item->line);
      break;
    }
  if (item->role == PH_ROLE_GRIP)
    outline.depth_mm += GRIP_AHEAD;
  if (item->role == PH_ROLE_HAND)
    outline.depth_mm -= HAND_BEHIND;
  return outline;
}

/* Farthest first; of equals the one that the draw list names first, so that the order is stable. */
static int
compare_depths (const void *a, const void *b)
{
  const PhOutline *p = a, *q = b;
  if (p->depth_mm != q->depth_mm)
    return p->depth_mm < q->depth_mm ? -1 : 1;
  return (p->item > q->item) - (p->item < q->item);
}

void
ph_outlines_update (PhOutlines *outlines, const PhDrawList *list, const PhCamera *camera)
{
  outlines->n = outlines->n_pixels = outlines->n_holes = 0;
  outlines->n_facets = outlines->n_lights = 0;
  outlines->camera = *camera;
  size_t n = ph_draw_list_count (list);
  outlines->outlines =
      grown (outlines->outlines, 0, n, &outlines->room, sizeof *outlines->outlines);
  for (size_t i = 0; i < n; i++)
    outlines->outlines[outlines->n++] = outline_of (outlines, list, i, camera);
  qsort (outlines->outlines, outlines->n, sizeof *outlines->outlines, compare_depths);
}

const PhCamera *
ph_outlines_camera (const PhOutlines *outlines)
{
  return &outlines->camera;
}

size_t
ph_outlines_count (const PhOutlines *outlines)
{
  return outlines->n;
}

const PhOutline *
ph_outlines_get (const PhOutlines *outlines, size_t i)
{
  assert (i < outlines->n);
  return &outlines->outlines[i];
}

const PhPixel *
ph_outlines_pixels (const PhOutlines *outlines, PhPath path)
{
  return outlines->pixels + path.first;
}

PhPath
ph_outlines_hole (const PhOutlines *outlines, const PhOutline *outline, size_t i)
{
  assert (i < outline->n_holes);
  return outlines->holes[outline->first_hole + i];
}

const PhFacet *
ph_outlines_facet (const PhOutlines *outlines, const PhOutline *outline, size_t i)
{
  assert (i < outline->n_facets);
  return &outlines->facets[outline->first_facet + i];
}

const float *
ph_outlines_lights (const PhOutlines *outlines, const PhFacet *facet)
{
  return outlines->lights + facet->first_light;
}

bool
ph_outlines_bounds (const PhOutlines *outlines, const PhDrawList *list, int part, PhPixel *least,
                    PhPixel *most)
{
  *least = (PhPixel){ INFINITY, INFINITY };
  *most = (PhPixel){ -INFINITY, -INFINITY };
  for (size_t i = 0; i < outlines->n; i++)
    {
      const PhOutline *outline = &outlines->outlines[i];
      if (part != PH_PART_NONE && ph_draw_list_item (list, outline->item)->part != part)
        continue;
      float margin = outline->is_line ? outline->width_px / 2.0f : 0.0f;
      const PhPixel *pixels = ph_outlines_pixels (outlines, outline->edge);
      for (size_t k = 0; k < outline->edge.n; k++)
        {
          least->x = fminf (least->x, pixels[k].x - margin);
          least->y = fminf (least->y, pixels[k].y - margin);
          most->x = fmaxf (most->x, pixels[k].x + margin);
          most->y = fmaxf (most->y, pixels[k].y + margin);
        }
    }
  return least->x <= most->x;
}
