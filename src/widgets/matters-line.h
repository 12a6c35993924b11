/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * "The guess that matters most now", with a button to the measurement that would settle it (the
 * window's action win.measure, where it is one of the bow's). Hides itself when no guess matters.
 * For any page: it follows the document by itself, once a change has come to rest, while seen.
 */
#pragma once

#include <gtk/gtk.h>

#include "document/document.h"

G_BEGIN_DECLS

#define PH_TYPE_MATTERS_LINE (ph_matters_line_get_type ())
G_DECLARE_FINAL_TYPE (PhMattersLine, ph_matters_line, PH, MATTERS_LINE, GtkWidget)

/** `with_button`: FALSE where the measurement is at hand anyway. */
GtkWidget *ph_matters_line_new (PhDocument *document, gboolean with_button);

G_END_DECLS
