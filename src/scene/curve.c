/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Centripetal Catmull–Rom by the Barry–Goldman pyramid. A curve is sampled finely once, then cut
 * into even steps by its length: a few microseconds.
 */
#include "scene/curve.h"

#include <assert.h>

/* Fine samples a span: at a bow's size a chord then strays less than 0.1 mm from its arc. */
#define FINE 24

/* Knot spacing: the square root of the chord. Two points that coincide still need a little. */
static float
spacing (PhPoint a, PhPoint b)
{
  float chord = ph_point_length (ph_point_sub (b, a));
  return sqrtf (fmaxf (chord, 1e-3f));
}

static PhPoint
between (PhPoint a, PhPoint b, float ta, float tb, float t)
{
  return ph_point_mix (a, b, (t - ta) / (tb - ta));
}

/* Point at u in [0, 1] of the span p[1]–p[2]. */
static PhPoint
span_at (const PhPoint p[4], float u)
{
  float t0 = 0.0f, t1 = t0 + spacing (p[0], p[1]), t2 = t1 + spacing (p[1], p[2]);
  float t3 = t2 + spacing (p[2], p[3]);
  float t = t1 + (t2 - t1) * u;
  PhPoint a1 = between (p[0], p[1], t0, t1, t);
  PhPoint a2 = between (p[1], p[2], t1, t2, t);
  PhPoint a3 = between (p[2], p[3], t2, t3, t);
  PhPoint b1 = between (a1, a2, t0, t2, t);
  PhPoint b2 = between (a2, a3, t1, t3, t);
  return between (b1, b2, t1, t2, t);
}

PhPoint
ph_curve_at (const PhPoint *points, size_t n, float t)
{
  assert (n >= 2);
  float along = fminf (fmaxf (t, 0.0f), 1.0f) * (float)(n - 1);
  size_t span = (size_t)along;
  if (span > n - 2)
    span = n - 2;
  PhPoint p[4];
  p[1] = points[span];
  p[2] = points[span + 1];
  /* Beyond an end the curve goes on as a mirror image of its first chord. */
  p[0] = span > 0 ? points[span - 1] : ph_point_sub (ph_point_scale (p[1], 2.0f), p[2]);
  p[3] = span + 2 < n ? points[span + 2] : ph_point_sub (ph_point_scale (p[2], 2.0f), p[1]);
  return span_at (p, along - (float)span);
}

void
ph_curve_even (const PhPoint *points, size_t n, PhPoint *even, size_t n_even)
{
  assert (n >= 2 && n <= PH_CURVE_POINTS_MOST && n_even >= 2);
  PhPoint fine[(PH_CURVE_POINTS_MOST - 1) * FINE + 1];
  float length[(PH_CURVE_POINTS_MOST - 1) * FINE + 1];
  size_t n_fine = (n - 1) * FINE + 1;
  for (size_t i = 0; i < n_fine; i++)
    {
      fine[i] = ph_curve_at (points, n, (float)i / (float)(n_fine - 1));
      length[i] = i ? length[i - 1] + ph_point_length (ph_point_sub (fine[i], fine[i - 1])) : 0.0f;
    }
  size_t k = 0;
  for (size_t i = 0; i < n_even; i++)
    {
      float want = length[n_fine - 1] * (float)i / (float)(n_even - 1);
      while (k + 2 < n_fine && length[k + 1] < want)
        k++;
      float step = length[k + 1] - length[k];
      even[i] = ph_point_mix (fine[k], fine[k + 1], step > 0 ? (want - length[k]) / step : 0.0f);
    }
  even[0] = fine[0];
  even[n_even - 1] = fine[n_fine - 1];
}

float
ph_knots_at (const PhKnot *knots, size_t n, float at)
{
  assert (n > 0);
  if (at <= knots[0].at)
    return knots[0].value;
  for (size_t i = 1; i < n; i++)
    if (at < knots[i].at)
      {
        float u = (at - knots[i - 1].at) / (knots[i].at - knots[i - 1].at);
        u = u * u * (3.0f - 2.0f * u);
        return knots[i - 1].value + (knots[i].value - knots[i - 1].value) * u;
      }
  return knots[n - 1].value;
}

void
ph_curve_stations (const PhPoint *even, size_t n, PhStation *stations)
{
  assert (n >= 2);
  for (size_t i = 0; i < n; i++)
    {
      PhPoint way = ph_point_sub (even[i + 1 < n ? i + 1 : i], even[i ? i - 1 : i]);
      PhPoint side = ph_point (0.0f, 1.0f, 0.0f);
      stations[i] = (PhStation){ .at = even[i],
                                 .out = ph_point_unit (ph_point_cross (side, way)),
                                 .side = side };
    }
}
