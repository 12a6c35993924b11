/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * "The archer's own hand": what to do next first, then Level's answers, the record of checks and
 * the plot; and the guide through a check in their place while one is made.
 *
 * Signals: "refused" (string why).
 */
#pragma once

#include <gtk/gtk.h>

#include "document/document.h"

G_BEGIN_DECLS

#define PH_TYPE_HAND_PAGE (ph_hand_page_get_type ())
G_DECLARE_FINAL_TYPE (PhHandPage, ph_hand_page, PH, HAND_PAGE, GtkWidget)

GtkWidget *ph_hand_page_new (PhDocument *document);

/** Begins a check, unless one is being made. */
void ph_hand_page_add_check (PhHandPage *self);

G_END_DECLS
