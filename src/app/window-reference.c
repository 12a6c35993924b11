/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The reference in the header: its name on the menu, and a button (or the key R) that shows the
 * reference as long as it is held.
 */
#include <glib/gi18n.h>

#include "app/window-private.h"

static void
flip (PhWindow *self, gboolean flipped)
{
  ph_document_set_flipped (self->document, flipped);
}

static void
name_changed_cb (PhWindow *self)
{
  g_autofree char *name = NULL;
  g_object_get (self->document, "reference-name", &name, NULL);
  gboolean flipped = ph_document_get_flipped (self->document);
  const char *shown = name ? name : _ ("none");
  g_autofree char *label = flipped ? g_strdup_printf (_ ("Showing: %s"), shown)
                                   : g_strdup_printf (_ ("Reference: %s"), shown);
  gtk_label_set_text (self->reference_label, label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->reference), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  label, -1);
  gtk_widget_set_visible (GTK_WIDGET (self->flip), name != NULL);
}

static void
flip_pressed_cb (PhWindow *self)
{
  /* "active" follows a finger as well as a mouse button, and ends when either leaves the button. */
  GtkStateFlags state = gtk_widget_get_state_flags (GTK_WIDGET (self->flip));
  flip (self, (state & GTK_STATE_FLAG_ACTIVE) != 0);
}

static gboolean
key_pressed_cb (PhWindow *self, guint keyval, guint code, GdkModifierType modifiers)
{
  (void)code;
  gboolean plain =
      (modifiers & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SUPER_MASK | GDK_META_MASK)) == 0;
  if (gdk_keyval_to_lower (keyval) != GDK_KEY_r || !plain
      || !ph_document_get_reference_rig (self->document))
    return GDK_EVENT_PROPAGATE;
  flip (self, TRUE);
  return GDK_EVENT_STOP;
}

static void
key_released_cb (PhWindow *self, guint keyval)
{
  if (gdk_keyval_to_lower (keyval) == GDK_KEY_r)
    flip (self, FALSE);
}

static void
active_changed_cb (PhWindow *self)
{
  /* The release goes elsewhere when another window comes up meanwhile. */
  if (!gtk_window_is_active (GTK_WINDOW (self)))
    flip (self, FALSE);
}

void
ph_window_init_reference (PhWindow *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  g_signal_connect_swapped (keys, "key-released", G_CALLBACK (key_released_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  g_signal_connect_swapped (self->flip, "state-flags-changed", G_CALLBACK (flip_pressed_cb), self);
  g_signal_connect (self, "notify::is-active", G_CALLBACK (active_changed_cb), NULL);
  g_signal_connect_object (self->document, "notify::reference-name", G_CALLBACK (name_changed_cb),
                           self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->document, "notify::flipped", G_CALLBACK (name_changed_cb), self,
                           G_CONNECT_SWAPPED);
  name_changed_cb (self);
}
