/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Least distances. Every candidate is the distance of two points that do belong to the shapes, so
 * a candidate that rounding has moved can be too long but never too short.
 */
#include "math/distance.h"

#include <stdbool.h>

static double
clamp_unit (double x)
{
  return x < 0 ? 0 : x > 1 ? 1 : x;
}

static double
point_to_segment (PhVec3 p, PhVec3 a, PhVec3 b)
{
  PhVec3 along = ph_vec3_sub (b, a), from = ph_vec3_sub (p, a);
  double square = ph_vec3_dot (along, along);
  double s = square > 0 ? clamp_unit (ph_vec3_dot (from, along) / square) : 0;
  return ph_vec3_length (ph_vec3_add_scaled (from, along, -s));
}

double
ph_distance_segments (PhVec3 a, PhVec3 b, PhVec3 c, PhVec3 d)
{
  double least = fmin (fmin (point_to_segment (a, c, d), point_to_segment (b, c, d)),
                       fmin (point_to_segment (c, a, b), point_to_segment (d, a, b)));
  PhVec3 u = ph_vec3_sub (b, a), v = ph_vec3_sub (d, c), r = ph_vec3_sub (c, a);
  PhVec3 normal = ph_vec3_cross (u, v);
  double square = ph_vec3_dot (normal, normal);
  if (square <= 0)
    return least;
  /* Where both are nearest in their insides. The cross products keep near-parallel lines
     accurate, where the usual u·u v·v − (u·v)² has lost its digits. */
  double s = ph_vec3_dot (ph_vec3_cross (r, v), normal) / square;
  double t = ph_vec3_dot (ph_vec3_cross (r, u), normal) / square;
  if (s < 0 || s > 1 || t < 0 || t > 1)
    return least;
  PhVec3 gap = ph_vec3_add_scaled (ph_vec3_add_scaled (r, v, t), u, -s);
  return fmin (least, ph_vec3_length (gap));
}

/* Whether the foot of p on the triangle's plane lies inside the triangle. */
static bool
foot_is_inside (PhVec3 p, const PhVec3 triangle[3], PhVec3 normal)
{
  for (int i = 0; i < 3; i++)
    {
      PhVec3 edge = ph_vec3_sub (triangle[(i + 1) % 3], triangle[i]);
      if (ph_vec3_dot (ph_vec3_cross (edge, ph_vec3_sub (p, triangle[i])), normal) < 0)
        return false;
    }
  return true;
}

double
ph_distance_segment_triangle (PhVec3 a, PhVec3 b, const PhVec3 triangle[3])
{
  PhVec3 normal = ph_vec3_cross (ph_vec3_sub (triangle[1], triangle[0]),
                                 ph_vec3_sub (triangle[2], triangle[0]));
  double length = ph_vec3_length (normal);
  double above_a = ph_vec3_dot (ph_vec3_sub (a, triangle[0]), normal) / length;
  double above_b = ph_vec3_dot (ph_vec3_sub (b, triangle[0]), normal) / length;
  if ((above_a < 0) != (above_b < 0))
    {
      double s = above_a / (above_a - above_b);
      PhVec3 cut = ph_vec3_add_scaled (a, ph_vec3_sub (b, a), s);
      if (foot_is_inside (cut, triangle, normal))
        return 0;
    }
  double least = HUGE_VAL;
  for (int i = 0; i < 3; i++)
    least = fmin (least, ph_distance_segments (a, b, triangle[i], triangle[(i + 1) % 3]));
  if (foot_is_inside (a, triangle, normal))
    least = fmin (least, fabs (above_a));
  if (foot_is_inside (b, triangle, normal))
    least = fmin (least, fabs (above_b));
  return least;
}
