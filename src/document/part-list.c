/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The tree of list stores that is kept in step with the document. A change of the tree costs a
 * walk over all parts and, where lists differ, one over their rows.
 */
#include "document/part-list.h"

#include "document/part-item-private.h"

typedef struct
{
  PhDocument *document; /* owned */
  GListStore *root;     /* borrowed: it owns this */
  GHashTable *items;    /* id (borrowed from the item) → PhPartItem, owned; without the bow */
  PhPartItem *bow;      /* owned */
  guint visit;
} PartTree;

static void
update_items (PartTree *tree)
{
  const PhRig *rig = ph_document_get_rig (tree->document);
  const PhCompiled *compiled = ph_document_get_compiled (tree->document);
  PhUnits units = ph_document_get_units (tree->document);
  ph_part_item_update_bow (tree->bow, rig, units);
  for (size_t i = 0; i < rig->n_parts; i++)
    {
      PhPartItem *item = g_hash_table_lookup (tree->items, rig->parts[i].id);
      if (item != NULL)
        ph_part_item_update_part (item, &rig->parts[i], compiled->piece_of_part[i] >= 0, units);
    }
}

/* Makes what is new, and gives every item its list of children: host → GPtrArray of items. */
static GHashTable *
wanted_children (PartTree *tree, const PhRig *rig)
{
  GHashTable *wanted = g_hash_table_new_full (NULL, NULL, NULL, (GDestroyNotify)g_ptr_array_unref);
  tree->visit++;
  for (size_t i = 0; i < rig->n_parts; i++)
    {
      PhPartItem *item = g_hash_table_lookup (tree->items, rig->parts[i].id);
      if (item == NULL)
        {
          item = ph_part_item_new (rig->parts[i].id);
          g_hash_table_insert (tree->items, item->id, item);
        }
      item->visit = tree->visit;
    }
  for (size_t i = 0; i < rig->n_parts; i++)
    {
      int h = ph_rig_host (rig, i, NULL);
      PhPartItem *host = h < 0 ? tree->bow : g_hash_table_lookup (tree->items, rig->parts[h].id);
      GPtrArray *list = g_hash_table_lookup (wanted, host);
      if (list == NULL)
        g_hash_table_insert (wanted, host, list = g_ptr_array_new ());
      g_ptr_array_add (list, g_hash_table_lookup (tree->items, rig->parts[i].id));
    }
  return wanted;
}

static void
remove_unwanted (GListStore *store, const GPtrArray *wanted)
{
  for (guint i = g_list_model_get_n_items (G_LIST_MODEL (store)); i-- > 0;)
    {
      g_autoptr (PhPartItem) item = g_list_model_get_item (G_LIST_MODEL (store), i);
      if (wanted == NULL || !g_ptr_array_find ((GPtrArray *)wanted, item, NULL))
        g_list_store_remove (store, i);
    }
}

static void
insert_wanted (GListStore *store, const GPtrArray *wanted)
{
  for (guint i = 0; i < wanted->len; i++)
    {
      PhPartItem *item = g_ptr_array_index (wanted, i);
      g_autoptr (PhPartItem) there = g_list_model_get_item (G_LIST_MODEL (store), i);
      guint old;
      if (there == item)
        continue;
      if (g_list_store_find (store, item, &old))
        g_list_store_remove (store, old);
      item->offered = ph_part_item_get_children (item) != NULL;
      g_list_store_insert (store, i, item);
    }
}

/* A tree model asks a row for its children once: a row that gained its first or lost its last is
 * put in anew. */
static void
offer_anew (GListStore *store)
{
  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (store)); i++)
    {
      g_autoptr (PhPartItem) item = g_list_model_get_item (G_LIST_MODEL (store), i);
      gboolean has = ph_part_item_get_children (item) != NULL;
      gpointer same = item;
      if (has == item->offered)
        continue;
      item->offered = has;
      g_list_store_splice (store, i, 1, &same, 1);
    }
}

/* Fills the lists from the leaves inward, so that a new row has its children when it is put in. */
static void
fill (PhPartItem *host, GHashTable *wanted)
{
  const GPtrArray *list = g_hash_table_lookup (wanted, host);
  if (list == NULL)
    return;
  for (guint i = 0; i < list->len; i++)
    fill (g_ptr_array_index (list, i), wanted);
  if (host->children == NULL)
    host->children = g_list_store_new (PH_TYPE_PART_ITEM);
  insert_wanted (host->children, list);
  offer_anew (host->children);
}

static void
empty (PhPartItem *host, GHashTable *wanted)
{
  if (host->children != NULL)
    remove_unwanted (host->children, g_hash_table_lookup (wanted, host));
}

static gboolean
was_not_met (gpointer id, gpointer item, gpointer tree)
{
  (void)id;
  return ((PhPartItem *)item)->visit != ((PartTree *)tree)->visit;
}

/* Removals first: an item that moves is in no list before it is put into its new one. */
static void
bring_in_step (PartTree *tree)
{
  g_autoptr (GHashTable) wanted = wanted_children (tree, ph_document_get_rig (tree->document));
  GHashTableIter iter;
  gpointer item;
  empty (tree->bow, wanted);
  g_hash_table_iter_init (&iter, tree->items);
  while (g_hash_table_iter_next (&iter, NULL, &item))
    empty (item, wanted);
  update_items (tree);
  fill (tree->bow, wanted);
  offer_anew (tree->root);
  g_hash_table_foreach_remove (tree->items, was_not_met, tree);
}

static void
changed_cb (PhDocument *document, PartTree *tree)
{
  (void)document;
  update_items (tree);
}

static void
structure_changed_cb (PhDocument *document, PartTree *tree)
{
  (void)document;
  bring_in_step (tree);
}

static void
units_cb (PhDocument *document, GParamSpec *pspec, PartTree *tree)
{
  (void)document;
  (void)pspec;
  update_items (tree);
}

static void
tree_free (gpointer data)
{
  PartTree *tree = data;
  g_signal_handlers_disconnect_by_data (tree->document, tree);
  g_hash_table_unref (tree->items);
  g_object_unref (tree->bow);
  g_object_unref (tree->document);
  g_free (tree);
}

GListModel *
ph_part_list_new (PhDocument *document)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document), NULL);
  PartTree *tree = g_new0 (PartTree, 1);
  tree->document = g_object_ref (document);
  tree->root = g_list_store_new (PH_TYPE_PART_ITEM);
  tree->items = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, g_object_unref);
  tree->bow = ph_part_item_new ("bow");
  g_object_set_data_full (G_OBJECT (tree->root), "ph-part-tree", tree, tree_free);
  g_signal_connect (document, "changed", G_CALLBACK (changed_cb), tree);
  g_signal_connect (document, "structure-changed", G_CALLBACK (structure_changed_cb), tree);
  g_signal_connect (document, "notify::units", G_CALLBACK (units_cb), tree);
  bring_in_step (tree);
  tree->bow->offered = ph_part_item_get_children (tree->bow) != NULL;
  g_list_store_append (tree->root, tree->bow);
  return G_LIST_MODEL (tree->root);
}
