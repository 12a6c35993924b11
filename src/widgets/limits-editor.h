/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What Level and the next check may change of the selected part: a lock ("Keep as it is") and, for
 * angles and counts, from where to where. In an expander of the part's form.
 */
#pragma once

#include <gtk/gtk.h>

#include "document/document.h"

G_BEGIN_DECLS

#define PH_TYPE_LIMITS_EDITOR (ph_limits_editor_get_type ())
G_DECLARE_FINAL_TYPE (PhLimitsEditor, ph_limits_editor, PH, LIMITS_EDITOR, GtkWidget)

/** Hidden while no such part is selected. `of_end_stack`: of the weights at the selected bar's end,
 * which are edited in the bar's form, instead. */
GtkWidget *ph_limits_editor_new (PhDocument *document, gboolean of_end_stack);

G_END_DECLS
