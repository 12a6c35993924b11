/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One bubble check of the record. Shows what it is told and knows no document.
 *
 * Signals: "edit" (), "aside" (), "delete" ().
 */
#pragma once

#include <gtk/gtk.h>

#include "model/check-record.h"

G_BEGIN_DECLS

#define PH_TYPE_CHECK_ROW (ph_check_row_get_type ())
G_DECLARE_FINAL_TYPE (PhCheckRow, ph_check_row, PH, CHECK_ROW, GtkListBoxRow)

GtkWidget *ph_check_row_new (const PhCheck *check, const PhCheckRecord *record, gboolean level);

G_END_DECLS
