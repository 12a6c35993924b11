/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * New: four answers (bow kind, the hand that holds it, draw length, units) and an optional height
 * make a first rig, in which every guessed number is marked as guessed.
 */
#pragma once

#include <gtk/gtk.h>

#include "document/document.h"

G_BEGIN_DECLS

#define PH_TYPE_NEW_DIALOG (ph_new_dialog_get_type ())
G_DECLARE_FINAL_TYPE (PhNewDialog, ph_new_dialog, PH, NEW_DIALOG, GtkWindow)

/** Shows the dialog over `parent`. On "Make rig" the document holds the new rig and the chosen
 * units are remembered in `settings` (may be null); on Cancel nothing has changed. */
void ph_new_dialog_present (GtkWindow *parent, PhDocument *document, GSettings *settings);

G_END_DECLS
