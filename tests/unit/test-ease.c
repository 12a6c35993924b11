/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The drawn way to a value: continuous, never beyond, over in time.
 */
#include "widgets/ease.h"

#include "check.h"

static void
it_arrives_exactly_and_in_time (void)
{
  PhEase ease = ph_ease_rest (20);
  ph_ease_to (&ease, 21, 1000000);
  CHECK (ph_ease_at (&ease, 1000000) == 20 && !ph_ease_is_over (&ease, 1000000));
  CHECK (!ph_ease_is_over (&ease, 1000000 + PH_EASE_US - 1));
  CHECK (ph_ease_is_over (&ease, 1000000 + PH_EASE_US));
  CHECK (ph_ease_at (&ease, 1000000 + PH_EASE_US) == 21);
  CHECK (ph_ease_at (&ease, 9000000) == 21, "and stays");
  CHECK (ph_ease_at (&ease, 5) == 20, "a clock that is behind moves nothing");
  CHECK (PH_EASE_US >= 80000 && PH_EASE_US <= 120000);
}

static void
it_never_turns_back_or_goes_beyond (void)
{
  PhEase ease = ph_ease_rest (-3);
  ph_ease_to (&ease, 7, 0);
  double before = -3;
  for (int64_t t = 0; t <= PH_EASE_US; t += 500)
    {
      double at = ph_ease_at (&ease, t);
      CHECK (at >= before && at <= 7, "%g after %g", at, before);
      before = at;
    }
  CHECK (ph_ease_at (&ease, PH_EASE_US / 2) > 2, "most of the way in the first half");
}

static void
a_new_aim_on_the_way_makes_no_jump (void)
{
  PhEase ease = ph_ease_rest (0);
  int64_t t = 0;
  double before = 0;
  /* A step every 30 ms, as a quick hand makes them; drawn every 1/60 s. */
  for (int frame = 0; frame < 60; frame++, t += 16667)
    {
      if (frame % 2 == 0 && frame < 40)
        ph_ease_to (&ease, frame / 2 + 1, t);
      double at = ph_ease_at (&ease, t);
      CHECK (fabs (at - before) < 1.5, "frame %d: from %g to %g", frame, before, at);
      CHECK (at <= ease.to);
      before = at;
    }
  CHECK (before == 20);
}

static void
the_same_aim_again_changes_nothing (void)
{
  PhEase ease = ph_ease_rest (0);
  ph_ease_to (&ease, 1, 0);
  double at = ph_ease_at (&ease, 50000);
  ph_ease_to (&ease, 1, 50000);
  CHECK (ph_ease_at (&ease, 50000) == at && ph_ease_at (&ease, PH_EASE_US) == 1);
  CHECK (ph_ease_is_over (&(PhEase){ 4, 4, 77 }, 77), "no way at all is over at once");
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (it_arrives_exactly_and_in_time);
  CASE (it_never_turns_back_or_goes_beyond);
  CASE (a_new_aim_on_the_way_makes_no_jump);
  CASE (the_same_aim_again_changes_nothing);
  return check_end ();
}
