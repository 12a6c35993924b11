/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The record of bubble checks: what was read, what had been predicted, and how often that held.
 *
 * Signals: "edit" (uint index): a check is to be put right; "refused" (string why).
 */
#pragma once

#include <gtk/gtk.h>

#include "document/document.h"

G_BEGIN_DECLS

#define PH_TYPE_CHECK_LIST (ph_check_list_get_type ())
G_DECLARE_FINAL_TYPE (PhCheckList, ph_check_list, PH, CHECK_LIST, GtkWidget)

GtkWidget *ph_check_list_new (PhDocument *document);

G_END_DECLS
