/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Whole random rigs against two libraries that know nothing of bows: the Open Dynamics Engine's
 * dMass and the Kinematics and Dynamics Library's RigidBodyInertia.
 */
#include "check.h"
#include "kdl-sum.h"
#include "ode-sum.h"

static RandomRig rig;
static RigPlace places[RANDOM_RIG_MOST];

static void
kdl_sum (RigSum *sum)
{
  PhVec3 k = rig.bow.gyration_m, c = rig.bow.com_m;
  double m = rig.bow.mass_kg;
  kdl_start (m, (double[3]){ c.x, c.y, c.z },
             (double[3]){ m * k.x * k.x, m * k.y * k.y, m * k.z * k.z });
  for (int i = 0; i < rig.n; i++)
    for (int s = 0; s < rig.parts[i].n_solids; s++)
      {
        const RigSolid *solid = &rig.parts[i].solids[s];
        double m12 = solid->mass / 12, ro = solid->outer_radius, ri = solid->inner_radius;
        double radii = ro * ro + ri * ri, a = solid->size[0] * solid->size[0];
        double b = solid->size[1] * solid->size[1], d = solid->size[2] * solid->size[2];
        double across = m12 * (3 * radii + solid->length * solid->length);
        double round[3] = { solid->mass * radii / 2, across, across };
        double box[3] = { m12 * (b + d), m12 * (a + d), m12 * (a + b) };
        kdl_add (solid->mass, solid->com, solid->round ? round : box, places[i].root,
                 places[i].axes);
      }
  kdl_result (&sum->mass, sum->com, sum->inertia);
}

static void
check_against (const RigSum *want)
{
  PhAssembly *assembly = ph_assembly_new (&rig.bow, rig.pieces, rig.n);
  PhMassProperties got = ph_assembly_properties (assembly);
  const double com[3] = { got.com_m.x, got.com_m.y, got.com_m.z };
  PhSym3 s = got.inertia_com_kg_m2;
  const double inertia[6] = { s.xx, s.yy, s.zz, s.xy, s.xz, s.yz };
  CHECK_REL (got.mass_kg, want->mass, 1e-13);
  for (int i = 0; i < 3; i++)
    CHECK_NEAR (com[i], want->com[i], 1e-13);
  /* A chain of sixteen parts adds its rounding; both libraries sum about P and shift back. */
  double scale = want->inertia[0] + want->inertia[1] + want->inertia[2];
  for (int i = 0; i < 6; i++)
    CHECK_NEAR (inertia[i], want->inertia[i], 1e-13 * scale);
  for (int i = 0; i < rig.n; i++)
    {
      const PhPlace *place = ph_assembly_place (assembly, i);
      if (rig.pieces[i].seat == PH_SEAT_FREE)
        continue;
      CHECK_NEAR (place->root_m.x, places[i].root[0], 1e-13);
      CHECK_NEAR (place->root_m.y, places[i].root[1], 1e-13);
      CHECK_NEAR (place->root_m.z, places[i].root[2], 1e-13);
      CHECK_NEAR (place->frame.t.x, places[i].axes[2][0], 1e-13);
      CHECK_NEAR (place->frame.l.z, places[i].axes[1][2], 1e-13);
    }
  ph_assembly_free (assembly);
}

static void
for_random_rigs (void (*sum_by) (RigSum *sum))
{
  unsigned long long state = 2024;
  for (int round = 0; round < 400; round++)
    {
      rig_make (&rig, &state, round < 380 ? round % 40 : RANDOM_RIG_MOST);
      for (int i = 0; i < rig.n; i++)
        rig_place (&rig, places, i);
      RigSum want;
      sum_by (&want);
      check_against (&want);
    }
}

static void
by_ode (RigSum *sum)
{
  ode_sum (&rig, places, sum);
}

static void
random_rigs_agree_with_the_open_dynamics_engine (void)
{
  for_random_rigs (by_ode);
}

static void
random_rigs_agree_with_the_kinematics_and_dynamics_library (void)
{
  for_random_rigs (kdl_sum);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (random_rigs_agree_with_the_open_dynamics_engine);
  CASE (random_rigs_agree_with_the_kinematics_and_dynamics_library);
  return check_end ();
}
