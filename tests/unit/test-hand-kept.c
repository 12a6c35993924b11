/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A fit that is kept against one that is made anew: to the last bit, whatever was asked before.
 */
#include "model/hand-kept.h"

#include <string.h>

#include "check.h"

#define MANY 5

static PhBubbleCheck checks[MANY];

static void
make_checks (double bubble)
{
  for (int i = 0; i < MANY; i++)
    checks[i] =
        (PhBubbleCheck){ { 0.02 * (i % 11 - 5), -0.4, 0.998 }, bubble + 0.001 * (i % 7), 0.005 };
}

static void
check_kept (size_t n)
{
  PhHand anew = { 0 }, once = { 0 }, twice = { 0 };
  CHECK (ph_hand_fit (checks, n, &anew) == PH_OK);
  CHECK (ph_hand_fit_kept (checks, n, &once) == PH_OK);
  CHECK (ph_hand_fit_kept (checks, n, &twice) == PH_OK);
  CHECK (memcmp (&anew, &once, sizeof anew) == 0 && memcmp (&anew, &twice, sizeof anew) == 0);
}

static void
kept_fit_is_the_fit_to_the_last_bit (void)
{
  make_checks (0.01);
  for (size_t n = 0; n < 5; n++)
    check_kept (n);
  checks[2].bubble_rad += 1e-12; /* the least change is another question */
  check_kept (4);
  checks[2].sd_rad *= 2;
  check_kept (4);
  check_kept (3);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (kept_fit_is_the_fit_to_the_last_bit);
  return check_end ();
}
