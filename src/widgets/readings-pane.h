/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The readings under the bubble, most asked first, in columns that wrap. Scrolls by itself when it
 * is given less height than it wants.
 */
#pragma once

#include <gtk/gtk.h>

#include "document/document.h"

G_BEGIN_DECLS

#define PH_TYPE_READINGS_PANE (ph_readings_pane_get_type ())
G_DECLARE_FINAL_TYPE (PhReadingsPane, ph_readings_pane, PH, READINGS_PANE, GtkWidget)

GtkWidget *ph_readings_pane_new (PhDocument *document);

/** Keeps arrow speed, distance and face in the program's settings; null is allowed. */
void ph_readings_pane_bind_settings (PhReadingsPane *self, GSettings *settings);

/** Whether moments, loads and inertia stand beside the readings: what the N·m button does. */
void ph_readings_pane_set_more (PhReadingsPane *self, gboolean more);

G_END_DECLS
