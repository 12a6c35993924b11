/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Flat geometry in pixels: convex hulls, and how far a point is from a polygon.
 */
#pragma once

#include <stdbool.h>
#include <stddef.h>

#include "scene/camera.h"

/** Most points a hull is made of. */
#define PH_HULL_MOST 2000

/** The convex hull of n ≤ PH_HULL_MOST points, in one sense of turning, points on its sides left
 * out. `hull` has room for n + 1; returns how many were written (1 or 2 where all points
 * coincide or lie on a line). Sorts `points`. Andrew's monotone chain (1979), from memory:
 * O(n log n). */
size_t ph_hull_of (PhPixel *points, size_t n, PhPixel *hull);

/** Whether the point lies inside the closed polygon (even–odd). */
bool ph_polygon_contains (const PhPixel *polygon, size_t n, PhPixel at);

/** Least distance from a point to the polygon's sides (`closed`) or to the open line's. */
float ph_polygon_distance (const PhPixel *polygon, size_t n, bool closed, PhPixel at);
