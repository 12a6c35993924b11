/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One row of the parts list: name, size and mass, each edited where it stands. What a part weighs
 * as a stack is not edited here, since it follows from its discs.
 */
#pragma once

#include <gtk/gtk.h>

#include "document/part-list.h"

G_BEGIN_DECLS

#define PH_TYPE_PART_ROW (ph_part_row_get_type ())
G_DECLARE_FINAL_TYPE (PhPartRow, ph_part_row, PH, PART_ROW, GtkWidget)

typedef enum
{
  PH_PART_CELL_NAME,
  PH_PART_CELL_SIZE,
  PH_PART_CELL_MASS
} PhPartCell;

/* Signals: "edited" (): an edit in place ended, taken or given up, and the focus was in it. */

/** The size groups keep the columns of all rows equally wide. */
GtkWidget *ph_part_row_new (PhDocument *document, GtkSizeGroup *sizes, GtkSizeGroup *masses);

void ph_part_row_bind (PhPartRow *self, GtkTreeListRow *tree_row);
void ph_part_row_unbind (PhPartRow *self);

/** null while unbound. */
PhPartItem *ph_part_row_get_item (PhPartRow *self);

/** Leaves out the size. */
void ph_part_row_set_narrow (PhPartRow *self, gboolean narrow);

/** Edits that cell in place. FALSE: it has nothing to edit. */
gboolean ph_part_row_edit (PhPartRow *self, PhPartCell cell);
/** The cell at a point of the row. */
PhPartCell ph_part_row_cell_at (PhPartRow *self, double x);

G_END_DECLS
