/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where things point. The bow frame is right-handed, fixed to the bow held plumb at full draw,
 * with its origin at the grip pivot P (the deepest point of the grip throat): x toward the
 * target, y to the archer's left, z up. Lengths in m, angles in rad. Pure functions.
 */
#pragma once

#include "math/vec3.h"

/** Three orthonormal directions in the bow frame that hang on an axis, so that angles mean the
 * same whichever way a socket points. May be left-handed; tensors and positions still transform
 * by the orthogonal matrix whose columns are a, l, t. */
typedef struct
{
  PhVec3 a; /* the axis, unit length; a part's own direction d once the part is placed */
  PhVec3 l; /* "left-ish": the part of +y perpendicular to a (of +x where a is along ±y) */
  PhVec3 t; /* "up-ish": ±(a × l) with t·z > 0 (t·x > 0 where a × l is level) */
} PhFrame;

/** Beyond this an axis counts as lying along ±y; below the other a × l counts as level. */
#define PH_FRAME_SIDEWAYS 0.9999
#define PH_FRAME_LEVEL 1e-9

/** The frame of an axis. `axis` must be of unit length. Where |axis·y| > 0.9999 l comes from +x;
 * where |(a × l)·z| < 1e-9 the sign of t comes from +x. a × l is written out, so that t needs no
 * square root of its own; inline, since a rig places each part with one or two of these. */
static inline PhFrame
ph_frame_of_axis (PhVec3 axis)
{
  double x = axis.x, y = axis.y, z = axis.z;
  if (__builtin_expect (fabs (y) > PH_FRAME_SIDEWAYS, 0))
    {
      double length = sqrt (y * y + z * z), scale = 1 / length;
      /* a × l = (0, z, −y)·scale, far from level. */
      double upward = copysign (scale, -y);
      return (PhFrame){ axis,
                        { length, -x * y * scale, -x * z * scale },
                        { 0, z * upward, -y * upward } };
    }
  double length = sqrt (x * x + z * z), scale = 1 / length;
  /* a × l = (−z, 0, x)·scale. */
  double upward = copysign (scale, fabs (x * scale) < PH_FRAME_LEVEL ? -z : x);
  return (
      PhFrame){ axis, { -x * y * scale, length, -y * z * scale }, { -z * upward, 0, x * upward } };
}

/** Direction of a part on a socket, from the sines and cosines of its angles:
 * cos(lift)·(cos(swing)·a + sin(swing)·l) + sin(lift)·t. */
static inline PhVec3
ph_frame_direction_of (const PhFrame *socket, double sin_swing, double cos_swing, double sin_lift,
                       double cos_lift)
{
  PhVec3 level = ph_vec3_add_scaled (ph_vec3_scale (socket->a, cos_lift * cos_swing), socket->l,
                                     cos_lift * sin_swing);
  return ph_vec3_add_scaled (level, socket->t, sin_lift);
}

/** The same from the angles. swing is positive to the archer's left, lift positive upward, for
 * front and back bars alike. */
PhVec3 ph_frame_direction (const PhFrame *socket, double swing_rad, double lift_rad);

/** Own components (along a, l, t) to the bow frame: a vector, not a point. */
static inline PhVec3
ph_frame_apply (const PhFrame *f, PhVec3 own)
{
  return (PhVec3){ f->a.x * own.x + f->l.x * own.y + f->t.x * own.z,
                   f->a.y * own.x + f->l.y * own.y + f->t.y * own.z,
                   f->a.z * own.x + f->l.z * own.y + f->t.z * own.z };
}
