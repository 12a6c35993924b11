/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Mass properties against printed worked examples: OpenStax, University Physics Volume 1,
 * sections 10.4 (module m58329) and 10.5 (module m58330), and against a tube integrated by shells.
 */
#include "physics/mass.h"

#include "base/units.h"
#include "check.h"
#include "physics/piece.h"

static const PhFrame upright = { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } };

static PhMass
at (PhBody body, double x, double y, double z)
{
  return ph_mass_of_body (&body, ph_vec3 (x, y, z), &upright);
}

static PhBody
point (double mass_kg)
{
  return ph_body_cylinder (mass_kg, 0, 0, 0, 0);
}

static PhBody
sphere (double mass_kg, double radius_m)
{
  double i = 2 * mass_kg * radius_m * radius_m / 5; /* OpenStax section 10.5, m58330 */
  return (PhBody){ mass_kg, { 0, 0, 0 }, { i, i, i } };
}

static void
washers_on_a_rod (void)
{
  /* OpenStax m58329: six washers of 20 g at ±0.05, ±0.15, ±0.25 m: 0.0035 kg·m²; the outer
     four: 0.0034. */
  PhMass outer = { 0 }, all;
  for (int side = -1; side <= 1; side += 2)
    outer = ph_mass_add (outer, ph_mass_add (at (point (0.02), side * 0.15, 0, 0),
                                             at (point (0.02), side * 0.25, 0, 0)));
  all = ph_mass_add (outer,
                     ph_mass_add (at (point (0.02), 0.05, 0, 0), at (point (0.02), -0.05, 0, 0)));
  CHECK_REL (all.inertia_kg_m2.zz, 0.0035, 1e-15);
  CHECK_REL (outer.inertia_kg_m2.yy, 0.0034, 1e-15);
  CHECK_NEAR (all.inertia_kg_m2.xx, 0, 0);
}

static void
four_helicopter_blades (void)
{
  /* OpenStax m58329: four rods of 50 kg and 4 m about their ends: 1067 kg·m². */
  PhMass sum = { 0 };
  for (int i = 0; i < 4; i++)
    {
      PhFrame f = ph_frame_of_axis (ph_vec3 (cos (i * PH_PI / 2), sin (i * PH_PI / 2), 0));
      PhBody blade = ph_body_cylinder (50, 0, 4, 0, 0);
      sum = ph_mass_add (sum, ph_mass_of_body (&blade, ph_vec3 (0, 0, 0), &f));
    }
  CHECK_NEAR (sum.inertia_kg_m2.zz, 1067, 0.5);
  CHECK_REL (sum.inertia_kg_m2.zz, 3200.0 / 3, 1e-15);
  CHECK_NEAR (sum.moment_kg_m.x, 0, 1e-13);
}

static void
disc_and_ring (void)
{
  /* OpenStax m58329, problem: disc 2 kg R 0.5 m, ring 1 kg 0.2/0.3 m: 0.315 kg·m², and 621.8 J
     at 10 rev/s. The ring is a hollow cylinder. */
  PhMass sum = ph_mass_add (at (ph_body_cylinder (2, 0, 0.01, 0.5, 0), 0, 0, 0),
                            at (ph_body_cylinder (1, 0, 0.02, 0.3, 0.2), 0, 0, 0));
  CHECK_REL (sum.inertia_kg_m2.xx, 0.315, 1e-15);
  double spin = 20 * PH_PI;
  CHECK_NEAR (sum.inertia_kg_m2.xx * spin * spin / 2, 621.8, 0.05);
}

static void
child_on_a_merry_go_round (void)
{
  /* OpenStax m58330: disc 500 kg R 2 m, child 25 kg at 1 m: 1025 kg·m². */
  PhMass sum =
      ph_mass_add (at (ph_body_cylinder (500, 0, 0.1, 2, 0), 0, 0, 0), at (point (25), 0, 1, 0));
  CHECK_REL (sum.inertia_kg_m2.xx, 1025, 1e-15);
}

static void
rod_and_sphere_about_either_end (void)
{
  /* OpenStax m58330: rod 2 kg 0.5 m, sphere 1 kg R 0.2 m with its centre at L + R: 0.673 kg·m²;
     with its centre at R behind the pivot: 0.223. */
  PhMass rod = at (ph_body_cylinder (2, 0, 0.5, 0, 0), 0, 0, 0);
  PhMass far = ph_mass_add (rod, at (sphere (1, 0.2), 0.7, 0, 0));
  PhMass near = ph_mass_add (rod, at (sphere (1, 0.2), -0.2, 0, 0));
  CHECK_NEAR (far.inertia_kg_m2.yy, 0.673, 0.0005);
  CHECK_REL (far.inertia_kg_m2.yy, 0.672666666666666667, 1e-15);
  CHECK_NEAR (near.inertia_kg_m2.zz, 0.223, 0.0005);
  CHECK_REL (near.inertia_kg_m2.zz, 0.222666666666666667, 1e-15);
}

static void
tube_of_the_reference_page (void)
{
  /* Density 1600 kg/m³, 18/16 mm, 0.762 m: our own arithmetic, five digits. */
  double mass = 1600 * PH_PI / 4 * (0.018 * 0.018 - 0.016 * 0.016) * 0.762;
  PhBody tube = ph_body_cylinder (mass, 0, 0.762, 0.009, 0.008);
  CHECK_NEAR (tube.mass_kg, 0.065114, 5e-7);
  CHECK_NEAR (tube.inertia_kg_m2.x, 4.7208e-6, 5e-11);
  CHECK_NEAR (tube.inertia_kg_m2.y, 3.15303e-3, 5e-9);
}

static void
inertia_of_tube_lies_between_rod_and_shell (void)
{
  PhBody rod = ph_body_cylinder (1, 0, 0.5, 0.01, 0),
         shell = ph_body_cylinder (1, 0, 0.5, 0.01, 0.01);
  PhBody tube = ph_body_cylinder (1, 0, 0.5, 0.01, 0.008);
  CHECK (rod.inertia_kg_m2.x < tube.inertia_kg_m2.x
         && tube.inertia_kg_m2.x < shell.inertia_kg_m2.x);
  CHECK (rod.inertia_kg_m2.y < tube.inertia_kg_m2.y
         && tube.inertia_kg_m2.y < shell.inertia_kg_m2.y);
}

static void
tube_is_a_solid_cylinder_less_its_bore (void)
{
  /* Both of density 1: masses R² L and r² L. */
  PhMass solid = at (ph_body_cylinder (0.09 * 2, 0.1, 2, 0.3, 0), 0.2, -0.1, 0.4);
  PhMass bore = at (ph_body_cylinder (0.04 * 2, 0.1, 2, 0.2, 0), 0.2, -0.1, 0.4);
  PhMass rest = ph_mass_subtract (solid, bore);
  PhMass tube = at (ph_body_cylinder (0.05 * 2, 0.1, 2, 0.3, 0.2), 0.2, -0.1, 0.4);
  CHECK_REL (rest.mass_kg, tube.mass_kg, 1e-15);
  CHECK_REL (rest.moment_kg_m.x, tube.moment_kg_m.x, 1e-15);
  CHECK_REL (rest.inertia_kg_m2.xx, tube.inertia_kg_m2.xx, 1e-14);
  CHECK_REL (rest.inertia_kg_m2.yy, tube.inertia_kg_m2.yy, 1e-14);
  CHECK_REL (rest.inertia_kg_m2.xz, tube.inertia_kg_m2.xz, 1e-14);
}

static void
box_is_the_sum_of_its_eight_parts (void)
{
  PhMass sum = { 0 };
  PhVec3 size = ph_vec3 (0.3, 0.4, 0.7), half = ph_vec3_scale (size, 0.5);
  PhVec3 centre = ph_vec3 (0.2, 0.4, -0.1);
  for (int i = 0; i < 8; i++)
    {
      PhVec3 off = ph_vec3 (i & 1 ? 0.075 : -0.075, i & 2 ? 0.1 : -0.1, i & 4 ? 0.175 : -0.175);
      sum = ph_mass_add (sum, at (ph_body_box (0.5, ph_vec3_add (centre, off), half), 0, 0, 0));
    }
  PhMass whole = at (ph_body_box (4, centre, size), 0, 0, 0);
  CHECK_REL (sum.inertia_kg_m2.xx, whole.inertia_kg_m2.xx, 1e-15);
  CHECK_REL (sum.inertia_kg_m2.yy, whole.inertia_kg_m2.yy, 1e-15);
  CHECK_REL (sum.inertia_kg_m2.zz, whole.inertia_kg_m2.zz, 1e-15);
  CHECK_REL (sum.inertia_kg_m2.xy, whole.inertia_kg_m2.xy, 1e-14);
}

static void
products_carry_the_minus_sign (void)
{
  PhMass m = at (point (2), 3, 5, -7);
  CHECK_NEAR (m.inertia_kg_m2.xy, -2 * 3 * 5, 0);
  CHECK_NEAR (m.inertia_kg_m2.xz, 2 * 3 * 7, 0);
  CHECK_NEAR (m.inertia_kg_m2.yz, 2 * 5 * 7, 0);
}

/* A bar as the file's page defines it, part by part through the general sum. */
static void
bar_is_a_tube_and_two_fittings (void)
{
  PhBody bar = ph_piece_bar_body (0.105, 0.035, 0.025, 0.015, 0.762, 0.018, 0.016);
  PhMass sum =
      ph_mass_add (at (ph_body_cylinder (0.105, 0, 0.762, 0.009, 0.008), 0, 0, 0),
                   ph_mass_add (at (ph_body_cylinder (0.035, 0, 0.015, 0.009, 0), 0, 0, 0),
                                at (ph_body_cylinder (0.025, 0.747, 0.015, 0.009, 0), 0, 0, 0)));
  PhMass got = at (bar, 0, 0, 0);
  CHECK_REL (got.mass_kg, 0.165, 1e-15);
  CHECK_REL (got.moment_kg_m.x, sum.moment_kg_m.x, 1e-15);
  CHECK_REL (got.inertia_kg_m2.xx, sum.inertia_kg_m2.xx, 1e-15);
  CHECK_REL (got.inertia_kg_m2.yy, sum.inertia_kg_m2.yy, 1e-15);
  CHECK_REL (got.inertia_kg_m2.zz, sum.inertia_kg_m2.zz, 1e-15);
}

static void
bar_without_mass_or_length_is_no_trouble (void)
{
  PhBody nothing = ph_piece_bar_body (0, 0, 0, 0, 0, 0.018, 0);
  CHECK_NEAR (nothing.mass_kg, 0, 0);
  CHECK_NEAR (nothing.inertia_kg_m2.y, 0, 0);
  PhBody fittings = ph_piece_bar_body (0, 0.03, 0.03, 0.015, 0.3, 0.018, 0.016);
  CHECK_NEAR (fittings.com_m.x, 0.15, 1e-16);
  PhBody tip_only = ph_piece_bar_body (0, 0, 0.03, 0.015, 0.3, 0.018, 0.016);
  CHECK_NEAR (tip_only.com_m.x, 0.2925, 1e-16);
}

static void
round_body_turns_with_its_axis (void)
{
  /* Against R diag Rᵀ written out, for an axis in the x–z plane. */
  PhBody body = ph_body_cylinder (2, -0.5, 1, 0.3, 0.1);
  double c = 0.8, s = 0.6, axial = body.inertia_kg_m2.x, across = body.inertia_kg_m2.y;
  PhFrame f = ph_frame_of_axis (ph_vec3 (c, 0, s));
  PhSym3 i = ph_mass_of_body (&body, ph_vec3 (0, 0, 0), &f).inertia_kg_m2;
  CHECK_REL (i.xx, c * c * axial + s * s * across, 1e-15);
  CHECK_REL (i.zz, s * s * axial + c * c * across, 1e-15);
  CHECK_REL (i.yy, across, 1e-15);
  CHECK_REL (i.xz, c * s * (axial - across), 1e-15);
  CHECK_NEAR (i.xy, 0, 0);
}

static void
left_handed_frame_gives_the_same_tensor (void)
{
  PhBody box = ph_body_box (1.5, ph_vec3 (0.1, 0, -0.2), ph_vec3 (0.3, 0.5, 0.2));
  PhFrame back = ph_frame_of_axis (ph_vec3_unit (ph_vec3 (-1, 0.3, 0.2))), mirrored = back;
  mirrored.l = ph_vec3_scale (back.l, -1);
  PhMass a = ph_mass_of_body (&box, ph_vec3 (0, 0, 0), &back);
  PhMass b = ph_mass_of_body (&box, ph_vec3 (0, 0, 0), &mirrored);
  CHECK_REL (b.inertia_kg_m2.xy, a.inertia_kg_m2.xy, 1e-14);
  CHECK_REL (b.inertia_kg_m2.yz, a.inertia_kg_m2.yz, 1e-14);
}

static void
properties_undo_the_shift_to_the_grip (void)
{
  PhBody box = ph_body_box (1.5, ph_vec3 (0, 0, 0), ph_vec3 (0.3, 0.5, 0.2));
  PhMass m = at (box, 0.4, -0.2, 0.7);
  PhMassProperties p = ph_mass_properties (&m);
  CHECK_NEAR (p.com_m.x, 0.4, 1e-16);
  CHECK_NEAR (p.com_m.y, -0.2, 1e-16);
  CHECK_REL (p.inertia_com_kg_m2.yy, box.inertia_kg_m2.y, 1e-14);
  CHECK_NEAR (p.inertia_com_kg_m2.xz, 0, 1e-15);
  CHECK_REL (p.principal_kg_m2[0], box.inertia_kg_m2.y, 1e-14);
  CHECK_REL (p.principal_kg_m2[2], box.inertia_kg_m2.z, 1e-14);
  CHECK_NEAR (p.principal_axes[2].z, 1, 1e-15);
  /* About a third point: from there the box stands 0.3, −0.4, 0. */
  PhSym3 i = ph_inertia_about (1.5, p.com_m, p.inertia_com_kg_m2, ph_vec3 (0.1, 0.2, 0.7));
  CHECK_REL (i.zz, box.inertia_kg_m2.z + 1.5 * 0.25, 1e-14);
  CHECK_REL (i.xy, 1.5 * 0.12, 1e-13);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (washers_on_a_rod);
  CASE (four_helicopter_blades);
  CASE (disc_and_ring);
  CASE (child_on_a_merry_go_round);
  CASE (rod_and_sphere_about_either_end);
  CASE (tube_of_the_reference_page);
  CASE (inertia_of_tube_lies_between_rod_and_shell);
  CASE (tube_is_a_solid_cylinder_less_its_bore);
  CASE (box_is_the_sum_of_its_eight_parts);
  CASE (products_carry_the_minus_sign);
  CASE (bar_is_a_tube_and_two_fittings);
  CASE (bar_without_mass_or_length_is_no_trouble);
  CASE (round_body_turns_with_its_axis);
  CASE (left_handed_frame_gives_the_same_tensor);
  CASE (properties_undo_the_shift_to_the_grip);
  return check_end ();
}
