/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Checks are plain doubles without gaps, so their bytes tell whether they are the same.
 */
#include "model/hand-kept.h"

#include <stdlib.h>
#include <string.h>

#include "base/text.h"

_Static_assert(sizeof (PhBubbleCheck) == 5 * sizeof (double), "a check has no gaps in it");

typedef struct
{
  PhBubbleCheck *checks; /* null: nothing is kept */
  size_t n;
  PhHand hand;
  PhStatus status;
} Kept;

static _Thread_local Kept kept;

PhStatus
ph_hand_fit_kept (const PhBubbleCheck *checks, size_t n, PhHand *hand)
{
  size_t size = n * sizeof *checks;
  if (!kept.checks || kept.n != n || memcmp (kept.checks, checks, size) != 0)
    {
      kept.status = ph_hand_fit (checks, n, &kept.hand);
      kept.checks = ph_realloc (kept.checks, size + sizeof *checks);
      memcpy (kept.checks, checks, size);
      kept.n = n;
    }
  if (kept.status == PH_OK)
    *hand = kept.hand;
  return kept.status;
}
