/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where things point, as in the header. a × l is written out, so that t needs no square root of
 * its own.
 */
#include "physics/frame.h"

/* Beyond this an axis counts as lying along ±y. */
#define SIDEWAYS 0.9999
/* Below this a × l counts as level. */
#define LEVEL 1e-9

PhFrame
ph_frame_of_axis (PhVec3 a)
{
  PhFrame frame = { .a = a };
  if (fabs (a.y) > SIDEWAYS)
    {
      double scale = 1 / sqrt (a.y * a.y + a.z * a.z);
      frame.l = ph_vec3 (1 / scale, -a.x * a.y * scale, -a.x * a.z * scale);
      /* a × l = (0, a.z, −a.y)·scale, far from level. */
      double sign = a.y > 0 ? -scale : scale;
      frame.t = ph_vec3 (0, a.z * sign, -a.y * sign);
      return frame;
    }
  double scale = 1 / sqrt (a.x * a.x + a.z * a.z);
  frame.l = ph_vec3 (-a.x * a.y * scale, 1 / scale, -a.y * a.z * scale);
  /* a × l = (−a.z, 0, a.x)·scale. */
  double upward = fabs (a.x * scale) < LEVEL ? -a.z : a.x;
  double sign = upward < 0 ? -scale : scale;
  frame.t = ph_vec3 (-a.z * sign, 0, a.x * sign);
  return frame;
}

PhVec3
ph_frame_direction_of (const PhFrame *socket, double sin_swing, double cos_swing, double sin_lift,
                       double cos_lift)
{
  PhVec3 level = ph_vec3_add_scaled (ph_vec3_scale (socket->a, cos_lift * cos_swing), socket->l,
                                     cos_lift * sin_swing);
  return ph_vec3_add_scaled (level, socket->t, sin_lift);
}

PhVec3
ph_frame_direction (const PhFrame *socket, double swing_rad, double lift_rad)
{
  return ph_frame_direction_of (socket, sin (swing_rad), cos (swing_rad), sin (lift_rad),
                                cos (lift_rad));
}
