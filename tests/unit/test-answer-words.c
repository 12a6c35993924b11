/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Level's answers and the next check in words, on a rig with a back bar out to the left: out is
 * away from the bow's plane. What is expected is written by hand from the signs of the rig file's
 * page.
 */
#include "widgets/answer-words.h"

#include "check.h"
#include "model/part.h"
#include "model/starter.h"
#include "widgets/coarse-move.h"
#include "widgets/reading-result.h"
#include "widgets/tilt-words.h"

/* A compound with a back bar on its rear mount, 20° out to the left, and 5 discs at its end. */
static PhRig *
rig_with_back_bar (void)
{
  PhStarter starter = { PH_BOW_COMPOUND, PH_BOW_HAND_LEFT, 712, NAN };
  PhRig *rig = ph_starter_rig (&starter, NULL);
  PhPart bar = ph_part_default (PH_PART_BAR), stack = ph_part_default (PH_PART_WEIGHTS);
  bar.id = strdup ("back-bar");
  bar.name = strdup ("Back bar");
  bar.on = strdup ("bow:rear");
  /* The rear mount points back, and left is +l there: positive swing is out to the left. */
  bar.swing_deg = 20;
  bar.length_mm = 305;
  bar.outer_mm = 18;
  bar.inner_mm = 16;
  bar.mass_g = 95;
  stack.id = strdup ("back-stack");
  stack.name = strdup ("Back stack");
  stack.on = strdup ("back-bar");
  stack.count = 5;
  stack.each_g = 28.35;
  stack.diameter_mm = 25.4;
  stack.each_mm = 7.2;
  ph_rig_append (rig, bar);
  ph_rig_append (rig, stack);
  return rig;
}

static void
expect_change (const char *id, const char *key, double from, double to, const char *answer,
               const char *task)
{
  PhRig *rig = rig_with_back_bar ();
  PhCompiled *compiled = ph_compile_rig (rig);
  PhPartChange change = { ph_rig_find (rig, id), key, from, to };
  char *words = ph_answer_change_words (rig, compiled, &change);
  char *sentence = ph_check_change_words (rig, compiled, &change);
  CHECK_TEXT (words, answer);
  CHECK_TEXT (sentence, task);
  g_free (words);
  g_free (sentence);
  ph_compiled_free (compiled);
  ph_rig_free (rig);
}

static void
a_turn_says_which_way_by_how_much_and_to_where (void)
{
  expect_change ("back-bar", "swing_deg", 20, 26, "Back bar out 6°, to 26°",
                 "Turn the back bar out to 26°.");
  expect_change ("back-bar", "swing_deg", 20, 10, "Back bar in 10°, to 10° out",
                 "Turn the back bar in to 10°.");
  expect_change ("back-bar", "swing_deg", 20, -5, "Back bar in 25°, to 5°",
                 "Turn the back bar to 5° in.");
  expect_change ("back-bar", "lift_deg", 0, -12, "Back bar down 12°, to 12°",
                 "Turn the back bar down to 12°.");
}

static void
discs_are_more_or_fewer (void)
{
  expect_change ("back-stack", "count", 5, 7, "Back stack 2 more, to 7",
                 "Take the back stack to 7, 2 more.");
  expect_change ("back-stack", "count", 5, 4, "Back stack 1 fewer, to 4",
                 "Take the back stack to 4, 1 fewer.");
}

static void
a_positive_tilt_is_a_bubble_to_the_left_and_a_bow_to_the_right (void)
{
  char *bubble = ph_tilt_phrase (0.4, TRUE), *lean = ph_tilt_phrase (0.4, FALSE);
  char *none = ph_tilt_phrase (-0.04, TRUE);
  CHECK_TEXT (bubble, "bubble 0.4° left");
  CHECK_TEXT (lean, "leans 0.4° right");
  CHECK_TEXT (none, "bubble centred");
  CHECK_NEAR (ph_tilt_of_side (2, TRUE, TRUE), 2, 0);
  CHECK_NEAR (ph_tilt_of_side (2, TRUE, FALSE), -2, 0);
  g_free (bubble);
  g_free (lean);
  g_free (none);
}

static PhPartStep
step (int part, const char *key, double now, double lo, double hi, double bubble_rad)
{
  return (PhPartStep){ .part = part,
                       .key = key,
                       .now = now,
                       .step = 1,
                       .lo = lo,
                       .hi = hi,
                       .effect = { .bubble_rad = bubble_rad } };
}

static void
a_coarse_move_turns_before_it_takes_weight_and_goes_the_right_way (void)
{
  PhPartChange move;
  /* More count moves the bubble most, yet an angle is turned. One more degree tilts the top limb
     to the right (+), so a limb far right asks for fewer. */
  const PhPartStep steps[] = { step (1, "count", 5, 0, 12, 0.02),
                               step (2, "swing_deg", 20, -60, 60, 0.002),
                               step (3, "lift_deg", 0, -45, 45, -0.001) };
  CHECK (ph_coarse_move (steps, 3, TRUE, &move));
  CHECK (move.part == 2 && move.from == 20 && move.to == 10);
  CHECK (ph_coarse_move (steps, 3, FALSE, &move));
  CHECK (move.part == 2 && move.to == 30);
  CHECK (ph_coarse_move (steps, 1, TRUE, &move));
  CHECK (move.part == 1 && move.to == 3);
}

static void
a_coarse_move_keeps_to_limits_and_may_find_nothing (void)
{
  PhPartChange move;
  const PhPartStep steps[] = { step (2, "swing_deg", 20, 17, 60, 0.002),
                               step (3, "lift_deg", 0, -45, 45, NAN) };
  CHECK (ph_coarse_move (steps, 2, TRUE, &move) && move.to == 17);
  CHECK (!ph_coarse_move (steps + 1, 1, TRUE, &move));
  CHECK (!ph_coarse_move (steps, 0, TRUE, &move));
}

static void
a_reading_says_its_mean_its_scatter_and_its_draws (void)
{
  const double draws[] = { 0.5, 0.6, 0.7 };
  PhReadingResult result = { draws, 3, 0.4, TRUE, TRUE, 0 };
  char *read = ph_reading_result_words (&result), *said = ph_reading_prediction_words (&result);
  /* s = 0.1, s/√3 = 0.058: the least that is claimed is 0.15 (deciding, section 4). */
  CHECK_TEXT (read, "Bubble 0.6° left, give or take 0.15° (0.5° left, 0.6° left, 0.7° left)");
  CHECK_TEXT (said, "Predicted before it was read: 0.4° left.");
  g_free (read);
  g_free (said);
}

static void
expect_tilt (const char *text, gboolean level, double want)
{
  double got = NAN;
  gboolean read = ph_tilt_parse (text, level, &got);
  CHECK (read == !isnan (want), "«%s»", text);
  if (!isnan (want))
    CHECK_NEAR (got, want, 1e-12);
}

/* The file's sign: positive when the top limb tips right, the bubble then stands left. */
static void
a_check_that_narrows_nothing_one_sees_is_not_said_to (void)
{
  char *words = ph_check_gain_words (1.5, 0.4);
  CHECK (strcmp (words, "narrows ±1.5° to ±0.4°") == 0, "%s", words);
  g_free (words);
  words = ph_check_gain_words (0.42, 0.39);
  CHECK (strcmp (words, "hardly narrows ±0.4°") == 0, "%s", words);
  g_free (words);
  CHECK (ph_check_gain_words (NAN, 0.4) == NULL);
}

static void
tilt_is_typed_with_its_side_or_with_the_files_sign (void)
{
  expect_tilt ("1 left", TRUE, 1);
  expect_tilt ("1.5° right", TRUE, -1.5);
  expect_tilt ("Left 1,5", TRUE, 1.5);
  expect_tilt ("1.5 LEFT", FALSE, -1.5);
  expect_tilt ("2right", FALSE, 2);
  expect_tilt ("-1", TRUE, -1);
  expect_tilt (" 2° ", FALSE, 2);
  expect_tilt ("0", TRUE, 0);
  expect_tilt ("centred", TRUE, 0);
  expect_tilt ("-1 left", TRUE, NAN);
  expect_tilt ("+1 left", TRUE, NAN);
  expect_tilt ("left", TRUE, NAN);
  expect_tilt ("left 1 right", TRUE, NAN);
  expect_tilt ("", TRUE, NAN);
  expect_tilt ("1 oz left", TRUE, NAN);
  for (double deg = -3; deg <= 3; deg += 0.5)
    for (int level = 0; level < 2; level++)
      {
        g_autofree char *words = ph_tilt_words (deg, level);
        expect_tilt (words, level, deg);
      }
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (a_turn_says_which_way_by_how_much_and_to_where);
  CASE (discs_are_more_or_fewer);
  CASE (a_positive_tilt_is_a_bubble_to_the_left_and_a_bow_to_the_right);
  CASE (a_coarse_move_turns_before_it_takes_weight_and_goes_the_right_way);
  CASE (a_coarse_move_keeps_to_limits_and_may_find_nothing);
  CASE (a_reading_says_its_mean_its_scatter_and_its_draws);
  CASE (a_check_that_narrows_nothing_one_sees_is_not_said_to);
  CASE (tilt_is_typed_with_its_side_or_with_the_files_sign);
  return check_end ();
}
