/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Slow to roll, nod and swing: three rows of name, bar and number. With a reference each bar is the
 * ratio to it and a line in the middle is the reference.
 */
#pragma once

#include <gtk/gtk.h>

#include "widgets/reading-texts.h"

G_BEGIN_DECLS

#define PH_TYPE_TURN_ROWS (ph_turn_rows_get_type ())
G_DECLARE_FINAL_TYPE (PhTurnRows, ph_turn_rows, PH, TURN_ROWS, GtkWidget)

GtkWidget *ph_turn_rows_new (void);
void ph_turn_rows_show (PhTurnRows *self, const PhReadingSource *source);
/** Whether kg·m² stand beside the change. */
void ph_turn_rows_set_more (PhTurnRows *self, gboolean more);

G_END_DECLS
