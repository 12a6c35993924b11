/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Deviations by source, first-order propagation worked out by hand where the rig is a bare bow, and
 * the rule that a check read on this very rig has taken up the bow's own side offset.
 */
#include "model/sure.h"

#include "base/units.h"
#include "check.h"
#include "model/checks.h"
#include "rigs.h"

static void
deviations_are_those_of_the_source (void)
{
  PhRig *rig = rigs_example ();
  CHECK_NEAR (ph_uncertain_sd (rig, -1, "mass_g", 0), 40, 0);
  CHECK_NEAR (ph_uncertain_sd (rig, -1, "com_mm", 1), 3, 0);
  CHECK_REL (ph_uncertain_sd (rig, -1, "gyration_mm", 2), 0.08 * 60, 1e-15);
  ph_edit_set_source (rig, -1, PH_SOURCE_GUESSED);
  CHECK_NEAR (ph_uncertain_sd (rig, -1, "mass_g", 0), 150, 0);
  CHECK_NEAR (ph_uncertain_sd (rig, -1, "com_mm", 0), 12, 0);
  CHECK_NEAR (ph_uncertain_sd (rig, -1, "com_mm", 1), 4, 0);
  ph_edit_set_source (rig, -1, PH_SOURCE_MEASURED);
  CHECK_NEAR (ph_uncertain_sd (rig, -1, "mass_g", 0), 3, 0);
  CHECK_NEAR (ph_uncertain_sd (rig, -1, "com_mm", 1), 2, 0);
  CHECK_REL (ph_uncertain_sd (rig, 0, "mass_g", 0), 0.03 * 310, 1e-15);
  CHECK_NEAR (ph_uncertain_sd (rig, 0, "at_mm", 2), 4, 0);
  ph_edit_set_source (rig, 2, PH_SOURCE_MEASURED);
  CHECK_REL (ph_uncertain_sd (rig, 2, "each_g", 0), 0.005 * 28.35, 1e-15);
  CHECK_NEAR (ph_uncertain_sd (rig, 2, "swing_deg", 0), 0, 0); /* a stack has no set angle */
  ph_edit_set_source (rig, 3, PH_SOURCE_GUESSED);
  CHECK_NEAR (ph_uncertain_sd (rig, 3, "com_mm", 0), 8, 0);
  CHECK_NEAR (ph_uncertain_sd (rig, 3, "swing_deg", 0), 1, 0);
  CHECK_NEAR (ph_uncertain_sd (rig, 1, "lift_deg", 0), 1, 0);
  CHECK_NEAR (ph_uncertain_sd (rig, 1, "length_mm", 0), 0, 0);
  ph_rig_free (rig);
}

/* A bow of 2 kg alone, K = 2, B = 0. */
static PhRig *
bare_bow (void)
{
  PhRig *rig = ph_rig_new ();
  rigs_set_bow (rig, 2000, RIGS_3 (-20, -3, 0), RIGS_3 (290, 295, 60));
  rigs_set_archer (rig, "nock_height_mm", 0); /* β = 0 */
  return rig;
}

static void
cant_of_a_bare_bow_follows_from_its_mass_and_offset_by_hand (void)
{
  /* With β = 0 and z = 0: −M g y cosφ = K φ; so dφ/dy = −M g cosφ/(K − M g y sinφ), and dφ/dM the
     same times y/M. */
  PhRig *rig = bare_bow ();
  CHECK (rigs_sound (rig, true));
  PhSure sure = ph_sure_of (rig);
  double mg = 2 * PH_GRAVITY, y = -0.003, phi = -mg * y / 2;
  for (int i = 0; i < 50; i++)
    phi = -mg * y * cos (phi) / 2;
  double by_y = -mg * cos (phi) / (2 - mg * y * sin (phi));
  /* z tips it too: dφ/dz = M g sinφ/(K − M g y sinφ). */
  double by_z = mg * sin (phi) / (2 - mg * y * sin (phi));
  double offset = by_y * 0.003, mass = by_y * y / 2 * 0.040, height = by_z * 0.008;
  double variance = offset * offset + mass * mass + height * height;
  CHECK (sure.settles && !sure.hand_fitted && sure.absorbed_by == -1);
  CHECK_REL (sure.cant_sd_rad, sqrt (variance), 1e-8); /* central differences of 0.01 mm */
  CHECK_NEAR (sure.com_sd_m[0], 0.008, 1e-12);
  CHECK_NEAR (sure.com_sd_m[1], 0.003, 1e-12);
  CHECK (sure.n == 3);
  CHECK_TEXT (sure.from[0].key, "com_mm");
  CHECK_TEXT (sure.from[1].key, "mass_g");
  CHECK_TEXT (sure.from[2].key, "gyration_mm");
  CHECK_REL (sure.from[0].share, (offset * offset + height * height) / variance, 1e-7);
  CHECK_NEAR (sure.from[2].share, 0, 0);
  double left = by_y * 0.002, rest = by_z * 0.002;
  CHECK_REL (sure.from[0].if_measured_cant_sd_rad, sqrt (left * left + mass * mass + rest * rest),
             1e-7);
  /* The hand's prior beside it: √(φ² 1.5² + 0.3²)/(K + k). */
  CHECK_REL (sure.hand_cant_sd_rad, sqrt (phi * phi * 2.25 + 0.09) / (2 - mg * y * sin (phi)),
             1e-12);
  ph_sure_clear (&sure);
  ph_rig_free (rig);
}

static void
stated_deviation_overrides_the_source (void)
{
  PhRig *rig = bare_bow ();
  rig->bow.sds = ph_alloc_zeroed (2, sizeof *rig->bow.sds);
  rig->bow.sds[0] = (PhSd){ ph_text_dup ("com_mm"), 3, { 1, 0.5, 0 } };
  rig->bow.sds[1] = (PhSd){ ph_text_dup ("mass_g"), 1, { 0 } };
  rig->bow.n_sds = 2;
  PhSure sure = ph_sure_of (rig);
  CHECK_NEAR (sure.com_sd_m[0], 0.001, 1e-12);
  CHECK_NEAR (sure.com_sd_m[1], 0.0005, 1e-12);
  CHECK_NEAR (sure.com_sd_m[2], 0, 0);
  /* Better than measuring would make it: measuring changes nothing. */
  CHECK_REL (sure.from[0].if_measured_cant_sd_rad, sure.cant_sd_rad, 1e-14);
  ph_sure_clear (&sure);
  ph_rig_free (rig);
}

/* Two scales give the mass and how far ahead its centre lies; to the side it is as unsure as before. */
static void
what_a_measurement_left_open_still_matters (void)
{
  PhRig *rig = bare_bow ();
  PhMatters matters;
  ph_edit_set_source (rig, -1, PH_SOURCE_MEASURED);
  PhSure sure = ph_sure_of (rig);
  CHECK (!ph_sure_matters_most (&sure, &matters), "all of it was measured");
  ph_sure_clear (&sure);
  rig->bow.sds = ph_alloc_zeroed (1, sizeof *rig->bow.sds);
  rig->bow.sds[0] = (PhSd){ ph_text_dup ("com_mm"), 3, { 2, 4, 12 } };
  rig->bow.n_sds = 1;
  sure = ph_sure_of (rig);
  CHECK (ph_sure_matters_most (&sure, &matters));
  CHECK (strcmp (matters.key, "com_mm") == 0 && matters.component == 1 && matters.part == -1);
  CHECK (matters.source == PH_SOURCE_MEASURED);
  ph_sure_clear (&sure);
  ph_rig_free (rig);
}

static double
share_of_bow_offset (PhRig *rig)
{
  PhSure sure = ph_sure_of (rig);
  double share = NAN;
  for (size_t i = 0; i < sure.n; i++)
    if (sure.from[i].part < 0 && strcmp (sure.from[i].key, "com_mm") == 0)
      share = sure.from[i].cant_variance[1];
  ph_sure_clear (&sure);
  return share;
}

static void
check_of_this_very_rig_takes_up_the_bows_own_offset (void)
{
  PhRig *rig = rigs_example ();
  double draw = 1.2;
  PhReading reading = ph_reading_of (&draw, 1);
  CHECK (share_of_bow_offset (rig) > 0); /* the example's own check was of another rig */
  CHECK (ph_edit_add_check (rig, &reading, NULL, NULL));
  CHECK (ph_sure_check_of_this_rig (rig) == 1);
  CHECK_NEAR (share_of_bow_offset (rig), 0, 0);
  PhSure sure = ph_sure_of (rig);
  CHECK (sure.com_sd_m[1] > 0.001); /* the balance point is no surer for it */
  ph_sure_clear (&sure);
  /* Within 0.5 g and 0.05 mm, and no farther. */
  PhCheck *check = &rig->archer.checks[1];
  double mass_g = check->mass_g, y_mm = check->com_mm[1];
  check->mass_g = mass_g + 0.49;
  check->com_mm[1] = y_mm - 0.049;
  CHECK (ph_sure_check_of_this_rig (rig) == 1);
  check->com_mm[1] = y_mm - 0.051;
  CHECK (ph_sure_check_of_this_rig (rig) == -1);
  check->com_mm[1] = y_mm;
  check->mass_g = mass_g + 0.51;
  CHECK (ph_sure_check_of_this_rig (rig) == -1);
  check->mass_g = mass_g;
  ph_edit_set_check_aside (rig, 1, true);
  CHECK (ph_sure_check_of_this_rig (rig) == -1);
  CHECK (share_of_bow_offset (rig) > 0);
  ph_rig_free (rig);
}

static void
rig_that_topples_has_no_lean_to_be_sure_of (void)
{
  PhRig *rig = bare_bow ();
  rig->bow.com_mm[2] = 900;
  PhSure sure = ph_sure_of (rig);
  CHECK (!sure.settles && isnan (sure.cant_sd_rad) && isnan (sure.hand_cant_sd_rad));
  CHECK (sure.n == 3 && isnan (sure.from[0].share) && isnan (sure.from[1].if_measured_cant_sd_rad));
  CHECK_NEAR (sure.com_sd_m[0], 0.008, 1e-12);
  ph_sure_clear (&sure);
  ph_rig_free (rig);
}

/* A side mount straight to the left, raised, and what it carries: its direction lies in the y–z
 * plane, where its frame is about to turn over. */
static PhRig *
mount_to_the_side (double swing_deg)
{
  PhRig *rig = bare_bow ();
  rigs_add_socket (&rig->bow.mounts, &rig->bow.n_mounts, "left", RIGS_3 (-20, 12, -100),
                   RIGS_3 (0, 1, 0));
  ph_rig_append (rig, rigs_bracket ("block", "bow:left", swing_deg, 20));
  ph_rig_append (rig, rigs_bar ("bar", "block:a", -30, -12, 305, 95));
  ph_rig_append (rig, rigs_stack ("stack", "bar", 5));
  CHECK (rigs_sound (rig, true));
  return rig;
}

static void
mount_whose_frame_is_about_to_turn_over_is_known_as_well_as_its_neighbour (void)
{
  /* That side of the fold where the frame is the same, a tenth of a degree on: nearly the same
     rig, so nearly the same deviations. Slopes across the fold would make them metres. */
  PhRig *on = mount_to_the_side (0), *left = mount_to_the_side (0.1),
        *right = mount_to_the_side (-0.1);
  PhSure there = ph_sure_of (on), one = ph_sure_of (left), other = ph_sure_of (right);
  double miss[2] = { 0, 0 };
  for (int c = 0; c < 3; c++)
    {
      miss[0] += fabs (there.com_sd_m[c] - one.com_sd_m[c]);
      miss[1] += fabs (there.com_sd_m[c] - other.com_sd_m[c]);
    }
  CHECK (there.settles && fmin (miss[0], miss[1]) < 1e-5);
  CHECK (there.com_sd_m[0] < 0.02);
  ph_sure_clear (&there);
  ph_sure_clear (&one);
  ph_sure_clear (&other);
  ph_rig_free (on);
  ph_rig_free (left);
  ph_rig_free (right);
}

static void
parts_that_are_off_do_not_count (void)
{
  PhRig *rig = rigs_odd ();
  PhSure sure = ph_sure_of (rig);
  for (size_t i = 0; i < sure.n; i++)
    {
      CHECK (sure.from[i].part < 0 || ph_rig_is_fitted (rig, (size_t)sure.from[i].part));
      CHECK (i == 0 || sure.from[i].share <= sure.from[i - 1].share);
    }
  ph_sure_clear (&sure);
  ph_rig_free (rig);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (deviations_are_those_of_the_source);
  CASE (cant_of_a_bare_bow_follows_from_its_mass_and_offset_by_hand);
  CASE (stated_deviation_overrides_the_source);
  CASE (what_a_measurement_left_open_still_matters);
  CASE (check_of_this_very_rig_takes_up_the_bows_own_offset);
  CASE (rig_that_topples_has_no_lean_to_be_sure_of);
  CASE (mount_whose_frame_is_about_to_turn_over_is_known_as_well_as_its_neighbour);
  CASE (parts_that_are_off_do_not_count);
  return check_end ();
}
