/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Text is only read when it differs from what was last shown, so that a rounded number that is
 * looked at stays what it is.
 */
#include "widgets/tilt-entry.h"

#include <glib/gi18n.h>
#include <math.h>

#include "widgets/tilt-words.h"

#define STEP_DEG 0.1
#define WIDTH_CHARS 10

struct _PhTiltEntry
{
  GtkWidget parent_instance;

  GtkEntry *entry; /* children */
  GtkLabel *below;

  double value;
  gboolean level;
  char *shown; /* owned: the text of value */

  PhTiltCommit commit;
  gpointer commit_data;
};

G_DEFINE_FINAL_TYPE (PhTiltEntry, ph_tilt_entry, GTK_TYPE_WIDGET)

static const char *
typed_text (PhTiltEntry *self)
{
  return gtk_editable_get_text (GTK_EDITABLE (self->entry));
}

static void
say (PhTiltEntry *self, const char *message)
{
  GtkAccessible *accessible = GTK_ACCESSIBLE (self->entry);
  gtk_label_set_text (self->below, message ? message : "");
  gtk_widget_set_visible (GTK_WIDGET (self->below), message != NULL);
  gtk_accessible_update_state (accessible, GTK_ACCESSIBLE_STATE_INVALID,
                               message ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE,
                               -1);
  if (message)
    {
      gtk_widget_add_css_class (GTK_WIDGET (self->entry), "error");
      gtk_accessible_update_property (accessible, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, message, -1);
      return;
    }
  gtk_widget_remove_css_class (GTK_WIDGET (self->entry), "error");
  gtk_accessible_reset_property (accessible, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION);
}

static void
show_value (PhTiltEntry *self)
{
  g_free (self->shown);
  self->shown = ph_tilt_words (self->value, self->level);
  gtk_editable_set_text (GTK_EDITABLE (self->entry), self->shown);
  gtk_editable_set_position (GTK_EDITABLE (self->entry), -1);
  say (self, NULL);
}

/* What is typed stays, and what holds instead is said. */
static void
complain (PhTiltEntry *self, const char *why)
{
  g_autofree char *message = g_strdup_printf (_ ("%s Still %s."), why, self->shown);
  say (self, message);
}

static void
take (PhTiltEntry *self, double tilt_deg)
{
  g_autoptr (PhTiltEntry) alive = g_object_ref (self);
  g_autofree char *why = self->commit ? self->commit (self, tilt_deg, self->commit_data) : NULL;
  if (why)
    {
      complain (self, why);
      return;
    }
  self->value = tilt_deg;
  show_value (self);
}

static void
commit_text (PhTiltEntry *self)
{
  double tilt;
  if (g_str_equal (typed_text (self), self->shown))
    say (self, NULL);
  else if (ph_tilt_parse (typed_text (self), self->level, &tilt))
    take (self, tilt);
  else
    complain (self, _ ("Type degrees and a side, such as 1.5 left."));
}

static void
step_by (PhTiltEntry *self, double steps)
{
  commit_text (self);
  if (!gtk_widget_get_visible (GTK_WIDGET (self->below)))
    take (self, round ((self->value + steps * STEP_DEG) / STEP_DEG) * STEP_DEG);
}

static gboolean
key_cb (PhTiltEntry *self, guint keyval, guint code, GdkModifierType state)
{
  double size = state & GDK_SHIFT_MASK ? 5 : 1;
  (void)code;
  if (state & (GDK_CONTROL_MASK | GDK_ALT_MASK))
    return FALSE;
  switch (keyval)
    {
    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
      step_by (self, size);
      return TRUE;
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      step_by (self, -size);
      return TRUE;
    case GDK_KEY_Escape:
      if (g_str_equal (typed_text (self), self->shown))
        return FALSE;
      show_value (self);
      return TRUE;
    default:
      return FALSE;
    }
}

static void
activate_cb (PhTiltEntry *self)
{
  commit_text (self);
  gtk_editable_select_region (GTK_EDITABLE (self->entry), 0, -1);
}

static void
leave_cb (PhTiltEntry *self)
{
  if (gtk_widget_in_destruction (GTK_WIDGET (self)))
    return;
  gtk_editable_select_region (GTK_EDITABLE (self->entry), 0, 0);
  commit_text (self);
}

static void
ph_tilt_entry_dispose (GObject *object)
{
  PhTiltEntry *self = PH_TILT_ENTRY (object);
  GtkWidget *child;
  self->commit = NULL;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))))
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (ph_tilt_entry_parent_class)->dispose (object);
}

static void
ph_tilt_entry_finalize (GObject *object)
{
  g_free (PH_TILT_ENTRY (object)->shown);
  G_OBJECT_CLASS (ph_tilt_entry_parent_class)->finalize (object);
}

static void
ph_tilt_entry_class_init (PhTiltEntryClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = ph_tilt_entry_dispose;
  G_OBJECT_CLASS (klass)->finalize = ph_tilt_entry_finalize;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BOX_LAYOUT);
}

static void
ph_tilt_entry_init (PhTiltEntry *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));
  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  self->entry = GTK_ENTRY (gtk_entry_new ());
  self->below = GTK_LABEL (gtk_label_new (NULL));
  self->shown = g_strdup ("");
  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), WIDTH_CHARS);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->entry), WIDTH_CHARS);
  gtk_widget_add_css_class (GTK_WIDGET (self->entry), "quantity");
  gtk_widget_add_css_class (GTK_WIDGET (self->below), "error-text");
  gtk_widget_set_visible (GTK_WIDGET (self->below), FALSE);
  gtk_label_set_wrap (self->below, TRUE);
  gtk_label_set_xalign (self->below, 0);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), self);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (leave_cb), self);
  g_signal_connect_swapped (self->entry, "activate", G_CALLBACK (activate_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self->entry), keys);
  gtk_widget_add_controller (GTK_WIDGET (self->entry), focus);
  gtk_widget_set_parent (GTK_WIDGET (self->entry), GTK_WIDGET (self));
  gtk_widget_set_parent (GTK_WIDGET (self->below), GTK_WIDGET (self));
}

GtkWidget *
ph_tilt_entry_new (const char *name, PhTiltCommit commit, gpointer user_data)
{
  PhTiltEntry *self = g_object_new (PH_TYPE_TILT_ENTRY, NULL);
  self->commit = commit;
  self->commit_data = user_data;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                  -1);
  return GTK_WIDGET (self);
}

void
ph_tilt_entry_set_value (PhTiltEntry *self, double tilt_deg, gboolean level)
{
  g_return_if_fail (PH_IS_TILT_ENTRY (self));
  gboolean typing = !g_str_equal (typed_text (self), self->shown);
  gboolean same = self->value == tilt_deg && self->level == level && *self->shown;
  self->value = tilt_deg;
  self->level = level;
  if (!same && !(typing && gtk_widget_has_focus (GTK_WIDGET (self->entry))))
    show_value (self);
}
