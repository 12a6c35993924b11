/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The program's own style sheets.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/** Gives the display every style*.css that is compiled in (ui/plumbhold.gresource.xml), by name, so
 * that a later one may refine an earlier. Once a display: at start-up, or in a test of a widget
 * whose look matters. */
void ph_style_load (GdkDisplay *display);

G_END_DECLS
