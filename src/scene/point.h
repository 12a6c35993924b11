/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A point or a direction of the picture: three floats by value. Points are in mm in the bow frame
 * (physics/frame.h) unless a header says otherwise. Pure inline functions.
 */
#pragma once

#include <math.h>

#include "math/vec3.h"

typedef struct
{
  float x, y, z;
} PhPoint;

static inline PhPoint
ph_point (float x, float y, float z)
{
  return (PhPoint){ x, y, z };
}

/** From metres in doubles to mm in floats. */
static inline PhPoint
ph_point_of_m (PhVec3 m)
{
  return (PhPoint){ (float)(m.x * 1000.0), (float)(m.y * 1000.0), (float)(m.z * 1000.0) };
}

/** A direction or a vector in mm, as the model keeps it. */
static inline PhPoint
ph_point_of (const double v[3])
{
  return (PhPoint){ (float)v[0], (float)v[1], (float)v[2] };
}

static inline PhPoint
ph_point_of_vec (PhVec3 v)
{
  return (PhPoint){ (float)v.x, (float)v.y, (float)v.z };
}

static inline PhPoint
ph_point_add (PhPoint a, PhPoint b)
{
  return (PhPoint){ a.x + b.x, a.y + b.y, a.z + b.z };
}

static inline PhPoint
ph_point_sub (PhPoint a, PhPoint b)
{
  return (PhPoint){ a.x - b.x, a.y - b.y, a.z - b.z };
}

static inline PhPoint
ph_point_scale (PhPoint a, float k)
{
  return (PhPoint){ a.x * k, a.y * k, a.z * k };
}

/** a + k b. */
static inline PhPoint
ph_point_add_scaled (PhPoint a, PhPoint b, float k)
{
  return (PhPoint){ a.x + b.x * k, a.y + b.y * k, a.z + b.z * k };
}

/** (1 − t) a + t b. */
static inline PhPoint
ph_point_mix (PhPoint a, PhPoint b, float t)
{
  return (PhPoint){ a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t, a.z + (b.z - a.z) * t };
}

static inline float
ph_point_dot (PhPoint a, PhPoint b)
{
  return a.x * b.x + a.y * b.y + a.z * b.z;
}

static inline PhPoint
ph_point_cross (PhPoint a, PhPoint b)
{
  return (PhPoint){ a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x };
}

static inline float
ph_point_length (PhPoint a)
{
  return sqrtf (ph_point_dot (a, a));
}

/** a divided by its length; +x where the length is 0. */
static inline PhPoint
ph_point_unit (PhPoint a)
{
  float length = ph_point_length (a);
  return length > 0.0f ? ph_point_scale (a, 1.0f / length) : ph_point (1.0f, 0.0f, 0.0f);
}

/** Some unit vector square to the unit vector `axis`, and with it a third: (axis, u, v) is
 * right-handed. */
static inline void
ph_point_square (PhPoint axis, PhPoint *u, PhPoint *v)
{
  PhPoint away = fabsf (axis.y) < 0.9f ? ph_point (0.0f, 1.0f, 0.0f) : ph_point (1.0f, 0.0f, 0.0f);
  *u = ph_point_unit (ph_point_add_scaled (away, axis, -ph_point_dot (away, axis)));
  *v = ph_point_cross (axis, *u);
}
