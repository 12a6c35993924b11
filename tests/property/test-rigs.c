/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What must hold for every rig: mirrored, reordered, heavier, edited.
 */
#include "base/units.h"
#include "check.h"
#include "physics/beam.h"
#include "physics/cant.h"
#include "physics/clearance.h"
#include "physics/pitch.h"
#include "random-rig.h"

static RandomRig rig, other;
static unsigned long long state = 77;

static const PhDraw draw = { 0.66, 0.042, 62, 1.72, 68, 0.178, 0.94 };

static PhMassProperties
properties_of (const RandomRig *of)
{
  PhAssembly *assembly = ph_assembly_new (&of->bow, of->pieces, of->n);
  PhMassProperties p = ph_assembly_properties (assembly);
  ph_assembly_free (assembly);
  return p;
}

static double
scale_of (const PhMassProperties *p)
{
  PhSym3 i = p->inertia_com_kg_m2;
  return i.xx + i.yy + i.zz;
}

/* Whether the mirrored axis gets a mirrored frame: off ±y. */
static bool
lies_sideways (const PhAssembly *assembly, const PhPiece *piece)
{
  PhFrame bow = { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } };
  const PhFrame *host =
      piece->host == PH_HOST_BOW ? &bow : &ph_assembly_place (assembly, piece->host)->frame;
  PhVec3 axis = piece->seat == PH_SEAT_SOCKET ? ph_frame_apply (host, piece->seat_axis) : host->a;
  return fabs (axis.y) > 0.9999;
}

/* The other hand, as the frame's page says: every y and every swing turned round but for the
   swing on an axis along ±y, and for a bracket's own y where its axis lies there. */
static void
mirror_rig (void)
{
  PhAssembly *assembly = ph_assembly_new (&rig.bow, rig.pieces, rig.n);
  other = rig;
  other.bow.com_m.y = -other.bow.com_m.y;
  for (int i = 0; i < rig.n; i++)
    {
      PhPiece *p = &other.pieces[i];
      if (!lies_sideways (assembly, p))
        p->swing_rad = -p->swing_rad;
      bool keeps = fabs (ph_assembly_place (assembly, i)->frame.a.y) > 0.9999;
      if (p->kind == PH_PIECE_ACCESSORY || !keeps)
        p->body.com_m.y = -p->body.com_m.y;
      if (p->seat != PH_SEAT_SOCKET)
        continue;
      if (p->host == PH_HOST_BOW
          || fabs (ph_assembly_place (assembly, p->host)->frame.a.y) <= 0.9999)
        {
          p->seat_at_m.y = -p->seat_at_m.y;
          p->seat_axis.y = -p->seat_axis.y;
        }
    }
  ph_assembly_free (assembly);
}

static void
mirrored_rig_has_mirrored_mass (void)
{
  for (int round = 0; round < 300; round++)
    {
      rig_make (&rig, &state, round % 30);
      mirror_rig ();
      PhMassProperties a = properties_of (&rig), b = properties_of (&other);
      double within = 1e-13 * scale_of (&a);
      CHECK_NEAR (b.com_m.x, a.com_m.x, 1e-13);
      CHECK_NEAR (b.com_m.y, -a.com_m.y, 1e-13);
      CHECK_NEAR (b.com_m.z, a.com_m.z, 1e-13);
      CHECK_NEAR (b.inertia_com_kg_m2.xz, a.inertia_com_kg_m2.xz, within);
      CHECK_NEAR (b.inertia_com_kg_m2.xy, -a.inertia_com_kg_m2.xy, within);
      CHECK_NEAR (b.principal_kg_m2[1], a.principal_kg_m2[1], within);
    }
}

static void
swapped_siblings_change_nothing_but_rounding (void)
{
  for (int round = 0; round < 200; round++)
    {
      rig_make (&rig, &state, 20);
      other = rig;
      /* Everything on the bow first, then the rest: hosts still before guests. */
      int index[RANDOM_RIG_MOST], n = 0;
      for (int pass = 0; pass < 2; pass++)
        for (int i = 0; i < rig.n; i++)
          if ((rig.pieces[i].host == PH_HOST_BOW) == (pass == 0))
            {
              index[i] = n;
              other.pieces[n++] = rig.pieces[i];
            }
      for (int i = 0; i < n; i++)
        if (other.pieces[i].host != PH_HOST_BOW)
          other.pieces[i].host = index[other.pieces[i].host];
      PhMassProperties a = properties_of (&rig), b = properties_of (&other);
      CHECK_REL (b.mass_kg, a.mass_kg, 1e-14);
      CHECK_NEAR (b.com_m.y, a.com_m.y, 1e-14);
      CHECK_NEAR (b.inertia_com_kg_m2.yz, a.inertia_com_kg_m2.yz, 1e-14 * scale_of (&a));
    }
}

static void
random_edits_equal_a_new_rig_in_every_bit (void)
{
  for (int round = 0; round < 60; round++)
    {
      rig_make (&rig, &state, 1 + (round * 7) % 100);
      PhAssembly *edited = ph_assembly_new (&rig.bow, rig.pieces, rig.n);
      for (int edit = 0; edit < 20; edit++)
        {
          int i = (int)rig_random (&state, 0, rig.n);
          PhPiece *p = &rig.pieces[i];
          p->swing_rad = rig_random_angle (&state);
          p->lift_rad = rig_random_angle (&state);
          p->length_m *= rig_random (&state, 0.5, 1.5);
          ph_assembly_set_piece (edited, i, p);
        }
      PhAssembly *fresh = ph_assembly_new (&rig.bow, rig.pieces, rig.n);
      PhMassProperties a = ph_assembly_properties (edited), b = ph_assembly_properties (fresh);
      CHECK (memcmp (&a, &b, sizeof a) == 0);
      CHECK (memcmp (ph_assembly_total (edited), ph_assembly_total (fresh), sizeof (PhMass)) == 0);
      for (int i = 0; i < rig.n; i++)
        CHECK (
            memcmp (ph_assembly_place (edited, i), ph_assembly_place (fresh, i), sizeof (PhPlace))
            == 0);
      ph_assembly_free (fresh);
      ph_assembly_free (edited);
    }
}

static void
shares_add_up_to_the_moments (void)
{
  for (int round = 0; round < 100; round++)
    {
      rig_make (&rig, &state, 40);
      PhAssembly *assembly = ph_assembly_new (&rig.bow, rig.pieces, rig.n);
      PhMassProperties p = ph_assembly_properties (assembly);
      double side = 0, front = 0;
      for (int i = PH_HOST_BOW; i < rig.n; i++)
        {
          side += ph_assembly_mass (assembly, i)->moment_kg_m.y * PH_GRAVITY;
          front += ph_assembly_mass (assembly, i)->moment_kg_m.x * PH_GRAVITY;
        }
      PhRoll roll = ph_roll_of (p.mass_kg, p.com_m, &draw);
      CHECK_NEAR (roll.side_nm, side * roll.cos_beta, 1e-12);
      CHECK_NEAR (ph_pitch_of (&p, &draw).moment_nm, front, 1e-12);
      ph_assembly_free (assembly);
    }
}

static void
inertia_obeys_the_triangle_and_grows_away_from_the_centre (void)
{
  for (int round = 0; round < 200; round++)
    {
      rig_make (&rig, &state, round % 50);
      PhMassProperties p = properties_of (&rig);
      const double *i = p.principal_kg_m2;
      CHECK (i[0] > 0 && i[0] + i[1] >= i[2] * (1 - 1e-12));
      CHECK (p.inertia_grip_kg_m2.xx >= p.inertia_com_kg_m2.xx
             && p.inertia_grip_kg_m2.yy >= p.inertia_com_kg_m2.yy
             && p.inertia_grip_kg_m2.zz >= p.inertia_com_kg_m2.zz);
      CHECK_REL (i[0] + i[1] + i[2], scale_of (&p), 1e-14);
    }
}

static void
twice_the_mass_is_twice_the_inertia_at_the_same_centre (void)
{
  for (int round = 0; round < 50; round++)
    {
      rig_make (&rig, &state, 25);
      other = rig;
      other.bow.mass_kg *= 2;
      for (int i = 0; i < other.n; i++)
        {
          other.pieces[i].body.mass_kg *= 2;
          other.pieces[i].body.inertia_kg_m2 =
              ph_vec3_scale (other.pieces[i].body.inertia_kg_m2, 2);
        }
      PhMassProperties a = properties_of (&rig), b = properties_of (&other);
      /* Powers of two: not even the rounding differs. */
      CHECK (memcmp (&a.com_m, &b.com_m, sizeof a.com_m) == 0);
      CHECK_NEAR (b.inertia_com_kg_m2.xy, 2 * a.inertia_com_kg_m2.xy, 0);
      CHECK_NEAR (b.principal_kg_m2[0], 2 * a.principal_kg_m2[0], 0);
    }
}

static void
clearance_is_never_more_than_any_sampled_distance (void)
{
  PhVec3 nock = ph_draw_nock (&draw);
  for (int round = 0; round < 40; round++)
    {
      rig_make (&rig, &state, 15);
      PhAssembly *assembly = ph_assembly_new (&rig.bow, rig.pieces, rig.n);
      for (int i = 0; i < rig.n; i++)
        {
          double clearance = ph_clearance_of (assembly, i, &draw), least = INFINITY;
          if (isnan (clearance))
            continue;
          const PhPlace *place = ph_assembly_place (assembly, i);
          for (int u = 0; u <= 40; u++)
            for (int v = 0; v <= 40; v++)
              for (int s = 0; s <= 20; s++)
                {
                  double back = u / 40.0, up = (v / 40.0 - 0.5) * draw.axle_to_axle_m;
                  PhVec3 rest = ph_vec3 (-draw.brace_height_m, 0, up);
                  PhVec3 on_string = ph_vec3_add_scaled (rest, ph_vec3_sub (nock, rest), back);
                  PhVec3 on_part = ph_vec3_add_scaled (
                      place->root_m, ph_vec3_sub (place->end_m, place->root_m), s / 20.0);
                  least = fmin (least, ph_vec3_length (ph_vec3_sub (on_string, on_part)));
                }
          double radius = rig.pieces[i].diameter_m / 2;
          CHECK (clearance <= least - radius + 1e-12);
          /* A sample is at most half a step of the string and of the part away. */
          CHECK (clearance >= least - radius - 0.5 * 0.05 - 0.5 * rig.pieces[i].length_m / 20);
        }
      ph_assembly_free (assembly);
    }
}

static void
every_bar_that_bends_has_finite_numbers (void)
{
  for (int round = 0; round < 60; round++)
    {
      rig_make (&rig, &state, 40);
      for (int i = 0; i < rig.n; i++)
        rig.pieces[i].modulus_pa = pow (10, rig_random (&state, 3, 12));
      PhAssembly *assembly = ph_assembly_new (&rig.bow, rig.pieces, rig.n);
      for (int i = 0; i < rig.n; i++)
        if (ph_beam_bends (assembly, i))
          {
            PhBeam beam = ph_beam_of (assembly, i);
            CHECK (beam.droop_m >= 0 && isfinite (beam.droop_m) && beam.slope_rad >= 0
                   && beam.clamped_hz > 0 && isfinite (beam.clamped_hz));
          }
      ph_assembly_free (assembly);
    }
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (mirrored_rig_has_mirrored_mass);
  CASE (swapped_siblings_change_nothing_but_rounding);
  CASE (random_edits_equal_a_new_rig_in_every_bit);
  CASE (shares_add_up_to_the_moments);
  CASE (inertia_obeys_the_triangle_and_grows_away_from_the_centre);
  CASE (twice_the_mass_is_twice_the_inertia_at_the_same_centre);
  CASE (clearance_is_never_more_than_any_sampled_distance);
  CASE (every_bar_that_bends_has_finite_numbers);
  return check_end ();
}
