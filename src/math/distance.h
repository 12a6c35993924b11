/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Least distances between simple shapes; lengths in the caller's unit. After C. Ericson,
 * Real-Time Collision Detection, chapter 5 (from memory).
 */
#pragma once

#include "math/vec3.h"

/** Least distance from the segment a–b to the filled triangle t0 t1 t2: 0 where they meet. A
 * segment of length 0 is a point. The triangle must have an area. */
double ph_distance_segment_triangle (PhVec3 a, PhVec3 b, const PhVec3 triangle[3]);

/** Least distance between the segments a–b and c–d; either may have length 0. */
double ph_distance_segments (PhVec3 a, PhVec3 b, PhVec3 c, PhVec3 d);
