/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How the three flat views share a rectangle: from the side on the left, from above under it on the
 * same x scale, from behind on the right, all at one scale. Plain numbers, no toolkit.
 */
#pragma once

#include "scene/fit.h"

typedef struct
{
  float x, y, width, height;
} PhViewRect;

typedef struct
{
  PhViewRect side, behind, above; /* above has height 0 while it is hidden */
} PhViewsLayout;

/** What each view must show. */
typedef struct
{
  PhExtent side, behind, above;
} PhViewsExtent;

/** Room each view keeps for its title, its scale bar and its words. */
PhMargins ph_view_margins (PhView view);

/** Shares `width` × `height` pixels. The rectangles do not depend on what the views are scrolled
 * to, only on what they must show. `gap` lies between two views. */
PhViewsLayout ph_views_layout (const PhViewsExtent *extent, bool show_above, float width,
                               float height, float gap);

/** The same with a foot of `foot_width` × `foot_height` pixels, at least, under the view from
 * behind: that view is shorter by it, and not narrower than it. `*foot` is its place. */
PhViewsLayout ph_views_layout_with_foot (const PhViewsExtent *extent, bool show_above, float width,
                                         float height, float gap, float foot_width,
                                         float foot_height, PhViewRect *foot);

/** The largest scale at which every shown view has room for what it must show. */
float ph_views_scale (const PhViewsExtent *extent, const PhViewsLayout *layout);

/** Cameras of the three views at that scale: what they must show in the middle, the side's x shared
 * with the view from above, its height with the view from behind. `cameras` has them in the order
 * of PhView; view, sizes and lean are set, ph_camera_update is done. */
void ph_views_cameras (const PhViewsExtent *extent, const PhViewsLayout *layout, float px_per_mm,
                       float lean_rad, float slope_rad, PhCamera cameras[3]);
