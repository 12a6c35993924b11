/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where labels go so that none covers another, none is cut by the picture's edge, and none hides
 * the bow where it need not. Plain rectangles in pixels, no toolkit.
 */
#pragma once

#include <stdbool.h>
#include <stddef.h>

typedef struct
{
  double x, y, width, height; /* x, y: upper left corner */
} PhLabelBox;

/** Most boxes a picture has; labels beyond are not placed. */
#define PH_LABELS_MOST 32
/** Most wanted places of one label. */
#define PH_LABEL_WANTED_MOST 8

/** What labels keep off (label-mask.h). */
typedef struct PhLabelMask PhLabelMask;

/** How many of its cells lie under a box. */
int ph_label_mask_covered (const PhLabelMask *mask, const PhLabelBox *box);

typedef enum
{
  PH_LABEL_OFF,   /* off what the mask covers where there is room, else over it */
  PH_LABEL_NEVER, /* never over it */
  PH_LABEL_OVER   /* as if there were no mask */
} PhLabelCare;

typedef struct
{
  double width, height;    /* of the picture */
  const PhLabelMask *mask; /* borrowed; null: nothing to keep off */
  PhLabelBox taken[PH_LABELS_MOST];
  size_t n;
} PhLabelPlaces;

PhLabelPlaces ph_label_places (double width, double height);

/** Keeps a box free of labels: a symbol that must stay readable. */
void ph_label_places_take (PhLabelPlaces *places, PhLabelBox box);

/** Finds room for a label of that size and takes it: the first of the `n` wanted corners (x, y of
 * each) that is free, moved inside the picture where it sticks out; else the free place nearest to
 * the first within `reach`. False where there is none: the label is then left out. */
bool ph_label_places_find (PhLabelPlaces *places, double width, double height,
                           const PhLabelBox *wanted, size_t n, double reach, PhLabelCare care,
                           PhLabelBox *found);
