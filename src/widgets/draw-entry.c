/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The typed number and its side are what counts; the vial and a photo write into them, and the
 * vial follows them.
 */
#include "widgets/draw-entry.h"

#include <glib/gi18n.h>
#include <math.h>

#include "model/fields.h"
#include "widgets/photo-dialog.h"
#include "widgets/quantity-entry.h"
#include "widgets/tilt-words.h"
#include "widgets/vial-picker.h"
#include "widgets/vial-scale.h"

struct _PhDrawEntry
{
  GtkWidget parent_instance;

  GtkWidget *box; /* owned child */
  GtkWidget *picker, *hint, *scale, *number;
  GtkToggleButton *left, *right;
  GtkLabel *say, *from_photo;
  double photo_deg, photo_sd_deg; /* what a photo gave; NAN: none */
  PhDocument *document;           /* owned */
  GFile *folder;                  /* owned: where the last photo was, or null */
};

enum
{
  ENTERED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (PhDrawEntry, ph_draw_entry, GTK_TYPE_WIDGET)

static const PhRig *
rig_of (PhDrawEntry *self)
{
  return ph_document_get_rig (self->document);
}

static void
tell (PhDrawEntry *self, const char *text)
{
  gtk_label_set_text (self->say, text ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->say), text != NULL);
}

static gboolean
side_chosen (PhDrawEntry *self)
{
  return gtk_toggle_button_get_active (self->left) || gtk_toggle_button_get_active (self->right);
}

/* What stands in the entry, with its side; NAN where there is no number or no side yet. */
static double
tilt_now (PhDrawEntry *self)
{
  double size = ph_quantity_entry_get_value (PH_QUANTITY_ENTRY (self->number));
  if (isnan (size) || (size != 0 && !side_chosen (self)))
    return NAN;
  gboolean left = gtk_toggle_button_get_active (self->left);
  return ph_tilt_of_side (size, left, ph_tilt_has_level (rig_of (self)));
}

static gboolean
is_from_photo (PhDrawEntry *self)
{
  return tilt_now (self) == self->photo_deg;
}

static void
follow (PhDrawEntry *self)
{
  g_autofree char *half = ph_tilt_half (self->photo_sd_deg);
  g_autofree char *photo = g_strdup_printf (_ ("From a photo, %s"), half);
  gtk_label_set_text (self->from_photo, photo);
  gtk_widget_set_visible (GTK_WIDGET (self->from_photo), is_from_photo (self));
  double each = ph_vial_deg_per_mark (rig_of (self)), tilt = tilt_now (self);
  gboolean can_pick = !isnan (each);
  gtk_widget_set_visible (self->picker, can_pick);
  gtk_widget_set_visible (self->scale, ph_vial_sight (rig_of (self)) >= 0);
  gtk_widget_set_visible (self->hint, !can_pick && ph_vial_sight (rig_of (self)) >= 0);
  if (!can_pick)
    return;
  g_autofree char *words =
      isnan (tilt) ? g_strdup (_ ("not read yet")) : ph_tilt_words (tilt, TRUE);
  ph_vial_picker_set_marks (PH_VIAL_PICKER (self->picker), tilt / each);
  ph_vial_picker_set_text (PH_VIAL_PICKER (self->picker), words);
}

void
ph_draw_entry_set (PhDrawEntry *self, double tilt_deg, double photo_sd_deg)
{
  g_return_if_fail (PH_IS_DRAW_ENTRY (self));
  self->photo_deg = isnan (photo_sd_deg) ? (double)NAN : tilt_deg;
  self->photo_sd_deg = photo_sd_deg;
  gboolean level = ph_tilt_has_level (rig_of (self)), some = tilt_deg != 0 && !isnan (tilt_deg);
  gtk_toggle_button_set_active (self->left, some && ph_tilt_is_left (tilt_deg, level));
  gtk_toggle_button_set_active (self->right, some && !ph_tilt_is_left (tilt_deg, level));
  ph_quantity_entry_set_value (PH_QUANTITY_ENTRY (self->number), fabs (tilt_deg));
  tell (self, NULL);
  follow (self);
}

static void
picked_cb (PhDrawEntry *self, double marks)
{
  double each = ph_vial_deg_per_mark (rig_of (self));
  /* To the tenth that is shown: nobody reads more. */
  ph_draw_entry_set (self, round (marks * each * 10) / 10, NAN);
}

static void
used_cb (PhDrawEntry *self, double tilt_deg, double sd_deg, PhPhotoDialog *dialog)
{
  GFile *folder = ph_photo_dialog_get_folder (dialog);
  g_set_object (&self->folder, folder);
  ph_draw_entry_set (self, tilt_deg, sd_deg);
  ph_quantity_entry_edit (PH_QUANTITY_ENTRY (self->number));
}

static void
photo_cb (PhDrawEntry *self)
{
  GtkWindow *parent = GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self)));
  GtkWidget *dialog = ph_photo_dialog_new (parent, self->document, self->folder);
  g_signal_connect_object (dialog, "used", G_CALLBACK (used_cb), self, G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
side_cb (PhDrawEntry *self, GtkToggleButton *button)
{
  GtkToggleButton *other = button == self->left ? self->right : self->left;
  if (gtk_toggle_button_get_active (button))
    gtk_toggle_button_set_active (other, FALSE);
  tell (self, NULL);
  follow (self);
}

/* Null: it may be a reading. */
static char *
why_not (double deg)
{
  const PhField *field = ph_field_find (PH_OBJECT_CHECK, "bubble_deg", NULL);
  char *why = NULL;
  if (ph_field_accepts (field, deg, &why))
    return NULL;
  free (why);
  return g_strdup (
      _ ("A reading lies between 60° left and 60° right; most vials end at 2° or 3°."));
}

static char *
commit_cb (PhQuantityEntry *entry, double value, gpointer data)
{
  PhDrawEntry *self = data;
  char *why = why_not (value);
  if (why)
    return why;
  if (value < 0) /* the file's sign was typed */
    {
      gboolean left = ph_tilt_is_left (value, ph_tilt_has_level (rig_of (self)));
      gtk_toggle_button_set_active (left ? self->left : self->right, TRUE);
      ph_quantity_entry_set_value (entry, -value);
    }
  tell (self, NULL);
  follow (self);
  return NULL;
}

gboolean
ph_draw_entry_take (PhDrawEntry *self, double *tilt_deg, double *photo_sd_deg)
{
  g_return_val_if_fail (PH_IS_DRAW_ENTRY (self), FALSE);
  if (!ph_quantity_entry_commit (PH_QUANTITY_ENTRY (self->number)))
    return FALSE;
  double size = ph_quantity_entry_get_value (PH_QUANTITY_ENTRY (self->number));
  if (isnan (size))
    {
      tell (self, _ ("Type what was read, in degrees."));
      return FALSE;
    }
  if (size != 0 && !side_chosen (self))
    {
      tell (self, _ ("Say to which side: left or right, as the archer sees it."));
      return FALSE;
    }
  *tilt_deg = tilt_now (self);
  *photo_sd_deg = is_from_photo (self) ? self->photo_sd_deg : (double)NAN;
  return TRUE;
}

gboolean
ph_draw_entry_is_touched (PhDrawEntry *self)
{
  g_return_val_if_fail (PH_IS_DRAW_ENTRY (self), FALSE);
  return !ph_quantity_entry_commit (PH_QUANTITY_ENTRY (self->number))
         || !isnan (ph_quantity_entry_get_value (PH_QUANTITY_ENTRY (self->number)));
}

void
ph_draw_entry_edit (PhDrawEntry *self)
{
  g_return_if_fail (PH_IS_DRAW_ENTRY (self));
  if (gtk_widget_get_visible (self->picker))
    gtk_widget_grab_focus (self->picker);
  else
    ph_quantity_entry_edit (PH_QUANTITY_ENTRY (self->number));
}

static gboolean
key_cb (PhDrawEntry *self, guint keyval)
{
  if (keyval != GDK_KEY_Return && keyval != GDK_KEY_KP_Enter)
    return FALSE;
  GtkWidget *focus = gtk_root_get_focus (gtk_widget_get_root (GTK_WIDGET (self)));
  if (!focus || (focus != self->picker && !gtk_widget_is_ancestor (focus, self->number)))
    return FALSE;
  g_signal_emit (self, signals[ENTERED], 0);
  return TRUE;
}

static void
ph_draw_entry_dispose (GObject *object)
{
  PhDrawEntry *self = PH_DRAW_ENTRY (object);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_object (&self->document);
  g_clear_object (&self->folder);
  G_OBJECT_CLASS (ph_draw_entry_parent_class)->dispose (object);
}

static void
ph_draw_entry_class_init (PhDrawEntryClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = ph_draw_entry_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  signals[ENTERED] = g_signal_new ("entered", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 0);
}

static GtkWidget *
new_label (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

static GtkToggleButton *
new_side (PhDrawEntry *self, GtkWidget *box, const char *label)
{
  GtkWidget *button = gtk_toggle_button_new_with_label (label);
  g_signal_connect_swapped (button, "toggled", G_CALLBACK (side_cb), self);
  gtk_box_append (GTK_BOX (box), button);
  return GTK_TOGGLE_BUTTON (button);
}

static GtkWidget *
new_photo (PhDrawEntry *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *button = gtk_button_new_with_label (_ ("From a Photo…"));
  gtk_widget_set_tooltip_text (
      button, _ ("Read the tilt from a photo: the string against a plumb edge, or the vial"));
  self->from_photo = GTK_LABEL (new_label (NULL, "quiet"));
  gtk_label_set_wrap (self->from_photo, FALSE);
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (photo_cb), self);
  gtk_box_append (GTK_BOX (row), button);
  gtk_box_append (GTK_BOX (row), GTK_WIDGET (self->from_photo));
  return row;
}

static void
build (PhDrawEntry *self)
{
  gboolean level = ph_tilt_has_level (rig_of (self));
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *sides = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  gtk_widget_add_css_class (sides, "linked");
  gtk_widget_set_valign (sides, GTK_ALIGN_START);
  self->left = new_side (self, sides, _ ("left"));
  self->right = new_side (self, sides, _ ("right"));
  self->picker = ph_vial_picker_new (_ ("Where the bubble stands"));
  self->number = ph_quantity_entry_new (PH_QUANTITY_ANGLE);
  self->scale = ph_vial_scale_new (self->document);
  self->hint =
      new_label (_ ("The marks of your vial are not calibrated: type degrees, or say below "
                    "what a mark is worth and then show the bubble on a drawn vial."),
                 "quiet");
  self->say = GTK_LABEL (new_label (NULL, "error-text"));
  ph_quantity_entry_set_label (PH_QUANTITY_ENTRY (self->number),
                               level ? _ ("Bubble, in degrees") : _ ("Lean, in degrees"));
  ph_quantity_entry_set_step (PH_QUANTITY_ENTRY (self->number), 0.1);
  ph_quantity_entry_set_commit (PH_QUANTITY_ENTRY (self->number), commit_cb, self);
  gtk_box_append (GTK_BOX (row), new_label (level ? _ ("Bubble") : _ ("Leans"), "draw-word"));
  gtk_box_append (GTK_BOX (row), self->number);
  gtk_box_append (GTK_BOX (row), sides);
  GtkWidget *const children[] = { self->picker,     row,        GTK_WIDGET (self->say),
                                  new_photo (self), self->hint, self->scale };
  for (gsize i = 0; i < G_N_ELEMENTS (children); i++)
    gtk_box_append (GTK_BOX (self->box), children[i]);
  g_signal_connect_swapped (self->picker, "picked", G_CALLBACK (picked_cb), self);
}

static void
ph_draw_entry_init (PhDrawEntry *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 10);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

GtkWidget *
ph_draw_entry_new (PhDocument *document)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document), NULL);
  PhDrawEntry *self = g_object_new (PH_TYPE_DRAW_ENTRY, NULL);
  self->document = g_object_ref (document);
  build (self);
  g_signal_connect_object (document, "changed", G_CALLBACK (follow), self, G_CONNECT_SWAPPED);
  ph_draw_entry_set (self, NAN, NAN);
  return GTK_WIDGET (self);
}
