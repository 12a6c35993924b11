/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The record of what was predicted before each bubble check and what was then read: for this
 * archer, whether the predictions hold. A verdict rests on what was sealed with the check alone:
 * what is set aside, put right or deleted later changes no other check's. A prediction's 90 % band
 * is that of a reading: the sealed interval of the bubble and the reading's own scatter. A check
 * that was recorded before intervals were kept has the one of the hand as all checks before it make
 * it; that costs one fit of the hand each, so that late ones of a long list are not judged.
 */
#pragma once

#include "model/rig.h"

typedef struct
{
  bool sealed;        /* a prediction was written down before the reading */
  bool own_hand;      /* it rested on an earlier check; else on an assumed hand, and never counts */
  double half_deg;    /* half-width of its 90 % band; NAN where not sealed, not the own hand's or
                         not kept */
  bool held;          /* the reading lies within the band */
  double residual_sd; /* (read − predicted)/σ with the hand as all checks now have it; NAN where no
                         check is in use */
  bool disagrees;     /* its size is above PH_CHECK_DISAGREES */
} PhCheckRecord;

/** One for each check of the archer, in file order: a new array, free (). */
PhCheckRecord *ph_check_records_of (const PhRig *rig);

/** How many predictions of the own hand there are, and how many of them held. */
size_t ph_check_records_count (const PhCheckRecord *records, size_t n, size_t *held);
