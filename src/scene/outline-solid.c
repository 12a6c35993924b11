/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Silhouettes and lit faces of the convex solids: a hull of projected circles or corners, shaded
 * across its round side, with the face that looks at the eye on top.
 */
#include "scene/hull.h"
#include "scene/light.h"
#include "scene/outline-build.h"

#define PI 3.14159265f
#define CIRCLE_LEAST 12
#define CIRCLE_MOST 48
/* Lights across a round surface; plain bands where its radius is less than so many pixels. */
#define ACROSS 9
#define BANDS 7
#define SMALL_PX 10.0f
/* A face this oblique is not seen. */
#define OBLIQUE 0.02f

/* As many corners as a circle of that size needs to look round. */
static size_t
corners_of (float radius_px)
{
  float wanted = 10.0f + 1.2f * radius_px;
  return (size_t)fminf (fmaxf (wanted, CIRCLE_LEAST), CIRCLE_MOST);
}

static void
circle (const PhCamera *camera, PhPoint at, PhPoint axis, float radius, PhPixel *pixels, size_t n)
{
  PhPoint u, v;
  ph_point_square (axis, &u, &v);
  for (size_t i = 0; i < n; i++)
    {
      float angle = 2.0f * PI * (float)i / (float)n;
      PhPoint on = ph_point_add_scaled (at, u, radius * cosf (angle));
      pixels[i] =
          ph_camera_project (camera, ph_point_add_scaled (on, v, radius * sinf (angle)), NULL);
    }
}

static PhPath
circle_path (PhOutlines *outlines, const PhCamera *camera, PhPoint at, PhPoint axis, float radius,
             size_t n)
{
  PhPixel pixels[CIRCLE_MOST];
  circle (camera, at, axis, radius, pixels, n);
  return ph_outlines_add_path (outlines, pixels, n);
}

static float
depth_of (const PhCamera *camera, PhPoint at, float beyond)
{
  float depth;
  ph_camera_project (camera, at, &depth);
  return depth + beyond;
}

/* The round side of a tube: how it stands in the picture. */
typedef struct
{
  PhPoint across; /* unit, square to the axis and to the way of looking */
  PhPoint front;  /* unit, the side that looks at the eye */
} Round;

/* False where one looks along the axis: then the round side is not seen. */
static bool
round_of (const PhCamera *camera, PhPoint middle, PhPoint axis, Round *round)
{
  PhPoint across = ph_point_cross (axis, ph_camera_toward (camera, middle));
  if (ph_point_length (across) < OBLIQUE)
    return false;
  round->across = ph_point_unit (across);
  round->front = ph_point_cross (round->across, axis);
  return true;
}

static float
light_across (const PhCamera *camera, const Round *round, float sine)
{
  PhPoint normal = ph_point_scale (round->front, sqrtf (fmaxf (0.0f, 1.0f - sine * sine)));
  return ph_light_on (camera, ph_point_add_scaled (normal, round->across, sine));
}

/* One gradient from edge to edge. */
static void
shade_large (PhOutlines *outlines, PhOutline *outline, const PhCamera *camera, PhPoint middle,
             const Round *round, float radius)
{
  float lights[ACROSS];
  for (int i = 0; i < ACROSS; i++)
    lights[i] = light_across (camera, round, 2.0f * (float)i / (ACROSS - 1) - 1.0f);
  ph_outlines_add_shaded (
      outlines, outline, outline->edge,
      ph_camera_project (camera, ph_point_add_scaled (middle, round->across, -radius), NULL),
      ph_camera_project (camera, ph_point_add_scaled (middle, round->across, radius), NULL), lights,
      ACROSS);
}

/* Some pixels wide a few plain bands look the same and cost a tenth. Each runs on to the far edge
 * under the next, so that no seam shows between them. */
static void
shade_small (PhOutlines *outlines, PhOutline *outline, const PhCamera *camera, const PhTube *tube,
             const Round *round)
{
  ph_outlines_add_flat (outlines, outline, outline->edge, light_across (camera, round, 0.0f));
  for (int i = 0; i < BANDS; i++)
    {
      float from = 2.0f * (float)i / BANDS - 1.0f, middle = from + 1.0f / BANDS;
      PhPoint a = ph_point_add_scaled (tube->a, round->across, from * tube->ra);
      PhPoint b = ph_point_add_scaled (tube->b, round->across, from * tube->rb);
      PhPoint c = ph_point_add_scaled (tube->b, round->across, tube->rb);
      PhPoint d = ph_point_add_scaled (tube->a, round->across, tube->ra);
      const PhPixel band[4] = { ph_camera_project (camera, a, NULL),
                                ph_camera_project (camera, b, NULL),
                                ph_camera_project (camera, c, NULL),
                                ph_camera_project (camera, d, NULL) };
      ph_outlines_add_flat (outlines, outline, ph_outlines_add_path (outlines, band, 4),
                            light_across (camera, round, middle));
    }
}

void
ph_outline_tube (PhOutlines *outlines, PhOutline *outline, const PhCamera *camera,
                 const PhTube *tube)
{
  PhPoint along = ph_point_sub (tube->b, tube->a), axis = ph_point_unit (along);
  float radius = fmaxf (tube->ra, tube->rb), length = ph_point_length (along);
  size_t n = corners_of (radius * camera->px_per_mm);
  PhPixel pixels[2 * CIRCLE_MOST];
  circle (camera, tube->a, axis, tube->ra, pixels, n);
  circle (camera, tube->b, axis, tube->rb, pixels + n, n);
  outline->edge = ph_outlines_add_hull (outlines, pixels, 2 * n);
  PhPoint middle = ph_point_mix (tube->a, tube->b, 0.5f);
  float look = ph_point_dot (axis, ph_camera_toward (camera, middle));
  float round = radius * sqrtf (fmaxf (0.0f, 1.0f - look * look));
  outline->depth_mm = fmaxf (depth_of (camera, tube->a, round), depth_of (camera, tube->b, round));
  /* End on it is as wide as its face, from the side as its lesser measure. */
  outline->width_px =
      camera->px_per_mm
      * fminf (2.0f * radius, length * sqrtf (1.0f - look * look) + 2.0f * radius * fabsf (look));
  Round side;
  if (round_of (camera, middle, axis, &side))
    {
      if (radius * camera->px_per_mm < SMALL_PX)
        shade_small (outlines, outline, camera, tube, &side);
      else
        shade_large (outlines, outline, camera, middle, &side, radius);
    }
  if (fabsf (look) < OBLIQUE)
    return;
  PhPoint face = look > 0.0f ? tube->b : tube->a;
  PhPath path = circle_path (outlines, camera, face, axis, look > 0.0f ? tube->rb : tube->ra, n);
  PhPoint normal = ph_point_scale (axis, look > 0.0f ? 1.0f : -1.0f);
  ph_outlines_add_flat (outlines, outline, path, ph_light_on (camera, normal));
}

void
ph_outline_box (PhOutlines *outlines, PhOutline *outline, const PhCamera *camera, const PhBox *box)
{
  PhPixel corner[8], sorted[8];
  outline->depth_mm = -INFINITY;
  for (unsigned i = 0; i < 8; i++)
    {
      PhPoint at = box->at;
      for (unsigned k = 0; k < 3; k++)
        at = ph_point_add_scaled (at, box->half[k], i >> k & 1U ? 1.0f : -1.0f);
      float depth;
      corner[i] = sorted[i] = ph_camera_project (camera, at, &depth);
      outline->depth_mm = fmaxf (outline->depth_mm, depth);
    }
  outline->edge = ph_outlines_add_hull (outlines, sorted, 8);
  float least = INFINITY;
  PhPoint toward = ph_camera_toward (camera, box->at);
  for (unsigned k = 0; k < 3; k++)
    {
      /* Corners of the two faces square to half[k], in order round the face. */
      unsigned p = 1U << (k + 1) % 3, q = 1U << (k + 2) % 3;
      PhPoint normal = ph_point_unit (box->half[k]);
      float look = ph_point_dot (normal, toward);
      if (fabsf (look) < 0.9f)
        least = fminf (least, 2.0f * ph_point_length (box->half[k]));
      if (fabsf (look) < OBLIQUE)
        continue;
      unsigned base = look > 0.0f ? 1U << k : 0U;
      const PhPixel face[4] = { corner[base], corner[base | p], corner[base | p | q],
                                corner[base | q] };
      ph_outlines_add_flat (outlines, outline, ph_outlines_add_path (outlines, face, 4),
                            ph_light_on (camera, ph_point_scale (normal, look > 0 ? 1.0f : -1.0f)));
    }
  outline->width_px = least * camera->px_per_mm;
}

void
ph_outline_ring (PhOutlines *outlines, PhOutline *outline, const PhCamera *camera,
                 const PhRing *ring)
{
  PhPoint near = ph_point_add_scaled (ring->at, ring->axis, ring->half_thick);
  PhPoint far = ph_point_add_scaled (ring->at, ring->axis, -ring->half_thick);
  float look = ph_point_dot (ring->axis, ph_camera_toward (camera, ring->at));
  if (look < 0.0f)
    {
      PhPoint swap = near;
      near = far;
      far = swap;
    }
  size_t n = corners_of (ring->outer * camera->px_per_mm);
  PhPixel pixels[2 * CIRCLE_MOST];
  circle (camera, near, ring->axis, ring->outer, pixels, n);
  circle (camera, far, ring->axis, ring->outer, pixels + n, n);
  outline->edge = ph_outlines_add_hull (outlines, pixels, 2 * n);
  float round = ring->outer * sqrtf (fmaxf (0.0f, 1.0f - look * look));
  outline->depth_mm = depth_of (camera, near, round);
  outline->width_px = (ring->outer - ring->inner) * camera->px_per_mm;
  Round side;
  if (round_of (camera, ring->at, ring->axis, &side))
    {
      shade_large (outlines, outline, camera, ring->at, &side, ring->outer);
      ph_outlines_last_is_holed (outlines);
    }
  if (fabsf (look) < OBLIQUE)
    return;
  PhPoint normal = ph_point_scale (ring->axis, look > 0.0f ? 1.0f : -1.0f);
  ph_outlines_add_flat (outlines, outline,
                        circle_path (outlines, camera, near, ring->axis, ring->outer, n),
                        ph_light_on (camera, normal));
  ph_outlines_last_is_holed (outlines);
  /* One sees through while the near edge does not hide the far one. */
  float shift = 2.0f * ring->half_thick * sqrtf (fmaxf (0.0f, 1.0f - look * look));
  if (shift < ring->inner * fabsf (look))
    ph_outlines_add_hole (outlines, outline,
                          circle_path (outlines, camera, near, ring->axis, ring->inner, n));
}

void
ph_outline_sphere (PhOutlines *outlines, PhOutline *outline, const PhCamera *camera,
                   const PhSphere *sphere)
{
  PhPoint toward = ph_camera_toward (camera, sphere->at);
  size_t n = corners_of (sphere->radius * camera->px_per_mm);
  outline->edge = circle_path (outlines, camera, sphere->at, toward, sphere->radius, n);
  outline->depth_mm = depth_of (camera, sphere->at, sphere->radius);
  outline->width_px = 2.0f * sphere->radius * camera->px_per_mm;
  if (sphere->radius * camera->px_per_mm < SMALL_PX)
    {
      ph_outlines_add_flat (outlines, outline, outline->edge, ph_light_on (camera, toward));
      return;
    }
  /* Lit from the upper left: from there to the lower right. */
  PhPoint way = ph_point_unit (ph_point_sub (camera->right, camera->up));
  float lights[ACROSS];
  for (int i = 0; i < ACROSS; i++)
    {
      float sine = 2.0f * (float)i / (ACROSS - 1) - 1.0f;
      PhPoint normal = ph_point_scale (toward, sqrtf (fmaxf (0.0f, 1.0f - sine * sine)));
      lights[i] = ph_light_on (camera, ph_point_add_scaled (normal, way, sine));
    }
  PhPoint from = ph_point_add_scaled (sphere->at, way, -sphere->radius);
  PhPoint to = ph_point_add_scaled (sphere->at, way, sphere->radius);
  ph_outlines_add_shaded (outlines, outline, outline->edge, ph_camera_project (camera, from, NULL),
                          ph_camera_project (camera, to, NULL), lights, ACROSS);
}

void
ph_outline_line (PhOutlines *outlines, PhOutline *outline, const PhCamera *camera,
                 const PhPoint *points, const PhLine *line)
{
  outline->is_line = true;
  outline->width_px = 2.0f * line->radius * camera->px_per_mm;
  outline->edge.first = outlines->n_pixels;
  outline->edge.n = line->n;
  float sum = 0.0f;
  for (size_t i = 0; i < line->n; i++)
    {
      float depth;
      PhPixel pixel = ph_camera_project (camera, points[i], &depth);
      ph_outlines_add_path (outlines, &pixel, 1);
      sum += depth;
    }
  outline->depth_mm = sum / (float)line->n + line->radius;
}
