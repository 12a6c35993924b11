/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * "Centre the bubble": Level's answers in their order, looked at by pointer or focus, done by one
 * click and undone by one. What is wanted, and how near, is typed here. A rig that is level already
 * may be made lighter; the other side is only explained.
 *
 * Signals: "refused" (string why); "check-wanted" (): the button that stands there while the hand
 * is only assumed.
 */
#pragma once

#include <gtk/gtk.h>

#include "document/document.h"

G_BEGIN_DECLS

#define PH_TYPE_LEVEL_PANEL (ph_level_panel_get_type ())
G_DECLARE_FINAL_TYPE (PhLevelPanel, ph_level_panel, PH, LEVEL_PANEL, GtkWidget)

GtkWidget *ph_level_panel_new (PhDocument *document);

G_END_DECLS
