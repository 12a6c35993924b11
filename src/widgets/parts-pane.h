/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The open rig as a list: its name and whether it is saved, Add, and the tree of its parts by what
 * hangs on what. The selected row and the document's "selected" follow each other.
 */
#pragma once

#include <gtk/gtk.h>

#include "document/document.h"
#include "store/catalogue.h"

G_BEGIN_DECLS

#define PH_TYPE_PARTS_PANE (ph_parts_pane_get_type ())
G_DECLARE_FINAL_TYPE (PhPartsPane, ph_parts_pane, PH, PARTS_PANE, GtkWidget)

/* Its context menu uses the window's actions for what needs no list: win.duplicate, win.copy,
 * win.paste, win.toggle-fitted, win.remove. Its own are:
 *   "parts.rename", "parts.add-here"   of the selected part
 *   "parts.hang" (i)                   onto the i-th place of the menu that is open
 * Signals: "edit-form" (): Return was pressed on a row: the form should take the focus. */

/** The catalogue is borrowed and must outlive the pane. */
GtkWidget *ph_parts_pane_new (PhDocument *document, const PhCatalogue *catalogue);

/** Opens Add; places on the selected part come first. */
void ph_parts_pane_show_add (PhPartsPane *self);
/** Edits the selected part's name in its row. */
void ph_parts_pane_rename_selected (PhPartsPane *self);

G_END_DECLS
