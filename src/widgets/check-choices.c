/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "widgets/check-choices.h"

#include <glib/gi18n.h>
#include <math.h>

#include "document/document-hand.h"
#include "widgets/answer-words.h"

struct _PhCheckChoices
{
  GtkWidget parent_instance;

  GtkWidget *box;       /* owned child */
  GPtrArray *radios;    /* borrowed check buttons, one a proposal */
  PhDocument *document; /* owned */
  PhPartChecks checks;  /* what is proposed */
};

G_DEFINE_FINAL_TYPE (PhCheckChoices, ph_check_choices, GTK_TYPE_WIDGET)

static void
add_choice (PhCheckChoices *self, const PhPartCheck *check, double now_deg)
{
  const PhRig *rig = ph_document_get_rig (self->document);
  g_autofree char *task =
      ph_check_task_words (rig, ph_document_get_compiled (self->document), check);
  g_autofree char *gain = ph_check_gain_words (now_deg, check->interval_then_deg);
  g_autofree char *text = gain ? g_strdup_printf ("%s: %s", task, gain) : g_strdup (task);
  GtkWidget *radio = gtk_check_button_new_with_label (text);
  if (self->radios->len > 0)
    gtk_check_button_set_group (GTK_CHECK_BUTTON (radio), g_ptr_array_index (self->radios, 0));
  else
    gtk_check_button_set_active (GTK_CHECK_BUTTON (radio), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (radio), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
  g_ptr_array_add (self->radios, radio);
  gtk_box_append (GTK_BOX (self->box), radio);
}

gboolean
ph_check_choices_fill (PhCheckChoices *self)
{
  g_return_val_if_fail (PH_IS_CHECK_CHOICES (self), FALSE);
  GtkWidget *child;
  gboolean as_it_is = FALSE;
  g_ptr_array_set_size (self->radios, 0);
  while ((child = gtk_widget_get_first_child (self->box)))
    gtk_box_remove (GTK_BOX (self->box), child);
  self->checks = ph_document_next_checks (self->document);
  for (int i = 0; i < self->checks.n; i++)
    {
      add_choice (self, &self->checks.checks[i], self->checks.interval_now_deg);
      as_it_is |= !self->checks.checks[i].changed;
    }
  if (!as_it_is)
    add_choice (self, &(PhPartCheck){ .interval_then_deg = NAN }, NAN);
  return self->radios->len > 1;
}

gboolean
ph_check_choices_take (PhCheckChoices *self, GError **error)
{
  g_return_val_if_fail (PH_IS_CHECK_CHOICES (self), FALSE);
  for (guint i = 0; (int)i < self->checks.n; i++)
    {
      const PhPartCheck *check = &self->checks.checks[i];
      const PhRig *rig = ph_document_get_rig (self->document);
      if (!gtk_check_button_get_active (g_ptr_array_index (self->radios, i)) || !check->changed)
        continue;
      g_autofree char *id = g_strdup (rig->parts[check->change.part].id);
      return ph_document_set_number (self->document, id, check->change.key, 0, check->change.to,
                                     error);
    }
  return TRUE;
}

static void
ph_check_choices_dispose (GObject *object)
{
  PhCheckChoices *self = PH_CHECK_CHOICES (object);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_pointer (&self->radios, g_ptr_array_unref);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (ph_check_choices_parent_class)->dispose (object);
}

static void
ph_check_choices_class_init (PhCheckChoicesClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = ph_check_choices_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
ph_check_choices_init (PhCheckChoices *self)
{
  self->radios = g_ptr_array_new ();
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

GtkWidget *
ph_check_choices_new (PhDocument *document)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document), NULL);
  PhCheckChoices *self = g_object_new (PH_TYPE_CHECK_CHOICES, NULL);
  self->document = g_object_ref (document);
  return GTK_WIDGET (self);
}
