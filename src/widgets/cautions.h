/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What must be heeded before a bow is drawn for a reading.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/** A box of sentences. (transfer floating) */
GtkWidget *ph_cautions_new (void);

G_END_DECLS
