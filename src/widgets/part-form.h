/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The form of what is selected in the document: a part, or the bow with its archer. It is built
 * anew only when another part is selected; otherwise its values follow, and the focus stays.
 */
#pragma once

#include <gtk/gtk.h>

#include "document/document.h"

G_BEGIN_DECLS

#define PH_TYPE_PART_FORM (ph_part_form_get_type ())
G_DECLARE_FINAL_TYPE (PhPartForm, ph_part_form, PH, PART_FORM, GtkWidget)

/** Scrolls inside itself. The document is kept alive. */
GtkWidget *ph_part_form_new (PhDocument *document);

/** Puts the focus into the first number. */
void ph_part_form_edit (PhPartForm *self);

G_END_DECLS
