/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What must be heeded before a bow is drawn for a reading.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/** A box of sentences; `level`: for a sight that carries one, and so for a bow shot with a release.
 * (transfer floating) */
GtkWidget *ph_cautions_new (gboolean level);
void ph_cautions_show (GtkWidget *cautions, gboolean level);

G_END_DECLS
