/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The words for what the bow does at the shot. The bounds are the program's own.
 */
#include "model/shot-feel.h"

#include "check.h"

static void
turn_follows_from_uniform_acceleration (void)
{
  /* θ = ½ a t²: 10 rad/s² for 0.4 s are 0.8 rad = 45.84°. */
  CHECK_NEAR (ph_shot_turn_deg (10.0), 45.8366, 1e-4);
  CHECK (isnan (ph_shot_turn_deg (NAN)));
}

static void
words_change_at_three_and_fifteen_degrees (void)
{
  /* 3° and 15° in 0.4 s are 0.6545 and 3.2725 rad/s². */
  CHECK (ph_shot_feel (0.654) == PH_SHOT_STAYS);
  CHECK (ph_shot_feel (0.655) == PH_SHOT_FORWARD_SLOWLY);
  CHECK (ph_shot_feel (3.272) == PH_SHOT_FORWARD_SLOWLY);
  CHECK (ph_shot_feel (3.273) == PH_SHOT_FORWARD_QUICKLY);
}

static void
backward_is_the_mirror_of_forward (void)
{
  CHECK (ph_shot_feel (-0.654) == PH_SHOT_STAYS);
  CHECK (ph_shot_feel (-0.655) == PH_SHOT_BACK_SLOWLY);
  CHECK (ph_shot_feel (-3.273) == PH_SHOT_BACK_QUICKLY);
  CHECK (ph_shot_feel (0.0) == PH_SHOT_STAYS);
}

static void
without_inertia_there_is_no_word (void)
{
  CHECK (ph_shot_feel (NAN) == PH_SHOT_UNKNOWN);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (turn_follows_from_uniform_acceleration);
  CASE (words_change_at_three_and_fifteen_degrees);
  CASE (backward_is_the_mirror_of_forward);
  CASE (without_inertia_there_is_no_word);
  return check_end ();
}
