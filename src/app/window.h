/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The main window: one document, its pages, and everything that can be done to it as actions
 * (win.…, see window-actions.c). Closing, opening and New first settle what is unsaved.
 */
#pragma once

#include <gtk/gtk.h>

#include "document/document.h"
#include "store/catalogue.h"

G_BEGIN_DECLS

#define PH_TYPE_WINDOW (ph_window_get_type ())
G_DECLARE_FINAL_TYPE (PhWindow, ph_window, PH, WINDOW, GtkApplicationWindow)

/** `settings` may be null. `catalogue` is borrowed and must outlive the window. */
PhWindow *ph_window_new (GtkApplication *application, GSettings *settings,
                         const PhCatalogue *catalogue);

PhDocument *ph_window_get_document (PhWindow *self);

/** Opens a rig, after the question about unsaved work; a file error becomes the banner. */
void ph_window_open (PhWindow *self, GFile *file);
/** Opens the example rig, as a copy without a file, after the same question. */
void ph_window_open_demo (PhWindow *self);
/** What a start without a file shows: the rig opened last, or else the example. */
void ph_window_open_first (PhWindow *self);
/** Offers each rig left behind by a crash, newest first. Nothing is dropped unless asked. */
void ph_window_offer_recovered (PhWindow *self);

/** Says in the banner what did not work; `issues` (may be null) are its details. */
void ph_window_tell_trouble (PhWindow *self, const char *text, const PhIssues *issues);

/** From now on the window closes without a question and remembers nothing: for scripts. */
void ph_window_set_unattended (PhWindow *self);

/** Shows a place of the window, for pictures: "hand" the Hand page, "free" the free view, "level"
 * Level's answers. False: there is no such place. */
gboolean ph_window_show_place (PhWindow *self, const char *place);
/** Whether the views show their fine pictures: what a picture of the window waits for. */
gboolean ph_window_is_still (PhWindow *self);
/** Adds a page beside Rig; with two or more the header shows the switcher. */
void ph_window_add_page (PhWindow *self, GtkWidget *page, const char *name, const char *title);

G_END_DECLS
