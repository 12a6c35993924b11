/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The physics of measuring a bow: two scales, hanging, two ways of swinging, and what the fitted
 * parts add taken out again. Worked pendulum examples: OpenStax University Physics 1, sections 10.5
 * and 15.4, as printed there.
 */
#include "base/units.h"
#include "check.h"
#include "physics/bare.h"
#include "physics/hanging.h"
#include "physics/scales.h"
#include "physics/swing.h"

static void
rod_of_period_two_seconds_has_the_inertia_of_a_rod (void)
{
  /* OpenStax 15.4: a rod hung by its end with T = 2 s is 1.49 m long (g = 9.8 or 9.81; three
     figures). With l = L/2 the inertia about its centre is then mL²/12 (10.5): the printed length
     is good to 0.34 %, and I_c/(mL²) = gT²/(8π²L) − 1/4, so to 0.0011 of the 0.0833. */
  PhSwing swing = { 0.7, 1.49 / 2, 1, 2, 0, 0, 0 };
  PhSwingResult result = ph_swing_result (&swing);
  CHECK (!result.refused);
  CHECK_NEAR (result.value / (0.7 * 1.49 * 1.49), 1.0 / 12, 0.0011);
  /* And exactly at L = 3gT²/(8π²). */
  double length = 3 * PH_GRAVITY * 4 / (8 * PH_PI * PH_PI);
  swing.distance_m = length / 2;
  CHECK_REL (ph_swing_result (&swing).value, 0.7 * length * length / 12, 1e-13);
}

static void
released_rod_passes_the_bottom_as_printed (void)
{
  /* OpenStax 10.5: a rod of 0.3 m let go at 30° passes the bottom at 3.6 rad/s: ½ I ω² is
     m g (L/2)(1 − cos 30°). Its own small swings take 2π√(2L/3g). */
  double length = 0.3, mass = 0.3, period = 2 * PH_PI * sqrt (2 * length / (3 * PH_GRAVITY));
  PhSwing swing = { mass, length / 2, 10, 10 * period, 0, 0, 0 };
  double centre = ph_swing_result (&swing).value;
  double pivot = centre + mass * length * length / 4;
  double drop = length / 2 * (1 - cos (ph_rad_from_deg (30)));
  CHECK_NEAR (sqrt (2 * mass * PH_GRAVITY * drop / pivot), 3.6, 0.05);
}

static void
two_strings_are_the_torsion_pendulum_of_the_book (void)
{
  /* OpenStax 15.4: a rod of 4 kg and 0.30 m on a string turns with T = 0.5 s, so the string's
     torsion constant is 4.73 N·m (4.7374 cut short: good to 0.2 %). Two strings turn a body back
     with M g D²/(4h): D is chosen to make that 4.73. */
  double length = 0.8;
  PhTwoString strings = { .mass_kg = 4, .length_m = length, .swings = 20, .seconds = 10 };
  strings.spacing_m = sqrt (4 * length * 4.73 / (4 * PH_GRAVITY));
  PhSwingResult result = ph_two_string_result (&strings);
  CHECK (!result.refused);
  CHECK_REL (result.value, 4 * 0.30 * 0.30 / 12, 0.002);
}

static void
scales_find_the_seesaw_by_hand (void)
{
  /* 30 N in all, 12 N of it on the scale 500 mm ahead: 200 mm ahead. By hand the partial
     derivatives are −12·500/900, 18·500/900 mm/N and 0.4. */
  PhScales scales = { 18, 12, 0.5, 0.1, 0.002 };
  PhScalesResult result = ph_scales_result (&scales, 0, 0);
  CHECK_NEAR (result.x_m, 0.2, 1e-16);
  CHECK_REL (result.mass_kg, 30 / 9.80665, 1e-15);
  double first = 6.0 / 900 * 0.1, second = 9.0 / 900 * 0.1, distance = 0.4 * 0.002;
  CHECK_REL (result.x_sd_m, sqrt (first * first + second * second + distance * distance), 1e-14);
  CHECK_REL (result.mass_sd_kg, sqrt (2) * 0.1 / 9.80665, 1e-14);
  /* The second scale behind the grip. */
  scales.d_m = -0.5;
  CHECK_NEAR (ph_scales_result (&scales, 0, 0).x_m, -0.2, 1e-16);
}

static void
parts_that_lay_on_the_scales_come_out (void)
{
  /* A bow of 2 kg at −10 mm and parts of 1 kg at 180 mm: 29.42 N, moment 1.5690 N·m by hand. */
  double weight = 3 * 9.80665, moment = 9.80665 * (2 * -0.010 + 1 * 0.180);
  PhScales scales = { weight - moment / 0.4, moment / 0.4, 0.4, 0.02, 0.001 };
  PhScalesResult result = ph_scales_result (&scales, 1, 0.180);
  CHECK_NEAR (result.mass_kg, 2, 1e-14);
  CHECK_NEAR (result.x_m, -0.010, 1e-15);
  CHECK (ph_scales_result (&scales, 3.2, 0.180).refused == PH_REFUSED_PARTS_HEAVY);
  scales.d_m = 0;
  CHECK (ph_scales_result (&scales, 0, 0).refused == PH_REFUSED_ONE_PLACE);
  CHECK (isnan (ph_scales_result (&scales, 0, 0).x_m));
  scales.f1_n = scales.f2_n = 0;
  CHECK (ph_scales_result (&scales, 0, 0).refused == PH_REFUSED_NO_WEIGHT);
}

static void
two_crossing_plumb_lines_meet_where_they_cross (void)
{
  /* One down x = 20 mm, z free; one along x at y = 4, z = −30 mm: they pass 4 mm from one another,
     so the centre lies halfway, 2 mm from each. Along its own line the first knows nothing: by hand
     the inverse covariance is diag (1, 2, 1)/σ². */
  PhPlumbLine lines[] = { { { 0.020, 0, 0.5 }, { 0, 0, -1 }, 0.002 },
                          { { 0.300, 0.004, -0.030 }, { 1, 0, 0 }, 0.002 } };
  PhHanging result = ph_hanging_of (lines, 2);
  CHECK (!result.refused);
  CHECK_NEAR (result.com_m.x, 0.020, 1e-15);
  CHECK_NEAR (result.com_m.y, 0.002, 1e-15);
  CHECK_NEAR (result.com_m.z, -0.030, 1e-15);
  CHECK_NEAR (result.spread_m, 0.002, 1e-15);
  CHECK_REL (result.covariance_m2.xx, 4e-6, 1e-12);
  CHECK_REL (result.covariance_m2.yy, 2e-6, 1e-12);
  CHECK_REL (result.covariance_m2.zz, 4e-6, 1e-12);
  CHECK_NEAR (result.covariance_m2.xz, 0, 1e-18);
  /* A line three times as exact pulls nine times as hard: y at 4·9/10 mm. */
  lines[1].sd_m = 0.002 / 3;
  CHECK_NEAR (ph_hanging_of (lines, 2).com_m.y, 0.0036, 1e-15);
}

static void
lines_too_alike_or_too_far_apart_are_refused (void)
{
  PhPlumbLine lines[] = { { { 0, 0, 0.5 }, { 0, 0, -1 }, 0.002 },
                          { { 0.1, 0, 0.5 }, { 0, 0, 1 }, 0.002 } };
  CHECK (ph_hanging_of (lines, 1).refused == PH_REFUSED_PARALLEL);
  CHECK (ph_hanging_of (lines, 0).refused == PH_REFUSED_PARALLEL);
  CHECK (ph_hanging_of (lines, 2).refused == PH_REFUSED_PARALLEL);
  double angle = ph_rad_from_deg (9.99);
  lines[1].direction = ph_vec3 (sin (angle), 0, cos (angle));
  CHECK (ph_hanging_of (lines, 2).refused == PH_REFUSED_PARALLEL);
  angle = ph_rad_from_deg (10.01);
  lines[1].direction = ph_vec3 (-sin (angle), 0, -cos (angle));
  CHECK (!ph_hanging_of (lines, 2).refused);
  /* 59 mm apart each is 29.5 mm off; 61 mm apart 30.5. */
  lines[1] = (PhPlumbLine){ { 0, 0.059, 0 }, { 1, 0, 0 }, 0.002 };
  CHECK (!ph_hanging_of (lines, 2).refused);
  lines[1].point_m.y = 0.061;
  PhHanging far = ph_hanging_of (lines, 2);
  CHECK (far.refused == PH_REFUSED_APART);
  CHECK_NEAR (far.spread_m, 0.0305, 1e-15);
  CHECK (isnan (far.com_m.y) && isnan (far.covariance_m2.yy));
}

static void
swings_that_cannot_be_are_refused (void)
{
  /* A point mass on 0.5 m swings with T = 2π√(l/g): inertia 0. A hair quicker cannot be. */
  double period = 2 * PH_PI * sqrt (0.5 / PH_GRAVITY);
  PhSwing swing = { 3, 0.5, 1, period * 0.999, 0, 0, 0 };
  CHECK (ph_swing_result (&swing).refused == PH_REFUSED_INERTIA);
  CHECK (isnan (ph_swing_result (&swing).value) && isnan (ph_swing_result (&swing).sd));
  swing.seconds = period * 1.001;
  CHECK (!ph_swing_result (&swing).refused);
  swing.distance_m = -0.5;
  CHECK (ph_swing_result (&swing).refused == PH_REFUSED_NOT_ABOVE_ZERO);
  PhTwoString strings = {
    .mass_kg = 3, .spacing_m = 0.3, .length_m = 0, .swings = 1, .seconds = 1
  };
  CHECK (ph_two_string_result (&strings).refused == PH_REFUSED_NOT_ABOVE_ZERO);
  for (int i = 0; i < PH_REFUSED_COUNT; i++)
    CHECK (strlen (ph_refused_text ((PhRefused)i)) > 10);
}

/* Change of the pendulum's inertia when one reading moves by a thousandth of its deviation. */
static double
swing_moved (PhSwing swing, double mass, double distance, double seconds)
{
  swing.mass_kg += mass;
  swing.distance_m += distance;
  swing.seconds += seconds;
  return ph_swing_result (&swing).value;
}

static void
deviations_of_a_swing_are_those_of_small_changes (void)
{
  PhSwing swing = { 3.1, 0.42, 20, 29.5, 0.003, 0.002, 0.2 };
  double k = 1e-3,
         parts[3] = { swing_moved (swing, k * 0.003, 0, 0) - swing_moved (swing, -k * 0.003, 0, 0),
                      swing_moved (swing, 0, k * 0.002, 0) - swing_moved (swing, 0, -k * 0.002, 0),
                      swing_moved (swing, 0, 0, k * 0.2) - swing_moved (swing, 0, 0, -k * 0.2) };
  double sd = sqrt (parts[0] * parts[0] + parts[1] * parts[1] + parts[2] * parts[2]) / (2 * k);
  CHECK_REL (ph_swing_result (&swing).sd, sd, 1e-8); /* a second-order remainder of 1e-10 */
}

static void
two_string_deviation_is_the_relative_parts (void)
{
  PhTwoString strings = { 3.1, 0.3, 0.9, 10, 30, 0.031, 0.003, 0.009, 0.3 };
  /* 1 %, 2·1 %, 2·1 %, 1 % */
  PhSwingResult result = ph_two_string_result (&strings);
  CHECK_REL (result.sd / result.value, 0.01 * sqrt (1 + 4 + 4 + 1), 1e-13);
}

static void
bare_bow_comes_back_from_a_whole_rig (void)
{
  /* The whole by the tensor parallel-axis theorem of mass.h, then the parts taken out. */
  PhFrame frame = ph_frame_of_axis (ph_vec3 (1, 0, 0));
  PhBody bow_body = { 2, { -0.02, 0.003, 0.01 }, { 0.17, 0.18, 0.01 } };
  PhBody bar_body = ph_body_cylinder (0.4, 0.1, 0.7, 0.01, 0.008);
  PhBody box_body = ph_body_box (0.3, ph_vec3 (-0.2, 0.15, -0.1), ph_vec3 (0.1, 0.04, 0.06));
  PhMass bow = ph_mass_of_body (&bow_body, ph_vec3 (0, 0, 0), &frame);
  PhMass parts = ph_mass_add (ph_mass_of_body (&bar_body, ph_vec3 (0, 0, -0.07), &frame),
                              ph_mass_of_body (&box_body, ph_vec3 (0, 0, 0), &frame));
  PhMass both = ph_mass_add (bow, parts);
  PhMassProperties whole = ph_mass_properties (&both);
  PhVec3 com = ph_bare_com (whole.com_m, 2, &parts);
  CHECK_NEAR (com.x, -0.02, 1e-15);
  CHECK_NEAR (com.y, 0.003, 1e-15);
  CHECK_NEAR (com.z, 0.01, 1e-15);
  const double all[3] = { whole.inertia_com_kg_m2.xx, whole.inertia_com_kg_m2.yy,
                          whole.inertia_com_kg_m2.zz };
  const double own[3] = { 0.17, 0.18, 0.01 };
  for (int axis = 0; axis < 3; axis++)
    CHECK_NEAR (ph_bare_inertia (all[axis], axis, 2, bow_body.com_m, &parts), own[axis], 1e-15);
  PhMass nothing = { 0 };
  CHECK_NEAR (ph_bare_inertia (0.2, 1, 2, bow_body.com_m, &nothing), 0.2, 0);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (rod_of_period_two_seconds_has_the_inertia_of_a_rod);
  CASE (released_rod_passes_the_bottom_as_printed);
  CASE (two_strings_are_the_torsion_pendulum_of_the_book);
  CASE (scales_find_the_seesaw_by_hand);
  CASE (parts_that_lay_on_the_scales_come_out);
  CASE (two_crossing_plumb_lines_meet_where_they_cross);
  CASE (lines_too_alike_or_too_far_apart_are_refused);
  CASE (swings_that_cannot_be_are_refused);
  CASE (deviations_of_a_swing_are_those_of_small_changes);
  CASE (two_string_deviation_is_the_relative_parts);
  CASE (bare_bow_comes_back_from_a_whole_rig);
  return check_end ();
}
