/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The one part of the frame that needs a sine.
 */
#include "physics/frame.h"

PhVec3
ph_frame_direction (const PhFrame *socket, double swing_rad, double lift_rad)
{
  return ph_frame_direction_of (socket, sin (swing_rad), cos (swing_rad), sin (lift_rad),
                                cos (lift_rad));
}
