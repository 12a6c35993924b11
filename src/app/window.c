/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The window as a widget: what stands where, and what in its frame follows the document. What can
 * be done is in window-actions.c, files in window-files.c, the drawer in window-layout.c.
 */
#include "app/window.h"

#include <glib/gi18n.h>

#include "app/settings.h"
#include "app/window-private.h"
#include "widgets/hand-page.h"
#include "widgets/lean-pane.h"
#include "widgets/part-form.h"
#include "widgets/parts-pane.h"
#include "widgets/tilt-words.h"
#include "widgets/views-pane.h"

G_DEFINE_FINAL_TYPE (PhWindow, ph_window, GTK_TYPE_APPLICATION_WINDOW)

/* What the frame shows of the document. */

/* The side pane names the rig; where it is a drawer, the header has to. */
void
ph_window_show_name (PhWindow *self)
{
  const char *title = ph_document_get_title (self->document);
  GFile *file = ph_document_get_file (self->document);
  gboolean unsaved = ph_document_get_unsaved (self->document);
  g_autofree char *base = file ? g_file_get_basename (file) : NULL;
  g_autofree char *name = base ? g_filename_display_name (base) : NULL;
  g_autofree char *subtitle =
      !unsaved ? g_strdup (name ? name : _ ("not in a file yet"))
               : g_strdup_printf (_ ("%s · changed, not saved"), name ? name : _ ("no file yet"));
  /* Translators: the title of the window: the rig's name, then the program's. */
  g_autofree char *heading = g_strdup_printf (_ ("%s%s – Plumbhold"), unsaved ? "• " : "", title);
  gtk_label_set_text (self->title, self->narrow ? title : g_get_application_name ());
  gtk_label_set_text (self->subtitle, subtitle);
  gtk_widget_set_visible (GTK_WIDGET (self->subtitle), self->narrow);
  gtk_window_set_title (GTK_WINDOW (self), heading);
  gtk_widget_set_visible (GTK_WIDGET (self->save), unsaved);
}

static void
name_button (GtkButton *button, const char *label, const char *keys)
{
  g_autofree char *tooltip = g_strdup_printf ("%s (%s)", label, keys);
  gtk_widget_set_tooltip_text (GTK_WIDGET (button), tooltip);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, label,
                                  -1);
}

static void
steps_changed_cb (PhWindow *self)
{
  const char *back = ph_document_get_undo_label (self->document);
  const char *again = ph_document_get_redo_label (self->document);
  /* Translators: %s is what was done, like "back bar out 20° → 26°". */
  g_autofree char *undo = back ? g_strdup_printf (_ ("Undo: %s"), back) : g_strdup (_ ("Undo"));
  g_autofree char *redo = again ? g_strdup_printf (_ ("Redo: %s"), again) : g_strdup (_ ("Redo"));
  name_button (self->undo, undo, _ ("Ctrl+Z"));
  name_button (self->redo, redo, _ ("Ctrl+Shift+Z"));
  /* Its Undo would now take back something else. */
  if (self->removal && g_strcmp0 (back, self->removal) != 0)
    {
      g_clear_pointer (&self->removal, g_free);
      ph_toast_close (self->toast);
    }
}

static void
changed_cb (PhWindow *self)
{
  const PhReport *report = ph_document_get_report (self->document);
  gtk_widget_set_visible (self->next, !report->hand_fitted);
  gtk_label_set_text (self->next_words, ph_tilt_has_level (ph_document_get_rig (self->document))
                                            ? _ ("Next: one bubble check")
                                            : _ ("Next: one check of the lean"));
}

/* Another rig is looked at first, whatever page the last one was left on. */
static void
replaced_cb (PhWindow *self)
{
  gtk_stack_set_visible_child_name (self->pages, "rig");
}

static void
removed_cb (PhWindow *self, const char *text)
{
  g_free (self->removal);
  self->removal = g_strdup (ph_document_get_undo_label (self->document));
  ph_toast_say (self->toast, text, _ ("Undo"), "win.undo");
}

static void
recovery_error_cb (PhWindow *self)
{
  g_autofree char *text = NULL;
  g_object_get (self->document, "recovery-error", &text, NULL);
  if (text)
    ph_banner_say (self->file_banner, PH_BANNER_ERROR, text, NULL);
}

static void
follow_document (PhWindow *self)
{
  static const struct
  {
    const char *signal;
    GCallback callback;
  } followed[] = {
    { "notify::title", G_CALLBACK (ph_window_show_name) },
    { "notify::file", G_CALLBACK (ph_window_show_name) },
    { "notify::unsaved", G_CALLBACK (ph_window_show_name) },
    { "notify::undo-label", G_CALLBACK (steps_changed_cb) },
    { "notify::redo-label", G_CALLBACK (steps_changed_cb) },
    { "notify::recovery-error", G_CALLBACK (recovery_error_cb) },
    { "changed", G_CALLBACK (changed_cb) },
    { "replaced", G_CALLBACK (replaced_cb) },
    { "removed", G_CALLBACK (removed_cb) },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (followed); i++)
    g_signal_connect_object (self->document, followed[i].signal, followed[i].callback, self,
                             G_CONNECT_SWAPPED);
  ph_window_show_name (self);
  steps_changed_cb (self);
  changed_cb (self);
}

/* Pages. */

static void
pages_changed_cb (PhWindow *self)
{
  g_autoptr (GtkSelectionModel) pages = gtk_stack_get_pages (self->pages);
  gboolean several = g_list_model_get_n_items (G_LIST_MODEL (pages)) > 1;
  gtk_stack_set_visible_child_name (self->heading, several ? "pages" : "title");
}

void
ph_window_add_page (PhWindow *self, GtkWidget *page, const char *name, const char *title)
{
  g_return_if_fail (PH_IS_WINDOW (self) && GTK_IS_WIDGET (page));
  gtk_stack_add_titled (self->pages, page, name, title);
  pages_changed_cb (self);
}

void
ph_window_add_check (PhWindow *self)
{
  gtk_stack_set_visible_child (self->pages, self->hand);
  ph_hand_page_add_check (PH_HAND_PAGE (self->hand));
}

/* Return on a row of the list: on to its first number. */
static void
edit_form_cb (PhWindow *self)
{
  ph_part_form_edit (PH_PART_FORM (self->form));
}

static void
fill_side (PhWindow *self)
{
  self->parts = ph_parts_pane_new (self->document, self->catalogue);
  self->form = ph_part_form_new (self->document);
  gtk_widget_set_vexpand (self->parts, TRUE);
  gtk_widget_set_vexpand (self->form, TRUE);
  gtk_box_append (self->side_top, self->parts);
  gtk_box_append (self->side_form, self->form);
  g_signal_connect_swapped (self->parts, "edit-form", G_CALLBACK (edit_form_cb), self);
}

/* What a view or a page could not do, and why. */
static void
refused_cb (PhWindow *self, const char *why)
{
  ph_toast_say (self->toast, why, NULL, NULL);
}

/* A view that fills the window: all beside and under the views goes but the bubble, for which one
 * drags, and comes back as it was. */
static void
filled_cb (PhWindow *self)
{
  gboolean filled = ph_views_pane_get_filled (PH_VIEWS_PANE (self->views));
  if (!self->narrow)
    gtk_widget_set_visible (GTK_WIDGET (self->side), !filled);
  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self->work)); child;
       child = gtk_widget_get_next_sibling (child))
    {
      if (child == self->views || child == self->bubble)
        continue;
      if (filled)
        g_object_set_data (G_OBJECT (child), "ph-before",
                           GINT_TO_POINTER (gtk_widget_get_visible (child)));
      gtk_widget_set_visible (
          child, !filled && GPOINTER_TO_INT (g_object_get_data (G_OBJECT (child), "ph-before")));
    }
}

static void
fill_work (PhWindow *self)
{
  self->views = ph_views_pane_new (self->document);
  ph_views_pane_bind_settings (PH_VIEWS_PANE (self->views), self->settings);
  gtk_widget_set_vexpand (self->views, TRUE);
  g_signal_connect_swapped (self->views, "refused", G_CALLBACK (refused_cb), self);
  g_signal_connect_swapped (self->views, "activated", G_CALLBACK (edit_form_cb), self);
  g_signal_connect_swapped (self->views, "notify::filled", G_CALLBACK (filled_cb), self);
  ph_views_pane_set_foot (PH_VIEWS_PANE (self->views), ph_lean_pane_new (self->document));
  gtk_box_append (self->work, self->views);
  ph_window_add_panels (self);
}

static void
add_pages (PhWindow *self)
{
  self->hand = ph_hand_page_new (self->document);
  g_signal_connect_swapped (self->hand, "refused", G_CALLBACK (refused_cb), self);
  ph_window_add_page (self, self->hand, "hand", _ ("Hand"));
}

/* Dropped files. */

static gboolean
drop_cb (PhWindow *self, const GValue *value)
{
  GFile *file = g_value_get_object (value);
  if (!file)
    return FALSE;
  ph_window_open (self, file);
  return TRUE;
}

static void
scrim_pressed_cb (PhWindow *self)
{
  gtk_toggle_button_set_active (self->drawer_button, FALSE);
}

/* Closing. */

static void
close_for_good (PhWindow *self, gpointer nothing)
{
  (void)nothing;
  self->settled = TRUE;
  if (!self->unattended)
    {
      int width, height;
      gtk_window_get_default_size (GTK_WINDOW (self), &width, &height);
      ph_settings_set_window (self->settings, width, height,
                              gtk_window_is_maximized (GTK_WINDOW (self)));
    }
  ph_document_forget_recovery (self->document);
  gtk_window_destroy (GTK_WINDOW (self));
}

static gboolean
ph_window_close_request (GtkWindow *window)
{
  PhWindow *self = PH_WINDOW (window);
  if (self->settled)
    return FALSE;
  ph_window_settle (self, _ ("before closing"), close_for_good, NULL, NULL);
  return TRUE;
}

void
ph_window_set_unattended (PhWindow *self)
{
  g_return_if_fail (PH_IS_WINDOW (self));
  self->unattended = TRUE;
}

PhDocument *
ph_window_get_document (PhWindow *self)
{
  g_return_val_if_fail (PH_IS_WINDOW (self), NULL);
  return self->document;
}

/* The object. */

static void
ph_window_dispose (GObject *object)
{
  PhWindow *self = PH_WINDOW (object);
  ph_window_dispose_layout (self);
  G_OBJECT_CLASS (ph_window_parent_class)->dispose (object);
  self->parts = self->form = self->views = self->hand = NULL;
  g_clear_object (&self->document);
  g_clear_object (&self->settings);
  g_clear_pointer (&self->recovered, g_strfreev);
  g_clear_pointer (&self->removal, g_free);
  self->offered = NULL;
}

static void
bind_children (GtkWidgetClass *widget_class)
{
#define BIND(child) gtk_widget_class_bind_template_child (widget_class, PhWindow, child)
  BIND (pages);
  BIND (heading);
  BIND (title);
  BIND (subtitle);
  BIND (drawer_button);
  BIND (open);
  BIND (make);
  BIND (undo);
  BIND (redo);
  BIND (save);
  BIND (flip);
  BIND (reference);
  BIND (reference_label);
  BIND (menu_button);
  BIND (file_banner);
  BIND (recovery_banner);
  BIND (toast);
  BIND (panes);
  BIND (side);
  BIND (side_top);
  BIND (side_form);
  BIND (work);
  BIND (drawer);
  BIND (scrim);
  BIND (next);
  BIND (next_words);
#undef BIND
  gtk_widget_class_bind_template_callback (widget_class, scrim_pressed_cb);
}

static void
ph_window_class_init (PhWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = ph_window_dispose;
  GTK_WINDOW_CLASS (klass)->close_request = ph_window_close_request;
  g_type_ensure (PH_TYPE_BANNER);
  g_type_ensure (PH_TYPE_TOAST);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/plumbhold/Plumbhold/ui/window.ui");
  bind_children (widget_class);
  ph_window_install_actions (widget_class);
}

static void
ph_window_init (PhWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  GtkDropTarget *target = gtk_drop_target_new (G_TYPE_FILE, GDK_ACTION_COPY);
  g_signal_connect_swapped (target, "drop", G_CALLBACK (drop_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (target));
}

static void
give_menus (PhWindow *self, GtkApplication *application)
{
  GMenu *main_menu = gtk_application_get_menu_by_id (application, "main-menu");
  GMenu *reference_menu = gtk_application_get_menu_by_id (application, "reference-menu");
  gtk_menu_button_set_menu_model (self->menu_button, G_MENU_MODEL (main_menu));
  gtk_menu_button_set_menu_model (self->reference, G_MENU_MODEL (reference_menu));
}

PhWindow *
ph_window_new (GtkApplication *application, GSettings *settings, const PhCatalogue *catalogue)
{
  PhWindow *self = g_object_new (PH_TYPE_WINDOW, "application", application, NULL);
  int width, height;
  gboolean maximized;
  self->catalogue = catalogue;
  self->settings = settings ? g_object_ref (settings) : NULL;
  self->document = ph_document_new ();
  ph_document_set_units (self->document, ph_settings_get_units (settings));
  ph_settings_get_window (settings, &width, &height, &maximized);
  gtk_window_set_default_size (GTK_WINDOW (self), width, height);
  if (maximized)
    gtk_window_maximize (GTK_WINDOW (self));
  give_menus (self, application);
  fill_side (self);
  fill_work (self);
  add_pages (self);
  ph_window_init_actions (self);
  ph_window_init_layout (self);
  ph_window_init_reference (self);
  follow_document (self);
  pages_changed_cb (self);
  return self;
}
