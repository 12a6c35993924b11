/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Working out the guess takes a few milliseconds, so it waits until a drag is over. The outer
 * widget stays visible, so that it is told when it is mapped; its row comes and goes.
 */
#include "widgets/matters-line.h"

#include <glib/gi18n.h>

#include "document/document-measure.h"
#include "widgets/measure-words.h"

#define REST_MS 150

struct _PhMattersLine
{
  GtkWidget parent_instance;

  GtkWidget *row, *label, *button; /* children; no button: null */

  /* owned */
  PhDocument *document;
  guint rest; /* source of a pending update, or 0 */
  gboolean stale;
};

G_DEFINE_FINAL_TYPE (PhMattersLine, ph_matters_line, GTK_TYPE_WIDGET)

static void
update (PhMattersLine *self)
{
  PhMatters matters;
  gboolean matter = ph_document_guess_that_matters (self->document, &matters);
  self->stale = FALSE;
  gtk_widget_set_visible (self->row, matter);
  if (!matter)
    return;
  g_autofree char *words = ph_matters_words (ph_document_get_rig (self->document), &matters);
  gtk_label_set_text (GTK_LABEL (self->label), words);
  if (self->button)
    gtk_widget_set_visible (self->button, matters.part < 0);
}

static gboolean
rest_cb (gpointer data)
{
  PhMattersLine *self = data;
  if (ph_document_in_gesture (self->document))
    return G_SOURCE_CONTINUE;
  self->rest = 0;
  if (self->stale && gtk_widget_get_mapped (GTK_WIDGET (self)))
    update (self);
  return G_SOURCE_REMOVE;
}

static void
changed_cb (PhMattersLine *self)
{
  self->stale = TRUE;
  if (gtk_widget_get_mapped (GTK_WIDGET (self)) && !self->rest)
    self->rest = g_timeout_add (REST_MS, rest_cb, self);
}

static void
ph_matters_line_map (GtkWidget *widget)
{
  PhMattersLine *self = PH_MATTERS_LINE (widget);
  GTK_WIDGET_CLASS (ph_matters_line_parent_class)->map (widget);
  if (self->stale)
    changed_cb (self);
}

static void
ph_matters_line_dispose (GObject *object)
{
  PhMattersLine *self = PH_MATTERS_LINE (object);
  g_clear_handle_id (&self->rest, g_source_remove);
  if (self->document)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  g_clear_pointer (&self->row, gtk_widget_unparent);
  G_OBJECT_CLASS (ph_matters_line_parent_class)->dispose (object);
}

static void
ph_matters_line_class_init (PhMattersLineClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = ph_matters_line_dispose;
  widget_class->map = ph_matters_line_map;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
ph_matters_line_init (PhMattersLine *self)
{
  self->row = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->label = gtk_label_new (NULL);
  gtk_label_set_wrap (GTK_LABEL (self->label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (self->label), 0);
  gtk_box_append (GTK_BOX (self->row), self->label);
  gtk_widget_add_css_class (self->row, "matters-line");
  gtk_widget_set_visible (self->row, FALSE);
  gtk_widget_set_parent (self->row, GTK_WIDGET (self));
  self->stale = TRUE;
}

GtkWidget *
ph_matters_line_new (PhDocument *document, gboolean with_button)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document), NULL);
  PhMattersLine *self = g_object_new (PH_TYPE_MATTERS_LINE, NULL);
  self->document = g_object_ref (document);
  g_signal_connect_swapped (document, "changed", G_CALLBACK (changed_cb), self);
  if (with_button)
    {
      self->button = gtk_button_new_with_label (_ ("Measure the bow…"));
      /* Said outright: a button that is not shown yet has no name of its own. */
      gtk_accessible_update_property (GTK_ACCESSIBLE (self->button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                      _ ("Measure the bow…"), -1);
      gtk_actionable_set_action_name (GTK_ACTIONABLE (self->button), "win.measure");
      gtk_widget_set_halign (self->button, GTK_ALIGN_START);
      gtk_box_append (GTK_BOX (self->row), self->button);
    }
  return GTK_WIDGET (self);
}
