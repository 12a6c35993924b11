/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Making a picture fit: how far a rig reaches in a view, and the camera that shows all of it.
 */
#pragma once

#include "scene/camera.h"
#include "scene/drawlist.h"

/** How far things reach in a picture, from the grip throat: to the right and up [mm]. */
typedef struct
{
  float left, right, bottom, top;
} PhExtent;

/** Room that is kept free at the sides of a picture [px]. */
typedef struct
{
  float left, right, bottom, top;
} PhMargins;

/** Extent of all that is drawn, seen in that flat view with that drawn lean and slope (both in rad,
 * as in PhCamera). Not for the free view (asserted). */
PhExtent ph_extent_of (const PhDrawList *list, PhView view, float lean_rad, float slope_rad);

/** The smallest extent that holds both. */
PhExtent ph_extent_join (PhExtent a, PhExtent b);

/** The largest scale at which the extent fits a picture of that size inside its margins; at least
 * 0.01 px/mm, whatever is left of the picture. */
float ph_extent_scale (PhExtent extent, float width_px, float height_px, PhMargins margins);

/** Moves the camera so that the extent's middle stands in the middle of what the margins leave. */
void ph_camera_centre (PhCamera *camera, PhExtent extent, PhMargins margins);

/** Free view: middle, distance and scale at which all of the list is seen, in the middle of what
 * the margins leave; the way one looks stays. The size must be set. */
void ph_camera_fit (PhCamera *camera, const PhDrawList *list, PhMargins margins);
