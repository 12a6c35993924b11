/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Stays 8 s, counted anew from when pointer and focus have left it: what can be answered must not
 * run away from someone who is slow to reach it.
 */
#include "widgets/toast.h"

#define STAYS_SECONDS 8

struct _PhToast
{
  GtkWidget parent_instance;

  /* template */
  GtkRevealer *revealer;
  GtkLabel *label;
  GtkButton *button;
  GtkEventController *pointer, *focus;

  /* owned */
  char *action;
  guint timer;
};

G_DEFINE_FINAL_TYPE (PhToast, ph_toast, GTK_TYPE_WIDGET)

static void
stop_timer (PhToast *self)
{
  g_clear_handle_id (&self->timer, g_source_remove);
}

static gboolean
time_is_up_cb (gpointer data)
{
  PhToast *self = data;
  self->timer = 0;
  ph_toast_close (self);
  return G_SOURCE_REMOVE;
}

static void
attended_cb (PhToast *self)
{
  stop_timer (self);
  /* Pointer and focus leave once more when the window goes. */
  if (gtk_widget_in_destruction (GTK_WIDGET (self))
      || !gtk_revealer_get_reveal_child (self->revealer))
    return;
  if (gtk_event_controller_motion_contains_pointer (GTK_EVENT_CONTROLLER_MOTION (self->pointer))
      || gtk_event_controller_focus_contains_focus (GTK_EVENT_CONTROLLER_FOCUS (self->focus)))
    return;
  self->timer = g_timeout_add_seconds (STAYS_SECONDS, time_is_up_cb, self);
}

static void
clicked_cb (PhToast *self)
{
  g_autofree char *action = g_strdup (self->action);
  ph_toast_close (self);
  if (action)
    gtk_widget_activate_action (GTK_WIDGET (self), action, NULL);
}

static void
close_cb (PhToast *self)
{
  ph_toast_close (self);
}

static gboolean
escape_cb (PhToast *self, guint keyval)
{
  if (keyval != GDK_KEY_Escape)
    return GDK_EVENT_PROPAGATE;
  ph_toast_close (self);
  return GDK_EVENT_STOP;
}

static void
revealed_cb (PhToast *self)
{
  if (!gtk_revealer_get_child_revealed (self->revealer)
      && !gtk_revealer_get_reveal_child (self->revealer))
    gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

void
ph_toast_say (PhToast *self, const char *text, const char *button_label, const char *action)
{
  g_return_if_fail (PH_IS_TOAST (self) && text != NULL);
  g_free (self->action);
  self->action = g_strdup (action);
  gtk_label_set_text (self->label, text);
  gtk_widget_set_visible (GTK_WIDGET (self->button), button_label != NULL);
  gtk_button_set_label (self->button, button_label ? button_label : "");
  gtk_widget_set_visible (GTK_WIDGET (self), TRUE);
  gtk_revealer_set_reveal_child (self->revealer, TRUE);
  attended_cb (self);
}

void
ph_toast_close (PhToast *self)
{
  g_return_if_fail (PH_IS_TOAST (self));
  stop_timer (self);
  gtk_revealer_set_reveal_child (self->revealer, FALSE);
}

static void
ph_toast_dispose (GObject *object)
{
  PhToast *self = PH_TOAST (object);
  GtkWidget *child;
  stop_timer (self);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))))
    gtk_widget_unparent (child);
  g_clear_pointer (&self->action, g_free);
  G_OBJECT_CLASS (ph_toast_parent_class)->dispose (object);
}

static void
ph_toast_class_init (PhToastClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = ph_toast_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/plumbhold/Plumbhold/ui/toast.ui");
  gtk_widget_class_bind_template_child (widget_class, PhToast, revealer);
  gtk_widget_class_bind_template_child (widget_class, PhToast, label);
  gtk_widget_class_bind_template_child (widget_class, PhToast, button);
  gtk_widget_class_bind_template_child (widget_class, PhToast, pointer);
  gtk_widget_class_bind_template_child (widget_class, PhToast, focus);
  gtk_widget_class_bind_template_callback (widget_class, attended_cb);
  gtk_widget_class_bind_template_callback (widget_class, clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, close_cb);
  gtk_widget_class_bind_template_callback (widget_class, escape_cb);
  gtk_widget_class_bind_template_callback (widget_class, revealed_cb);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_ALERT);
  gtk_widget_class_set_css_name (widget_class, "ph-toast");
}

static void
ph_toast_init (PhToast *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
ph_toast_new (void)
{
  return g_object_new (PH_TYPE_TOAST, NULL);
}
