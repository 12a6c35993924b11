/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A drawn vial on which a helper shows where the bubble stood: by a click, a drag or the arrow
 * keys, in marks of the vial (a mark is the way from one line to the next). It knows no degrees.
 *
 * Signals: "picked" (double marks): the person moved it there; set_marks does not emit it.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/** How far the vial reaches to either side. */
#define PH_VIAL_MARKS 3.0
/** One press of an arrow key. */
#define PH_VIAL_MARKS_STEP 0.1

#define PH_TYPE_VIAL_PICKER (ph_vial_picker_get_type ())
G_DECLARE_FINAL_TYPE (PhVialPicker, ph_vial_picker, PH, VIAL_PICKER, GtkWidget)

/** `name` for a screen reader; copied. */
GtkWidget *ph_vial_picker_new (const char *name);

/** Where the bubble stands, positive to the left; NAN: not read yet, it is drawn as an outline. */
void ph_vial_picker_set_marks (PhVialPicker *self, double marks);
double ph_vial_picker_get_marks (PhVialPicker *self);
/** What a screen reader says of it behind its name: the toolkit's 4.8 tells no value of such a
 * widget. */
void ph_vial_picker_set_text (PhVialPicker *self, const char *text);

G_END_DECLS
