/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Why the bow leans, in ten seconds: the balance beam with the sums of both sides above it and one
 * sentence from cause to bubble under it. Belongs under the view from behind.
 */
#pragma once

#include <gtk/gtk.h>

#include "document/document.h"

G_BEGIN_DECLS

#define PH_TYPE_LEAN_PANE (ph_lean_pane_get_type ())
G_DECLARE_FINAL_TYPE (PhLeanPane, ph_lean_pane, PH, LEAN_PANE, GtkWidget)

GtkWidget *ph_lean_pane_new (PhDocument *document);

G_END_DECLS
