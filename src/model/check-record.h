/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The record of what was predicted before each bubble check and what was then read: for this
 * archer, whether the predictions hold. A prediction's 90 % band is that of a reading, with the
 * hand as the checks before it made it: the interval of the cant and the reading's own scatter.
 * Costs one fit of the hand a check.
 */
#pragma once

#include "model/rig.h"

typedef struct
{
  bool sealed;        /* a prediction was written down before the reading */
  bool own_hand;      /* it rested on at least one earlier check in use; else on an assumed hand */
  double half_deg;    /* half-width of its 90 % band; NAN where not sealed, not the own hand's, or
                         where that hand could not hold that rig */
  bool held;          /* the reading lies within the band */
  double residual_sd; /* (read − predicted)/σ with the hand as all checks now have it; NAN where no
                         check is in use */
  bool disagrees;     /* its size is above PH_CHECK_DISAGREES */
} PhCheckRecord;

/** One for each check of the archer, in file order: a new array, free (). */
PhCheckRecord *ph_check_records_of (const PhRig *rig);

/** How many predictions of the own hand there are, and how many of them held. */
size_t ph_check_records_count (const PhCheckRecord *records, size_t n, size_t *held);
