/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The starter rigs against the product page's table of guesses, written a second time: common
 * practice, no source.
 */
#include "model/starter.h"

#include "check.h"
#include "model/report.h"
#include "rigs.h"

static PhRig *
starter (PhBowKind kind, PhBowHand hand, double draw, double stature)
{
  PhStarter answers = { .kind = kind, .hand = hand, .stated_draw_mm = draw, .stature_mm = stature };
  PhRig *rig = ph_starter_rig (&answers, "First rig");
  CHECK (rigs_sound (rig, true));
  return rig;
}

static void
check3 (const double got[3], double x, double y, double z)
{
  CHECK (got[0] == x && got[1] == y && got[2] == z, "%g %g %g", got[0], got[1], got[2]);
}

static void
compound_is_the_page_s (void)
{
  PhRig *rig = starter (PH_BOW_COMPOUND, PH_BOW_HAND_LEFT, 717.55, 1720);
  CHECK (rig->bow.mass_g == 1950 && rig->bow.axle_to_axle_mm == 900);
  CHECK (rig->bow.brace_height_mm == 178 && rig->archer.nock_height_mm == 40);
  check3 (rig->bow.com_mm, -18, -3, 12);
  check3 (rig->bow.gyration_mm, 290, 295, 60);
  CHECK (rig->bow.n_mounts == 2);
  CHECK_TEXT (rig->bow.mounts[0].id, "front");
  check3 (rig->bow.mounts[0].at_mm, 62, 0, -72);
  CHECK_TEXT (rig->bow.mounts[1].id, "rear");
  check3 (rig->bow.mounts[1].at_mm, -28, 0, -150);
  check3 (rig->bow.mounts[1].axis, -1, 0, 0);
  CHECK (rig->n_parts == 3 && rig->parts[0].mass_g == 310 && rig->parts[1].mass_g == 110);
  check3 (rig->parts[0].at_mm, 150, -38, 95);
  check3 (rig->parts[1].at_mm, -20, -24, 40);
  CHECK (ph_rig_holding_weight_n (rig) == 65 && rig->archer.stature_mm == 1720);
  CHECK_TEXT (rig->name, "First rig");
  ph_rig_free (rig);
}

static void
recurve_and_barebow_are_the_page_s (void)
{
  PhRig *rig = starter (PH_BOW_RECURVE, PH_BOW_HAND_LEFT, 711.2, NAN);
  CHECK (rig->bow.mass_g == 1650 && rig->bow.axle_to_axle_mm == 1650);
  CHECK (rig->bow.brace_height_mm == 220 && rig->archer.nock_height_mm == 45);
  check3 (rig->bow.gyration_mm, 420, 425, 45);
  CHECK_TEXT (rig->bow.mounts[1].id, "upper");
  check3 (rig->bow.mounts[1].at_mm, 40, 0, 250);
  check3 (rig->parts[0].at_mm, 120, -30, 110);
  CHECK (rig->parts[1].mass_g == 15 && ph_rig_holding_weight_n (rig) == 160);
  ph_rig_free (rig);
  rig = starter (PH_BOW_BAREBOW, PH_BOW_HAND_LEFT, 711.2, NAN);
  CHECK (rig->bow.mass_g == 1700 && rig->bow.brace_height_mm == 215);
  check3 (rig->bow.com_mm, -25, -2, 15);
  check3 (rig->bow.mounts[1].at_mm, 20, 0, -180);
  CHECK (rig->n_parts == 1 && rig->parts[0].mass_g == 15, "no sight and no bar");
  ph_rig_free (rig);
}

static void
front_bar_is_0_44_of_stature_to_the_inch (void)
{
  /* 0.44 · 1720/25.4 = 29.8; 0.44 · 1600/25.4 = 27.7; 0.44 · 1500/25.4 = 25.98. */
  static const double statures[] = { 1720, 1600, 1500, NAN }, inches[] = { 30, 28, 26, 30 };
  for (int i = 0; i < 4; i++)
    {
      PhRig *rig = starter (PH_BOW_COMPOUND, PH_BOW_HAND_LEFT, 700, statures[i]);
      CHECK_NEAR (rig->parts[2].length_mm, inches[i] * 25.4, 1e-9);
      CHECK_TEXT (rig->parts[2].on, "bow:front");
      CHECK (isnan (statures[i]) == (rig->archer.stature_mm == 1750));
      ph_rig_free (rig);
    }
}

static void
true_draw_is_an_inch_and_three_quarters_shorter (void)
{
  PhRig *rig = starter (PH_BOW_COMPOUND, PH_BOW_HAND_LEFT, 28 * 25.4, NAN);
  CHECK_NEAR (rig->archer.draw_length_mm, 26.25 * 25.4, 1e-9);
  ph_rig_free (rig);
}

static void
every_guess_is_marked_as_guessed (void)
{
  for (int kind = PH_BOW_COMPOUND; kind <= PH_BOW_BAREBOW; kind++)
    {
      PhRig *rig = starter ((PhBowKind)kind, PH_BOW_HAND_LEFT, 700, NAN);
      CHECK (rig->bow.source == PH_SOURCE_GUESSED);
      CHECK (rig->bow.given & ph_given_bit (PH_OBJECT_BOW, "source"));
      for (size_t i = 0; i < rig->n_parts; i++)
        CHECK (rig->parts[i].source == PH_SOURCE_GUESSED
               && rig->parts[i].given & ph_given_bit (PH_OBJECT_PART, "source"));
      ph_rig_free (rig);
    }
}

static void
right_hand_has_the_mirrored_bow (void)
{
  PhRig *left = starter (PH_BOW_COMPOUND, PH_BOW_HAND_LEFT, 700, NAN);
  PhRig *right = starter (PH_BOW_COMPOUND, PH_BOW_HAND_RIGHT, 700, NAN);
  CHECK (right->archer.bow_hand == PH_BOW_HAND_RIGHT);
  CHECK (right->archer.given & ph_given_bit (PH_OBJECT_ARCHER, "bow_hand"));
  check3 (right->bow.com_mm, -18, 3, 12);
  check3 (right->parts[0].at_mm, 150, 38, 95);
  check3 (right->parts[0].aperture_mm, 290, 8, 120);
  check3 (left->parts[0].aperture_mm, 290, -8, 120);
  ph_rig_free (left);
  ph_rig_free (right);
}

static void
starter_rig_has_a_report (void)
{
  for (int kind = PH_BOW_COMPOUND; kind <= PH_BOW_BAREBOW; kind++)
    {
      PhRig *rig = starter ((PhBowKind)kind, PH_BOW_HAND_LEFT, 700, 1700);
      PhCompiled *compiled = ph_compile_rig (rig);
      PhReport *report = ph_report_new (rig, compiled);
      CHECK (report->stable && !report->hand_fitted);
      CHECK (report->mass.mass_kg > 1.6 && report->mass.mass_kg < 2.7);
      CHECK (report->clearance_part < 0 || report->clearance_m > 0.1);
      ph_report_free (report);
      ph_compiled_free (compiled);
      ph_rig_free (rig);
    }
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (compound_is_the_page_s);
  CASE (recurve_and_barebow_are_the_page_s);
  CASE (front_bar_is_0_44_of_stature_to_the_inch);
  CASE (true_draw_is_an_inch_and_three_quarters_shorter);
  CASE (every_guess_is_marked_as_guessed);
  CASE (right_hand_has_the_mirrored_bow);
  CASE (starter_rig_has_a_report);
  return check_end ();
}
