/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is under a pixel, or on a ray of sight.
 */
#pragma once

#include "scene/outline.h"

/** Picking is this generous with a mouse [px]. */
#define PH_PICK_SLACK_PX 4.0f

/** The item of the draw list that is seen at `at`: the nearest to the eye there; where nothing is,
 * the one whose edge is nearest within the slack; in the free view by a ray of sight. −1: nothing.
 * The hand and the arrow are not picked: they are there to look at. */
int ph_pick_item (const PhOutlines *outlines, const PhDrawList *list, PhPixel at, float slack_px);

/** Its part: an index in rig->parts, PH_PART_BOW, or PH_PART_NONE for nothing. */
int ph_pick_part (const PhOutlines *outlines, const PhDrawList *list, PhPixel at, float slack_px);

/** All parts under a pixel, each once, the nearest to the eye first; at most `n_most`. Returns how
 * many. */
size_t ph_pick_parts (const PhOutlines *outlines, const PhDrawList *list, PhPixel at, int *parts,
                      size_t n_most);

/** The first item that the ray from `from` along the unit `way` meets (bow frame, mm), grown by
 * `slack_mm`; `*along_mm`, where given, is how far along. −1: none. A sweep is taken as a
 * chain of blocks without its holes, a waisted tube as wide as its wider end. */
int ph_pick_ray (const PhDrawList *list, PhPoint from, PhPoint way, float slack_mm,
                 float *along_mm);
