/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Placing and summing: places worked out by hand, and changes that must equal a recompute in
 * every bit.
 */
#include "physics/assembly.h"

#include "base/units.h"
#include "check.h"

static const PhBowBody bow = { 1.95, { -0.018, -0.003, 0.012 }, { 0.29, 0.295, 0.06 } };

static PhPiece
bar (int host, PhSeat seat, double length_m)
{
  return (PhPiece){ .kind = PH_PIECE_BAR,
                    .host = host,
                    .seat = seat,
                    .seat_at_m = { 0.06, 0, -0.07 },
                    .seat_axis = { 1, 0, 0 },
                    .length_m = length_m,
                    .diameter_m = 0.018,
                    .inner_m = 0.016,
                    .tube_kg = 0.1,
                    .body = ph_piece_bar_body (0.1, 0.02, 0.02, 0.015, length_m, 0.018, 0.016) };
}

static PhPiece
stack (int host, PhSeat seat, double mass_kg)
{
  return (PhPiece){ .kind = PH_PIECE_WEIGHTS,
                    .host = host,
                    .seat = seat,
                    .length_m = 0.03,
                    .diameter_m = 0.025,
                    .count = 4,
                    .body = ph_body_cylinder (mass_kg, 0, 0.03, 0.0125, 0) };
}

static PhPiece
block (int host)
{
  return (PhPiece){ .kind = PH_PIECE_BRACKET,
                    .host = host,
                    .seat = PH_SEAT_SOCKET,
                    .seat_at_m = { -0.028, 0, -0.15 },
                    .seat_axis = { -1, 0, 0 },
                    .size_m = { 0.03, 0.04, 0.02 },
                    .body = ph_body_box (0.085, ph_vec3 (0.012, 0.004, 0),
                                         ph_vec3 (0.03, 0.04, 0.02)) };
}

/* Bar, stack on it, weight around it; block, bar and stack on that; sight. */
static int
make_rig (PhPiece pieces[7])
{
  pieces[0] = bar (PH_HOST_BOW, PH_SEAT_SOCKET, 0.762);
  pieces[0].lift_rad = ph_rad_from_deg (-8);
  pieces[1] = stack (0, PH_SEAT_END, 0.2);
  pieces[2] = stack (0, PH_SEAT_ALONG, 0.05);
  pieces[2].along_m = 0.5;
  pieces[3] = block (PH_HOST_BOW);
  pieces[4] = bar (3, PH_SEAT_SOCKET, 0.305);
  pieces[4].seat_at_m = ph_vec3 (0.02, 0.014, 0.001);
  pieces[4].swing_rad = ph_rad_from_deg (20);
  pieces[4].lift_rad = ph_rad_from_deg (-12);
  pieces[5] = stack (4, PH_SEAT_END, 0.14);
  pieces[6] = (PhPiece){ .kind = PH_PIECE_ACCESSORY,
                         .host = PH_HOST_BOW,
                         .seat = PH_SEAT_FREE,
                         .body = ph_body_box (0.31, ph_vec3 (0.15, -0.038, 0.095),
                                              ph_vec3 (0.26, 0.03, 0.06)) };
  return 7;
}

static void
check_near (PhVec3 got, double x, double y, double z)
{
  CHECK_NEAR (got.x, x, 2e-16);
  CHECK_NEAR (got.y, y, 2e-16);
  CHECK_NEAR (got.z, z, 2e-16);
}

static void
parts_stand_where_their_sockets_and_angles_put_them (void)
{
  PhPiece pieces[7];
  PhAssembly *rig = ph_assembly_new (&bow, pieces, make_rig (pieces));
  double c8 = cos (PH_PI * 8 / 180), s8 = sin (PH_PI * 8 / 180);
  const PhPlace *front = ph_assembly_place (rig, 0), *tip = ph_assembly_place (rig, 1);
  check_near (front->root_m, 0.06, 0, -0.07);
  check_near (front->end_m, 0.06 + 0.762 * c8, 0, -0.07 - 0.762 * s8);
  check_near (tip->root_m, front->end_m.x, 0, front->end_m.z);
  check_near (tip->end_m, 0.06 + 0.792 * c8, 0, -0.07 - 0.792 * s8);
  check_near (ph_assembly_place (rig, 2)->root_m, 0.06 + 0.5 * c8, 0, -0.07 - 0.5 * s8);
  /* The block looks back: its along is −x, its across still +y, its up still +z. */
  const PhPlace *back = ph_assembly_place (rig, 4);
  check_near (back->root_m, -0.028 - 0.02, 0.014, -0.15 + 0.001);
  double c20 = cos (PH_PI / 9), s20 = sin (PH_PI / 9), c12 = cos (PH_PI / 15),
         s12 = sin (PH_PI / 15);
  check_near (back->end_m, -0.048 - 0.305 * c12 * c20, 0.014 + 0.305 * c12 * s20,
              -0.149 - 0.305 * s12);
  check_near (ph_assembly_place (rig, 6)->root_m, 0.15, -0.038, 0.095);
  ph_assembly_free (rig);
}

static void
stack_on_a_turned_bar_points_its_way_and_lifts_on (void)
{
  PhPiece pieces[2] = { bar (PH_HOST_BOW, PH_SEAT_SOCKET, 0.5), bar (0, PH_SEAT_END, 0.2) };
  pieces[0].lift_rad = 0.3;
  pieces[1].lift_rad = 0.2;
  PhAssembly *rig = ph_assembly_new (&bow, pieces, 2);
  PhVec3 d = ph_assembly_place (rig, 1)->frame.a;
  check_near (d, cos (0.5), 0, sin (0.5));
  ph_assembly_free (rig);
}

static void
total_is_the_sum_of_the_records (void)
{
  PhPiece pieces[7];
  int n = make_rig (pieces);
  PhAssembly *rig = ph_assembly_new (&bow, pieces, n);
  PhMass sum = *ph_assembly_mass (rig, PH_HOST_BOW);
  CHECK_REL (sum.inertia_kg_m2.yy, 1.95 * (0.295 * 0.295 + 0.018 * 0.018 + 0.012 * 0.012), 1e-15);
  for (int i = 0; i < n; i++)
    sum = ph_mass_add (sum, *ph_assembly_mass (rig, i));
  const PhMass *total = ph_assembly_total (rig);
  CHECK_REL (total->mass_kg, 1.95 + 0.14 + 0.2 + 0.05 + 0.085 + 0.14 + 0.14 + 0.31, 1e-15);
  CHECK_REL (total->mass_kg, sum.mass_kg, 1e-15);
  CHECK_REL (total->moment_kg_m.x, sum.moment_kg_m.x, 1e-14);
  CHECK_REL (total->moment_kg_m.y, sum.moment_kg_m.y, 1e-14);
  CHECK_REL (total->inertia_kg_m2.xx, sum.inertia_kg_m2.xx, 1e-14);
  CHECK_REL (total->inertia_kg_m2.zz, sum.inertia_kg_m2.zz, 1e-14);
  CHECK_REL (total->inertia_kg_m2.xz, sum.inertia_kg_m2.xz, 1e-14);
  PhMassProperties a = ph_assembly_properties (rig), b = ph_mass_properties (total);
  CHECK_REL (a.inertia_com_kg_m2.yy, b.inertia_com_kg_m2.yy, 1e-14);
  CHECK_REL (a.principal_kg_m2[0], b.principal_kg_m2[0], 1e-13);
  ph_assembly_free (rig);
}

static void
compact_rig_far_from_the_grip_keeps_its_digits (void)
{
  /* Two equal 1 mm cubes 2 mm apart, 5 m from P: m s²/6 each, and m·(1 mm)² each for the shift. */
  PhBowBody light = { 0, { 0, 0, 0 }, { 0, 0, 0 } };
  PhPiece pieces[2] = { 0 };
  for (int i = 0; i < 2; i++)
    {
      PhVec3 com = ph_vec3 (3, 2.999 + 0.002 * i, -3);
      pieces[i] = (PhPiece){ .kind = PH_PIECE_ACCESSORY,
                             .host = PH_HOST_BOW,
                             .seat = PH_SEAT_FREE,
                             .body = ph_body_box (1, com, ph_vec3 (1e-3, 1e-3, 1e-3)) };
    }
  PhAssembly *rig = ph_assembly_new (&light, pieces, 2);
  PhMassProperties m = ph_assembly_properties (rig);
  CHECK_REL (m.inertia_com_kg_m2.xx, 2 * (1e-6 / 6 + 1e-6), 1e-12);
  CHECK_REL (m.inertia_com_kg_m2.yy, 2 * (1e-6 / 6), 1e-12);
  ph_assembly_free (rig);
}

static bool
same_bits (const PhAssembly *a, const PhAssembly *b)
{
  bool same = memcmp (ph_assembly_total (a), ph_assembly_total (b), sizeof (PhMass)) == 0;
  PhMassProperties p = ph_assembly_properties (a), q = ph_assembly_properties (b);
  same &= memcmp (&p, &q, sizeof p) == 0;
  for (int i = 0; i < ph_assembly_count (a); i++)
    same &= memcmp (ph_assembly_place (a, i), ph_assembly_place (b, i), sizeof (PhPlace)) == 0
            && memcmp (ph_assembly_mass (a, i), ph_assembly_mass (b, i), sizeof (PhMass)) == 0;
  return same;
}

static void
change_of_a_part_equals_a_new_rig_in_every_bit (void)
{
  for (int n = 1; n <= 7; n++)
    for (int i = 0; i < n; i++)
      {
        PhPiece pieces[7];
        make_rig (pieces);
        PhAssembly *changed = ph_assembly_new (&bow, pieces, n);
        pieces[i].swing_rad += 0.1;
        pieces[i].body.mass_kg *= 1.7;
        ph_assembly_set_piece (changed, i, &pieces[i]);
        PhAssembly *fresh = ph_assembly_new (&bow, pieces, n);
        CHECK (same_bits (changed, fresh), "%d pieces, piece %d", n, i);
        ph_assembly_recompute (changed);
        CHECK (same_bits (changed, fresh), "%d pieces, piece %d, recomputed", n, i);
        ph_assembly_free (fresh);
        ph_assembly_free (changed);
      }
}

static void
subtree_holds_what_hangs_however_far_out (void)
{
  PhPiece pieces[7];
  PhAssembly *rig = ph_assembly_new (&bow, pieces, make_rig (pieces));
  static const double masses[] = { 0.39, 0.2, 0.05, 0.365, 0.28, 0.14, 0.31 };
  for (int i = 0; i < 7; i++)
    CHECK_REL (ph_assembly_subtree_mass (rig, i).mass_kg, masses[i], 1e-15);
  CHECK (ph_assembly_first_guest (rig, 0) == 1 && ph_assembly_next_guest (rig, 1) == 2
         && ph_assembly_next_guest (rig, 2) == -1 && ph_assembly_first_guest (rig, 6) == -1);
  ph_assembly_free (rig);
}

static void
bow_alone_and_parts_without_mass_are_no_trouble (void)
{
  PhAssembly *alone = ph_assembly_new (&bow, NULL, 0);
  CHECK_REL (ph_assembly_properties (alone).com_m.x, -0.018, 1e-15);
  CHECK (ph_assembly_count (alone) == 0);
  ph_assembly_recompute (alone);
  CHECK_REL (ph_assembly_total (alone)->mass_kg, 1.95, 0);
  PhPiece empty[2] = { bar (PH_HOST_BOW, PH_SEAT_SOCKET, 0), stack (0, PH_SEAT_END, 0) };
  empty[0].body = ph_piece_bar_body (0, 0, 0, 0, 0, 0.018, 0.016);
  PhAssembly *with = ph_assembly_new (&bow, empty, 2);
  PhMassProperties p = ph_assembly_properties (alone), q = ph_assembly_properties (with);
  CHECK (memcmp (&p, &q, sizeof p) == 0, "what has no mass changed something");
  ph_assembly_free (with);
  ph_assembly_free (alone);
}

static void
mirrored_parts_cancel_exactly (void)
{
  PhBowBody even = { 1.95, { -0.018, 0, 0.012 }, { 0.29, 0.295, 0.06 } };
  PhPiece pieces[4] = { bar (PH_HOST_BOW, PH_SEAT_SOCKET, 0.3),
                        bar (PH_HOST_BOW, PH_SEAT_SOCKET, 0.3), stack (0, PH_SEAT_END, 0.17),
                        stack (1, PH_SEAT_END, 0.17) };
  pieces[0].seat_axis = pieces[1].seat_axis = ph_vec3 (-1, 0, 0);
  pieces[0].swing_rad = 0.4;
  pieces[1].swing_rad = -0.4;
  PhAssembly *rig = ph_assembly_new (&even, pieces, 4);
  CHECK_NEAR (ph_assembly_properties (rig).com_m.y, 0, 0);
  ph_assembly_free (rig);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (parts_stand_where_their_sockets_and_angles_put_them);
  CASE (stack_on_a_turned_bar_points_its_way_and_lifts_on);
  CASE (total_is_the_sum_of_the_records);
  CASE (compact_rig_far_from_the_grip_keeps_its_digits);
  CASE (change_of_a_part_equals_a_new_rig_in_every_bit);
  CASE (subtree_holds_what_hangs_however_far_out);
  CASE (bow_alone_and_parts_without_mass_are_no_trouble);
  CASE (mirrored_parts_cancel_exactly);
  return check_end ();
}
