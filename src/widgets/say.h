/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The accessible name of a widget whose words may change each frame: told only when it differs,
 * since each telling goes over the bus.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/** Makes `text` the accessible name; copied. Whether it differs from what was said before. */
gboolean ph_say (GtkWidget *widget, const char *text);
/** What was said last, or null. Borrowed. */
const char *ph_said (GtkWidget *widget);

G_END_DECLS
