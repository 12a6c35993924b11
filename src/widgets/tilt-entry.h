/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A tilt that is typed and shown with its side: "1.0° left". It takes "1 left", "right 1°", "0" and
 * a bare number under the file's sign (ph_tilt_parse). A text that is not taken stays, with the
 * sentence below it, and the last good value in force.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PH_TYPE_TILT_ENTRY (ph_tilt_entry_get_type ())
G_DECLARE_FINAL_TYPE (PhTiltEntry, ph_tilt_entry, PH, TILT_ENTRY, GtkWidget)

/** Takes a typed or stepped value, the file's tilt [deg]. Null: accepted. Else a new sentence that
 * says why not. */
typedef char *(*PhTiltCommit) (PhTiltEntry *self, double tilt_deg, gpointer user_data);

/** `name` for a screen reader. */
GtkWidget *ph_tilt_entry_new (const char *name, PhTiltCommit commit, gpointer user_data);

/** Shows a tilt; `level` as in widgets/tilt-words.h. A text that is being typed is left. */
void ph_tilt_entry_set_value (PhTiltEntry *self, double tilt_deg, gboolean level);

G_END_DECLS
