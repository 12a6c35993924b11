/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Head, Add and the first hint; the list itself is in parts-list.c and what is done to its rows in
 * parts-menu.c.
 */
#include <glib/gi18n.h>

#include "widgets/parts-pane-private.h"

enum
{
  EDIT_FORM,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

/* Below this many digits of width the list shows names and masses only. */
#define NARROW_CHARS 34

G_DEFINE_FINAL_TYPE (PhPartsPane, ph_parts_pane, GTK_TYPE_WIDGET)

void
ph_parts_pane_say (PhPartsPane *self, const char *why)
{
  gtk_label_set_text (self->refusal, why ? why : "");
  gtk_widget_set_visible (GTK_WIDGET (self->refusal), why && *why);
}

/* The rig's name is taken when its editing ends, not at each key. */
static void
title_cb (PhPartsPane *self)
{
  if (gtk_editable_label_get_editing (self->title))
    return;
  g_autoptr (GError) error = NULL;
  g_autofree char *title =
      g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->title))));
  gboolean same = g_strcmp0 (title, ph_document_get_title (self->document)) == 0;
  if (!same && !ph_document_set_title (self->document, title, &error))
    ph_parts_pane_say (self, error ? error->message : _ ("This cannot be a name."));
  gtk_editable_set_text (GTK_EDITABLE (self->title), ph_document_get_title (self->document));
}

static void
show_title_cb (PhPartsPane *self)
{
  if (!gtk_editable_label_get_editing (self->title))
    gtk_editable_set_text (GTK_EDITABLE (self->title), ph_document_get_title (self->document));
}

static void
show_saved_cb (PhPartsPane *self)
{
  GFile *file = ph_document_get_file (self->document);
  g_autofree char *base = file ? g_file_get_basename (file) : NULL;
  g_autofree char *shown = base ? g_filename_display_name (base) : NULL;
  gboolean unsaved = ph_document_get_unsaved (self->document);
  gtk_label_set_text (self->saved, unsaved ? _ ("changed, not saved")
                                   : shown ? shown
                                           : _ ("not in a file yet"));
}

static void
show_empty_cb (PhPartsPane *self)
{
  gtk_widget_set_visible (self->empty, ph_document_get_rig (self->document)->n_parts == 0);
  ph_parts_pane_say (self, NULL);
}

static void
open_add (PhPartsPane *self, const char *search, const char *near_id)
{
  ph_add_popover_prepare (self->popover, search, near_id);
  gtk_menu_button_popup (self->add);
}

static void
add_front_cb (PhPartsPane *self)
{
  open_add (self, _ ("Front bar"), NULL);
}

void
ph_parts_pane_show_add (PhPartsPane *self)
{
  g_return_if_fail (PH_IS_PARTS_PANE (self));
  open_add (self, NULL, ph_document_get_selected (self->document));
}

void
ph_parts_pane_rename_selected (PhPartsPane *self)
{
  g_return_if_fail (PH_IS_PARTS_PANE (self));
  const char *id = ph_document_get_selected (self->document);
  PhPartRow *row = id ? ph_parts_pane_row_of (self, id) : NULL;
  if (row)
    ph_part_row_edit (row, PH_PART_CELL_NAME);
}

/* The toolkit's editable label asks for the whole of its text. */
static void
ellipsize_labels (GtkWidget *widget)
{
  if (GTK_IS_LABEL (widget))
    gtk_label_set_ellipsize (GTK_LABEL (widget), PANGO_ELLIPSIZE_END);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child;
       child = gtk_widget_get_next_sibling (child))
    ellipsize_labels (child);
}

static gboolean
narrow_idle_cb (gpointer data)
{
  PhPartsPane *self = data;
  GHashTableIter iter;
  gpointer row;
  self->narrow_idle = 0;
  g_hash_table_iter_init (&iter, self->bound);
  while (g_hash_table_iter_next (&iter, &row, NULL))
    ph_part_row_set_narrow (row, self->narrow);
  return G_SOURCE_REMOVE;
}

/* Large text or a narrow pane leaves no room for sizes beside the names. */
static void
width_cb (GtkAdjustment *across, GParamSpec *pspec G_GNUC_UNUSED, PhPartsPane *self)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), "0000000000");
  int ten;
  pango_layout_get_pixel_size (layout, &ten, NULL);
  gboolean narrow = gtk_adjustment_get_page_size (across) < NARROW_CHARS * ten / 10.0;
  if (narrow == self->narrow)
    return;
  self->narrow = narrow;
  if (!self->narrow_idle)
    self->narrow_idle = g_idle_add (narrow_idle_cb, self);
}

/* Tab leaves the list, whose rows the arrows walk; the toolkit would go through every row. */
static gboolean
ph_parts_pane_focus (GtkWidget *widget, GtkDirectionType direction)
{
  PhPartsPane *self = PH_PARTS_PANE (widget);
  GtkStateFlags flags = gtk_widget_get_state_flags (GTK_WIDGET (self->list));
  if (flags & GTK_STATE_FLAG_FOCUS_WITHIN)
    {
      if (direction == GTK_DIR_TAB_BACKWARD)
        return gtk_widget_child_focus (self->head, direction);
      if (direction == GTK_DIR_TAB_FORWARD)
        return gtk_widget_get_visible (self->empty)
               && gtk_widget_child_focus (self->empty, direction);
    }
  return GTK_WIDGET_CLASS (ph_parts_pane_parent_class)->focus (widget, direction);
}

static void
ph_parts_pane_dispose (GObject *object)
{
  PhPartsPane *self = PH_PARTS_PANE (object);
  if (self->document)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_handle_id (&self->narrow_idle, g_source_remove);
  g_clear_handle_id (&self->menu_idle, g_source_remove);
  g_clear_handle_id (&self->focus_idle, g_source_remove);
  g_clear_handle_id (&self->rename_idle, g_source_remove);
  if (self->list)
    gtk_list_view_set_model (self->list, NULL);
  g_clear_pointer (&self->menu, gtk_widget_unparent);
  GtkWidget *child;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))))
    gtk_widget_unparent (child);
  self->list = NULL;
  g_clear_object (&self->selection);
  g_clear_object (&self->tree);
  g_clear_object (&self->sizes);
  g_clear_object (&self->masses);
  g_clear_pointer (&self->collapsed, g_hash_table_unref);
  g_clear_pointer (&self->bound, g_hash_table_unref);
  g_clear_pointer (&self->places, g_ptr_array_unref);
  ph_parts_pane_clear_drag (self);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (ph_parts_pane_parent_class)->dispose (object);
}

static void
ph_parts_pane_class_init (PhPartsPaneClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = ph_parts_pane_dispose;
  widget_class->focus = ph_parts_pane_focus;
  signals[EDIT_FORM] = g_signal_new ("edit-form", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0,
                                     NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/plumbhold/Plumbhold/ui/parts-pane.ui");
  gtk_widget_class_bind_template_child (widget_class, PhPartsPane, title);
  gtk_widget_class_bind_template_child (widget_class, PhPartsPane, saved);
  gtk_widget_class_bind_template_child (widget_class, PhPartsPane, refusal);
  gtk_widget_class_bind_template_child (widget_class, PhPartsPane, add);
  gtk_widget_class_bind_template_child (widget_class, PhPartsPane, list);
  gtk_widget_class_bind_template_child (widget_class, PhPartsPane, empty);
  gtk_widget_class_bind_template_child (widget_class, PhPartsPane, head);
  gtk_widget_class_bind_template_callback (widget_class, title_cb);
  gtk_widget_class_bind_template_callback (widget_class, add_front_cb);
  ph_parts_pane_install_actions (widget_class);
}

static void
title_left_cb (PhPartsPane *self)
{
  if (gtk_editable_label_get_editing (self->title))
    gtk_editable_label_stop_editing (self->title, TRUE);
}

/* The label's own way to end an edit that is left waits 100 ms, and then uses its controller even
 * where the window has closed meanwhile (GTK 4.8). Here the edit ends at once. */
static void
end_title_when_left (PhPartsPane *self)
{
  GtkWidget *title = GTK_WIDGET (self->title);
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (title);
  for (guint i = g_list_model_get_n_items (controllers); i > 0; i--)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i - 1);
      if (GTK_IS_EVENT_CONTROLLER_FOCUS (controller))
        gtk_widget_remove_controller (title, controller);
    }
  GtkEventController *focus = gtk_event_controller_focus_new ();
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (title_left_cb), self);
  gtk_widget_add_controller (title, focus);
}

static void
ph_parts_pane_init (PhPartsPane *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  ellipsize_labels (GTK_WIDGET (self->title));
  end_title_when_left (self);
}

static void
watch (PhPartsPane *self)
{
  const struct
  {
    const char *signal;
    void (*callback) (PhPartsPane *);
  } watched[] = {
    { "notify::title", show_title_cb },
    { "notify::unsaved", show_saved_cb },
    { "notify::file", show_saved_cb },
    { "changed", show_empty_cb },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (watched); i++)
    {
      g_signal_connect_swapped (self->document, watched[i].signal, G_CALLBACK (watched[i].callback),
                                self);
      watched[i].callback (self);
    }
}

GtkWidget *
ph_parts_pane_new (PhDocument *document, const PhCatalogue *catalogue)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document) && catalogue, NULL);
  PhPartsPane *self = g_object_new (PH_TYPE_PARTS_PANE, NULL);
  self->document = g_object_ref (document);
  self->popover = PH_ADD_POPOVER (ph_add_popover_new (document, catalogue));
  g_signal_connect_swapped (self->popover, "added", G_CALLBACK (ph_parts_pane_want_focus), self);
  gtk_menu_button_set_popover (self->add, GTK_WIDGET (self->popover));
  ph_parts_pane_init_list (self);
  ph_parts_pane_init_menu (self);
  ph_parts_pane_init_drag (self);
  watch (self);
  ph_parts_pane_follow_selection (self);
  g_signal_connect (gtk_scrollable_get_hadjustment (GTK_SCROLLABLE (self->list)),
                    "notify::page-size", G_CALLBACK (width_cb), self);
  return GTK_WIDGET (self);
}
