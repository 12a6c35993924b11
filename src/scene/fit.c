/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * An extent is what the outlines of a camera at 1 px/mm reach.
 */
#include "scene/fit.h"

#include <assert.h>

#include "scene/outline.h"

#define SCALE_LEAST 0.01f

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
