/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Loads in the plane of the bow, each by its lever.
 */
#include "physics/pitch.h"

#include "base/units.h"
#include "check.h"

static PhMassProperties
rig (double mass_kg, double x_m, double inertia)
{
  return (PhMassProperties){ .mass_kg = mass_kg,
                             .com_m = { x_m, 0, 0 },
                             .inertia_grip_kg_m2 = { .yy = inertia } };
}

static const PhDraw draw = {
  .draw_length_m = 0.66, .nock_height_m = 0.042, .stature_m = 1.75, .body_mass_kg = 75
};

static void
arm_alone_is_the_textbook_moment (void)
{
  /* Winter (2009), table 4.1, total arm: 3.75 kg at 0.308 m for 75 kg and 1.75 m: 11.3 N·m. */
  PhMassProperties nothing = rig (0, 0, 1);
  CHECK_NEAR (ph_pitch_of (&nothing, &draw).shoulder_moment_nm, 11.3, 0.05);
}

static void
front_heavy_rig_is_held_down_at_the_string (void)
{
  PhMassProperties m = rig (3, 0.1, 0.5);
  PhPitch p = ph_pitch_of (&m, &draw);
  CHECK_REL (p.moment_nm, 3 * 9.80665 * 0.1, 1e-15);
  CHECK_REL (p.nock_load_n, p.moment_nm / 0.66, 1e-15);
  /* Torques about the nock: the hand carries weight and nock load at the draw length. */
  CHECK_REL (p.bow_arm_load_n * 0.66, 3 * 9.80665 * (0.66 + 0.1), 1e-15);
  CHECK_REL (p.release_pitch_rad_s2, p.moment_nm / 0.5, 1e-15);
}

static void
shoulder_carries_the_load_at_mid_hand (void)
{
  /* Shoulder to mid-hand 0.676 m at 1.75 m (Drillis and Contini, in Winter figure 4.1). */
  PhMassProperties m = rig (3, 0.1, 0.5), nothing = rig (0, 0, 1);
  double more =
      ph_pitch_of (&m, &draw).shoulder_moment_nm - ph_pitch_of (&nothing, &draw).shoulder_moment_nm;
  CHECK_NEAR (more / ph_pitch_of (&m, &draw).bow_arm_load_n, 0.676, 0.0005);
}

static void
tail_heavy_rig_lifts_the_string (void)
{
  PhMassProperties m = rig (3, -0.02, 0.5);
  PhPitch p = ph_pitch_of (&m, &draw);
  CHECK (p.nock_load_n < 0 && p.bow_arm_load_n < 3 * PH_GRAVITY && p.release_pitch_rad_s2 < 0);
}

static void
release_without_inertia_is_missing (void)
{
  PhMassProperties m = rig (3, 0.1, 0);
  CHECK (isnan (ph_pitch_of (&m, &draw).release_pitch_rad_s2));
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (arm_alone_is_the_textbook_moment);
  CASE (front_heavy_rig_is_held_down_at_the_string);
  CASE (shoulder_carries_the_load_at_mid_hand);
  CASE (tail_heavy_rig_lifts_the_string);
  CASE (release_without_inertia_is_missing);
  return check_end ();
}
