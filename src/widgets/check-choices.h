/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Which rig the next bubble check is to be read on: what is proposed, and the rig as it is.
 */
#pragma once

#include <gtk/gtk.h>

#include "document/document.h"

G_BEGIN_DECLS

#define PH_TYPE_CHECK_CHOICES (ph_check_choices_get_type ())
G_DECLARE_FINAL_TYPE (PhCheckChoices, ph_check_choices, PH, CHECK_CHOICES, GtkWidget)

GtkWidget *ph_check_choices_new (PhDocument *document);

/** Asks the document anew. Whether there is something to choose: "as it is" alone asks nothing. */
gboolean ph_check_choices_fill (PhCheckChoices *self);
/** Sets in the rig what was chosen, as an undo step of its own: the bow is turned too. */
gboolean ph_check_choices_take (PhCheckChoices *self, GError **error);

G_END_DECLS
