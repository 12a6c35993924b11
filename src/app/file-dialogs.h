/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The desktop's own dialogs for choosing a rig file.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/** `file` is null when nothing was chosen; borrowed. */
typedef void (*PhFileChosen) (GFile *file, gpointer data);

/** Asks for a rig to open. `chosen` is called exactly once, unless the window goes first. */
void ph_file_dialog_open (GtkWindow *parent, const char *title, PhFileChosen chosen, gpointer data);

/** Asks where to write. `now` (may be null) is where the rig is kept; without it a name is made
 * from `rig_title`. The chosen file ends in ".json": ".rig.json" is added where no such ending was
 * typed, and a file that then stands there is not overwritten unasked. */
void ph_file_dialog_save (GtkWindow *parent, const char *title, GFile *now, const char *rig_title,
                          PhFileChosen chosen, gpointer data);

G_END_DECLS
