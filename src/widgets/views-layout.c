/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The common scale is tried first for the whole rectangle; then each view gets what it needs at
 * that scale, and what is left over.
 */
#include "widgets/views-layout.h"

#include <math.h>

#define BEHIND_LEAST 150.0f
#define BEHIND_SHARE 0.25f
#define ABOVE_LEAST 76.0f
#define ABOVE_SHARE_MOST 0.34f

PhMargins
ph_view_margins (PhView view)
{
  switch (view)
    {
    case PH_VIEW_SIDE:
      return (PhMargins){ 10.0f, 10.0f, 16.0f, 30.0f };
    case PH_VIEW_BEHIND:
      return (PhMargins){ 10.0f, 10.0f, 30.0f, 30.0f };
    case PH_VIEW_ABOVE:
      return (PhMargins){ 10.0f, 10.0f, 10.0f, 26.0f };
    case PH_VIEW_FREE:
      break;
    }
  return (PhMargins){ 12.0f, 12.0f, 12.0f, 28.0f };
}

static float
wide (PhExtent extent)
{
  return fmaxf (extent.right - extent.left, 1.0f);
}

static float
tall (PhExtent extent)
{
  return fmaxf (extent.top - extent.bottom, 1.0f);
}

/* The scale at which all of it would just fit, were the views as narrow as can be. */
static float
wanted_scale (const PhViewsExtent *extent, bool show_above, float width, float height, float foot)
{
  PhMargins side = ph_view_margins (PH_VIEW_SIDE), behind = ph_view_margins (PH_VIEW_BEHIND);
  PhMargins above = ph_view_margins (PH_VIEW_ABOVE);
  float left = width - side.left - side.right;
  float side_wide = fmaxf (wide (extent->side), show_above ? wide (extent->above) : 0.0f);
  float both = (left - behind.left - behind.right) / (side_wide + wide (extent->behind));
  float alone = (left - fmaxf (BEHIND_LEAST, BEHIND_SHARE * width)) / side_wide;
  float down = height - side.top - side.bottom;
  float heights = tall (extent->side);
  if (show_above)
    {
      float strip = fminf (tall (extent->above), heights);
      down -= above.top + above.bottom;
      heights += strip;
    }
  float scale = fminf (fminf (both, alone), down / heights);
  scale = fminf (scale, (height - foot - behind.top - behind.bottom) / tall (extent->behind));
  return fmaxf (scale, 0.01f);
}

PhViewsLayout
ph_views_layout (const PhViewsExtent *extent, bool show_above, float width, float height, float gap)
{
  PhViewRect foot;
  return ph_views_layout_with_foot (extent, show_above, width, height, gap, 0.0f, 0.0f, &foot);
}

PhViewsLayout
ph_views_layout_with_foot (const PhViewsExtent *extent, bool show_above, float width, float height,
                           float gap, float foot_width, float foot_height, PhViewRect *foot)
{
  PhMargins behind = ph_view_margins (PH_VIEW_BEHIND), above = ph_view_margins (PH_VIEW_ABOVE);
  float scale = wanted_scale (extent, show_above, width - gap, height - gap, foot_height);
  float right = wide (extent->behind) * scale + behind.left + behind.right;
  right = roundf (fmaxf (right, fmaxf (BEHIND_LEAST, BEHIND_SHARE * width)));
  right = fminf (fmaxf (right, foot_width), roundf (0.45f * width));
  float strip = 0.0f;
  if (show_above)
    {
      strip = tall (extent->above) * scale + above.top + above.bottom;
      strip = roundf (fminf (fmaxf (strip, ABOVE_LEAST), ABOVE_SHARE_MOST * height));
    }
  float left = width - right - gap, upper = height - strip - (show_above ? gap : 0.0f);
  PhViewsLayout layout = { .side = { 0.0f, 0.0f, left, upper },
                           .behind = { left + gap, 0.0f, right, height - foot_height },
                           .above = { 0.0f, upper + gap, left, strip } };
  *foot = (PhViewRect){ left + gap, height - foot_height, right, foot_height };
  return layout;
}

float
ph_views_scale (const PhViewsExtent *extent, const PhViewsLayout *layout)
{
  const PhViewRect *rects[] = { &layout->side, &layout->behind, &layout->above };
  const PhExtent extents[] = { extent->side, extent->behind, extent->above };
  const PhView views[] = { PH_VIEW_SIDE, PH_VIEW_BEHIND, PH_VIEW_ABOVE };
  float scale = INFINITY;
  for (int i = 0; i < 3; i++)
    if (rects[i]->height > 0.0f)
      scale = fminf (scale, ph_extent_scale (extents[i], rects[i]->width, rects[i]->height,
                                             ph_view_margins (views[i])));
  return scale;
}

void
ph_views_cameras (const PhViewsExtent *extent, const PhViewsLayout *layout, float px_per_mm,
                  float lean_rad, float slope_rad, PhCamera cameras[3])
{
  const PhViewRect *rects[] = { &layout->side, &layout->behind, &layout->above };
  const PhExtent extents[] = { extent->side, extent->behind, extent->above };
  for (int i = 0; i < 3; i++)
    {
      PhCamera *camera = &cameras[i];
      *camera = ph_camera_default ((PhView)i);
      camera->width_px = rects[i]->width;
      camera->height_px = rects[i]->height;
      camera->px_per_mm = px_per_mm;
      camera->slope_rad = slope_rad;
      camera->lean_rad = i == PH_VIEW_BEHIND ? lean_rad : 0.0f;
      ph_camera_update (camera);
      ph_camera_centre (camera, extents[i], ph_view_margins ((PhView)i));
    }
  cameras[PH_VIEW_ABOVE].middle.x = cameras[PH_VIEW_SIDE].middle.x;
  /* One height in both, counted from their upper edges: the shorter view, which has no room to
   * spare, leads, and the taller one shows more below. */
  PhCamera *side = &cameras[PH_VIEW_SIDE], *behind = &cameras[PH_VIEW_BEHIND];
  float lower = (behind->height_px - side->height_px) / 2.0f / px_per_mm;
  if (lower >= 0.0f)
    behind->middle.z = side->middle.z - lower;
  else
    side->middle.z = behind->middle.z + lower;
}
