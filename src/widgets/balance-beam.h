/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A balance beam with what pulls the bow to the left on its left and to the right on its right, a
 * block a part, as wide as its moment; the hand, hatched, makes up the difference. Pressing a block
 * selects its part.
 */
#pragma once

#include <gtk/gtk.h>

#include "document/document.h"

G_BEGIN_DECLS

#define PH_TYPE_BALANCE_BEAM (ph_balance_beam_get_type ())
G_DECLARE_FINAL_TYPE (PhBalanceBeam, ph_balance_beam, PH, BALANCE_BEAM, GtkWidget)

/** Follows the document by itself. */
GtkWidget *ph_balance_beam_new (PhDocument *document);

G_END_DECLS
