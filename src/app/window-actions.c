/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Everything that can be done to the open rig, as window actions: menu, keys, buttons and tests all
 * go this way. An action that would do nothing is disabled; one that is refused says why in the
 * toast. Keys that a text field uses too are bound to the window class, which gets a key only when
 * what has the focus did not want it; the others are the application's (application.c).
 */
#include <glib/gi18n.h>

#include "app/new-dialog.h"
#include "app/recent.h"
#include "app/settings.h"
#include "app/window-private.h"
#include "widgets/measure-page.h"
#include "widgets/parts-pane.h"
#include "widgets/views-pane.h"

#define ACTION(name) static void name (GSimpleAction *action, GVariant *parameter, gpointer data)
#define SELF                                                                                       \
  PhWindow *self = data;                                                                           \
  (void)action;                                                                                    \
  (void)parameter

static void
tell_refusal (PhWindow *self, GError *error)
{
  if (error)
    ph_toast_say (self->toast, error->message, NULL, NULL);
  g_clear_error (&error);
}

/* The selected part's id; null for the bow or for none. */
static const char *
selected_part_id (PhWindow *self)
{
  return ph_document_get_selected_part (self->document) >= 0
             ? ph_document_get_selected (self->document)
             : NULL;
}

/* Files. */

ACTION (open_cb)
{
  SELF;
  ph_window_choose_and_open (self);
}

ACTION (open_recent_cb)
{
  SELF;
  g_autoptr (GFile) file = g_file_new_for_uri (g_variant_get_string (parameter, NULL));
  ph_window_open (self, file);
}

ACTION (open_demo_cb)
{
  SELF;
  ph_window_open_demo (self);
}

static void
make_new (PhWindow *self, gpointer nothing)
{
  (void)nothing;
  ph_new_dialog_present (GTK_WINDOW (self), self->document, self->settings);
}

ACTION (new_cb)
{
  SELF;
  ph_window_settle (self, _ ("before making a new rig"), make_new, NULL, NULL);
}

ACTION (save_cb)
{
  SELF;
  ph_window_save (self);
}

ACTION (save_as_cb)
{
  SELF;
  ph_window_save_as (self);
}

ACTION (share_cb)
{
  SELF;
  ph_window_share (self);
}

/* Edits. */

ACTION (undo_cb)
{
  SELF;
  ph_document_undo (self->document);
}

ACTION (redo_cb)
{
  SELF;
  ph_document_redo (self->document);
}

ACTION (mirror_cb)
{
  SELF;
  ph_document_mirror (self->document);
  /* The rectangles of the views were shared out for the other side. */
  ph_views_pane_fit (PH_VIEWS_PANE (self->views));
}

ACTION (measure_cb)
{
  SELF;
  ph_measure_page_present (GTK_WINDOW (self), self->document);
}

ACTION (add_cb)
{
  SELF;
  /* As a drawer the list is not there to be added to until it is opened. */
  if (self->narrow)
    gtk_toggle_button_set_active (self->drawer_button, TRUE);
  ph_parts_pane_show_add (PH_PARTS_PANE (self->parts));
}

ACTION (remove_cb)
{
  SELF;
  g_autofree char *id = g_strdup (selected_part_id (self));
  if (id)
    ph_document_remove (self->document, id);
}

ACTION (duplicate_cb)
{
  SELF;
  GError *error = NULL;
  g_autofree char *id = g_strdup (selected_part_id (self));
  if (id && !ph_document_duplicate (self->document, id, &error))
    tell_refusal (self, error);
}

ACTION (copy_cb)
{
  SELF;
  const char *id = selected_part_id (self);
  if (!id)
    return;
  g_autofree char *text = ph_document_copy (self->document, id);
  gdk_clipboard_set_text (gtk_widget_get_clipboard (GTK_WIDGET (self)), text);
}

ACTION (cut_cb)
{
  copy_cb (action, parameter, data);
  remove_cb (action, parameter, data);
}

static void
pasted_cb (GObject *clipboard, GAsyncResult *result, gpointer data)
{
  g_autoptr (PhWindow) self = data;
  GError *error = NULL;
  g_autofree char *text = gdk_clipboard_read_text_finish (GDK_CLIPBOARD (clipboard), result, NULL);
  if (!text)
    ph_toast_say (self->toast, _ ("There is no part to paste: copy one first."), NULL, NULL);
  else if (self->document
           && !ph_document_paste (self->document, text, ph_document_get_selected (self->document),
                                  &error))
    tell_refusal (self, error);
}

ACTION (paste_cb)
{
  SELF;
  gdk_clipboard_read_text_async (gtk_widget_get_clipboard (GTK_WIDGET (self)), NULL, pasted_cb,
                                 g_object_ref (self));
}

ACTION (toggle_fitted_cb)
{
  SELF;
  GError *error = NULL;
  int part = ph_document_get_selected_part (self->document);
  if (part < 0)
    return;
  const PhPart *now = &ph_document_get_rig (self->document)->parts[part];
  g_autofree char *id = g_strdup (now->id);
  if (!ph_document_set_off (self->document, id, !now->off, &error))
    tell_refusal (self, error);
}

ACTION (add_check_cb)
{
  SELF;
  ph_window_add_check (self);
}

ACTION (units_cb)
{
  SELF;
  PhUnits units;
  if (!ph_units_from_word (g_variant_get_string (parameter, NULL), &units))
    return;
  ph_document_set_units (self->document, units);
  ph_settings_set_units (self->settings, units);
}

/* Reference. */

ACTION (reference_take_cb)
{
  SELF;
  ph_document_reference_take (self->document);
}

ACTION (reference_load_cb)
{
  SELF;
  ph_window_choose_reference (self);
}

ACTION (reference_swap_cb)
{
  SELF;
  ph_document_reference_swap (self->document);
}

ACTION (reference_clear_cb)
{
  SELF;
  ph_document_reference_clear (self->document);
}

/* Which actions there are, and when. */

static const GActionEntry entries[] = {
  { .name = "open", .activate = open_cb },
  { .name = "open-recent", .activate = open_recent_cb, .parameter_type = "s" },
  { .name = "open-demo", .activate = open_demo_cb },
  { .name = "new", .activate = new_cb },
  { .name = "save", .activate = save_cb },
  { .name = "save-as", .activate = save_as_cb },
  { .name = "share", .activate = share_cb },
  { .name = "undo", .activate = undo_cb },
  { .name = "redo", .activate = redo_cb },
  { .name = "mirror", .activate = mirror_cb },
  { .name = "measure", .activate = measure_cb },
  { .name = "add", .activate = add_cb },
  { .name = "remove", .activate = remove_cb },
  { .name = "duplicate", .activate = duplicate_cb },
  { .name = "cut", .activate = cut_cb },
  { .name = "copy", .activate = copy_cb },
  { .name = "paste", .activate = paste_cb },
  { .name = "toggle-fitted", .activate = toggle_fitted_cb, .state = "false" },
  { .name = "add-check", .activate = add_check_cb },
  { .name = "units", .activate = units_cb, .parameter_type = "s", .state = "'mixed'" },
  { .name = "reference-take", .activate = reference_take_cb },
  { .name = "reference-load", .activate = reference_load_cb },
  { .name = "reference-swap", .activate = reference_swap_cb },
  { .name = "reference-clear", .activate = reference_clear_cb },
};

static GSimpleAction *
action_of (PhWindow *self, const char *name)
{
  return G_SIMPLE_ACTION (g_action_map_lookup_action (G_ACTION_MAP (self), name));
}

static void
enable (PhWindow *self, const char *name, gboolean on)
{
  g_simple_action_set_enabled (action_of (self, name), on);
}

static void
selection_changed_cb (PhWindow *self)
{
  int part = ph_document_get_selected_part (self->document);
  static const char *const names[] = { "remove", "duplicate", "cut", "copy", "toggle-fitted" };
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    enable (self, names[i], part >= 0);
  gboolean fitted = part >= 0 && !ph_document_get_rig (self->document)->parts[part].off;
  g_simple_action_set_state (action_of (self, "toggle-fitted"), g_variant_new_boolean (fitted));
}

static void
steps_changed_cb (PhWindow *self)
{
  enable (self, "undo", ph_document_get_undo_label (self->document) != NULL);
  enable (self, "redo", ph_document_get_redo_label (self->document) != NULL);
  enable (self, "save", ph_document_get_unsaved (self->document));
  gboolean reference = ph_document_get_reference_rig (self->document) != NULL;
  enable (self, "reference-swap", reference);
  enable (self, "reference-clear", reference);
}

static void
units_changed_cb (PhWindow *self)
{
  const char *word = ph_units_word (ph_document_get_units (self->document));
  g_simple_action_set_state (action_of (self, "units"), g_variant_new_string (word));
}

void
ph_window_init_actions (PhWindow *self)
{
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  g_signal_connect_object (self->document, "notify::selected", G_CALLBACK (selection_changed_cb),
                           self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->document, "changed", G_CALLBACK (selection_changed_cb), self,
                           G_CONNECT_SWAPPED);
  static const char *const watched[] = { "notify::undo-label", "notify::redo-label",
                                         "notify::unsaved", "notify::reference-name" };
  for (gsize i = 0; i < G_N_ELEMENTS (watched); i++)
    g_signal_connect_object (self->document, watched[i], G_CALLBACK (steps_changed_cb), self,
                             G_CONNECT_SWAPPED);
  g_signal_connect_object (self->document, "notify::units", G_CALLBACK (units_changed_cb), self,
                           G_CONNECT_SWAPPED);
  selection_changed_cb (self);
  steps_changed_cb (self);
  units_changed_cb (self);
}

void
ph_window_install_actions (GtkWidgetClass *widget_class)
{
  static const struct
  {
    guint key;
    GdkModifierType modifiers;
    const char *action;
  } keys[] = {
    /* Of an action's keys a menu shows the last. */
    { GDK_KEY_KP_Delete, 0, "win.remove" },
    { GDK_KEY_Delete, 0, "win.remove" },
    { GDK_KEY_x, GDK_CONTROL_MASK, "win.cut" },
    { GDK_KEY_c, GDK_CONTROL_MASK, "win.copy" },
    { GDK_KEY_v, GDK_CONTROL_MASK, "win.paste" },
    { GDK_KEY_z, GDK_CONTROL_MASK, "win.undo" },
    { GDK_KEY_z, GDK_CONTROL_MASK | GDK_SHIFT_MASK, "win.redo" },
    { GDK_KEY_y, GDK_CONTROL_MASK, "win.redo" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++)
    gtk_widget_class_add_binding_action (widget_class, keys[i].key, keys[i].modifiers,
                                         keys[i].action, NULL);
}
