/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A vector of three doubles, by value. Unit and frame are the caller's. Pure inline functions.
 */
#pragma once

#include <math.h>

typedef struct
{
  double x, y, z;
} PhVec3;

static inline PhVec3
ph_vec3 (double x, double y, double z)
{
  return (PhVec3){ x, y, z };
}

static inline PhVec3
ph_vec3_add (PhVec3 a, PhVec3 b)
{
  return (PhVec3){ a.x + b.x, a.y + b.y, a.z + b.z };
}

static inline PhVec3
ph_vec3_sub (PhVec3 a, PhVec3 b)
{
  return (PhVec3){ a.x - b.x, a.y - b.y, a.z - b.z };
}

static inline PhVec3
ph_vec3_scale (PhVec3 a, double k)
{
  return (PhVec3){ a.x * k, a.y * k, a.z * k };
}

/** a + k b. */
static inline PhVec3
ph_vec3_add_scaled (PhVec3 a, PhVec3 b, double k)
{
  return (PhVec3){ a.x + b.x * k, a.y + b.y * k, a.z + b.z * k };
}

static inline double
ph_vec3_dot (PhVec3 a, PhVec3 b)
{
  return a.x * b.x + a.y * b.y + a.z * b.z;
}

static inline PhVec3
ph_vec3_cross (PhVec3 a, PhVec3 b)
{
  return (PhVec3){ a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x };
}

static inline double
ph_vec3_length (PhVec3 a)
{
  return sqrt (ph_vec3_dot (a, a));
}

/** a divided by its length. The length must not be 0 and its square must not overflow or vanish
 * (the rig file's smallest axis, 1e-6, is far inside). */
static inline PhVec3
ph_vec3_unit (PhVec3 a)
{
  return ph_vec3_scale (a, 1.0 / ph_vec3_length (a));
}
