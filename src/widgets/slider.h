/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A scale that moves in round steps. A drag is one gesture from press to release, finer while Shift
 * is held; arrow keys are one step, with Shift five, with Control a fine one. The wheel scrolls
 * what it lies in and never changes it.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PH_TYPE_SLIDER (ph_slider_get_type ())
G_DECLARE_FINAL_TYPE (PhSlider, ph_slider, PH, SLIDER, GtkScale)

/* Signals:
 *   "drag-begin" (), "drag-end" ()  around a pointer's press and release, always in pairs
 *   "moved" (double value)          the person moved it there; set_value does not emit it */

GtkWidget *ph_slider_new (void);

/** Ends and steps, all in the slider's own unit. A range with both signs is filled from 0. */
void ph_slider_set_range (PhSlider *self, double lo, double hi, double step, double fine);
/** Shows a value; the range stretches to it. */
void ph_slider_set_value (PhSlider *self, double value);
void ph_slider_set_label (PhSlider *self, const char *label);
/** What a screen reader says instead of the bare number: "20° out to the left". */
void ph_slider_set_value_text (PhSlider *self, const char *text);

/** The next multiple of `step` beyond `value`, `steps` of them (negative: below). */
double ph_slider_next (double value, double step, int steps);

G_END_DECLS
