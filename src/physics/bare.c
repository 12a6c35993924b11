/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The parallel-axis theorem, backward.
 */
#include "physics/bare.h"

#include <assert.h>

PhVec3
ph_bare_com (PhVec3 whole_com_m, double bow_kg, const PhMass *parts)
{
  assert (bow_kg > 0);
  PhVec3 moment = ph_vec3_scale (whole_com_m, bow_kg + parts->mass_kg);
  return ph_vec3_scale (ph_vec3_sub (moment, parts->moment_kg_m), 1 / bow_kg);
}

/* Square of the part of v across an axis. */
static double
across (PhVec3 v, int axis)
{
  double squares[3] = { v.x * v.x, v.y * v.y, v.z * v.z };
  return squares[(axis + 1) % 3] + squares[(axis + 2) % 3];
}

double
ph_bare_inertia (double whole_kg_m2, int axis, double bow_kg, PhVec3 bow_com_m, const PhMass *parts)
{
  if (!(parts->mass_kg > 0))
    return whole_kg_m2;
  const PhSym3 *about_grip = &parts->inertia_kg_m2;
  double own[3] = { about_grip->xx, about_grip->yy, about_grip->zz };
  PhVec3 com = ph_vec3_scale (parts->moment_kg_m, 1 / parts->mass_kg);
  double parts_kg_m2 = own[axis] - parts->mass_kg * across (com, axis);
  double reduced = bow_kg * parts->mass_kg / (bow_kg + parts->mass_kg);
  return whole_kg_m2 - parts_kg_m2 - reduced * across (ph_vec3_sub (com, bow_com_m), axis);
}
