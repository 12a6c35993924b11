/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A bubble at full draw is read with the hand on the bow: one equation, in which the bow's own side
 * offset and the hand's twist come as one sum. So it makes no number of the bow measured; the
 * fitted hand takes up both. What is known now costs some milliseconds, and waits for a rest.
 */
#include "widgets/measure-bubble.h"

#include <glib/gi18n.h>
#include <math.h>

#include "document/document-hand.h"
#include "widgets/cautions.h"
#include "widgets/check-picture.h"
#include "widgets/tilt-words.h"

#define REST_MS 150
#define STEPS 3

struct _PhMeasureBubble
{
  GtkWidget parent_instance;

  GtkWidget *box; /* child */
  GtkLabel *known;

  /* owned */
  PhDocument *document;
  guint rest; /* source of a pending update, or 0 */
};

enum
{
  CHECK_WANTED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (PhMeasureBubble, ph_measure_bubble, GTK_TYPE_WIDGET)

static guint
checks_in_use (const PhArcher *archer)
{
  guint n = 0;
  for (size_t i = 0; i < archer->n_checks; i++)
    n += !archer->checks[i].aside;
  return n;
}

static char *
known_text (PhDocument *document)
{
  guint n = checks_in_use (&ph_document_get_rig (document)->archer);
  if (n == 0)
    return g_strdup (_ ("No check is recorded yet: where this rig settles is not known."));
  PhPartChecks next = ph_document_next_checks (document);
  if (!isfinite (next.interval_now_deg))
    return g_strdup (_ ("With this hand the rig tips over instead of settling."));
  g_autofree char *half = ph_tilt_half (next.interval_now_deg);
  return g_strdup_printf (
      ngettext ("From %u check the rig about to be tried is known to %s, 90 %% sure.",
                "From %u checks the rig about to be tried is known to %s, 90 %% sure.", n),
      n, half);
}

static gboolean
rest_cb (gpointer data)
{
  PhMeasureBubble *self = data;
  if (ph_document_in_gesture (self->document))
    return G_SOURCE_CONTINUE;
  self->rest = 0;
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    {
      g_autofree char *text = known_text (self->document);
      gtk_label_set_text (self->known, text);
    }
  return G_SOURCE_REMOVE;
}

static void
changed_cb (PhMeasureBubble *self)
{
  if (!self->rest)
    self->rest = g_timeout_add (REST_MS, rest_cb, self);
}

static void
clicked_cb (PhMeasureBubble *self)
{
  g_signal_emit (self, signals[CHECK_WANTED], 0);
}

static void
ph_measure_bubble_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (ph_measure_bubble_parent_class)->map (widget);
  changed_cb (PH_MEASURE_BUBBLE (widget));
}

static void
ph_measure_bubble_dispose (GObject *object)
{
  PhMeasureBubble *self = PH_MEASURE_BUBBLE (object);
  g_clear_handle_id (&self->rest, g_source_remove);
  if (self->document)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  G_OBJECT_CLASS (ph_measure_bubble_parent_class)->dispose (object);
}

static void
ph_measure_bubble_class_init (PhMeasureBubbleClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = ph_measure_bubble_dispose;
  widget_class->map = ph_measure_bubble_map;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  signals[CHECK_WANTED] = g_signal_new ("check-wanted", G_TYPE_FROM_CLASS (klass),
                                        G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static GtkLabel *
add_label (PhMeasureBubble *self, const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  if (css_class)
    gtk_widget_add_css_class (label, css_class);
  gtk_box_append (GTK_BOX (self->box), label);
  return GTK_LABEL (label);
}

static void
add_pictures (PhMeasureBubble *self)
{
  GtkWidget *pictures = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  gtk_box_set_homogeneous (GTK_BOX (pictures), TRUE);
  for (int step = 1; step <= STEPS; step++)
    gtk_box_append (GTK_BOX (pictures), ph_check_picture_new (self->document, step));
  gtk_box_append (GTK_BOX (self->box), pictures);
}

static void
ph_measure_bubble_init (PhMeasureBubble *self)
{
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 14);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  gtk_widget_add_css_class (self->box, "measure-content");
}

static void
fill (PhMeasureBubble *self)
{
  add_label (self, _ ("The whole rig’s bubble: where it settles in this archer’s hand"),
             "measure-title");
  add_pictures (self);
  gtk_box_append (GTK_BOX (self->box),
                  ph_cautions_new (ph_tilt_has_level (ph_document_get_rig (self->document))));
  add_label (self,
             _ ("It makes no number of the bow measured. The bubble shows the bow’s own side "
                "offset and the hand’s own twist in one sum, and no reading tells them apart: the "
                "balance point stays as sure as it was. Hang the bow to measure its side offset."),
             "measure-result");
  add_label (self,
             _ ("What it measures is where this rig settles. It is recorded as a bubble check, "
                "with its uncertainty, and the hand that is fitted to the checks takes up both."),
             NULL);
  self->known = add_label (self, "", "measure-word");
  GtkWidget *button = gtk_button_new_with_label (_ ("Add a check"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Add a check"), -1);
  gtk_widget_add_css_class (button, "suggested-action");
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (clicked_cb), self);
  gtk_box_append (GTK_BOX (self->box), button);
}

GtkWidget *
ph_measure_bubble_new (PhDocument *document)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document), NULL);
  PhMeasureBubble *self = g_object_new (PH_TYPE_MEASURE_BUBBLE, NULL);
  self->document = g_object_ref (document);
  fill (self);
  g_signal_connect_swapped (document, "changed", G_CALLBACK (changed_cb), self);
  return GTK_WIDGET (self);
}
