/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The rig's parts as a tree of list models for a GtkTreeListModel: PhPartItem objects that live as
 * long as their part, keyed by id, so that selection and open rows survive every edit.
 */
#pragma once

#include "document/document.h"

G_BEGIN_DECLS

#define PH_TYPE_PART_ITEM (ph_part_item_get_type ())
G_DECLARE_FINAL_TYPE (PhPartItem, ph_part_item, PH, PART_ITEM, GObject)

/* Properties (read-only, notify): "id", "name", "kind" (PhPartKind, −1 the bow), "mass-text",
 * "size-text" ("30 in", "8 × 1 oz"), "off" (itself switched off), "fitted", "locked" (kept as it is). */
const char *ph_part_item_get_id (PhPartItem *self);
const char *ph_part_item_get_name (PhPartItem *self);
int ph_part_item_get_kind (PhPartItem *self);
gboolean ph_part_item_get_off (PhPartItem *self);
gboolean ph_part_item_get_fitted (PhPartItem *self);
gboolean ph_part_item_get_locked (PhPartItem *self);
const char *ph_part_item_get_mass_text (PhPartItem *self);
const char *ph_part_item_get_size_text (PhPartItem *self);

/** What hangs on this item (GListModel of PhPartItem), or null when nothing does. Borrowed. The
 * same object as long as the item lives; items are inserted and removed singly. An item that gains
 * its first child or loses its last is put into its own list anew (one "items-changed" of one for
 * one), since a tree model asks a row for its children only once. */
GListModel *ph_part_item_get_children (PhPartItem *self);

/** The root: a list of one item, the bow, kept in step with the document. (transfer full) */
GListModel *ph_part_list_new (PhDocument *document);

G_END_DECLS
