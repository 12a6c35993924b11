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
  ENTRY (PH_REFUSED_COINCIDE, "two of the points lie on one another; set them farther apart")      \
  ENTRY (PH_REFUSED_SHORT,                                                                         \
         "the points of a line lie less than 40 pixels apart; set them far apart along it")        \
  ENTRY (PH_REFUSED_CROOKED, "the points of a line do not lie on a line; one of them is off, or "  \
                             "the camera did not stand straight behind")                           \
  ENTRY (PH_REFUSED_TOO_STEEP,                                                                     \
         "60° or more between string and edge; one of the two is not what it should be")           \
  ENTRY (PH_REFUSED_VIAL_SMALL,                                                                    \
         "the vial's lines lie less than 8 pixels apart; take the photo from nearer")              \
  ENTRY (PH_REFUSED_VIAL_STEEP, "the vial stands upright in the picture; turn the picture first")  \
  ENTRY (PH_REFUSED_BESIDE_VIAL, "the bubble lies outside its vial; one of the points is off")     \
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
