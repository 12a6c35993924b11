/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the files that make up PhPartsPane share. Not for other widgets.
 */
#pragma once

#include "widgets/add-popover.h"
#include "widgets/part-row.h"
#include "widgets/parts-pane.h"

G_BEGIN_DECLS

struct _PhPartsPane
{
  GtkWidget parent_instance;

  /* Template widgets */
  GtkEditableLabel *title;
  GtkLabel *saved, *refusal;
  GtkMenuButton *add;
  GtkListView *list;
  GtkWidget *empty, *head;

  /* Owned */
  PhDocument *document;
  GtkTreeListModel *tree;
  GtkSingleSelection *selection;
  GtkSizeGroup *sizes, *masses;
  GHashTable *collapsed; /* ids whose rows were closed by hand */
  GHashTable *bound;     /* rows that show a part now: a set of PhPartRow */
  GPtrArray *places;     /* of the open menu's "Hang elsewhere" */
  GtkWidget *menu;       /* the context menu, a child of the list */
  char *dragged;         /* id of the part whose row is dragged; null: none */
  GPtrArray *drop_places; /* where it could hang */

  /* Weak, while a row is dragged */
  GtkLabel *drag_label; /* what follows the pointer */
  PhPartRow *drop_row;  /* what would take it */

  /* Borrowed */
  PhAddPopover *popover;

  guint focus_idle;    /* to find a focus that was lost */
  gboolean want_focus; /* then: the selected row, whatever has it now */
  guint rename_idle;   /* to edit the name once the menu is gone */
  guint menu_idle;     /* the menu pops up once it is complete */
  gboolean narrow;     /* no room for sizes */
  guint narrow_idle;   /* rows follow it outside of allocation */
  gboolean following;  /* the list is being set from the document */
};

/** The bound row that shows this id, or null. */
PhPartRow *ph_parts_pane_row_of (PhPartsPane *self, const char *id);
/** Puts the focus on the selected row. */
void ph_parts_pane_focus_row (PhPartsPane *self);
/** Says below the list why something was refused; null takes it away. */
void ph_parts_pane_say (PhPartsPane *self, const char *why);

/* parts-list.c: the tree and the selection. */
void ph_parts_pane_init_list (PhPartsPane *self);
void ph_parts_pane_follow_selection (PhPartsPane *self);

/* parts-drag.c: rows dragged onto others. */
void ph_parts_pane_init_drag (PhPartsPane *self);
void ph_parts_pane_clear_drag (PhPartsPane *self);

/* parts-menu.c: keys and pointer on the list, context menu. */
void ph_parts_pane_init_menu (PhPartsPane *self);
/** The row under a point of the list, and the point in it; or null. */
PhPartRow *ph_parts_pane_row_at (PhPartsPane *self, double x, double y, double *row_x);
/** Soon gives the focus to the selected row where the row or menu that had it is gone / always. */
void ph_parts_pane_find_focus (PhPartsPane *self);
void ph_parts_pane_want_focus (PhPartsPane *self);
void ph_parts_pane_install_actions (GtkWidgetClass *widget_class);

G_END_DECLS
