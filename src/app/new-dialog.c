/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The dialog is ui/new-dialog.ui. Its answers stay in its widgets until "Make rig" reads them. The
 * bounds of the two lengths are our own: outside them a number is a slip of the keyboard.
 */
#include "app/new-dialog.h"

#include <glib/gi18n.h>
#include <math.h>

#include "app/settings.h"
#include "document/format.h"
#include "widgets/archer-picture.h"
#include "widgets/quantity-entry.h"

#define DRAW_LEAST_MM (15 * 25.4)
#define DRAW_MOST_MM (40 * 25.4)
#define DRAW_USUAL_MM (28 * 25.4)
#define STATURE_LEAST_MM 900.0
#define STATURE_MOST_MM 2400.0
#define STATURE_USUAL_MM 1750.0

struct _PhNewDialog
{
  GtkWindow parent_instance;

  /* template */
  GtkEntry *name;
  GtkToggleButton *compound, *recurve, *barebow;
  GtkToggleButton *left_hand, *right_hand;
  GtkBox *left_picture, *right_picture, *draw_place, *stature_place;
  GtkDropDown *units;
  GtkCheckButton *know_stature;

  /* borrowed children */
  PhQuantityEntry *draw, *stature;

  /* owned */
  PhDocument *document;
  GSettings *settings; /* or null */
};

G_DEFINE_FINAL_TYPE (PhNewDialog, ph_new_dialog, GTK_TYPE_WINDOW)

/* In the order of the drop-down. */
static const PhUnits unit_choices[] = { PH_UNITS_MIXED, PH_UNITS_TRADE, PH_UNITS_METRIC };

static PhUnits
chosen_units (PhNewDialog *self)
{
  guint i = gtk_drop_down_get_selected (self->units);
  return i < G_N_ELEMENTS (unit_choices) ? unit_choices[i] : PH_UNITS_MIXED;
}

static void
units_chosen_cb (PhNewDialog *self)
{
  ph_quantity_entry_set_units (self->draw, chosen_units (self));
  ph_quantity_entry_set_units (self->stature, chosen_units (self));
}

static char *
refuse_outside (PhNewDialog *self, double value, double least, double most, PhQuantity quantity,
                const char *pattern)
{
  if (value >= least && value <= most)
    return NULL;
  g_autofree char *from = ph_format_quantity (least, quantity, chosen_units (self));
  g_autofree char *to = ph_format_quantity (most, quantity, chosen_units (self));
  GString *text = g_string_new (pattern);
  g_string_replace (text, "{from}", from, 1);
  g_string_replace (text, "{to}", to, 1);
  return g_string_free (text, FALSE);
}

static char *
draw_typed_cb (PhQuantityEntry *entry, double value, gpointer data)
{
  (void)entry;
  return refuse_outside (data, value, DRAW_LEAST_MM, DRAW_MOST_MM, PH_QUANTITY_LENGTH,
                         /* Translators: {from} and {to} become two lengths. */
                         _ ("A draw length lies between {from} and {to}."));
}

static char *
stature_typed_cb (PhQuantityEntry *entry, double value, gpointer data)
{
  (void)entry;
  return refuse_outside (data, value, STATURE_LEAST_MM, STATURE_MOST_MM, PH_QUANTITY_STATURE,
                         /* Translators: {from} and {to} become two lengths. */
                         _ ("A height lies between {from} and {to}."));
}

static PhBowKind
chosen_kind (PhNewDialog *self)
{
  if (gtk_toggle_button_get_active (self->recurve))
    return PH_BOW_RECURVE;
  return gtk_toggle_button_get_active (self->barebow) ? PH_BOW_BAREBOW : PH_BOW_COMPOUND;
}

static void
make_cb (PhNewDialog *self)
{
  gboolean by_stature = gtk_check_button_get_active (self->know_stature);
  if (!ph_quantity_entry_commit (self->draw))
    {
      gtk_widget_grab_focus (GTK_WIDGET (self->draw));
      return;
    }
  if (by_stature && !ph_quantity_entry_commit (self->stature))
    {
      gtk_widget_grab_focus (GTK_WIDGET (self->stature));
      return;
    }
  PhStarter starter = {
    .kind = chosen_kind (self),
    .hand = gtk_toggle_button_get_active (self->right_hand) ? PH_BOW_HAND_RIGHT : PH_BOW_HAND_LEFT,
    .stated_draw_mm = ph_quantity_entry_get_value (self->draw),
    .stature_mm = by_stature ? ph_quantity_entry_get_value (self->stature) : NAN,
  };
  g_autofree char *name = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->name))));
  ph_document_new_rig (self->document, &starter, *name ? name : _ ("My bow"));
  ph_document_set_units (self->document, chosen_units (self));
  ph_settings_set_units (self->settings, chosen_units (self));
  gtk_window_close (GTK_WINDOW (self));
}

static PhQuantityEntry *
add_entry (GtkBox *place, PhQuantity quantity, const char *label, double value,
           PhQuantityCommit commit, PhNewDialog *self)
{
  GtkWidget *entry = ph_quantity_entry_new (quantity);
  PhQuantityEntry *quantity_entry = PH_QUANTITY_ENTRY (entry);
  ph_quantity_entry_set_label (quantity_entry, label);
  ph_quantity_entry_set_width_chars (quantity_entry, 10);
  ph_quantity_entry_set_value (quantity_entry, value);
  ph_quantity_entry_set_commit (quantity_entry, commit, self);
  gtk_widget_set_valign (entry, GTK_ALIGN_START);
  gtk_box_prepend (place, entry);
  return quantity_entry;
}

static void
ph_new_dialog_dispose (GObject *object)
{
  PhNewDialog *self = PH_NEW_DIALOG (object);
  g_clear_object (&self->document);
  g_clear_object (&self->settings);
  G_OBJECT_CLASS (ph_new_dialog_parent_class)->dispose (object);
}

static void
ph_new_dialog_class_init (PhNewDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = ph_new_dialog_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/plumbhold/Plumbhold/ui/new-dialog.ui");
#define BIND(child) gtk_widget_class_bind_template_child (widget_class, PhNewDialog, child)
  BIND (name);
  BIND (compound);
  BIND (recurve);
  BIND (barebow);
  BIND (left_hand);
  BIND (right_hand);
  BIND (left_picture);
  BIND (right_picture);
  BIND (draw_place);
  BIND (stature_place);
  BIND (units);
  BIND (know_stature);
#undef BIND
  gtk_widget_class_bind_template_callback (widget_class, make_cb);
  gtk_widget_class_bind_template_callback (widget_class, units_chosen_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
ph_new_dialog_init (PhNewDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->draw = add_entry (self->draw_place, PH_QUANTITY_LENGTH, _ ("Draw length"), DRAW_USUAL_MM,
                          draw_typed_cb, self);
  self->stature = add_entry (self->stature_place, PH_QUANTITY_STATURE, _ ("Your height"),
                             STATURE_USUAL_MM, stature_typed_cb, self);
  g_object_bind_property (self->know_stature, "active", self->stature, "sensitive",
                          G_BINDING_SYNC_CREATE);
  gtk_box_prepend (self->left_picture, ph_archer_picture_new (PH_BOW_HAND_LEFT));
  gtk_box_prepend (self->right_picture, ph_archer_picture_new (PH_BOW_HAND_RIGHT));
}

void
ph_new_dialog_present (GtkWindow *parent, PhDocument *document, GSettings *settings)
{
  g_return_if_fail (GTK_IS_WINDOW (parent) && PH_IS_DOCUMENT (document));
  PhNewDialog *self =
      g_object_new (PH_TYPE_NEW_DIALOG, "transient-for", parent, "destroy-with-parent", TRUE, NULL);
  self->document = g_object_ref (document);
  self->settings = settings ? g_object_ref (settings) : NULL;
  for (guint i = 0; i < G_N_ELEMENTS (unit_choices); i++)
    if (unit_choices[i] == ph_document_get_units (document))
      gtk_drop_down_set_selected (self->units, i);
  units_chosen_cb (self);
  gtk_window_present (GTK_WINDOW (self));
}
