/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Flat geometry in pixels. A hundredth of a pixel is nothing here, so floats serve.
 */
#include "scene/hull.h"

#include <assert.h>
#include <stdlib.h>

static int
compare_pixels (const void *a, const void *b)
{
  const PhPixel *p = a, *q = b;
  if (p->x != q->x)
    return p->x < q->x ? -1 : 1;
  return (p->y > q->y) - (p->y < q->y);
}

/* Twice the area of the triangle o a b: positive where it turns to the left. */
static float
turn (PhPixel o, PhPixel a, PhPixel b)
{
  return (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x);
}

size_t
ph_hull_of (PhPixel *points, size_t n, PhPixel *hull)
{
  assert (n > 0 && n <= PH_HULL_MOST);
  qsort (points, n, sizeof *points, compare_pixels);
  size_t k = 0;
  for (size_t i = 0; i < n; i++)
    {
      while (k >= 2 && turn (hull[k - 2], hull[k - 1], points[i]) <= 0.0f)
        k--;
      hull[k++] = points[i];
    }
  size_t lower = k + 1;
  for (size_t i = n - 1; i-- > 0;)
    {
      while (k >= lower && turn (hull[k - 2], hull[k - 1], points[i]) <= 0.0f)
        k--;
      hull[k++] = points[i];
    }
  /* The chain ends where it began. */
  return k > 1 ? k - 1 : k;
}

bool
ph_polygon_contains (const PhPixel *polygon, size_t n, PhPixel at)
{
  bool inside = false;
  for (size_t i = 0, j = n - 1; i < n; j = i++)
    {
      PhPixel a = polygon[i], b = polygon[j];
      if ((a.y > at.y) != (b.y > at.y) && at.x < (b.x - a.x) * (at.y - a.y) / (b.y - a.y) + a.x)
        inside = !inside;
    }
  return inside;
}

static float
segment_distance (PhPixel a, PhPixel b, PhPixel at)
{
  float dx = b.x - a.x, dy = b.y - a.y, square = dx * dx + dy * dy;
  float t = square > 0.0f ? ((at.x - a.x) * dx + (at.y - a.y) * dy) / square : 0.0f;
  t = fminf (fmaxf (t, 0.0f), 1.0f);
  return hypotf (a.x + t * dx - at.x, a.y + t * dy - at.y);
}

float
ph_polygon_distance (const PhPixel *polygon, size_t n, bool closed, PhPixel at)
{
  float least = INFINITY;
  for (size_t i = closed ? 0 : 1; i < n; i++)
    least = fminf (least, segment_distance (polygon[i ? i - 1 : n - 1], polygon[i], at));
  return n == 1 ? hypotf (polygon[0].x - at.x, polygon[0].y - at.y) : least;
}
