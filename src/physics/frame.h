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

/** The frame of an axis. `axis` must be of unit length. Where |axis·y| > 0.9999 l comes from +x;
 * where |(a × l)·z| < 1e-9 the sign of t comes from +x. */
PhFrame ph_frame_of_axis (PhVec3 axis);

/** Direction of a part on a socket: cos(lift)·(cos(swing)·a + sin(swing)·l) + sin(lift)·t.
 * swing is positive to the archer's left, lift positive upward, for front and back bars alike. */
PhVec3 ph_frame_direction (const PhFrame *socket, double swing_rad, double lift_rad);

/** The same with the sines and cosines already at hand. */
PhVec3 ph_frame_direction_of (const PhFrame *socket, double sin_swing, double cos_swing,
                              double sin_lift, double cos_lift);

/** Own components (along a, l, t) to the bow frame: a vector, not a point. */
static inline PhVec3
ph_frame_apply (const PhFrame *f, PhVec3 own)
{
  return (PhVec3){ f->a.x * own.x + f->l.x * own.y + f->t.x * own.z,
                   f->a.y * own.x + f->l.y * own.y + f->t.y * own.z,
                   f->a.z * own.x + f->l.z * own.y + f->t.z * own.z };
}
