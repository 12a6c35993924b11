/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One number of the form: its name (which changes with its direction), what is typed, a slider
 * where one helps, what a tape reads, and what one more step would do. It reads the document anew
 * on ph_form_row_refresh and keeps no copy.
 */
#pragma once

#include <gtk/gtk.h>

#include "widgets/number-ref.h"

G_BEGIN_DECLS

#define PH_TYPE_FORM_ROW (ph_form_row_get_type ())
G_DECLARE_FINAL_TYPE (PhFormRow, ph_form_row, PH, FORM_ROW, GtkWidget)

/** `ref` is copied; `label` names the number where it has no direction. */
GtkWidget *ph_form_row_new (PhDocument *document, const PhNumberRef *ref, const char *label);

/** A remark that always stands below the number; null: none. */
void ph_form_row_set_remark (PhFormRow *self, const char *remark);

/** Puts the focus into the number, all of it selected. */
void ph_form_row_edit (PhFormRow *self);

/** Shows what the document holds now. A text that is being typed is left alone. */
void ph_form_row_refresh (PhFormRow *self);

G_END_DECLS
