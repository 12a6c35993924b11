/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "widgets/vial-scale.h"

#include <glib/gi18n.h>
#include <math.h>

#include "document/format.h"
#include "widgets/quantity-entry.h"
#include "widgets/tilt-words.h"

struct _PhVialScale
{
  GtkWidget parent_instance;

  GtkWidget *expander; /* owned child */
  GtkWidget *tilt, *keep;
  GtkEntry *marks;
  GtkLabel *say;
  PhDocument *document; /* owned */
};

G_DEFINE_FINAL_TYPE (PhVialScale, ph_vial_scale, GTK_TYPE_WIDGET)

int
ph_vial_sight (const PhRig *rig)
{
  if (!ph_tilt_has_level (rig))
    return -1;
  for (size_t i = 0; i < rig->n_parts; i++)
    if (rig->parts[i].kind == PH_PART_ACCESSORY && !isnan (rig->parts[i].aperture_mm[0])
        && ph_rig_is_fitted (rig, i))
      return (int)i;
  return -1;
}

double
ph_vial_deg_per_mark (const PhRig *rig)
{
  int sight = ph_vial_sight (rig);
  return sight < 0 ? (double)NAN : rig->parts[sight].vial_deg_per_mark;
}

static void
changed_cb (PhVialScale *self)
{
  double each = ph_vial_deg_per_mark (ph_document_get_rig (self->document));
  g_autofree char *number = ph_format_short (each, 2);
  g_autofree char *text = isnan (each)
                              ? g_strdup (_ ("What is a mark of your vial worth?"))
                              : g_strdup_printf (_ ("A mark of your vial is worth %s°"), number);
  gtk_expander_set_label (GTK_EXPANDER (self->expander), text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->expander), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  text, -1);
}

static void
tell (PhVialScale *self, const char *text)
{
  gtk_label_set_text (self->say, text ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->say), text != NULL);
}

static void
keep_cb (PhVialScale *self)
{
  const PhRig *rig = ph_document_get_rig (self->document);
  int sight = ph_vial_sight (rig);
  double marks = NAN;
  g_autoptr (GError) error = NULL;
  if (!ph_quantity_entry_commit (PH_QUANTITY_ENTRY (self->tilt)))
    return;
  double tilt = fabs (ph_quantity_entry_get_value (PH_QUANTITY_ENTRY (self->tilt)));
  /* A bare number, as any screen number is read; marks have no quantity of their own. */
  if (ph_quantity_parse (gtk_editable_get_text (GTK_EDITABLE (self->marks)), PH_QUANTITY_FORCE,
                         PH_UNITS_METRIC, &marks)
          != PH_TYPED_OK
      || !(fabs (marks) > 0) || !(tilt > 0))
    {
      tell (self, _ ("Type the tilt in degrees and by how many marks the bubble moved."));
      return;
    }
  g_autofree char *id = g_strdup (rig->parts[sight].id);
  if (ph_document_set_number (self->document, id, "vial_deg_per_mark", 0, tilt / fabs (marks),
                              &error))
    gtk_expander_set_expanded (GTK_EXPANDER (self->expander), FALSE);
  tell (self, error ? error->message : NULL);
}

static void
ph_vial_scale_dispose (GObject *object)
{
  PhVialScale *self = PH_VIAL_SCALE (object);
  g_clear_pointer (&self->expander, gtk_widget_unparent);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (ph_vial_scale_parent_class)->dispose (object);
}

static void
ph_vial_scale_class_init (PhVialScaleClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = ph_vial_scale_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static GtkWidget *
new_label (const char *text)
{
  GtkWidget *label = gtk_label_new (text);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  return label;
}

static GtkWidget *
new_numbers (PhVialScale *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  self->tilt = ph_quantity_entry_new (PH_QUANTITY_ANGLE);
  ph_quantity_entry_set_label (PH_QUANTITY_ENTRY (self->tilt), _ ("Tilt on the other level"));
  self->marks = GTK_ENTRY (gtk_entry_new ());
  gtk_editable_set_width_chars (GTK_EDITABLE (self->marks), 6);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->marks), 6);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->marks), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Marks the bubble moved"), -1);
  self->keep = gtk_button_new_with_label (_ ("Keep"));
  g_signal_connect_swapped (self->keep, "clicked", G_CALLBACK (keep_cb), self);
  g_signal_connect_swapped (self->marks, "activate", G_CALLBACK (keep_cb), self);
  GtkWidget *const children[] = { new_label (_ ("Tilted by")),
                                  self->tilt,
                                  new_label (_ ("the bubble moves by")),
                                  GTK_WIDGET (self->marks),
                                  new_label (_ ("marks")),
                                  self->keep };
  for (gsize i = 0; i < G_N_ELEMENTS (children); i++)
    {
      gtk_widget_set_valign (children[i], GTK_ALIGN_START);
      gtk_box_append (GTK_BOX (row), children[i]);
    }
  return row;
}

static void
ph_vial_scale_init (PhVialScale *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->expander = gtk_expander_new (NULL);
  self->say = GTK_LABEL (new_label (NULL));
  gtk_widget_add_css_class (GTK_WIDGET (self->say), "error-text");
  gtk_widget_set_visible (GTK_WIDGET (self->say), FALSE);
  gtk_box_append (GTK_BOX (box),
                  new_label (_ ("Rest the bow, lay a phone or a digital level on the sight's bar, "
                                "tilt until the bubble stands on another mark, and read the tilt. "
                                "With two lines only, a mark is the way from one to the other.")));
  gtk_box_append (GTK_BOX (box), new_numbers (self));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->say));
  gtk_expander_set_child (GTK_EXPANDER (self->expander), box);
  gtk_widget_set_parent (self->expander, GTK_WIDGET (self));
}

GtkWidget *
ph_vial_scale_new (PhDocument *document)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document), NULL);
  PhVialScale *self = g_object_new (PH_TYPE_VIAL_SCALE, NULL);
  self->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  changed_cb (self);
  return GTK_WIDGET (self);
}
