/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A short message at the foot of the window with one button ("Removed back bar and its weights ·
 * Undo") that leaves by itself, but not while the pointer or the keyboard is on it.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PH_TYPE_TOAST (ph_toast_get_type ())
G_DECLARE_FINAL_TYPE (PhToast, ph_toast, PH, TOAST, GtkWidget)

/** Hidden until it says something; meant as an overlay's child. (transfer floating) */
GtkWidget *ph_toast_new (void);

/** Shows `text` for some seconds; `button_label` (null: no button) does `action`, an action's
 * detailed name, and closes it. */
void ph_toast_say (PhToast *self, const char *text, const char *button_label, const char *action);

void ph_toast_close (PhToast *self);

G_END_DECLS
