/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Directions and tape readings in words, against the product page's rule (out is away from the
 * bow's plane, within 10 mm of it left and right) and against a hand computation of where the back
 * bar of the rig page's example ends: (−48, 14, −150) + 305 d, d from swing 20° and lift −12° on a
 * socket that points back.
 */
#include "document-fixture.h"
#include "widgets/part-words.h"

#define TIP_LEFT_MM (14 + 305 * 0.97814760 * 0.34202014) /* cos 12°, sin 20° */
#define TIP_BELOW_MM (150 + 305 * 0.20791169)            /* sin 12° */

static const char *
swing_label (const Fixture *f, const char *id, double swing)
{
  fixture_set (f, id, "swing_deg", swing);
  const PhRig *rig = ph_document_get_rig (f->document);
  size_t part = (size_t)ph_rig_find (rig, id);
  PhWay way = ph_way_of_swing (ph_document_get_compiled (f->document), part);
  return ph_words_way (way, swing).label;
}

static void
out_is_away_from_the_plane_on_either_side (void)
{
  Fixture f = fixture_new ();
  CHECK_TEXT (swing_label (&f, "back-bar", 20), "Out to the left");
  CHECK_TEXT (swing_label (&f, "back-bar", -20), "Out to the right");
  /* Hung on a mount that is turned 40° left, the end stays on the left whatever 5° do. */
  fixture_set (&f, "block", "swing_deg", 40);
  CHECK_TEXT (swing_label (&f, "back-bar", -5), "In to the right");
  fixture_set (&f, "block", "swing_deg", -40);
  CHECK_TEXT (swing_label (&f, "back-bar", 5), "In to the left");
  fixture_clear (&f);
}

static void
near_the_plane_the_words_are_left_and_right (void)
{
  Fixture f = fixture_new ();
  /* 762 mm · sin 0.5° = 6.6 mm; of 1° 13.3 mm */
  CHECK_TEXT (swing_label (&f, "front-bar", 0.5), "To the left");
  CHECK_TEXT (swing_label (&f, "front-bar", -0.5), "To the right");
  CHECK_TEXT (swing_label (&f, "front-bar", 0), "Left or right");
  CHECK_TEXT (swing_label (&f, "front-bar", 1), "Out to the left");
  fixture_clear (&f);
}

static void
what_is_typed_at_zero_turns_outward (void)
{
  CHECK (ph_words_way (PH_WAY_OUT_IN, 0).sign == 1);
  CHECK (ph_words_way (PH_WAY_IN_OUT, 0).sign == -1);
  CHECK (ph_words_way (PH_WAY_LEFT_RIGHT, 0).sign == 1);
  CHECK_TEXT (ph_words_way (PH_WAY_IN_OUT, 0.04).label, "Out or in");
}

static void
size_times_sign_is_the_value (void)
{
  for (PhWay way = PH_WAY_LEFT_RIGHT; way <= PH_WAY_ABOVE_BELOW; way++)
    for (int value = -2; value <= 2; value++)
      CHECK (value == 0 || ph_words_way (way, value).sign * value > 0, "way %d value %d", (int)way,
             value);
}

static void
only_left_and_right_run_a_slider_backwards (void)
{
  CHECK (ph_words_way (PH_WAY_OUT_IN, 3).sideways && ph_words_way (PH_WAY_LEFT_RIGHT, 0).sideways);
  CHECK (!ph_words_way (PH_WAY_UP_DOWN, 3).sideways);
  CHECK (!ph_words_way (PH_WAY_AHEAD_BEHIND, 3).sideways);
}

static void
a_tape_reads_where_the_tip_is (void)
{
  Fixture f = fixture_new ();
  const PhRig *rig = ph_document_get_rig (f.document);
  const PhCompiled *compiled = ph_document_get_compiled (f.document);
  size_t bar = (size_t)ph_rig_find (rig, "back-bar");
  g_autofree char *side = ph_words_tape_side (compiled, bar, PH_UNITS_METRIC);
  g_autofree char *height = ph_words_tape_height (compiled, bar, PH_UNITS_METRIC);
  g_autofree char *side_wanted = g_strdup_printf ("tip %.0f mm left of the string", TIP_LEFT_MM);
  g_autofree char *height_wanted = g_strdup_printf ("tip %.1f mm below the grip", TIP_BELOW_MM);
  CHECK_TEXT (side, side_wanted);
  CHECK_TEXT (height, height_wanted);
  size_t front = (size_t)ph_rig_find (rig, "front-bar");
  g_autofree char *in_line = ph_words_tape_side (compiled, front, PH_UNITS_TRADE);
  CHECK_TEXT (in_line, "tip in line with the string");
  fixture_clear (&f);
}

static void
a_part_that_is_off_has_no_tip_to_measure (void)
{
  Fixture f = fixture_new ();
  CHECK (ph_document_set_off (f.document, "back-bar", TRUE, NULL));
  size_t bar = (size_t)ph_rig_find (ph_document_get_rig (f.document), "back-bar");
  CHECK (!ph_words_tape_side (ph_document_get_compiled (f.document), bar, PH_UNITS_METRIC));
  CHECK (!ph_words_tape_height (ph_document_get_compiled (f.document), bar, PH_UNITS_METRIC));
  fixture_clear (&f);
}

static void
a_mirrored_v_says_where_its_sockets_are_now (void)
{
  Fixture f = fixture_new ();
  g_autoptr (GFile) file = g_file_new_for_path (DATA_DIR "/v-bars.rig.json");
  CHECK (ph_document_load_copy (f.document, file, NULL));
  for (int times = 0; times < 2; times++)
    {
      const PhRig *rig = ph_document_get_rig (f.document);
      const PhPart *bar = fixture_part (&f, "left-bar");
      g_autofree char *words = ph_words_place (rig, bar->on, FALSE);
      CHECK_TEXT (bar->on, "v-bracket:left");
      CHECK_TEXT (words, times ? "V bracket: right" : "V bracket: left");
      CHECK_TEXT (bar->name, times ? "Right back bar" : "Left back bar");
      g_autofree char *tape =
          ph_words_tape_side (ph_document_get_compiled (f.document),
                              (size_t)ph_rig_find (rig, "left-bar"), PH_UNITS_METRIC);
      CHECK (strstr (tape, times ? "right of the string" : "left of the string"), "%s", tape);
      ph_document_mirror (f.document);
    }
  fixture_clear (&f);
}

static void
places_are_named_by_what_carries_them (void)
{
  Fixture f = fixture_new ();
  const PhRig *rig = ph_document_get_rig (f.document);
  const struct
  {
    const char *on;
    gboolean along;
    const char *words;
  } cases[] = { { "bow", FALSE, "bow" },
                { "bow:rear", FALSE, "bow: rear mount" },
                { "block:a", FALSE, "side mount: a" },
                { "front-bar", FALSE, "front bar’s end" },
                { "front-bar", TRUE, "along the front bar" } };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *words = ph_words_place (rig, cases[i].on, cases[i].along);
      CHECK_TEXT (words, cases[i].words);
    }
  fixture_clear (&f);
}

static void
a_name_inside_a_sentence_keeps_its_capitals (void)
{
  const char *const cases[][2] = {
    { "Front bar", "front bar" }, { "V bar", "V bar" }, { "Été", "été" },
    { "30 in", "30 in" },         { "", "" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *inside = ph_words_inside (cases[i][0]);
      CHECK_TEXT (inside, cases[i][1]);
    }
}

static void
the_source_names_the_part_as_over_the_counter (void)
{
  Fixture f = fixture_new ();
  g_autofree char *bar = ph_words_source (fixture_part (&f, "front-bar"), PH_UNITS_MIXED);
  g_autofree char *stack = ph_words_source (fixture_part (&f, "front-stack"), PH_UNITS_MIXED);
  CHECK_TEXT (bar, "catalogue · 30 in, 18 mm"); /* 762 mm = 30 in: NIST SP 811 */
  CHECK_TEXT (stack, "catalogue · 1 oz, 25.4 mm");
  fixture_clear (&f);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (out_is_away_from_the_plane_on_either_side);
  CASE (near_the_plane_the_words_are_left_and_right);
  CASE (what_is_typed_at_zero_turns_outward);
  CASE (size_times_sign_is_the_value);
  CASE (only_left_and_right_run_a_slider_backwards);
  CASE (a_tape_reads_where_the_tip_is);
  CASE (a_part_that_is_off_has_no_tip_to_measure);
  CASE (a_mirrored_v_says_where_its_sockets_are_now);
  CASE (places_are_named_by_what_carries_them);
  CASE (a_name_inside_a_sentence_keeps_its_capitals);
  CASE (the_source_names_the_part_as_over_the_counter);
  return check_end ();
}
