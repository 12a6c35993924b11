/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * An extent is what the outlines of a camera at 1 px/mm reach.
 */
#include "scene/fit.h"

#include <assert.h>

#include "scene/outline.h"

#define SCALE_LEAST 0.01f
/* The eye of the free view stands this many times as far as the rig reaches. */
#define FREE_DISTANCE 4.0f
#define FREE_STEPS 3

PhExtent
ph_extent_of (const PhDrawList *list, PhView view, float lean_rad, float slope_rad)
{
  assert (view != PH_VIEW_FREE);
  PhCamera camera = ph_camera_default (view);
  camera.lean_rad = lean_rad;
  camera.slope_rad = slope_rad;
  ph_camera_update (&camera);
  PhOutlines *outlines = ph_outlines_new ();
  ph_outlines_update (outlines, list, &camera);
  PhPixel least, most;
  PhExtent extent = { 0 };
  if (ph_outlines_bounds (outlines, list, PH_PART_NONE, &least, &most))
    extent = (PhExtent){ least.x, most.x, -most.y, -least.y };
  ph_outlines_free (outlines);
  return extent;
}

PhExtent
ph_extent_join (PhExtent a, PhExtent b)
{
  return (PhExtent){ fminf (a.left, b.left), fmaxf (a.right, b.right), fminf (a.bottom, b.bottom),
                     fmaxf (a.top, b.top) };
}

float
ph_extent_scale (PhExtent extent, float width_px, float height_px, PhMargins margins)
{
  float wide = fmaxf (extent.right - extent.left, 1.0f);
  float tall = fmaxf (extent.top - extent.bottom, 1.0f);
  float across = (width_px - margins.left - margins.right) / wide;
  float upright = (height_px - margins.top - margins.bottom) / tall;
  return fmaxf (fminf (across, upright), SCALE_LEAST);
}

void
ph_camera_centre (PhCamera *camera, PhExtent extent, PhMargins margins)
{
  PhCamera plumb = ph_camera_plumb (camera);
  float x = (extent.left + extent.right) / 2.0f, y = (extent.bottom + extent.top) / 2.0f;
  camera->middle = ph_point_scale (plumb.right, x);
  camera->middle = ph_point_add_scaled (camera->middle, plumb.up, y);
  ph_camera_pan (camera, (margins.left - margins.right) / 2.0f,
                 (margins.top - margins.bottom) / 2.0f);
}

/* The middle of all that is drawn, and a distance from which it is seen in a mild perspective. */
static void
look_at_all (PhCamera *camera, const PhDrawList *list)
{
  PhExtent side = ph_extent_of (list, PH_VIEW_SIDE, 0.0f, 0.0f);
  PhExtent above = ph_extent_of (list, PH_VIEW_ABOVE, 0.0f, 0.0f);
  camera->middle = ph_point ((side.left + side.right) / 2.0f, (above.bottom + above.top) / 2.0f,
                             (side.bottom + side.top) / 2.0f);
  float wide = side.right - side.left, tall = side.top - side.bottom;
  camera->distance_mm = FREE_DISTANCE * fmaxf (0.5f * hypotf (wide, tall), 100.0f);
}

void
ph_camera_fit (PhCamera *camera, const PhDrawList *list, PhMargins margins)
{
  assert (camera->view == PH_VIEW_FREE);
  PhOutlines *outlines = ph_outlines_new ();
  look_at_all (camera, list);
  camera->px_per_mm = 1.0f;
  /* Perspective: moving the middle changes the extent a little, so it is done again. */
  for (int i = 0; i < FREE_STEPS; i++)
    {
      PhPixel least, most;
      ph_outlines_update (outlines, list, camera);
      if (!ph_outlines_bounds (outlines, list, PH_PART_NONE, &least, &most))
        break;
      PhExtent extent = { least.x, most.x, -most.y, -least.y };
      ph_camera_pan (camera, (camera->width_px - least.x - most.x) / 2.0f,
                     (camera->height_px - least.y - most.y) / 2.0f);
      camera->px_per_mm *= ph_extent_scale (extent, camera->width_px, camera->height_px, margins);
    }
  ph_camera_pan (camera, (margins.left - margins.right) / 2.0f,
                 (margins.top - margins.bottom) / 2.0f);
  ph_outlines_free (outlines);
}
