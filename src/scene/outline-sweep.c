/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A sweep's silhouette: the two rails along which its sections end in the picture, joined, so that
 * no seam shows; and lit strips along it. Where the curve points at the eye rails make no sense:
 * there the hull of all sections serves.
 */
#include "scene/hull.h"
#include "scene/light.h"
#include "scene/outline-build.h"

#include <assert.h>

#define STATIONS_MOST 96
/* A section: a rounded rectangle, each corner cut into four. */
#define CORNER 5
#define SECTION (4 * CORNER)
#define HOLE_CORNERS 28
/* Lights along a strip. */
#define LIGHTS 12
#define SMALL_CORNER_PX 4.0f
/* Lights that differ by less are one. */
#define EVEN 0.04f
/* Seen shorter than this share of its true length a sweep counts as end on. */
#define END_ON 0.45f
/* Holes are seen where one looks along them, about. */
#define SEES_THROUGH 0.8f

typedef struct
{
  PhPoint at[SECTION], normal[SECTION];
} Section;

typedef struct
{
  const PhCamera *camera;
  const PhStation *stations;
  size_t n;
  Section sections[STATIONS_MOST];
  PhPixel seen[STATIONS_MOST][SECTION];
  float depth_mean, depth_most;
  bool end_on;
} View;

/* Corner by corner: each gives the ends of its two flat sides and three points between. */
static Section
section_of (const PhStation *station, float round)
{
  static const float arc[CORNER][2] = {
    { 1.0f, 0.0f }, { 0.9239f, 0.3827f }, { 0.7071f, 0.7071f }, { 0.3827f, 0.9239f }, { 0.0f, 1.0f }
  };
  Section section;
  float radius = round * fminf (station->half_depth, station->half_across);
  for (int corner = 0; corner < 4; corner++)
    for (int k = 0; k < CORNER; k++)
      {
        float out_sign = corner == 0 || corner == 3 ? 1.0f : -1.0f;
        float side_sign = corner < 2 ? 1.0f : -1.0f;
        /* Every second corner is walked the other way, so that the points go round. */
        int j = corner % 2 == 0 ? k : CORNER - 1 - k;
        PhPoint normal = ph_point_add (ph_point_scale (station->out, out_sign * arc[j][0]),
                                       ph_point_scale (station->side, side_sign * arc[j][1]));
        PhPoint at = ph_point_add_scaled (station->at, station->out,
                                          out_sign * (station->half_depth - radius));
        at = ph_point_add_scaled (at, station->side, side_sign * (station->half_across - radius));
        section.normal[corner * CORNER + k] = normal;
        section.at[corner * CORNER + k] = ph_point_add_scaled (at, normal, radius);
      }
  return section;
}

static void
look_at (View *view, float round)
{
  float seen_length = 0.0f, length = 0.0f;
  PhPixel before = { 0 };
  view->depth_mean = 0.0f;
  view->depth_most = -INFINITY;
  for (size_t i = 0; i < view->n; i++)
    {
      view->sections[i] = section_of (&view->stations[i], round);
      float nearest = -INFINITY, depth;
      for (int k = 0; k < SECTION; k++)
        {
          view->seen[i][k] = ph_camera_project (view->camera, view->sections[i].at[k], &depth);
          nearest = fmaxf (nearest, depth);
        }
      view->depth_mean += nearest / (float)view->n;
      view->depth_most = fmaxf (view->depth_most, nearest);
      PhPixel middle = ph_camera_project (view->camera, view->stations[i].at, NULL);
      if (i > 0)
        {
          seen_length += hypotf (middle.x - before.x, middle.y - before.y);
          length += ph_point_length (ph_point_sub (view->stations[i].at, view->stations[i - 1].at));
        }
      before = middle;
    }
  view->end_on = seen_length < END_ON * length * view->camera->px_per_mm;
}

/* Direction in the picture of the curve at station i. */
static PhPixel
way_at (const View *view, size_t i)
{
  PhPixel a = ph_camera_project (view->camera, view->stations[i ? i - 1 : 0].at, NULL);
  PhPixel b =
      ph_camera_project (view->camera, view->stations[i + 1 < view->n ? i + 1 : i].at, NULL);
  return (PhPixel){ b.x - a.x, b.y - a.y };
}

static PhPath
rails (PhOutlines *outlines, const View *view)
{
  PhPixel polygon[2 * STATIONS_MOST];
  for (size_t i = 0; i < view->n; i++)
    {
      PhPixel way = way_at (view, i);
      float most = -INFINITY, least = INFINITY;
      for (int k = 0; k < SECTION; k++)
        {
          float across = view->seen[i][k].x * way.y - view->seen[i][k].y * way.x;
          if (across > most)
            polygon[i] = view->seen[i][k];
          if (across < least)
            polygon[2 * view->n - 1 - i] = view->seen[i][k];
          most = fmaxf (most, across);
          least = fminf (least, across);
        }
    }
  return ph_outlines_add_path (outlines, polygon, 2 * view->n);
}

static PhPath
hull_of_all (PhOutlines *outlines, const View *view)
{
  PhPixel all[STATIONS_MOST * SECTION];
  size_t n = 0;
  for (size_t i = 0; i < view->n; i++)
    for (int k = 0; k < SECTION; k++)
      all[n++] = view->seen[i][k];
  assert (n <= PH_HULL_MOST);
  return ph_outlines_add_hull (outlines, all, n);
}

/* Lights along the strip between section points k and `next`; how far it faces the eye. */
static float
strip_lights (const View *view, int k, int next, float lights[LIGHTS])
{
  float facing = 0.0f;
  for (size_t i = 0; i < LIGHTS; i++)
    {
      const Section *section = &view->sections[i * (view->n - 1) / (LIGHTS - 1)];
      PhPoint normal = ph_point_unit (ph_point_add (section->normal[k], section->normal[next]));
      facing += ph_point_dot (normal, ph_camera_toward (view->camera, section->at[k]));
      lights[i] = ph_light_on (view->camera, normal);
    }
  return facing;
}

static bool
is_even (const float lights[LIGHTS])
{
  float least = INFINITY, most = -INFINITY;
  for (size_t i = 0; i < LIGHTS; i++)
    {
      least = fminf (least, lights[i]);
      most = fmaxf (most, lights[i]);
    }
  return most - least < EVEN;
}

/* The strip from station `first` to the far end. */
static PhPath
strip_path (PhOutlines *outlines, const View *view, int k, int next, size_t first)
{
  PhPixel polygon[2 * STATIONS_MOST];
  size_t n = view->n - first;
  for (size_t i = 0; i < n; i++)
    {
      polygon[i] = view->seen[first + i][k];
      polygon[2 * n - 1 - i] = view->seen[first + i][next];
    }
  return ph_outlines_add_path (outlines, polygon, 2 * n);
}

/* The strip between section points k and `next`, where it faces the eye: in one light where that
 * hardly changes, in plain pieces (each on to the far end under the next, so that no seam shows)
 * where it is narrow, else as a gradient. */
static void
strip (PhOutlines *outlines, PhOutline *outline, const View *view, int k, int next, bool narrow,
       bool holed)
{
  float lights[LIGHTS];
  if (strip_lights (view, k, next, lights) <= 0.0f)
    return;
  PhPath path = strip_path (outlines, view, k, next, 0);
  if (is_even (lights))
    ph_outlines_add_flat (outlines, outline, path, lights[LIGHTS / 2]);
  else if (narrow)
    for (size_t i = 0; i + 1 < LIGHTS; i++)
      {
        size_t first = i * (view->n - 1) / (LIGHTS - 1);
        path = i ? strip_path (outlines, view, k, next, first) : path;
        ph_outlines_add_flat (outlines, outline, path, (lights[i] + lights[i + 1]) / 2.0f);
      }
  else
    ph_outlines_add_shaded (
        outlines, outline, path, ph_camera_project (view->camera, view->stations[0].at, NULL),
        ph_camera_project (view->camera, view->stations[view->n - 1].at, NULL), lights, LIGHTS);
  if (holed)
    ph_outlines_last_is_holed (outlines);
}

/* Each corner and the flat side after it; a corner too small to look round is one strip. The sides
 * across the width hold the holes. */
static void
strips (PhOutlines *outlines, PhOutline *outline, const View *view, float corner_px)
{
  bool small = corner_px < SMALL_CORNER_PX;
  for (int corner = 0; corner < 4; corner++)
    {
      int first = corner * CORNER, last = first + CORNER - 1;
      int step = small ? CORNER - 1 : 1;
      for (int k = first; k < last; k += step)
        strip (outlines, outline, view, k, k + step, small, false);
      strip (outlines, outline, view, last, (last + 1) % SECTION, false, corner % 2 == 0);
    }
}

/* Point of the face nearer the eye at a place along the curve and across it. */
static PhPixel
on_face (const View *view, float place, float across, float toward)
{
  float last = (float)(view->n - 1);
  place = fminf (fmaxf (place, 0.0f), last);
  size_t i = (size_t)fminf (place, last - 1.0f);
  const PhStation *a = &view->stations[i], *b = &view->stations[i + 1];
  float t = place - (float)i;
  PhPoint at = ph_point_mix (a->at, b->at, t);
  at = ph_point_add_scaled (at, ph_point_mix (a->out, b->out, t), across);
  return ph_camera_project (view->camera,
                            ph_point_add_scaled (at, a->side, toward * a->half_across), NULL);
}

static void
cut_hole (PhOutlines *outlines, PhOutline *outline, const View *view, const PhHole *hole)
{
  PhPoint side = view->stations[0].side;
  float look = ph_point_dot (side, view->camera->toward);
  if (fabsf (look) < SEES_THROUGH)
    return;
  PhPixel polygon[HOLE_CORNERS];
  for (int i = 0; i < HOLE_CORNERS; i++)
    {
      float angle = 6.2831853f * (float)i / HOLE_CORNERS;
      float c = cosf (angle), s = sinf (angle);
      /* Between an ellipse and a slot: a power of the circle's own sine and cosine. */
      float along = copysignf (powf (fabsf (c), 0.75f), c);
      float open = copysignf (powf (fabsf (s), 0.75f), s);
      polygon[i] = on_face (view, hole->middle + hole->half_span * along, hole->half_open * open,
                            look > 0.0f ? 1.0f : -1.0f);
    }
  ph_outlines_add_hole (outlines, outline, ph_outlines_add_path (outlines, polygon, HOLE_CORNERS));
}

void
ph_outline_sweep (PhOutlines *outlines, PhOutline *outline, const PhCamera *camera,
                  const PhStation *stations, const PhHole *holes, const PhSweep *sweep)
{
  assert (sweep->n >= 2 && sweep->n <= STATIONS_MOST);
  View view = { .camera = camera, .stations = stations, .n = sweep->n };
  look_at (&view, sweep->round);
  const PhStation *middle = &stations[sweep->n / 2];
  outline->width_px = 2.0f * fminf (middle->half_depth, middle->half_across) * camera->px_per_mm;
  if (view.end_on)
    {
      outline->edge = hull_of_all (outlines, &view);
      outline->depth_mm = view.depth_most;
      ph_outlines_add_flat (outlines, outline, outline->edge, ph_light_on (camera, camera->toward));
      return;
    }
  outline->edge = rails (outlines, &view);
  outline->depth_mm = view.depth_mean;
  ph_outlines_add_flat (outlines, outline, outline->edge, ph_light_on (camera, camera->toward));
  ph_outlines_last_is_holed (outlines);
  strips (outlines, outline, &view, sweep->round * outline->width_px / 2.0f);
  for (size_t i = 0; i < sweep->n_holes; i++)
    cut_hole (outlines, outline, &view, &holes[i]);
}
