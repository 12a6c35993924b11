/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The parts as a tree of list models: its shape against the rig's own host of each part, and that
 * items outlive every edit. 1 oz = 28.349523125 g (NIST Handbook 44), 762 mm = 30 in (NIST SP 811).
 */
#include <locale.h>

#include "document-fixture.h"
#include "document/part-list.h"

/* The item of that id somewhere under the list, or null. Borrowed. */
static PhPartItem *
find_item (GListModel *list, const char *id)
{
  for (guint i = 0; list && i < g_list_model_get_n_items (list); i++)
    {
      g_autoptr (PhPartItem) item = g_list_model_get_item (list, i);
      if (g_str_equal (ph_part_item_get_id (item), id))
        return item; /* the list keeps it */
      PhPartItem *deeper = find_item (ph_part_item_get_children (item), id);
      if (deeper)
        return deeper;
    }
  return NULL;
}

static guint
count_items (GListModel *list)
{
  guint n = 0;
  for (guint i = 0; list && i < g_list_model_get_n_items (list); i++)
    {
      g_autoptr (PhPartItem) item = g_list_model_get_item (list, i);
      n += 1 + count_items (ph_part_item_get_children (item));
    }
  return n;
}

/* Every part stands under its host, in file order. */
static void
check_shape (PhDocument *document, GListModel *root)
{
  const PhRig *rig = ph_document_get_rig (document);
  CHECK (g_list_model_get_n_items (root) == 1);
  CHECK (count_items (root) == rig->n_parts + 1, "%u of %zu", count_items (root), rig->n_parts);
  guint next[257] = { 0 };
  for (size_t i = 0; i < rig->n_parts; i++)
    {
      int host = ph_rig_host (rig, i, NULL);
      PhPartItem *item = find_item (root, host < 0 ? "bow" : rig->parts[host].id);
      GListModel *children = item ? ph_part_item_get_children (item) : NULL;
      g_autoptr (PhPartItem) own =
          children ? g_list_model_get_item (children, next[host + 1]++) : NULL;
      CHECK (own && g_str_equal (ph_part_item_get_id (own), rig->parts[i].id), "%s",
             rig->parts[i].id);
    }
}

static void
the_tree_is_the_rigs (void)
{
  Fixture f = fixture_new ();
  g_autoptr (GListModel) root = ph_part_list_new (f.document);
  check_shape (f.document, root);
  CHECK (!ph_part_item_get_children (find_item (root, "sight")));
  PhPartItem *bow = find_item (root, "bow");
  CHECK_TEXT (ph_part_item_get_name (bow), "Bow");
  CHECK (ph_part_item_get_kind (bow) == -1 && ph_part_item_get_fitted (bow));
  CHECK_TEXT (ph_part_item_get_mass_text (bow), "1.950 kg");
  PhPartItem *stack = find_item (root, "front-stack");
  CHECK_TEXT (ph_part_item_get_name (stack), "Front weights");
  CHECK (ph_part_item_get_kind (stack) == PH_PART_WEIGHTS);
  fixture_clear (&f);
}

static void
texts_follow_the_units (void)
{
  Fixture f = fixture_new ();
  g_autoptr (GListModel) root = ph_part_list_new (f.document);
  PhPartItem *bar = find_item (root, "front-bar"), *stack = find_item (root, "front-stack");
  CHECK_TEXT (ph_part_item_get_size_text (bar), "762 mm");
  CHECK_TEXT (ph_part_item_get_mass_text (stack), "227 g"); /* 8 × 28.3495 */
  ph_document_set_units (f.document, PH_UNITS_TRADE);
  CHECK_TEXT (ph_part_item_get_size_text (bar), "30 in");
  CHECK_TEXT (ph_part_item_get_size_text (stack), "8 × 1 oz");
  CHECK_TEXT (ph_part_item_get_mass_text (stack), "8.0 oz");
  fixture_clear (&f);
}

static void
count_cb (GObject *object, GParamSpec *pspec, GString *names)
{
  (void)object;
  g_string_append_printf (names, "%s ", pspec->name);
}

static void
only_what_changed_is_notified (void)
{
  Fixture f = fixture_new ();
  g_autoptr (GListModel) root = ph_part_list_new (f.document);
  PhPartItem *bar = find_item (root, "back-bar"), *stack = find_item (root, "back-stack");
  GString *told = g_string_new (NULL);
  g_signal_connect (stack, "notify", G_CALLBACK (count_cb), told);
  g_signal_connect (bar, "notify", G_CALLBACK (count_cb), told);
  fixture_set (&f, "back-bar", "swing_deg", 26);
  CHECK_TEXT (told->str, "");
  fixture_set (&f, "back-stack", "count", 6);
  CHECK_TEXT (told->str, "mass-text size-text ");
  CHECK_TEXT (ph_part_item_get_size_text (stack), "6 × 28 g");
  g_string_truncate (told, 0);
  ph_document_set_part_name (f.document, "back-stack", "Discs", NULL);
  CHECK_TEXT (told->str, "name ");
  g_string_truncate (told, 0);
  ph_document_set_off (f.document, "back-stack", TRUE, NULL);
  CHECK_TEXT (told->str, "off fitted ");
  g_string_free (told, TRUE);
  fixture_clear (&f);
}

static bool
lock_back_bar (PhRig *rig, gpointer data, PhIssues *issues)
{
  (void)issues;
  ph_edit_set_locked (rig, (size_t)ph_rig_find (rig, "back-bar"), *(bool *)data);
  return true;
}

static void
a_part_kept_as_it_is_says_so (void)
{
  Fixture f = fixture_new ();
  g_autoptr (GListModel) root = ph_part_list_new (f.document);
  PhPartItem *bar = find_item (root, "back-bar"), *stack = find_item (root, "back-stack");
  GString *told = g_string_new (NULL);
  g_signal_connect (bar, "notify", G_CALLBACK (count_cb), told);
  CHECK (!ph_part_item_get_locked (bar));
  for (int on = 1; on >= 0; on--)
    {
      bool lock = on;
      CHECK (ph_document_edit (f.document, lock_back_bar, &lock, NULL));
      CHECK (ph_part_item_get_locked (bar) == on && !ph_part_item_get_locked (stack));
    }
  CHECK_TEXT (told->str, "locked locked ");
  g_string_free (told, TRUE);
  fixture_clear (&f);
}

static void
what_hangs_on_an_off_part_is_not_fitted (void)
{
  Fixture f = fixture_new ();
  g_autoptr (GListModel) root = ph_part_list_new (f.document);
  CHECK (ph_document_set_off (f.document, "back-bar", TRUE, NULL));
  PhPartItem *stack = find_item (root, "back-stack");
  CHECK (!ph_part_item_get_fitted (stack) && !ph_part_item_get_off (stack));
  CHECK (ph_part_item_get_off (find_item (root, "back-bar")));
  fixture_clear (&f);
}

typedef struct
{
  guint signals, removed, added;
} Moves;

static void
moves_cb (GListModel *list, guint position, guint removed, guint added, Moves *moves)
{
  (void)list;
  (void)position;
  moves->signals++;
  moves->removed += removed;
  moves->added += added;
}

static void
items_outlive_edits_and_lists_change_singly (void)
{
  Fixture f = fixture_new ();
  g_autoptr (GListModel) root = ph_part_list_new (f.document);
  PhPartItem *bow = find_item (root, "bow"), *bar = find_item (root, "back-bar");
  GListModel *children = ph_part_item_get_children (bow);
  Moves moves = { 0 };
  g_signal_connect (children, "items-changed", G_CALLBACK (moves_cb), &moves);

  fixture_set (&f, "back-bar", "swing_deg", 26);
  CHECK (moves.signals == 0);
  ph_document_remove (f.document, "front-bar");
  CHECK (moves.signals == 1 && moves.removed == 1 && moves.added == 0);
  check_shape (f.document, root);
  ph_document_undo (f.document);
  CHECK (moves.signals == 2 && moves.added == 1);
  check_shape (f.document, root);
  CHECK (find_item (root, "bow") == bow && find_item (root, "back-bar") == bar);
  CHECK (ph_part_item_get_children (bow) == children);
  fixture_clear (&f);
}

static void
a_moved_part_keeps_its_item_and_what_hangs_on_it (void)
{
  Fixture f = fixture_new ();
  g_autoptr (GListModel) root = ph_part_list_new (f.document);
  PhPartItem *bar = find_item (root, "back-bar"), *stack = find_item (root, "back-stack");
  CHECK (ph_document_rehang (f.document, "back-bar", "front-stack", NULL));
  check_shape (f.document, root);
  CHECK (find_item (root, "back-bar") == bar && find_item (root, "back-stack") == stack);
  CHECK (!ph_part_item_get_children (find_item (root, "block")));
  CHECK (ph_part_item_get_children (find_item (root, "front-stack")) != NULL);
  fixture_clear (&f);
}

/* A tree model asks a row for its children only when it is put in. */
static void
a_row_that_gains_or_loses_its_children_is_put_in_anew (void)
{
  Fixture f = fixture_new ();
  g_autoptr (GListModel) root = ph_part_list_new (f.document);
  PhPartItem *block = find_item (root, "block"), *bar = find_item (root, "back-bar");
  Moves moves = { 0 };
  g_signal_connect (ph_part_item_get_children (block), "items-changed", G_CALLBACK (moves_cb),
                    &moves);
  ph_document_remove (f.document, "back-stack");
  CHECK (moves.signals == 1 && moves.removed == 1 && moves.added == 1, "%u", moves.signals);
  CHECK (!ph_part_item_get_children (bar));
  ph_document_undo (f.document);
  CHECK (moves.signals == 2 && moves.removed == 2 && moves.added == 2, "%u", moves.signals);
  CHECK (ph_part_item_get_children (bar) != NULL);
  fixture_clear (&f);
}

static void
another_rig_is_another_tree_under_the_same_bow (void)
{
  Fixture f = fixture_new ();
  g_autoptr (GListModel) root = ph_part_list_new (f.document);
  PhPartItem *bow = find_item (root, "bow");
  const PhStarter barebow = { PH_BOW_BAREBOW, PH_BOW_HAND_LEFT, 711, NAN };
  ph_document_new_rig (f.document, &barebow, "Quay club");
  check_shape (f.document, root);
  CHECK (find_item (root, "bow") == bow && !find_item (root, "back-bar"));
  fixture_clear (&f);
}

static void
a_list_let_go_leaves_the_document_alone (void)
{
  Fixture f = fixture_new ();
  GListModel *root = ph_part_list_new (f.document);
  g_object_unref (root);
  fixture_set (&f, "back-bar", "swing_deg", 26); /* would touch freed memory */
  CHECK (G_OBJECT (f.document)->ref_count == 1, "%u", G_OBJECT (f.document)->ref_count);
  fixture_clear (&f);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  setlocale (LC_ALL, "C.UTF-8");
  CASE (the_tree_is_the_rigs);
  CASE (texts_follow_the_units);
  CASE (only_what_changed_is_notified);
  CASE (a_part_kept_as_it_is_says_so);
  CASE (what_hangs_on_an_off_part_is_not_fitted);
  CASE (items_outlive_edits_and_lists_change_singly);
  CASE (a_moved_part_keeps_its_item_and_what_hangs_on_it);
  CASE (a_row_that_gains_or_loses_its_children_is_put_in_anew);
  CASE (another_rig_is_another_tree_under_the_same_bow);
  CASE (a_list_let_go_leaves_the_document_alone);
  return check_end ();
}
