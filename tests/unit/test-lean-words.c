/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the bubble says. The sentences of an unknown hand and the digits are the design's own; the
 * rest holds the words against the signs: a top limb to the right is a bubble to the left.
 */
#include "widgets/lean-words.h"

#include "base/units.h"
#include "check.h"

#define VIAL 0.05235987755982989 /* 3° */

static PhSettle
known (double tilt_deg, double lo_deg, double hi_deg)
{
  return (PhSettle){ .has_level = true,
                     .hand_known = true,
                     .settles = true,
                     .heavy_side = tilt_deg < 0.0 ? -1 : 1,
                     .tilt_rad = ph_rad_from_deg (tilt_deg),
                     .band = { ph_rad_from_deg (lo_deg), ph_rad_from_deg (hi_deg), false },
                     .reference_tilt_rad = NAN,
                     .change = { NAN, NAN, false } };
}

static PhSettle
assumed (double tilt_deg, double lo_deg, double hi_deg)
{
  PhSettle settle = known (tilt_deg, lo_deg, hi_deg);
  settle.hand_known = false;
  return settle;
}

static void
expect (const PhSettle *settle, double wanted_deg, const char *headline, const char *detail)
{
  PhLeanWords words = ph_lean_words_of (settle, NULL, NULL, VIAL, ph_rad_from_deg (wanted_deg));
  CHECK_TEXT (words.headline, headline);
  CHECK_TEXT (words.detail, detail);
  ph_lean_words_clear (&words);
}

static void
known_hand_says_the_bubble_opposite_to_the_bow (void)
{
  PhSettle settle = known (0.4, 0.1, 0.7);
  expect (&settle, 0.0, "0.4° left", "90 % sure between 0.1° and 0.7° · the bow leans right");
  settle = known (-0.4, -0.7, -0.1);
  expect (&settle, 0.0, "0.4° right", "90 % sure between 0.1° and 0.7° · the bow leans left");
}

static void
interval_over_both_sides_names_them (void)
{
  PhSettle settle = known (0.4, -0.2, 1.0);
  expect (&settle, 0.0, "0.4° left",
          "90 % sure between 0.2° right and 1.0° left · the bow leans right");
}

static void
bow_without_a_level_leans_where_its_top_limb_is (void)
{
  PhSettle settle = known (0.4, 0.1, 0.7);
  settle.has_level = false;
  expect (&settle, 0.0, "0.4° right", "90 % sure between 0.1° and 0.7°");
}

static void
narrow_interval_earns_half_steps (void)
{
  /* Half a tenth where the interval is narrower than 0.2°: 0.19° against 0.21°. */
  PhSettle settle = known (0.37, 0.28, 0.47);
  expect (&settle, 0.0, "0.35° left", "90 % sure between 0.30° and 0.45° · the bow leans right");
  settle = known (0.37, 0.26, 0.47);
  expect (&settle, 0.0, "0.4° left", "90 % sure between 0.3° and 0.5° · the bow leans right");
}

static void
what_rounds_to_nothing_has_no_side (void)
{
  PhSettle settle = known (0.04, -0.2, 0.3);
  expect (&settle, 0.0, "Centred", "90 % sure between 0.2° right and 0.3° left");
  settle = known (-0.04, -0.2, 0.3);
  expect (&settle, 0.0, "Centred", "90 % sure between 0.2° right and 0.3° left");
}

static void
end_of_the_vial_and_the_wanted_bubble_are_said (void)
{
  PhSettle settle = known (3.6, 3.0, 4.2);
  expect (&settle, 1.0, "3.6° left",
          "90 % sure between 3.0° and 4.2° · the bow leans right · past the end of the vial, which "
          "is drawn to 3° · wanted: 1.0° left");
}

static void
unknown_hand_has_no_degrees_in_its_headline (void)
{
  PhSettle settle = assumed (-1.2, -2.5, -0.7);
  PhLeanWords words = ph_lean_words_of (&settle, NULL, NULL, VIAL, 0.0);
  CHECK_TEXT (words.headline, "Where it settles depends on your hand: not known yet. The weight "
                              "alone leans it left.");
  CHECK (!strstr (words.headline, "°") && !words.is_number);
  CHECK_TEXT (words.detail, "a firm to a loose hand: bubble 0.7° to 2.5° right");
  ph_lean_words_clear (&words);
  settle.heavy_side = 0;
  settle.tilt_rad = settle.band.lo_rad = settle.band.hi_rad = 0.0;
  expect (&settle, 0.0,
          "Where it settles depends on your hand: not known yet. The weight alone leaves it plumb.",
          "a firm to a loose hand: bubble centred");
}

static void
toppling_rig_says_its_reason_instead_of_a_number (void)
{
  PhSettle settle = known (-1.0, -1.0, -1.0);
  settle.settles = false;
  settle.tilt_rad = NAN;
  PhLeanWords words =
      ph_lean_words_of (&settle, "this rig topples rather than settles", NULL, VIAL, 0.0);
  CHECK_TEXT (words.headline, "This rig topples rather than settles.");
  CHECK (!words.is_number);
  ph_lean_words_clear (&words);
}

static void
change_against_a_reference_is_said_in_words (void)
{
  PhSettle settle = known (0.4, 0.1, 0.7);
  settle.has_reference = true;
  settle.reference_tilt_rad = 0.0;
  settle.change = (PhLeanRange){ ph_rad_from_deg (0.4), ph_rad_from_deg (0.4), false };
  PhLeanWords words = ph_lean_words_of (&settle, NULL, "Tuesday’s rig", VIAL, 0.0);
  CHECK_TEXT (words.compare, "Against Tuesday’s rig: 0.4° more to the left");
  CHECK (strstr (words.spoken, words.compare) && strstr (words.spoken, "Bubble: 0.4° left"));
  ph_lean_words_clear (&words);
  settle.hand_known = false;
  settle.change = (PhLeanRange){ ph_rad_from_deg (-1.6), ph_rad_from_deg (-0.4), false };
  words = ph_lean_words_of (&settle, NULL, "Tuesday’s rig", VIAL, 0.0);
  CHECK_TEXT (words.compare, "Against Tuesday’s rig: 0.4° to 1.6° more to the right");
  ph_lean_words_clear (&words);
}

static void
chain_runs_from_the_heavy_side_to_the_bubble (void)
{
  PhSettle settle = known (-1.0, -1.2, -0.8);
  CHECK_TEXT (ph_lean_chain (&settle), "Left side heavy → bow leans left → bubble runs right.");
  settle = known (1.0, 0.8, 1.2);
  CHECK_TEXT (ph_lean_chain (&settle), "Right side heavy → bow leans right → bubble runs left.");
  settle.has_level = false;
  CHECK_TEXT (ph_lean_chain (&settle), "Right side heavy → bow leans right.");
}

static void
chain_names_the_hand_where_it_works_against_the_weight (void)
{
  PhSettle settle = known (1.0, 0.8, 1.2);
  settle.heavy_side = -1;
  CHECK_TEXT (ph_lean_chain (&settle),
              "Left side heavy, hand twists right → leans right → bubble left.");
  settle.tilt_rad = 0.0;
  CHECK_TEXT (ph_lean_chain (&settle),
              "Left side heavy, hand holds it → bow plumb → bubble centred.");
  settle.tilt_rad = ph_rad_from_deg (0.2);
  CHECK_TEXT (ph_lean_chain (&settle),
              "As good as even → bow as good as plumb → bubble as good as centred.");
  settle.settles = false;
  CHECK_TEXT (ph_lean_chain (&settle), "Left side heavy → the bow tips over to the left.");
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (known_hand_says_the_bubble_opposite_to_the_bow);
  CASE (interval_over_both_sides_names_them);
  CASE (bow_without_a_level_leans_where_its_top_limb_is);
  CASE (narrow_interval_earns_half_steps);
  CASE (what_rounds_to_nothing_has_no_side);
  CASE (end_of_the_vial_and_the_wanted_bubble_are_said);
  CASE (unknown_hand_has_no_degrees_in_its_headline);
  CASE (toppling_rig_says_its_reason_instead_of_a_number);
  CASE (change_against_a_reference_is_said_in_words);
  CASE (chain_runs_from_the_heavy_side_to_the_bubble);
  CASE (chain_names_the_hand_where_it_works_against_the_weight);
  return check_end ();
}
