/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Smooth curves through a few points, cut into even steps, and sections along them. Centripetal
 * Catmull–Rom: P. J. Barry and R. N. Goldman, A recursive evaluation algorithm for a class of
 * Catmull-Rom splines (1988), from memory; it neither loops nor overshoots between points.
 */
#pragma once

#include <stddef.h>

#include "scene/solid.h"

/** Most points a curve is given, and most even steps it is cut into. */
#define PH_CURVE_POINTS_MOST 16

/** Point at t in [0, 1] of the whole curve through `n` ≥ 2 points (t is spread evenly over the
 * spans, not over the length). */
PhPoint ph_curve_at (const PhPoint *points, size_t n, float t);

/** `n_even` ≥ 2 points evenly apart along the curve's length, its two ends included. */
void ph_curve_even (const PhPoint *points, size_t n, PhPoint *even, size_t n_even);

/** One number along another: eased from knot to knot; ends are held.
 * Keys ascending. */
typedef struct
{
  float at, value;
} PhKnot;
float ph_knots_at (const PhKnot *knots, size_t n, float at);

/** Stations along even points: `side` is +y and `out` is square to it and to the curve (side × the
 * way onward), so that a curve going up has `out` forward. Half sides are left 0. */
void ph_curve_stations (const PhPoint *even, size_t n, PhStation *stations);
