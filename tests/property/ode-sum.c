/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Solids through dMassSet…Total, dMassRotate, dMassTranslate and dMassAdd.
 */
#include "ode-sum.h"

#include <ode/ode.h>

/* Columns d, l', t', turned right-handed: a round body or a box does not see which way l' points.
 */
static void
rotation_of (const RigPlace *place, dMatrix3 r)
{
  const double (*a)[3] = place->axes;
  double det = 0;
  for (int i = 0; i < 3; i++)
    det +=
        a[0][i] * (a[1][(i + 1) % 3] * a[2][(i + 2) % 3] - a[1][(i + 2) % 3] * a[2][(i + 1) % 3]);
  double turn = det < 0 ? -1 : 1;
  for (int i = 0; i < 3; i++)
    {
      r[4 * i] = a[0][i];
      r[4 * i + 1] = turn * a[1][i];
      r[4 * i + 2] = a[2][i];
      r[4 * i + 3] = 0;
    }
}

static void
make (dMass *m, const RigSolid *solid, double mass, double radius)
{
  if (solid->round)
    dMassSetCylinderTotal (m, mass, 1, radius, solid->length);
  else
    dMassSetBoxTotal (m, mass, solid->size[0], solid->size[1], solid->size[2]);
}

/* Takes `less`, a body about the same centre, off `m`. */
static void
take_off (dMass *m, const dMass *less)
{
  m->mass -= less->mass;
  for (int i = 0; i < 12; i++)
    m->I[i] -= less->I[i];
}

static void
add_solid (dMass *sum, const RigSolid *solid, const RigPlace *place, bool bored)
{
  dMass m, bore;
  double inner = bored ? solid->inner_radius : 0, outer = solid->outer_radius;
  double share = solid->round ? outer * outer / (outer * outer - inner * inner) : 1;
  make (&m, solid, solid->mass * share, outer);
  if (inner > 0)
    {
      make (&bore, solid, solid->mass * (share - 1), inner);
      take_off (&m, &bore);
    }
  dMatrix3 r;
  rotation_of (place, r);
  dMassRotate (&m, r);
  double at[3];
  for (int i = 0; i < 3; i++)
    at[i] = place->root[i] + place->axes[0][i] * solid->com[0] + place->axes[1][i] * solid->com[1]
            + place->axes[2][i] * solid->com[2];
  dMassTranslate (&m, at[0], at[1], at[2]);
  dMassAdd (sum, &m);
}

static void
start (const PhBowBody *bow, dMass *sum)
{
  double m = bow->mass_kg;
  PhVec3 k = bow->gyration_m;
  dMassSetZero (sum);
  sum->mass = m;
  sum->I[0] = m * k.x * k.x;
  sum->I[5] = m * k.y * k.y;
  sum->I[10] = m * k.z * k.z;
  dMassTranslate (sum, bow->com_m.x, bow->com_m.y, bow->com_m.z);
}

void
ode_sum (const RandomRig *rig, const RigPlace *places, RigSum *out)
{
  dMass sum;
  start (&rig->bow, &sum);
  for (int i = 0; i < rig->n; i++)
    for (int k = 0; k < rig->parts[i].n_solids; k++)
      add_solid (&sum, &rig->parts[i].solids[k], &places[i], true);
  out->mass = sum.mass;
  for (int i = 0; i < 3; i++)
    out->com[i] = sum.c[i];
  dMassTranslate (&sum, -sum.c[0], -sum.c[1], -sum.c[2]);
  const int at[6] = { 0, 5, 10, 1, 2, 6 };
  for (int i = 0; i < 6; i++)
    out->inertia[i] = sum.I[at[i]];
}

double
ode_sum_plain (const RandomRig *rig, const RigPlace *places)
{
  dMass sum;
  start (&rig->bow, &sum);
  for (int i = 0; i < rig->n; i++)
    for (int k = 0; k < rig->parts[i].n_solids; k++)
      add_solid (&sum, &rig->parts[i].solids[k], &places[i], false);
  return sum.mass + sum.I[0];
}
