/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Add: search the catalogue, choose a part, choose one of the free places, Enter.
 */
#pragma once

#include <gtk/gtk.h>

#include "document/document.h"
#include "store/catalogue.h"

G_BEGIN_DECLS

#define PH_TYPE_ADD_POPOVER (ph_add_popover_get_type ())
G_DECLARE_FINAL_TYPE (PhAddPopover, ph_add_popover, PH, ADD_POPOVER, GtkPopover)

/* Signals: "added" (): a part was added and is selected; the popover is closing. */

/** The catalogue is borrowed and must outlive the popover. (transfer floating) */
GtkWidget *ph_add_popover_new (PhDocument *document, const PhCatalogue *catalogue);

/** Before it pops up: what to look for first, or null; places on `near_id` then come first, or
 * null. Both hold until it closes. */
void ph_add_popover_prepare (PhAddPopover *self, const char *search, const char *near_id);

G_END_DECLS
