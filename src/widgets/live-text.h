/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A text that may change each frame. Its width does not depend on the text (so many characters),
 * and a new text that takes as many lines as the old one is only drawn, not laid out: a GtkLabel
 * would have the whole window measured anew for each digit.
 *
 * Properties: "chars" (int): characters of the natural width; "least-chars" (int): of the least
 * width; "xalign" (float): 0 start, 0.5 middle, 1 end; "single-line" (boolean): cut with "…"
 * instead of wrapped.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PH_TYPE_LIVE_TEXT (ph_live_text_get_type ())
G_DECLARE_FINAL_TYPE (PhLiveText, ph_live_text, PH, LIVE_TEXT, GtkWidget)

/** One line, cut where it does not fit. */
GtkWidget *ph_live_text_new_single_line (int chars, float xalign);

/** Copies the text; null or empty hides the widget. */
void ph_live_text_show (PhLiveText *self, const char *text);
/** Borrowed, never null. */
const char *ph_live_text_get (PhLiveText *self);

/** How wide the text is, on one line [px]. */
int ph_live_text_get_full_width (PhLiveText *self);

void ph_live_text_set_bold (PhLiveText *self);

G_END_DECLS
