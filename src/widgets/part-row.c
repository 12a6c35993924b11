/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Shows a PhPartItem and lends a cell to an editor. A row is used for one part after another, so an
 * edit that is under way ends when the row is unbound; the id it began with, not the row's place,
 * says what it changes.
 */
#include "widgets/part-row.h"

#include <glib/gi18n.h>

#include "widgets/number-ref.h"
#include "widgets/quantity-entry.h"

struct _PhPartRow
{
  GtkWidget parent_instance;

  /* Template widgets */
  GtkTreeExpander *expander;
  GtkWidget *name_cell, *size_cell, *mass_cell;
  GtkLabel *name, *off, *size, *mass, *message;
  GtkWidget *locked;

  /* Owned */
  PhDocument *document;
  PhPartItem *item; /* null while unbound */

  GtkWidget *editor; /* borrowed child of a cell; null: none */
  PhPartCell cell;   /* of the editor */
  PhNumberRef ref;   /* of a number's editor */
};

enum
{
  EDITED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (PhPartRow, ph_part_row, GTK_TYPE_WIDGET)

static GtkWidget *
cell_widget (PhPartRow *self, PhPartCell cell)
{
  return cell == PH_PART_CELL_NAME   ? self->name_cell
         : cell == PH_PART_CELL_SIZE ? self->size_cell
                                     : self->mass_cell;
}

static GtkLabel *
cell_label (PhPartRow *self, PhPartCell cell)
{
  return cell == PH_PART_CELL_NAME   ? self->name
         : cell == PH_PART_CELL_SIZE ? self->size
                                     : self->mass;
}

/* The whole row as one text; the toolkit's list item has no name of its own. */
static void
name_for_reader (PhPartRow *self, const char *off, const char *locked)
{
  GtkWidget *list_item = gtk_widget_get_parent (GTK_WIDGET (self));
  if (!list_item)
    return;
  GString *text = g_string_new (ph_part_item_get_name (self->item));
  const char *const more[] = { ph_part_item_get_size_text (self->item),
                               ph_part_item_get_mass_text (self->item), off, locked };
  for (gsize i = 0; i < G_N_ELEMENTS (more); i++)
    if (more[i] && *more[i])
      g_string_append_printf (text, ", %s", more[i]);
  gtk_accessible_update_property (GTK_ACCESSIBLE (list_item), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  text->str, -1);
  g_string_free (text, TRUE);
}

static void
show_item (PhPartRow *self)
{
  gboolean fitted = ph_part_item_get_fitted (self->item);
  gboolean locked = ph_part_item_get_locked (self->item);
  gtk_label_set_text (self->name, ph_part_item_get_name (self->item));
  gtk_label_set_text (self->size, ph_part_item_get_size_text (self->item));
  gtk_widget_set_visible (GTK_WIDGET (self->size),
                          *ph_part_item_get_size_text (self->item)
                              && !(self->editor && self->cell == PH_PART_CELL_SIZE));
  gtk_label_set_text (self->mass, ph_part_item_get_mass_text (self->item));
  gtk_widget_set_visible (GTK_WIDGET (self->off), !fitted);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->off), ph_part_item_get_off (self->item)
                                                           ? _ ("Taken off")
                                                           : _ ("What it hangs on is off"));
  if (fitted)
    gtk_widget_remove_css_class (GTK_WIDGET (self), "not-fitted");
  else
    gtk_widget_add_css_class (GTK_WIDGET (self), "not-fitted");
  gtk_widget_set_visible (self->locked, locked);
  name_for_reader (self, fitted ? "" : gtk_label_get_text (self->off),
                   locked ? _ ("kept as it is") : "");
}

/* Only what does not fit needs a tooltip. */
static gboolean
name_tooltip_cb (GtkLabel *name, int x G_GNUC_UNUSED, int y G_GNUC_UNUSED,
                 gboolean keyboard G_GNUC_UNUSED, GtkTooltip *tooltip,
                 PhPartRow *self G_GNUC_UNUSED)
{
  gtk_tooltip_set_text (tooltip, gtk_label_get_text (name));
  return pango_layout_is_ellipsized (gtk_label_get_layout (name));
}

static void
say (PhPartRow *self, const char *message)
{
  gtk_label_set_text (self->message, message ? message : "");
  gtk_widget_set_visible (GTK_WIDGET (self->message), message && *message);
}

/* Ends an edit. The editor goes in an idle, since it may be the one that is just speaking. */
static gboolean
drop_editor_cb (gpointer editor)
{
  GtkWidget *parent = gtk_widget_get_parent (editor);
  if (GTK_IS_BOX (parent))
    gtk_box_remove (GTK_BOX (parent), editor);
  return G_SOURCE_REMOVE;
}

static void
end_edit (PhPartRow *self)
{
  GtkWidget *editor = g_steal_pointer (&self->editor);
  if (!editor)
    return;
  gboolean focused = (gtk_widget_get_state_flags (editor) & GTK_STATE_FLAG_FOCUS_WITHIN) != 0;
  gtk_widget_set_visible (GTK_WIDGET (cell_label (self, self->cell)), TRUE);
  gtk_widget_set_visible (editor, FALSE);
  say (self, NULL);
  g_idle_add_full (G_PRIORITY_HIGH_IDLE, drop_editor_cb, g_object_ref (editor), g_object_unref);
  if (focused)
    g_signal_emit (self, signals[EDITED], 0);
}

/* Names. */

static gboolean
commit_name (PhPartRow *self)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text =
      g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->editor))));
  g_autofree char *id = g_strdup (ph_part_item_get_id (self->item));
  if (g_str_equal (text, ph_part_item_get_name (self->item))
      || ph_document_set_part_name (self->document, id, text, &error))
    return TRUE;
  gtk_widget_add_css_class (self->editor, "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->editor), GTK_ACCESSIBLE_STATE_INVALID,
                               GTK_ACCESSIBLE_INVALID_TRUE, -1);
  say (self, error ? error->message : _ ("This cannot be a name."));
  return FALSE;
}

static void
name_activate_cb (GtkEntry *entry G_GNUC_UNUSED, PhPartRow *self)
{
  if (self->editor && commit_name (self))
    end_edit (self);
}

static void
name_leave_cb (GtkEventControllerFocus *focus G_GNUC_UNUSED, PhPartRow *self)
{
  if (self->editor && self->item && commit_name (self))
    end_edit (self);
}

static gboolean
name_key_cb (GtkEventControllerKey *keys G_GNUC_UNUSED, guint keyval, guint code G_GNUC_UNUSED,
             GdkModifierType state G_GNUC_UNUSED, PhPartRow *self)
{
  if (keyval != GDK_KEY_Escape)
    return FALSE;
  end_edit (self);
  return TRUE;
}

static GtkWidget *
name_editor (PhPartRow *self)
{
  GtkWidget *entry = gtk_entry_new ();
  gtk_editable_set_text (GTK_EDITABLE (entry), ph_part_item_get_name (self->item));
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 4);
  gtk_widget_set_hexpand (entry, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Name of the part"), -1);
  g_signal_connect (entry, "activate", G_CALLBACK (name_activate_cb), self);
  GtkEventController *focus = gtk_event_controller_focus_new ();
  g_signal_connect (focus, "leave", G_CALLBACK (name_leave_cb), self);
  gtk_widget_add_controller (entry, focus);
  GtkEventController *keys = gtk_event_controller_key_new ();
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (name_key_cb), self);
  gtk_widget_add_controller (entry, keys);
  return entry;
}

/* Numbers. */

/* The number a cell shows; FALSE: none that could be edited. */
static gboolean
cell_number (PhPartRow *self, PhPartCell cell, PhNumberRef *ref)
{
  const char *id = ph_part_item_get_id (self->item);
  int kind = ph_part_item_get_kind (self->item);
  if (kind < 0)
    {
      *ref = ph_number_ref (PH_NUMBER_BOW, NULL, "mass_g", 0);
      return cell == PH_PART_CELL_MASS;
    }
  const char *key = cell == PH_PART_CELL_MASS ? kind == PH_PART_WEIGHTS ? NULL : "mass_g"
                    : kind == PH_PART_WEIGHTS ? "count"
                    : kind == PH_PART_BAR || kind == PH_PART_DAMPER ? "length_mm"
                                                                    : NULL;
  if (!key)
    return FALSE;
  *ref = ph_number_ref (PH_NUMBER_PART, id, key, 0);
  return TRUE;
}

static char *
number_commit_cb (PhQuantityEntry *entry G_GNUC_UNUSED, double value, gpointer data)
{
  PhPartRow *self = data;
  g_autoptr (GError) error = NULL;
  if (!self->item)
    return NULL; /* the row is going away */
  if (ph_number_ref_write (&self->ref, self->document, value, &error))
    return NULL;
  return g_strdup (error ? error->message : _ ("This cannot be."));
}

static void
number_finished_cb (PhQuantityEntry *entry, PhPartRow *self)
{
  if (self->editor == GTK_WIDGET (entry))
    end_edit (self);
}

static void
number_message_cb (PhQuantityEntry *entry, GParamSpec *pspec G_GNUC_UNUSED, PhPartRow *self)
{
  g_autofree char *message = NULL;
  g_object_get (entry, "message", &message, NULL);
  if (self->editor == GTK_WIDGET (entry))
    say (self, message);
}

static GtkWidget *
number_editor (PhPartRow *self, PhPartCell cell)
{
  GtkWidget *widget = ph_quantity_entry_new (ph_number_ref_quantity (&self->ref));
  PhQuantityEntry *entry = PH_QUANTITY_ENTRY (widget);
  g_autofree char *label =
      g_strdup_printf (cell == PH_PART_CELL_MASS ? _ ("Mass of %s") : _ ("Size of %s"),
                       ph_part_item_get_name (self->item));
  ph_quantity_entry_set_units (entry, ph_document_get_units (self->document));
  ph_quantity_entry_set_value (
      entry, ph_number_ref_read (&self->ref, ph_document_get_rig (self->document)));
  ph_quantity_entry_set_label (entry, label);
  ph_quantity_entry_set_width_chars (entry, 7);
  ph_quantity_entry_set_message_below (entry, FALSE);
  ph_quantity_entry_set_commit (entry, number_commit_cb, self);
  g_signal_connect (entry, "finished", G_CALLBACK (number_finished_cb), self);
  g_signal_connect (entry, "notify::message", G_CALLBACK (number_message_cb), self);
  return widget;
}

gboolean
ph_part_row_edit (PhPartRow *self, PhPartCell cell)
{
  g_return_val_if_fail (PH_IS_PART_ROW (self), FALSE);
  if (!self->item)
    return FALSE;
  end_edit (self);
  ph_number_ref_clear (&self->ref);
  if (cell == PH_PART_CELL_NAME ? ph_part_item_get_kind (self->item) < 0
                                : !cell_number (self, cell, &self->ref))
    return FALSE;
  gtk_widget_set_visible (cell_widget (self, cell), TRUE);
  self->cell = cell;
  self->editor = cell == PH_PART_CELL_NAME ? name_editor (self) : number_editor (self, cell);
  gtk_widget_add_css_class (self->editor, "cell-editor");
  gtk_widget_set_visible (GTK_WIDGET (cell_label (self, cell)), FALSE);
  gtk_box_prepend (GTK_BOX (cell_widget (self, cell)), self->editor);
  if (cell == PH_PART_CELL_NAME)
    gtk_widget_grab_focus (self->editor);
  else
    ph_quantity_entry_edit (PH_QUANTITY_ENTRY (self->editor));
  return TRUE;
}

PhPartCell
ph_part_row_cell_at (PhPartRow *self, double x)
{
  g_return_val_if_fail (PH_IS_PART_ROW (self), PH_PART_CELL_NAME);
  double cell_x, y;
  GtkWidget *const cells[] = { self->size_cell, self->mass_cell };
  for (gsize i = 0; i < G_N_ELEMENTS (cells); i++)
    if (gtk_widget_translate_coordinates (GTK_WIDGET (self), cells[i], x, 0, &cell_x, &y)
        && cell_x >= 0 && cell_x <= gtk_widget_get_width (cells[i]))
      return i == 0 ? PH_PART_CELL_SIZE : PH_PART_CELL_MASS;
  return PH_PART_CELL_NAME;
}

void
ph_part_row_bind (PhPartRow *self, GtkTreeListRow *tree_row)
{
  g_return_if_fail (PH_IS_PART_ROW (self) && GTK_IS_TREE_LIST_ROW (tree_row));
  gtk_tree_expander_set_list_row (self->expander, tree_row);
  self->item = gtk_tree_list_row_get_item (tree_row);
  g_signal_connect_swapped (self->item, "notify", G_CALLBACK (show_item), self);
  show_item (self);
}

void
ph_part_row_unbind (PhPartRow *self)
{
  g_return_if_fail (PH_IS_PART_ROW (self));
  end_edit (self);
  if (self->item)
    g_signal_handlers_disconnect_by_data (self->item, self);
  g_clear_object (&self->item);
  gtk_tree_expander_set_list_row (self->expander, NULL);
}

void
ph_part_row_set_narrow (PhPartRow *self, gboolean narrow)
{
  g_return_if_fail (PH_IS_PART_ROW (self));
  if (narrow && self->editor && self->cell == PH_PART_CELL_SIZE)
    end_edit (self);
  gtk_widget_set_visible (self->size_cell, !narrow);
}

PhPartItem *
ph_part_row_get_item (PhPartRow *self)
{
  g_return_val_if_fail (PH_IS_PART_ROW (self), NULL);
  return self->item;
}

static void
ph_part_row_dispose (GObject *object)
{
  PhPartRow *self = PH_PART_ROW (object);
  self->editor = NULL;
  if (self->item)
    g_signal_handlers_disconnect_by_data (self->item, self);
  g_clear_object (&self->item);
  GtkWidget *child;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))))
    gtk_widget_unparent (child);
  g_clear_object (&self->document);
  ph_number_ref_clear (&self->ref);
  G_OBJECT_CLASS (ph_part_row_parent_class)->dispose (object);
}

static void
ph_part_row_class_init (PhPartRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = ph_part_row_dispose;
  signals[EDITED] = g_signal_new ("edited", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                  NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/plumbhold/Plumbhold/ui/part-row.ui");
  gtk_widget_class_bind_template_child (widget_class, PhPartRow, expander);
  gtk_widget_class_bind_template_child (widget_class, PhPartRow, name_cell);
  gtk_widget_class_bind_template_child (widget_class, PhPartRow, size_cell);
  gtk_widget_class_bind_template_child (widget_class, PhPartRow, mass_cell);
  gtk_widget_class_bind_template_child (widget_class, PhPartRow, name);
  gtk_widget_class_bind_template_child (widget_class, PhPartRow, off);
  gtk_widget_class_bind_template_child (widget_class, PhPartRow, locked);
  gtk_widget_class_bind_template_child (widget_class, PhPartRow, size);
  gtk_widget_class_bind_template_child (widget_class, PhPartRow, mass);
  gtk_widget_class_bind_template_child (widget_class, PhPartRow, message);
  gtk_widget_class_bind_template_callback (widget_class, name_tooltip_cb);
}

static void
ph_part_row_init (PhPartRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
ph_part_row_new (PhDocument *document, GtkSizeGroup *sizes, GtkSizeGroup *masses)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document), NULL);
  PhPartRow *self = g_object_new (PH_TYPE_PART_ROW, NULL);
  self->document = g_object_ref (document);
  gtk_size_group_add_widget (sizes, self->size_cell);
  gtk_size_group_add_widget (masses, self->mass_cell);
  return GTK_WIDGET (self);
}
