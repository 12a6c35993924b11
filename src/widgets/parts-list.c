/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The list view over the document's tree. Rows open by themselves, since a rig is small; what was
 * closed by hand is remembered by id and closed again after an edit that put its row in anew.
 * Following the document costs a walk over the rows.
 */
#include <glib/gi18n.h>

#include "widgets/parts-pane-private.h"

static PhPartItem *
item_at (PhPartsPane *self, guint position, GtkTreeListRow **tree_row)
{
  g_autoptr (GtkTreeListRow) row = g_list_model_get_item (G_LIST_MODEL (self->tree), position);
  PhPartItem *item = row ? gtk_tree_list_row_get_item (row) : NULL;
  if (tree_row)
    *tree_row = g_steal_pointer (&row);
  return item;
}

static guint
position_of (PhPartsPane *self, const char *id)
{
  guint n = g_list_model_get_n_items (G_LIST_MODEL (self->tree));
  for (guint i = 0; i < n; i++)
    {
      g_autoptr (PhPartItem) item = item_at (self, i, NULL);
      if (g_strcmp0 (ph_part_item_get_id (item), id) == 0)
        return i;
    }
  return GTK_INVALID_LIST_POSITION;
}

PhPartRow *
ph_parts_pane_row_of (PhPartsPane *self, const char *id)
{
  GHashTableIter iter;
  gpointer row;
  g_hash_table_iter_init (&iter, self->bound);
  while (g_hash_table_iter_next (&iter, &row, NULL))
    if (g_strcmp0 (ph_part_item_get_id (ph_part_row_get_item (row)), id) == 0)
      return row;
  return NULL;
}

static void
open_row (PhPartsPane *self, const char *id)
{
  guint position = position_of (self, id);
  if (position == GTK_INVALID_LIST_POSITION)
    return;
  GtkTreeListRow *row;
  g_autoptr (PhPartItem) item = item_at (self, position, &row);
  gtk_tree_list_row_set_expanded (row, TRUE);
  g_object_unref (row);
}

/* Opens what a part hangs on, from the bow outward. */
static void
open_hosts (PhPartsPane *self, const char *id)
{
  const PhRig *rig = ph_document_get_rig (self->document);
  const char *hosts[PH_RIG_NESTING_MOST];
  int n = 0, at = ph_rig_find (rig, id);
  while (at >= 0 && (at = ph_rig_host (rig, (size_t)at, NULL)) >= 0 && n < PH_RIG_NESTING_MOST)
    hosts[n++] = rig->parts[at].id;
  open_row (self, "bow");
  while (n > 0)
    open_row (self, hosts[--n]);
}

void
ph_parts_pane_follow_selection (PhPartsPane *self)
{
  const char *id = ph_document_get_selected (self->document);
  guint position = id ? position_of (self, id) : GTK_INVALID_LIST_POSITION;
  self->following = TRUE;
  if (id && position == GTK_INVALID_LIST_POSITION)
    {
      open_hosts (self, id);
      position = position_of (self, id);
    }
  if (gtk_single_selection_get_selected (self->selection) != position)
    gtk_single_selection_set_selected (self->selection, position);
  if (position != GTK_INVALID_LIST_POSITION)
    gtk_widget_activate_action (GTK_WIDGET (self->list), "list.scroll-to-item", "u", position);
  self->following = FALSE;
}

static void
selected_cb (PhPartsPane *self)
{
  GtkTreeListRow *row = gtk_single_selection_get_selected_item (self->selection);
  if (self->following || !row)
    return; /* a row that went away takes the selection with it; the document says what is next */
  g_autoptr (PhPartItem) item = gtk_tree_list_row_get_item (row);
  if (item)
    ph_document_select (self->document, ph_part_item_get_id (item));
}

/* After a change of the tree: rows that were put in anew are open, and the row that had the focus
 * may show another part. */
static void
structure_cb (PhPartsPane *self)
{
  self->following = TRUE;
  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (self->tree)); i++)
    {
      GtkTreeListRow *row;
      g_autoptr (PhPartItem) item = item_at (self, i, &row);
      if (g_hash_table_contains (self->collapsed, ph_part_item_get_id (item)))
        gtk_tree_list_row_set_expanded (row, FALSE);
      g_object_unref (row);
    }
  self->following = FALSE;
  GtkStateFlags flags = gtk_widget_get_state_flags (GTK_WIDGET (self->list));
  if (flags & GTK_STATE_FLAG_FOCUS_WITHIN)
    ph_parts_pane_want_focus (self);
}

/* The toolkit's list item around our row is what takes the focus. */
void
ph_parts_pane_focus_row (PhPartsPane *self)
{
  ph_parts_pane_follow_selection (self);
  const char *id = ph_document_get_selected (self->document);
  PhPartRow *row = id ? ph_parts_pane_row_of (self, id) : NULL;
  gtk_widget_grab_focus (row ? gtk_widget_get_parent (GTK_WIDGET (row)) : GTK_WIDGET (self->list));
}

static void
expanded_cb (GtkTreeListRow *tree_row, GParamSpec *pspec G_GNUC_UNUSED, PhPartsPane *self)
{
  g_autoptr (PhPartItem) item = gtk_tree_list_row_get_item (tree_row);
  if (!item || self->following)
    return;
  const char *id = ph_part_item_get_id (item);
  if (gtk_tree_list_row_get_expanded (tree_row))
    g_hash_table_remove (self->collapsed, id);
  else if (ph_part_item_get_children (item))
    g_hash_table_add (self->collapsed, g_strdup (id));
}

static void
edited_cb (PhPartsPane *self)
{
  ph_parts_pane_focus_row (self);
}

static void
setup_cb (GtkSignalListItemFactory *factory G_GNUC_UNUSED, GtkListItem *list_item,
          PhPartsPane *self)
{
  GtkWidget *row = ph_part_row_new (self->document, self->sizes, self->masses);
  g_signal_connect_swapped (row, "edited", G_CALLBACK (edited_cb), self);
  gtk_list_item_set_child (list_item, row);
}

static void
bind_cb (GtkSignalListItemFactory *factory G_GNUC_UNUSED, GtkListItem *list_item, PhPartsPane *self)
{
  GtkTreeListRow *tree_row = gtk_list_item_get_item (list_item);
  PhPartRow *row = PH_PART_ROW (gtk_list_item_get_child (list_item));
  ph_part_row_bind (row, tree_row);
  ph_part_row_set_narrow (row, self->narrow);
  g_hash_table_add (self->bound, row);
  g_signal_connect (tree_row, "notify::expanded", G_CALLBACK (expanded_cb), self);
}

static void
unbind_cb (GtkSignalListItemFactory *factory G_GNUC_UNUSED, GtkListItem *list_item,
           PhPartsPane *self)
{
  GtkTreeListRow *tree_row = gtk_list_item_get_item (list_item);
  PhPartRow *row = PH_PART_ROW (gtk_list_item_get_child (list_item));
  if (tree_row)
    g_signal_handlers_disconnect_by_data (tree_row, self);
  g_hash_table_remove (self->bound, row);
  ph_part_row_unbind (row);
}

static GListModel *
children_cb (gpointer item, gpointer data G_GNUC_UNUSED)
{
  GListModel *children = ph_part_item_get_children (item);
  return children ? g_object_ref (children) : NULL;
}

void
ph_parts_pane_init_list (PhPartsPane *self)
{
  self->collapsed = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  self->bound = g_hash_table_new (NULL, NULL);
  self->sizes = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
  self->masses = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
  /* The list of parts first: its own handlers must have run when ours do. */
  self->tree = gtk_tree_list_model_new (ph_part_list_new (self->document), FALSE, TRUE, children_cb,
                                        NULL, NULL);
  self->selection = gtk_single_selection_new (g_object_ref (G_LIST_MODEL (self->tree)));
  gtk_single_selection_set_autoselect (self->selection, FALSE);

  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), self);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), self);
  g_signal_connect (factory, "unbind", G_CALLBACK (unbind_cb), self);
  gtk_list_view_set_factory (self->list, factory);
  g_object_unref (factory);
  gtk_list_view_set_model (self->list, GTK_SELECTION_MODEL (self->selection));

  g_signal_connect_swapped (self->selection, "notify::selected-item", G_CALLBACK (selected_cb),
                            self);
  g_signal_connect_swapped (self->document, "structure-changed", G_CALLBACK (structure_cb), self);
  g_signal_connect_swapped (self->document, "changed", G_CALLBACK (ph_parts_pane_follow_selection),
                            self);
  g_signal_connect_swapped (self->document, "notify::selected",
                            G_CALLBACK (ph_parts_pane_follow_selection), self);
}
