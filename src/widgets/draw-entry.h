/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What was read of one draw: the bubble shown on a drawn vial where its marks are calibrated,
 * degrees and a side typed, or a photo. A typed sign means what it does in the file.
 *
 * Signals: "entered" (): Return with a good reading.
 */
#pragma once

#include <gtk/gtk.h>

#include "document/document.h"

G_BEGIN_DECLS

#define PH_TYPE_DRAW_ENTRY (ph_draw_entry_get_type ())
G_DECLARE_FINAL_TYPE (PhDrawEntry, ph_draw_entry, PH, DRAW_ENTRY, GtkWidget)

GtkWidget *ph_draw_entry_new (PhDocument *document);

/** Shows a reading [deg, the file's sign]; NAN empties it. `photo_sd_deg`: how well a photo tells
 * it; NAN: it is not from a photo. */
void ph_draw_entry_set (PhDrawEntry *self, double tilt_deg, double photo_sd_deg);
/** Takes what is typed. FALSE: it is no reading; the sentence stands below, the text stays.
 * `*photo_sd_deg` is NAN where it is not what a photo gave. */
gboolean ph_draw_entry_take (PhDrawEntry *self, double *tilt_deg, double *photo_sd_deg);
/** Whether something was read or typed, good or not. */
gboolean ph_draw_entry_is_touched (PhDrawEntry *self);
/** Puts the focus where a reading is made. */
void ph_draw_entry_edit (PhDrawEntry *self);

G_END_DECLS
