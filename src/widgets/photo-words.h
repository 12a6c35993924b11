/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Reading a photo in words: what to click next, what a point is called, what came out. Translated;
 * no toolkit here.
 */
#pragma once

#include "widgets/photo-clicks.h"

G_BEGIN_DECLS

/** "Click the string near its upper end." */
const char *ph_photo_step_words (const PhPhotoClicks *clicks);
/** "String, point 1, at 412 across and 96 down". New string. */
char *ph_photo_point_words (const PhPhotoClicks *clicks, guint i);
/** "Leans 1.2° left ±0.2°", "Bubble 0.40 marks left ±0.02", why the points give nothing, or, where
 * some are missing, null. New string. */
char *ph_photo_result_words (const PhPhotoClicks *clicks, const PhPhotoReading *reading,
                             gboolean level);
/** What goes with it: which way the bow leans where the bubble was told, or what is needed to make
 * marks degrees; null: nothing. New string. */
char *ph_photo_result_more (const PhPhotoClicks *clicks, const PhPhotoReading *reading,
                            gboolean level);
/** How the photo is taken: a sentence or two each; null after the last. */
const char *ph_photo_how (guint line);

G_END_DECLS
