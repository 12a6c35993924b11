/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Distances against a second road: the distance from a point to a convex shape is convex along a
 * line, so nested golden sections find it without any case of the geometry.
 */
#include "math/distance.h"

#include "check.h"

static unsigned long long random_state = 11;

static double
random_within (double lo, double hi)
{
  /* Knuth's MMIX linear congruence (from memory); the high bits. */
  random_state = random_state * 6364136223846793005ull + 1442695040888963407ull;
  return lo + (hi - lo) * (double)(random_state >> 11) / 9007199254740992.0;
}

static PhVec3
random_point (void)
{
  return ph_vec3 (random_within (-1, 1), random_within (-1, 1), random_within (-1, 1));
}

typedef double (*Along) (PhVec3 point, const PhVec3 *shape);

/* Least of f over the segment a–b, f convex. */
static double
least_along (Along f, const PhVec3 *shape, PhVec3 a, PhVec3 b)
{
  const double share = 0.6180339887498949;
  PhVec3 d = ph_vec3_sub (b, a);
  double lo = 0, hi = 1, s = hi - share, t = share;
  double at_s = f (ph_vec3_add_scaled (a, d, s), shape);
  double at_t = f (ph_vec3_add_scaled (a, d, t), shape);
  for (int i = 0; i < 50; i++)
    if (at_s < at_t)
      {
        hi = t;
        t = s;
        at_t = at_s;
        s = hi - share * (hi - lo);
        at_s = f (ph_vec3_add_scaled (a, d, s), shape);
      }
    else
      {
        lo = s;
        s = t;
        at_s = at_t;
        t = lo + share * (hi - lo);
        at_t = f (ph_vec3_add_scaled (a, d, t), shape);
      }
  return fmin (fmin (f (a, shape), f (b, shape)), fmin (at_s, at_t));
}

static double
to_point (PhVec3 p, const PhVec3 *shape)
{
  return ph_vec3_length (ph_vec3_sub (p, shape[0]));
}

static double
to_segment (PhVec3 p, const PhVec3 *shape)
{
  return least_along (to_point, &p, shape[0], shape[1]);
}

/* A triangle is its chords parallel to one edge; each starts on `base`. The least over the chord is
   convex in where it starts. */
static double
to_chord (PhVec3 base, const PhVec3 *triangle_and_point)
{
  const PhVec3 *t = triangle_and_point;
  PhVec3 edge = ph_vec3_sub (t[1], t[0]);
  double u = ph_vec3_dot (ph_vec3_sub (base, t[0]), edge) / ph_vec3_dot (edge, edge);
  PhVec3 end = ph_vec3_add_scaled (base, ph_vec3_sub (t[2], t[0]), 1 - u);
  return least_along (to_point, &t[3], base, end);
}

static double
to_triangle (PhVec3 p, const PhVec3 *shape)
{
  PhVec3 triangle_and_point[4] = { shape[0], shape[1], shape[2], p };
  return least_along (to_chord, triangle_and_point, shape[0], shape[1]);
}

static void
segments_agree_with_a_search (void)
{
  for (int i = 0; i < 2000; i++)
    {
      PhVec3 a = random_point (), b = random_point (), shape[2] = { random_point () };
      double length = pow (10, random_within (-6, 0));
      shape[1] = ph_vec3_add_scaled (shape[0], random_point (), length);
      if (i % 4 == 0) /* near parallel */
        shape[1] =
            ph_vec3_add_scaled (ph_vec3_add (shape[0], ph_vec3_sub (b, a)), random_point (), 1e-9);
      double got = ph_distance_segments (a, b, shape[0], shape[1]);
      /* At its foot the distance is flat: the search is good to the square of its 1e-10. */
      CHECK_NEAR (got, least_along (to_segment, shape, a, b), 1e-13);
    }
}

static void
triangles_agree_with_a_search (void)
{
  for (int i = 0; i < 60; i++)
    {
      PhVec3 a = random_point (), b = random_point ();
      PhVec3 shape[3] = { random_point (), random_point (), random_point () };
      a = ph_vec3_scale (a, i % 3 ? 1 : 0.2);
      double got = ph_distance_segment_triangle (a, b, shape);
      double found = least_along (to_triangle, shape, a, b);
      /* Near 0 the least has a kink, which three nested searches only come so near. */
      CHECK_NEAR (got, found, 1e-10);
      CHECK (got <= found + 1e-12, "the search beat it by %g", got - found);
    }
}

static const PhVec3 flat[3] = { { 0, 0, 0 }, { 4, 0, 0 }, { 0, 0, 3 } };

static double
to_flat (PhVec3 a, PhVec3 b)
{
  return ph_distance_segment_triangle (a, b, flat);
}

static void
each_part_of_a_triangle_can_be_the_nearest (void)
{
  PhVec3 p = ph_vec3 (1, 2, 1);
  CHECK_NEAR (to_flat (p, p), 2, 0);                                                  /* inside */
  CHECK_NEAR (to_flat (ph_vec3 (-3, -4, -1), ph_vec3 (-3, 4, -1)), sqrt (10), 1e-15); /* corner */
  CHECK_NEAR (to_flat (ph_vec3 (1, 1, -1), ph_vec3 (2, 1, -1)), sqrt (2), 1e-15);     /* edge */
  CHECK_NEAR (to_flat (ph_vec3 (-1, 3, 1), ph_vec3 (5, 3, 1)), 3, 0);                 /* parallel */
  CHECK_NEAR (to_flat (ph_vec3 (4, 0, 3), ph_vec3 (4, 1, 3)), 2.4, 1e-15); /* slanting edge */
}

static void
crossing_is_zero (void)
{
  CHECK_NEAR (to_flat (ph_vec3 (1, -1, 1), ph_vec3 (1, 5, 1)), 0, 0);
  CHECK_NEAR (to_flat (ph_vec3 (-1, 0, 1), ph_vec3 (5, 0, 1)), 0, 1e-16); /* in its plane */
  CHECK_NEAR (to_flat (ph_vec3 (1, 0, 1), ph_vec3 (1.5, 0, 0.5)), 0, 0);  /* wholly inside it */
  CHECK_NEAR (to_flat (ph_vec3 (0, -1, 0), ph_vec3 (0, 1, 0)), 0, 0);     /* through a corner */
  CHECK_NEAR (to_flat (ph_vec3 (1, 0, 1), ph_vec3 (1, 2, 1)), 0, 0);      /* touching */
}

static void
order_of_the_ends_does_not_matter (void)
{
  for (int i = 0; i < 1000; i++)
    {
      PhVec3 a = random_point (), b = random_point ();
      PhVec3 t[3] = { random_point (), random_point (), random_point () };
      PhVec3 turned[3] = { t[1], t[2], t[0] }, other[3] = { t[1], t[0], t[2] };
      double d = ph_distance_segment_triangle (a, b, t);
      CHECK_NEAR (ph_distance_segment_triangle (b, a, turned), d, 1e-14);
      CHECK_NEAR (ph_distance_segment_triangle (a, b, other), d, 1e-14);
    }
}

static void
segments_without_length_are_points (void)
{
  PhVec3 p = ph_vec3 (1, 2, 3), q = ph_vec3 (1, 2, 5);
  CHECK_NEAR (ph_distance_segments (p, p, q, q), 2, 0);
  CHECK_NEAR (ph_distance_segments (p, p, p, q), 0, 0);
  CHECK_NEAR (ph_distance_segments (p, q, ph_vec3 (0, 2, 4), ph_vec3 (0, 2, 4)), 1, 0);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (segments_agree_with_a_search);
  CASE (triangles_agree_with_a_search);
  CASE (each_part_of_a_triangle_can_be_the_nearest);
  CASE (crossing_is_zero);
  CASE (order_of_the_ends_does_not_matter);
  CASE (segments_without_length_are_points);
  return check_end ();
}
