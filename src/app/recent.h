/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The rigs opened last, as the desktop remembers them.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/** Remembers that `file` was opened or saved now. */
void ph_recent_add (GFile *file);
/** The rig opened last that is still there, or null. (transfer full) */
GFile *ph_recent_last (void);
/** Fills `menu` anew with the last eight, newest first; each activates win.open-recent with its
 * URI. */
void ph_recent_fill_menu (GMenu *menu);

G_END_DECLS
