/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What deviation a check is stored with: that of its draws, unless the photos tell them worse.
 */
#include "widgets/check-draws.h"

#include "check.h"

static void
typed_draws_follow_the_rule (void)
{
  PhCheckDraws draws = ph_check_draws_none ();
  ph_check_draws_take (&draws, 0, 0.4, NAN);
  CHECK_NEAR (ph_check_draws_reading (&draws).sd_deg, 0.3, 0); /* one draw */
  ph_check_draws_take (&draws, 1, 1.4, NAN);
  /* s = 1/√2, over √2 */
  CHECK_NEAR (ph_check_draws_reading (&draws).sd_deg, 0.5, 1e-15);
  CHECK (!ph_check_draws_from_photo (&draws));
  CHECK (ph_check_draws_reading (&draws).n_draws == 2);
}

static void
a_good_photo_does_not_make_a_draw_better (void)
{
  PhCheckDraws draws = ph_check_draws_none ();
  ph_check_draws_take (&draws, 0, 0.4, 0.1);
  /* The archer's next draw scatters all the same. */
  CHECK_NEAR (ph_check_draws_reading (&draws).sd_deg, 0.3, 0);
  CHECK (ph_check_draws_from_photo (&draws));
}

static void
a_poor_photo_makes_it_worse (void)
{
  PhCheckDraws draws = ph_check_draws_none ();
  ph_check_draws_take (&draws, 0, 0.4, 0.8);
  CHECK_NEAR (ph_check_draws_reading (&draws).sd_deg, 0.8, 1e-15);
  ph_check_draws_take (&draws, 1, 0.4, 0.6);
  /* √(0.64 + 0.36)/2 */
  CHECK_NEAR (ph_check_draws_reading (&draws).sd_deg, 0.5, 1e-15);
}

static void
a_draw_that_is_typed_anew_is_no_photo (void)
{
  PhCheckDraws draws = ph_check_draws_none ();
  ph_check_draws_take (&draws, 0, 0.4, 0.8);
  ph_check_draws_take (&draws, 0, 0.5, NAN);
  CHECK (!ph_check_draws_from_photo (&draws));
  CHECK_NEAR (ph_check_draws_reading (&draws).sd_deg, 0.3, 0);
}

static void
a_check_that_is_put_right_keeps_its_deviation_while_its_draws_stay (void)
{
  double stored[2] = { -0.4, -0.6 };
  PhCheck check = ph_check_default ();
  check.bubble_deg = -0.5;
  check.sd_deg = 0.7;
  check.draws_deg = stored;
  check.n_draws = 2;
  PhCheckDraws draws = ph_check_draws_of (&check);
  CHECK (draws.n == 2 && draws.deg[1] == -0.6);
  CHECK_NEAR (ph_check_draws_reading (&draws).sd_deg, 0.7, 0);
  ph_check_draws_take (&draws, 1, -0.6, NAN); /* walked through, unchanged */
  CHECK_NEAR (ph_check_draws_reading (&draws).sd_deg, 0.7, 0);
  ph_check_draws_take (&draws, 1, -0.7, NAN);
  CHECK_NEAR (ph_check_draws_reading (&draws).sd_deg, 0.15, 1e-15);
  /* One without draws is its bubble. */
  check.n_draws = 0;
  draws = ph_check_draws_of (&check);
  CHECK (draws.n == 1 && draws.deg[0] == -0.5);
}

static void
draws_are_told_as_they_are_read (void)
{
  PhCheckDraws draws = ph_check_draws_none ();
  ph_check_draws_take (&draws, 0, 0.4, NAN);
  ph_check_draws_take (&draws, 1, -0.6, 0.2);
  g_autofree char *bubble = ph_check_draws_words (&draws, 2, TRUE);
  g_autofree char *lean = ph_check_draws_words (&draws, 1, FALSE);
  CHECK_TEXT (bubble, "0.4° left, 0.6° right");
  CHECK_TEXT (lean, "0.4° right");
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (typed_draws_follow_the_rule);
  CASE (a_good_photo_does_not_make_a_draw_better);
  CASE (a_poor_photo_makes_it_worse);
  CASE (a_draw_that_is_typed_anew_is_no_photo);
  CASE (a_check_that_is_put_right_keeps_its_deviation_while_its_draws_stay);
  CASE (draws_are_told_as_they_are_read);
  return check_end ();
}
