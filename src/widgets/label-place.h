/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where labels go so that none covers another and none is cut by the picture's edge. Plain
 * rectangles in pixels, no toolkit.
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

typedef struct
{
  double width, height; /* of the picture */
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
                           const PhLabelBox *wanted, size_t n, double reach, PhLabelBox *found);
