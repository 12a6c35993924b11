/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the readings say of rigs that are made up here number by number, so that each text can be
 * worked out by hand. Ounce, pound and inch: NIST SP 811, as in base/units.h.
 */
#include "widgets/reading-texts.h"

#include "base/units.h"
#include "check.h"

/* A rig with one bar, no assembly: the readings that need one are tested with the front tip. */
static PhPart one_part = { .kind = PH_PART_BAR, .id = "bar", .name = "Back bar" };

static PhRig
some_rig (void)
{
  return (
      PhRig){ .bow = { .kind = PH_BOW_COMPOUND, .brace_height_mm = 178, .axle_to_axle_mm = 900 },
              .parts = &one_part,
              .n_parts = 1 };
}

static PhReport
some_report (void)
{
  return (PhReport){
    .mass = { .mass_kg = 2.974,
              .com_m = { 0.0683, 0.0021, -0.0229 },
              .inertia_grip_kg_m2 = { .xx = 0.192, .yy = 0.4292, .zz = 0.0123456 } },
    .pitch = { .bow_arm_load_n = 32.16, .nock_load_n = 3.0, .release_pitch_rad_s2 = 4.6 },
    .front_g = 8 * 28.349523125,
    .side_g = 141.747615625,
    .clearance_m = 0.0612,
    .clearance_part = 0,
  };
}

static PhReadingSource
source_of (const PhRig *rig, const PhReport *report, const PhReport *reference, PhUnits units)
{
  return (PhReadingSource){ rig, NULL, report, reference, units };
}

#define EXPECT(reading, field, text)                                                               \
  do                                                                                               \
    {                                                                                              \
      PhReadingText got = reading;                                                                 \
      CHECK_TEXT (got.field, text);                                                                \
      ph_reading_text_clear (&got);                                                                \
    }                                                                                              \
  while (0)

static void
mass_names_front_back_and_side_weights (void)
{
  PhRig rig = some_rig ();
  PhReport report = some_report ();
  PhReadingSource source = source_of (&rig, &report, NULL, PH_UNITS_MIXED);
  EXPECT (ph_reading_mass (&source), value, "2.974 kg");
  EXPECT (ph_reading_mass (&source), detail, "front 8, back 0, side 5 oz");
  source.units = PH_UNITS_METRIC;
  EXPECT (ph_reading_mass (&source), detail, "front 227, back 0, side 142 g");
  source.units = PH_UNITS_TRADE;
  EXPECT (ph_reading_mass (&source), value, "6.56 lb");
  report.front_g = report.side_g = 0.0;
  EXPECT (ph_reading_mass (&source), detail, "no weights added");
}

static void
balance_point_is_said_from_the_grip_throat (void)
{
  PhRig rig = some_rig ();
  PhReport report = some_report (), reference = some_report ();
  reference.mass.com_m = (PhVec3){ 0.0643, 0.0021, -0.0249 };
  PhReadingSource source = source_of (&rig, &report, &reference, PH_UNITS_MIXED);
  EXPECT (ph_reading_balance (&source), value, "68 ahead, 2 left, 23 low");
  EXPECT (ph_reading_balance (&source), detail, "mm from the grip throat");
  EXPECT (ph_reading_balance (&source), change, "4 forward, 2 up");
  report.mass.com_m = (PhVec3){ -0.0683, 0.0004, 0.0 };
  EXPECT (ph_reading_balance (&source), value, "68 behind, centred, level");
  reference.mass.com_m = report.mass.com_m;
  EXPECT (ph_reading_balance (&source), change, "no change");
  source.units = PH_UNITS_TRADE;
  EXPECT (ph_reading_balance (&source), value, "2.7 behind, centred, level");
}

static void
arm_feels_the_load_over_gravity (void)
{
  PhRig rig = some_rig ();
  PhReport report = some_report (), reference = some_report ();
  reference.pitch.bow_arm_load_n = 32.16 - 0.0283495 * PH_GRAVITY;
  PhReadingSource source = source_of (&rig, &report, &reference, PH_UNITS_MIXED);
  /* 32.16/9.80665 = 3.279; one ounce less before. */
  EXPECT (ph_reading_arm (&source), value, "feels like 3.28 kg");
  EXPECT (ph_reading_arm (&source), detail, "weighs 2.97 kg");
  EXPECT (ph_reading_arm (&source), change, "+1.0 oz");
}

static void
shot_says_which_way_and_how_fast (void)
{
  PhRig rig = some_rig ();
  PhReport report = some_report (), reference = some_report ();
  reference.pitch.release_pitch_rad_s2 = 5.75;
  PhReadingSource source = source_of (&rig, &report, &reference, PH_UNITS_MIXED);
  EXPECT (ph_reading_shot (&source), value, "tips forward, quickly");
  /* ½ · 4.6 · 0.4² rad = 21.1°. */
  EXPECT (ph_reading_shot (&source), detail, "about 21° in the first 0.4 s");
  EXPECT (ph_reading_shot (&source), change, "20 % slower");
  report.pitch.release_pitch_rad_s2 = -1.0;
  EXPECT (ph_reading_shot (&source), value, "tips back, slowly");
  EXPECT (ph_reading_shot (&source), change, "the reference tips forward, quickly");
  report.pitch.release_pitch_rad_s2 = NAN;
  EXPECT (ph_reading_shot (&source), value, "–");
}

static void
string_warns_under_fifteen_millimetres_and_names_the_part (void)
{
  PhRig rig = some_rig ();
  PhReport report = some_report ();
  PhReadingSource source = source_of (&rig, &report, NULL, PH_UNITS_MIXED);
  PhReadingText text = ph_reading_string (&source);
  CHECK (!text.warning);
  CHECK_TEXT (text.value, "61 mm");
  CHECK_TEXT (text.detail, "nearest: Back bar");
  ph_reading_text_clear (&text);
  report.clearance_m = 0.0149;
  text = ph_reading_string (&source);
  CHECK (text.warning);
  CHECK_TEXT (text.detail, "Back bar is too near: keep 15 mm");
  ph_reading_text_clear (&text);
  report.clearance_m = -0.002;
  EXPECT (ph_reading_string (&source), value, "in the string’s way");
}

static void
missing_clearance_says_why (void)
{
  PhRig rig = some_rig ();
  PhReport report = some_report ();
  PhReadingSource source = source_of (&rig, &report, NULL, PH_UNITS_MIXED);
  report.clearance_m = NAN;
  report.clearance_part = -1;
  EXPECT (ph_reading_string (&source), value, "clear");
  rig.bow.axle_to_axle_mm = NAN;
  EXPECT (ph_reading_string (&source), value, "–");
  EXPECT (ph_reading_string (&source), detail, "the bow’s axle to axle is not stated");
  rig.bow.brace_height_mm = NAN;
  EXPECT (ph_reading_string (&source), detail, "the bow’s brace height is not stated");
}

static void
turns_have_three_figures_and_a_change_in_per_cent (void)
{
  PhRig rig = some_rig ();
  PhReport report = some_report (), reference = some_report ();
  PhReadingSource source = source_of (&rig, &report, NULL, PH_UNITS_MIXED);
  PhTurnText text = ph_reading_turn (&source, PH_TURN_SWING);
  CHECK_TEXT (text.value, "0.0123");
  CHECK (!text.mark);
  ph_turn_text_clear (&text);
  text = ph_reading_turn (&source, PH_TURN_NOD);
  CHECK_TEXT (text.value, "0.429");
  CHECK (text.fill == 1.0);
  ph_turn_text_clear (&text);
  reference.mass.inertia_grip_kg_m2.yy = 0.4292 / 1.04;
  source.reference = &reference;
  text = ph_reading_turn (&source, PH_TURN_NOD);
  CHECK_TEXT (text.value, "+4.0 %");
  CHECK_TEXT (text.more, "0.429 kg·m²");
  /* Half is the reference: 1.04/2. */
  CHECK_NEAR (text.fill, 0.52, 1e-12);
  ph_turn_text_clear (&text);
}

static PhReport
leaning (double tilt_deg)
{
  PhReport report = some_report ();
  report.stable = true;
  report.hand_fitted = true;
  report.roll = (PhRoll){ 0.1, -0.5, 1.0 };
  report.bubble_rad = report.cant_rad = ph_rad_from_deg (tilt_deg);
  report.cant_90_rad[0] = report.cant_rad - 0.01;
  report.cant_90_rad[1] = report.cant_rad + 0.01;
  return report;
}

static void
cost_is_drop_times_sine (void)
{
  PhRig rig = some_rig ();
  PhReport report = leaning (-2.0);
  PhReadingSource source = source_of (&rig, &report, NULL, PH_UNITS_MIXED);
  PhShooting shooting = { 85.0, 50.0, 800.0 };
  /* ½ · 9.80665 · (50/85)² = 1.6967 m; sin 2° of it 5.92 cm; a ring is 4 cm. */
  EXPECT (ph_reading_cost (&source, &shooting), value, "5.9 cm left");
  EXPECT (ph_reading_cost (&source, &shooting), detail, "1.5 rings of that face");
  EXPECT (ph_reading_cost (&source, &shooting), more, "arrow drop 1.70 m, air drag not counted");
  /* A sight set at the lean that is wanted misses nothing. */
  rig.archer.wanted_bubble_deg = -2.0;
  EXPECT (ph_reading_cost (&source, &shooting), value, "nothing");
}

static void
cost_is_missing_without_a_speed_and_where_it_topples (void)
{
  PhRig rig = some_rig ();
  PhReport report = leaning (-2.0);
  PhReadingSource source = source_of (&rig, &report, NULL, PH_UNITS_MIXED);
  PhShooting shooting = { 0.0, 50.0, 800.0 };
  EXPECT (ph_reading_cost (&source, &shooting), value, "–");
  shooting.speed_m_s = 85.0;
  report.stable = false;
  report.cant_90_rad[0] = report.cant_90_rad[1] = NAN;
  EXPECT (ph_reading_cost (&source, &shooting), value, "–");
}

static void
cost_of_an_unknown_hand_is_a_range (void)
{
  PhRig rig = some_rig ();
  PhReport report = leaning (-2.0);
  PhReadingSource source = source_of (&rig, &report, NULL, PH_UNITS_MIXED);
  PhShooting shooting = { 85.0, 50.0, 800.0 };
  report.hand_fitted = false;
  /* τ = −0.1 cos φ − 0.5 sin φ: φ ≈ −0.1/(K + 0.5), K 1 to 4: 3.8° and 1.27°; 3.8 to 11.3 cm. */
  EXPECT (ph_reading_cost (&source, &shooting), value, "3.8 to 11.3 cm left");
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (mass_names_front_back_and_side_weights);
  CASE (balance_point_is_said_from_the_grip_throat);
  CASE (arm_feels_the_load_over_gravity);
  CASE (shot_says_which_way_and_how_fast);
  CASE (string_warns_under_fifteen_millimetres_and_names_the_part);
  CASE (missing_clearance_says_why);
  CASE (turns_have_three_figures_and_a_change_in_per_cent);
  CASE (cost_is_drop_times_sine);
  CASE (cost_is_missing_without_a_speed_and_where_it_topples);
  CASE (cost_of_an_unknown_hand_is_a_range);
  return check_end ();
}
