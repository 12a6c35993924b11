/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Why a reading taken on the bow cannot be: one list that makes both the codes and their texts. A
 * refused reading gives no number.
 */
#pragma once

/** ENTRY (code, why: plain English without a full stop). */
#define PH_REFUSED_LIST(ENTRY)                                                                     \
  ENTRY (PH_NOT_REFUSED, "the reading stands")                                                     \
  ENTRY (PH_REFUSED_NO_WEIGHT, "the two scales together show no weight")                           \
  ENTRY (PH_REFUSED_ONE_PLACE, "the two scales stand in one place; put them apart")                \
  ENTRY (PH_REFUSED_PARALLEL,                                                                      \
         "no two plumb lines differ by 10°; hang the bow from points farther apart")               \
  ENTRY (PH_REFUSED_APART,                                                                         \
         "the plumb lines miss each other by more than 30 mm; one of them is off")                 \
  ENTRY (PH_REFUSED_NOT_ABOVE_ZERO, "mass, lengths, swings and seconds should all be above 0")     \
  ENTRY (PH_REFUSED_INERTIA,                                                                       \
         "the inertia comes out negative; the swing was too quick, or the distance too long")      \
  ENTRY (PH_REFUSED_PARTS_HEAVY, "the fitted parts alone weigh as much as what was read, or more") \
  ENTRY (PH_REFUSED_PARTS_INERTIA,                                                                 \
         "the fitted parts alone have as much inertia as what was read, or more")                  \
  ENTRY (PH_REFUSED_NOT_FINITE, "its numbers are beyond any bow")

typedef enum
{
#define PH_REFUSED_ENUM(code, text) code,
  PH_REFUSED_LIST (PH_REFUSED_ENUM)
#undef PH_REFUSED_ENUM
      PH_REFUSED_COUNT
} PhRefused;

/** Never null. */
const char *ph_refused_text (PhRefused refused);
