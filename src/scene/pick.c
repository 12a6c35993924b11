/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Picking in the picture by its outlines, and in space by a ray. Both walk the whole list: some
 * microseconds a hundred solids.
 */
#include "scene/pick.h"

#include "scene/hull.h"

static bool
can_be_picked (const PhItem *item)
{
  return item->role != PH_ROLE_HAND && item->role != PH_ROLE_ARROW;
}

/* How far the pixel is from the outline: 0 inside. A hole is not inside. */
static float
distance_to (const PhOutlines *outlines, const PhOutline *outline, PhPixel at)
{
  const PhPixel *edge = ph_outlines_pixels (outlines, outline->edge);
  if (outline->is_line)
    return fmaxf (0.0f, ph_polygon_distance (edge, outline->edge.n, false, at)
                            - outline->width_px / 2.0f);
  if (!ph_polygon_contains (edge, outline->edge.n, at))
    return ph_polygon_distance (edge, outline->edge.n, true, at);
  for (size_t i = 0; i < outline->n_holes; i++)
    {
      PhPath hole = ph_outlines_hole (outlines, outline, i);
      const PhPixel *pixels = ph_outlines_pixels (outlines, hole);
      if (ph_polygon_contains (pixels, hole.n, at))
        return ph_polygon_distance (pixels, hole.n, true, at);
    }
  return 0.0f;
}

/* In the free view solids that run into one another are told apart along the ray of sight. */
static int
pick_in_space (const PhCamera *camera, const PhDrawList *list, PhPixel at, float slack_px)
{
  PhPoint from, way;
  ph_camera_ray (camera, at, &from, &way);
  int item = ph_pick_ray (list, from, way, 0.0f, NULL);
  return item >= 0 ? item : ph_pick_ray (list, from, way, slack_px / camera->px_per_mm, NULL);
}

int
ph_pick_item (const PhOutlines *outlines, const PhDrawList *list, PhPixel at, float slack_px)
{
  const PhCamera *camera = ph_outlines_camera (outlines);
  if (camera->view == PH_VIEW_FREE)
    return pick_in_space (camera, list, at, slack_px);
  int best = -1;
  float least = slack_px;
  for (size_t i = ph_outlines_count (outlines); i-- > 0;)
    {
      const PhOutline *outline = ph_outlines_get (outlines, i);
      if (!can_be_picked (ph_draw_list_item (list, outline->item)))
        continue;
      float far = distance_to (outlines, outline, at);
      if (far <= 0.0f)
        return (int)outline->item;
      if (far < least)
        {
          least = far;
          best = (int)outline->item;
        }
    }
  return best;
}

int
ph_pick_part (const PhOutlines *outlines, const PhDrawList *list, PhPixel at, float slack_px)
{
  int item = ph_pick_item (outlines, list, at, slack_px);
  return item < 0 ? PH_PART_NONE : ph_draw_list_item (list, (size_t)item)->part;
}

size_t
ph_pick_parts (const PhOutlines *outlines, const PhDrawList *list, PhPixel at, int *parts,
               size_t n_most)
{
  size_t n = 0;
  for (size_t i = ph_outlines_count (outlines); i-- > 0 && n < n_most;)
    {
      const PhOutline *outline = ph_outlines_get (outlines, i);
      const PhItem *item = ph_draw_list_item (list, outline->item);
      bool known = !can_be_picked (item) || distance_to (outlines, outline, at) > 0.0f;
      for (size_t k = 0; k < n && !known; k++)
        known = parts[k] == item->part;
      if (!known)
        parts[n++] = item->part;
    }
  return n;
}

typedef struct
{
  PhPoint from, way;
  float least; /* how far along the nearest hit so far */
} Ray;

static void
hit (Ray *ray, float along)
{
  if (along >= 0.0f && along < ray->least)
    ray->least = along;
}

/* The ray's start may be far away: what is near the solid is worked out from the ray's point
 * nearest to `at`, or floats would lose it. Returns how far along that point is. */
static float
near_to (const Ray *ray, PhPoint at, PhPoint *from)
{
  float along = ph_point_dot (ph_point_sub (at, ray->from), ray->way);
  *from = ph_point_add_scaled (ray->from, ray->way, along);
  return along;
}

static void
meet_sphere (Ray *ray, PhPoint at, float radius)
{
  PhPoint near;
  float along = near_to (ray, at, &near);
  PhPoint off = ph_point_sub (near, at);
  float square = ph_point_dot (off, off);
  if (square <= radius * radius)
    hit (ray, along - sqrtf (radius * radius - square));
}

/* The round side of a cylinder between two points: solve for the ray's distance to the axis. From
 * outside the ray meets it where it enters, from inside where it leaves. */
static void
meet_wall (Ray *ray, PhPoint a, PhPoint b, float radius, bool inside)
{
  PhPoint near;
  float start_along = near_to (ray, ph_point_mix (a, b, 0.5f), &near);
  PhPoint axis = ph_point_unit (ph_point_sub (b, a)), to = ph_point_sub (near, a);
  PhPoint across = ph_point_add_scaled (ray->way, axis, -ph_point_dot (ray->way, axis));
  PhPoint start = ph_point_add_scaled (to, axis, -ph_point_dot (to, axis));
  float qa = ph_point_dot (across, across), qb = ph_point_dot (across, start);
  float qc = ph_point_dot (start, start) - radius * radius, root = qb * qb - qa * qc;
  if (qa < 1e-9f || root < 0.0f)
    return;
  float along = (-qb + (inside ? sqrtf (root) : -sqrtf (root))) / qa;
  float height = ph_point_dot (ph_point_add_scaled (to, ray->way, along), axis);
  if (height >= 0.0f && height <= ph_point_length (ph_point_sub (b, a)))
    hit (ray, start_along + along);
}

static void
meet_side (Ray *ray, PhPoint a, PhPoint b, float radius)
{
  meet_wall (ray, a, b, radius, false);
}

static void
meet_capsule (Ray *ray, PhPoint a, PhPoint b, float radius)
{
  meet_sphere (ray, a, radius);
  meet_sphere (ray, b, radius);
  meet_side (ray, a, b, radius);
}

/* A flat round face; with `inner` a ring. */
static void
meet_face (Ray *ray, PhPoint at, PhPoint axis, float outer, float inner)
{
  float slope = ph_point_dot (ray->way, axis);
  if (fabsf (slope) < 1e-6f)
    return;
  float along = ph_point_dot (ph_point_sub (at, ray->from), axis) / slope;
  PhPoint on = ph_point_add_scaled (ray->from, ray->way, along);
  float far = ph_point_length (ph_point_sub (on, at));
  if (far <= outer && far >= inner)
    hit (ray, along);
}

static void
meet_tube (Ray *ray, const PhTube *tube, float slack)
{
  PhPoint axis = ph_point_unit (ph_point_sub (tube->b, tube->a));
  meet_face (ray, tube->a, axis, tube->ra + slack, 0.0f);
  meet_face (ray, tube->b, axis, tube->rb + slack, 0.0f);
  meet_side (ray, tube->a, tube->b, fmaxf (tube->ra, tube->rb) + slack);
}

/* Slabs, one a pair of faces. */
static void
meet_box (Ray *ray, const PhBox *box, float slack)
{
  float enter = -INFINITY, leave = INFINITY;
  PhPoint to = ph_point_sub (box->at, ray->from);
  for (int k = 0; k < 3; k++)
    {
      PhPoint axis = ph_point_unit (box->half[k]);
      float half = ph_point_length (box->half[k]) + slack;
      float middle = ph_point_dot (to, axis), slope = ph_point_dot (ray->way, axis);
      if (fabsf (slope) < 1e-6f)
        {
          if (fabsf (middle) > half)
            return;
          continue;
        }
      float a = (middle - half) / slope, b = (middle + half) / slope;
      enter = fmaxf (enter, fminf (a, b));
      leave = fminf (leave, fmaxf (a, b));
    }
  if (enter <= leave)
    hit (ray, enter);
}

static void
meet_ring (Ray *ray, const PhRing *ring, float slack)
{
  PhPoint a = ph_point_add_scaled (ring->at, ring->axis, ring->half_thick);
  PhPoint b = ph_point_add_scaled (ring->at, ring->axis, -ring->half_thick);
  meet_face (ray, a, ring->axis, ring->outer + slack, ring->inner - slack);
  meet_face (ray, b, ring->axis, ring->outer + slack, ring->inner - slack);
  meet_side (ray, a, b, ring->outer + slack);
  if (ring->inner > slack)
    meet_wall (ray, a, b, ring->inner - slack, true);
}

/* A block between two stations, as deep and as wide as the larger of them. */
static void
meet_link (Ray *ray, const PhStation *s, float slack)
{
  PhPoint along = ph_point_sub (s[1].at, s[0].at), out = s[0].out;
  PhPoint way = ph_point_unit (along);
  out = ph_point_unit (ph_point_add_scaled (out, way, -ph_point_dot (out, way)));
  PhBox link = { .at = ph_point_mix (s[0].at, s[1].at, 0.5f),
                 .half = { ph_point_scale (along, 0.5f),
                           ph_point_scale (out, fmaxf (s[0].half_depth, s[1].half_depth)),
                           ph_point_scale (ph_point_cross (way, out),
                                           fmaxf (s[0].half_across, s[1].half_across)) } };
  meet_box (ray, &link, slack);
}

static void
meet_item (Ray *ray, const PhDrawList *list, const PhItem *item, float slack)
{
  switch (item->solid)
    {
    case PH_SOLID_TUBE:
      meet_tube (ray, &item->tube, slack);
      break;
    case PH_SOLID_BOX:
      meet_box (ray, &item->box, slack);
      break;
    case PH_SOLID_SWEEP:
      for (size_t i = 0; i + 1 < item->sweep.n; i++)
        meet_link (ray, ph_draw_list_stations (list, item) + i, slack);
      break;
    case PH_SOLID_RING:
      meet_ring (ray, &item->ring, slack);
      break;
    case PH_SOLID_SPHERE:
      meet_sphere (ray, item->sphere.at, item->sphere.radius + slack);
      break;
    case PH_SOLID_LINE:
      for (size_t i = 0; i + 1 < item->line.n; i++)
        {
          const PhPoint *p = ph_draw_list_points (list, item) + i;
          meet_capsule (ray, p[0], p[1], item->line.radius + slack);
        }
      break;
    }
}

int
ph_pick_ray (const PhDrawList *list, PhPoint from, PhPoint way, float slack_mm, float *along_mm)
{
  int best = -1;
  Ray ray = { from, way, INFINITY };
  for (size_t i = 0; i < ph_draw_list_count (list); i++)
    {
      const PhItem *item = ph_draw_list_item (list, i);
      float before = ray.least;
      if (!can_be_picked (item))
        continue;
      meet_item (&ray, list, item, slack_mm);
      if (ray.least < before)
        best = (int)i;
    }
  if (best >= 0 && along_mm)
    *along_mm = ray.least;
  return best;
}
