/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The draw list itself: growing arrays, pens that append to them, and what others read. The shapes
 * are in bow-shape.c, compound-shape.c, recurve-shape.c, part-shape.c and accessory-shape.c, the
 * dump in drawlist-dump.c.
 */
#include <assert.h>
#include <stdlib.h>

#include "base/text.h"
#include "scene/drawlist-build.h"

/* Room for `more` further elements of `size` bytes behind the first `n`. */
static void *
grown (void *block, size_t n, size_t more, size_t *room, size_t size)
{
  if (n + more <= *room)
    return block;
  while (*room < n + more)
    *room = *room ? *room * 2 : 64;
  return ph_realloc (block, *room * size);
}

static PhItem *
append (PhPen pen, PhSolidKind solid)
{
  PhDrawList *list = pen.list;
  list->items = grown (list->items, list->n, 1, &list->room, sizeof *list->items);
  PhItem *item = &list->items[list->n++];
  *item = (PhItem){ .solid = solid, .role = pen.role, .state = pen.state, .part = pen.part };
  return item;
}

PhPen
ph_pen_role (PhPen pen, PhRole role)
{
  pen.role = role;
  return pen;
}

void
ph_pen_tube (PhPen pen, PhPoint a, PhPoint b, float ra, float rb)
{
  append (pen, PH_SOLID_TUBE)->tube = (PhTube){ .a = a, .b = b, .ra = ra, .rb = rb };
}

void
ph_pen_disc (PhPen pen, PhPoint at, PhPoint axis, float radius, float thickness)
{
  ph_pen_tube (pen, ph_point_add_scaled (at, axis, -thickness / 2.0f),
               ph_point_add_scaled (at, axis, thickness / 2.0f), radius, radius);
}

void
ph_pen_box (PhPen pen, PhPoint at, PhPoint half_a, PhPoint half_b, PhPoint half_c)
{
  append (pen, PH_SOLID_BOX)->box = (PhBox){ .at = at, .half = { half_a, half_b, half_c } };
}

void
ph_pen_block (PhPen pen, PhPoint at, PhPoint size)
{
  ph_pen_box (pen, at, ph_point (size.x / 2.0f, 0.0f, 0.0f), ph_point (0.0f, size.y / 2.0f, 0.0f),
              ph_point (0.0f, 0.0f, size.z / 2.0f));
}

void
ph_pen_ring (PhPen pen, PhPoint at, PhPoint axis, float outer, float inner, float thickness)
{
  append (pen, PH_SOLID_RING)->ring = (PhRing){
    .at = at, .axis = axis, .outer = outer, .inner = inner, .half_thick = thickness / 2.0f
  };
}

void
ph_pen_sphere (PhPen pen, PhPoint at, float radius)
{
  append (pen, PH_SOLID_SPHERE)->sphere = (PhSphere){ .at = at, .radius = radius };
}

void
ph_pen_line (PhPen pen, const PhPoint *points, size_t n, float radius)
{
  assert (n >= 2);
  PhDrawList *list = pen.list;
  append (pen, PH_SOLID_LINE)->line = (PhLine){ .first = list->n_points, .n = n, .radius = radius };
  list->points = grown (list->points, list->n_points, n, &list->points_room, sizeof *list->points);
  for (size_t i = 0; i < n; i++)
    list->points[list->n_points++] = points[i];
}

void
ph_pen_sweep (PhPen pen, const PhStation *stations, size_t n, const PhHole *holes, size_t n_holes,
              float round)
{
  assert (n >= 2);
  PhDrawList *list = pen.list;
  append (pen, PH_SOLID_SWEEP)->sweep = (PhSweep){ .first = list->n_stations,
                                                   .n = n,
                                                   .first_hole = list->n_holes,
                                                   .n_holes = n_holes,
                                                   .round = round };
  list->stations =
      grown (list->stations, list->n_stations, n, &list->stations_room, sizeof *list->stations);
  for (size_t i = 0; i < n; i++)
    list->stations[list->n_stations++] = stations[i];
  list->holes = grown (list->holes, list->n_holes, n_holes, &list->holes_room, sizeof *list->holes);
  for (size_t i = 0; i < n_holes; i++)
    list->holes[list->n_holes++] = holes[i];
}

PhDrawOptions
ph_draw_options_default (void)
{
  return (PhDrawOptions){ .selected = PH_PART_NONE };
}

PhDrawList *
ph_draw_list_new (const PhRig *rig, const PhCompiled *compiled, const PhReport *report,
                  const PhDrawOptions *options)
{
  PhDrawList *list = ph_alloc_zeroed (1, sizeof *list);
  list->selected = options->selected;
  PhRiserLine riser;
  ph_bow_shape (list, rig, options, &riser);
  ph_parts_shape (list, rig, compiled, report, options, &riser);
  return list;
}

void
ph_draw_list_free (PhDrawList *list)
{
  if (!list)
    return;
  free (list->items);
  free (list->stations);
  free (list->holes);
  free (list->points);
  free (list);
}

size_t
ph_draw_list_count (const PhDrawList *list)
{
  return list->n;
}

const PhItem *
ph_draw_list_item (const PhDrawList *list, size_t i)
{
  assert (i < list->n);
  return &list->items[i];
}

const PhStation *
ph_draw_list_stations (const PhDrawList *list, const PhItem *sweep)
{
  assert (sweep->solid == PH_SOLID_SWEEP);
  return list->stations + sweep->sweep.first;
}

const PhHole *
ph_draw_list_holes (const PhDrawList *list, const PhItem *sweep)
{
  assert (sweep->solid == PH_SOLID_SWEEP);
  return list->holes + sweep->sweep.first_hole;
}

const PhPoint *
ph_draw_list_points (const PhDrawList *list, const PhItem *line)
{
  assert (line->solid == PH_SOLID_LINE);
  return list->points + line->line.first;
}

int
ph_draw_list_get_selected (const PhDrawList *list)
{
  return list->selected;
}

void
ph_draw_list_select (PhDrawList *list, int part)
{
  list->selected = part;
}
