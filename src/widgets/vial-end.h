/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The bubble stands at its vial's end: that is no reading. Which end it is, and what to turn until
 * it floats again.
 *
 * Signals: "move-changed" ().
 */
#pragma once

#include <gtk/gtk.h>

#include "document/document.h"

G_BEGIN_DECLS

#define PH_TYPE_VIAL_END (ph_vial_end_get_type ())
G_DECLARE_FINAL_TYPE (PhVialEnd, ph_vial_end, PH, VIAL_END, GtkWidget)

GtkWidget *ph_vial_end_new (PhDocument *document);

/** Neither end is chosen; the focus goes to the choice. */
void ph_vial_end_start (PhVialEnd *self);
gboolean ph_vial_end_has_move (PhVialEnd *self);
/** Sets the move in the rig. FALSE, with or without an error: there is none, or it was refused. */
gboolean ph_vial_end_take (PhVialEnd *self, GError **error);

G_END_DECLS
