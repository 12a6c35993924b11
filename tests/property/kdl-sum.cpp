/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * RigidBodyInertia: built about its own centre, carried by a Frame, added.
 */
#include "kdl-sum.h"

#include <kdl/frames.hpp>
#include <kdl/rigidbodyinertia.hpp>

static KDL::RigidBodyInertia sum;

void
kdl_start (double mass, const double com[3], const double inertia[3])
{
  sum = KDL::RigidBodyInertia (mass, KDL::Vector (com[0], com[1], com[2]),
                               KDL::RotationalInertia (inertia[0], inertia[1], inertia[2]));
}

void
kdl_add (double mass, const double com[3], const double inertia[3], const double root[3],
         double columns[3][3])
{
  KDL::RigidBodyInertia body (mass, KDL::Vector (com[0], com[1], com[2]),
                              KDL::RotationalInertia (inertia[0], inertia[1], inertia[2]));
  KDL::Rotation turn (KDL::Vector (columns[0][0], columns[0][1], columns[0][2]),
                      KDL::Vector (columns[1][0], columns[1][1], columns[1][2]),
                      KDL::Vector (columns[2][0], columns[2][1], columns[2][2]));
  KDL::Frame frame (turn, KDL::Vector (root[0], root[1], root[2]));
  sum = sum + frame * body;
}

void
kdl_result (double *mass, double com[3], double inertia[6])
{
  *mass = sum.getMass ();
  KDL::Vector c = sum.getCOG ();
  for (int i = 0; i < 3; i++)
    com[i] = c (i);
  KDL::RotationalInertia about = sum.RefPoint (c).getRotationalInertia ();
  const int at[6] = { 0, 4, 8, 1, 2, 5 };
  for (int i = 0; i < 6; i++)
    inertia[i] = about.data[at[i]];
}
