/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Why: roll and pitch moments part by part as bars to either side, with the totals under them. A
 * list for mouse, keyboard and screen reader; its selected row is the document's selected part.
 */
#pragma once

#include <gtk/gtk.h>

#include "document/document.h"

G_BEGIN_DECLS

#define PH_TYPE_WHY_PANEL (ph_why_panel_get_type ())
G_DECLARE_FINAL_TYPE (PhWhyPanel, ph_why_panel, PH, WHY_PANEL, GtkWidget)

GtkWidget *ph_why_panel_new (PhDocument *document);

G_END_DECLS
