/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A picture of a window, taken from inside the program: for scripts and the project's pages.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/** Writes the mapped window as it stands, without popovers, as a PNG. False: `*error` says why. */
gboolean ph_screenshot_write (GtkWidget *window, const char *path, GError **error);

G_END_DECLS
