/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Children side by side in columns of equal width, as many as fit, wrapped into rows that are
 * filled as evenly as can be (eight children where seven fit stand four and four). What fits is
 * told by the children's least widths.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PH_TYPE_COLUMNS_LAYOUT (ph_columns_layout_get_type ())
G_DECLARE_FINAL_TYPE (PhColumnsLayout, ph_columns_layout, PH, COLUMNS_LAYOUT, GtkLayoutManager)

/** Space between columns and between rows [px]. (transfer full) */
GtkLayoutManager *ph_columns_layout_new (int column_spacing, int row_spacing);

/** How many columns `n` children take where each wants `cell` px and there are `width` px: at
 * least 1, at most n. 0 for none. */
int ph_columns_layout_columns (int n, int cell, int spacing, int width);

G_END_DECLS
