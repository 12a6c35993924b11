/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One row of the Why panel: whose share, and its two bars with their numbers. Also the total's.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PH_TYPE_WHY_ROW (ph_why_row_get_type ())
G_DECLARE_FINAL_TYPE (PhWhyRow, ph_why_row, PH, WHY_ROW, GtkWidget)

GtkWidget *ph_why_row_new (void);

/** Turns the row into the heading of the columns / sets its texts in bold. */
void ph_why_row_show_headings (PhWhyRow *self);
void ph_why_row_set_strong (PhWhyRow *self);

/** Moments in N·m; the scales are what fills half a bar. The accessible name is
 * "Sight: leans it 0.12 right, pulls the nose 0.46 down, in N·m". */
void ph_why_row_show (PhWhyRow *self, const char *name, double roll_nm, double roll_scale_nm,
                      double pitch_nm, double pitch_scale_nm);

G_END_DECLS
