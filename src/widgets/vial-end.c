/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "widgets/vial-end.h"

#include <glib/gi18n.h>

#include "document/document-hand.h"
#include "widgets/answer-words.h"
#include "widgets/coarse-move.h"
#include "widgets/tilt-words.h"

struct _PhVialEnd
{
  GtkWidget parent_instance;

  GtkWidget *box; /* owned child */
  GtkToggleButton *left, *right;
  GtkLabel *say;
  PhDocument *document; /* owned */
  PhPartChange move;    /* key null: none */
};

enum
{
  MOVE_CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (PhVialEnd, ph_vial_end, GTK_TYPE_WIDGET)

/* What to turn, or that nothing may be. */
static char *
move_text (PhVialEnd *self, gboolean left)
{
  size_t n;
  const PhRig *rig = ph_document_get_rig (self->document);
  gboolean tilt_right = ph_tilt_of_side (1, left, ph_tilt_has_level (rig)) > 0;
  PhPartStep *steps = ph_document_steps (self->document, &n);
  gboolean found = ph_coarse_move (steps, n, tilt_right, &self->move);
  free (steps);
  if (found)
    return ph_check_change_words (rig, ph_document_get_compiled (self->document), &self->move);
  return g_strdup (
      _ ("Nothing that may change would bring it back: unlock a bar or widen its limits "
         "on the Rig page."));
}

static void
update (PhVialEnd *self)
{
  gboolean left = gtk_toggle_button_get_active (self->left);
  gboolean chosen = left || gtk_toggle_button_get_active (self->right);
  self->move = (PhPartChange){ 0 };
  g_autofree char *text = chosen ? move_text (self, left) : g_strdup ("");
  gtk_label_set_text (self->say, text);
  g_signal_emit (self, signals[MOVE_CHANGED], 0);
}

static void
side_cb (PhVialEnd *self, GtkToggleButton *button)
{
  GtkToggleButton *other = button == self->left ? self->right : self->left;
  if (gtk_toggle_button_get_active (button))
    gtk_toggle_button_set_active (other, FALSE);
  update (self);
}

void
ph_vial_end_start (PhVialEnd *self)
{
  g_return_if_fail (PH_IS_VIAL_END (self));
  gtk_toggle_button_set_active (self->left, FALSE);
  gtk_toggle_button_set_active (self->right, FALSE);
  update (self);
  gtk_widget_grab_focus (GTK_WIDGET (self->left));
}

gboolean
ph_vial_end_has_move (PhVialEnd *self)
{
  g_return_val_if_fail (PH_IS_VIAL_END (self), FALSE);
  return self->move.key != NULL;
}

gboolean
ph_vial_end_take (PhVialEnd *self, GError **error)
{
  g_return_val_if_fail (PH_IS_VIAL_END (self), FALSE);
  if (!self->move.key)
    return FALSE;
  PhPartChange move = self->move;
  g_autofree char *id = g_strdup (ph_document_get_rig (self->document)->parts[move.part].id);
  return ph_document_set_number (self->document, id, move.key, 0, move.to, error);
}

static void
ph_vial_end_dispose (GObject *object)
{
  PhVialEnd *self = PH_VIAL_END (object);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (ph_vial_end_parent_class)->dispose (object);
}

static void
ph_vial_end_class_init (PhVialEndClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = ph_vial_end_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  signals[MOVE_CHANGED] = g_signal_new ("move-changed", G_TYPE_FROM_CLASS (klass),
                                        G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static GtkToggleButton *
new_side (PhVialEnd *self, GtkWidget *sides, const char *label)
{
  GtkWidget *button = gtk_toggle_button_new_with_label (label);
  g_signal_connect_swapped (button, "toggled", G_CALLBACK (side_cb), self);
  gtk_box_append (GTK_BOX (sides), button);
  return GTK_TOGGLE_BUTTON (button);
}

static GtkWidget *
new_label (const char *text)
{
  GtkWidget *label = gtk_label_new (text);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  return label;
}

static void
ph_vial_end_init (PhVialEnd *self)
{
  GtkWidget *sides = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  gtk_widget_add_css_class (sides, "linked");
  self->left = new_side (self, sides, _ ("At the left end"));
  self->right = new_side (self, sides, _ ("At the right end"));
  self->say = GTK_LABEL (new_label (NULL));
  gtk_widget_add_css_class (GTK_WIDGET (self->say), "hand-next");
  gtk_box_append (
      GTK_BOX (self->box),
      new_label (_ ("At the end of its vial a bubble tells only the side. Turn something "
                    "until it floats, then draw again.")));
  gtk_box_append (GTK_BOX (self->box), sides);
  gtk_box_append (GTK_BOX (self->box), GTK_WIDGET (self->say));
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

GtkWidget *
ph_vial_end_new (PhDocument *document)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document), NULL);
  PhVialEnd *self = g_object_new (PH_TYPE_VIAL_END, NULL);
  self->document = g_object_ref (document);
  return GTK_WIDGET (self);
}
