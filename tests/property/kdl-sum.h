/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The mass properties of solids summed by the Kinematics and Dynamics Library's RigidBodyInertia,
 * behind plain numbers: KDL is C++.
 */
#pragma once

#ifdef __cplusplus
extern "C"
{
#endif

  /** Starts a sum with a body of principal moments `inertia` about `com`, axes x, y, z. */
  void kdl_start (double mass, const double com[3], const double inertia[3]);

  /** Adds a body with its mass centre `com` and principal moments about it in its own frame, which
   * stands at `root` with the right-handed columns `columns`. */
  void kdl_add (double mass, const double com[3], const double inertia[3], const double root[3],
                double columns[3][3]);

  /** Mass, mass centre, and xx yy zz xy xz yz about that centre. */
  void kdl_result (double *mass, double com[3], double inertia[6]);

#ifdef __cplusplus
}
#endif
