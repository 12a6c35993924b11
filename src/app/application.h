/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The program as the desktop sees it: one window, `plumbhold [FILE]`, and what belongs to no
 * window (appearance, about, quit). A second start hands its file to the first.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PH_TYPE_APPLICATION (ph_application_get_type ())
G_DECLARE_FINAL_TYPE (PhApplication, ph_application, PH, APPLICATION, GtkApplication)

PhApplication *ph_application_new (void);

/** After the run: 1 where --screenshot failed, else 0. */
int ph_application_get_exit_code (PhApplication *self);

G_END_DECLS
