/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The largest reading: the vial and what it says, side by side where there is room, else one under
 * the other. For a bow without a level it is the lean.
 *
 * Property "why" (boolean, notifies): the Why button is down; bind it to the visibility of a
 * PhWhyPanel. The buttons "Level" and "Add a check" show where the window has the actions win.level
 * and win.add-check.
 */
#pragma once

#include <gtk/gtk.h>

#include "document/document.h"

G_BEGIN_DECLS

#define PH_TYPE_BUBBLE_PANE (ph_bubble_pane_get_type ())
G_DECLARE_FINAL_TYPE (PhBubblePane, ph_bubble_pane, PH, BUBBLE_PANE, GtkWidget)

GtkWidget *ph_bubble_pane_new (PhDocument *document);

G_END_DECLS
