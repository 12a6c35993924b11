/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "widgets/answer-row.h"

#include <glib/gi18n.h>

struct _PhAnswerRow
{
  GtkListBoxRow parent_instance;
  GtkWidget *button; /* or null */
  gboolean pointed, focused;
};

enum
{
  APPLY,
  LOOK,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (PhAnswerRow, ph_answer_row, GTK_TYPE_LIST_BOX_ROW)

static void
look (PhAnswerRow *self, gboolean *what, gboolean on)
{
  gboolean before = self->pointed || self->focused;
  *what = on;
  gboolean now = self->pointed || self->focused;
  if (before != now)
    g_signal_emit (self, signals[LOOK], 0, now);
}

static void
pointer_enter_cb (PhAnswerRow *self)
{
  look (self, &self->pointed, TRUE);
}

static void
pointer_leave_cb (PhAnswerRow *self)
{
  look (self, &self->pointed, FALSE);
}

static void
focus_enter_cb (PhAnswerRow *self)
{
  look (self, &self->focused, TRUE);
}

static void
focus_leave_cb (PhAnswerRow *self)
{
  look (self, &self->focused, FALSE);
}

static void
clicked_cb (PhAnswerRow *self)
{
  g_signal_emit (self, signals[APPLY], 0);
}

static void
ph_answer_row_class_init (PhAnswerRowClass *klass)
{
  signals[APPLY] = g_signal_new ("apply", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
  signals[LOOK] = g_signal_new ("look", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                NULL, G_TYPE_NONE, 1, G_TYPE_BOOLEAN);
}

static void
ph_answer_row_init (PhAnswerRow *self)
{
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();
  g_signal_connect_swapped (motion, "enter", G_CALLBACK (pointer_enter_cb), self);
  g_signal_connect_swapped (motion, "leave", G_CALLBACK (pointer_leave_cb), self);
  g_signal_connect_swapped (focus, "enter", G_CALLBACK (focus_enter_cb), self);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (focus_leave_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
}

static void
add_label (GtkWidget *box, const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, css_class);
  gtk_box_append (GTK_BOX (box), label);
}

static GtkWidget *
texts_of (const PhAnswerWords *words, const char *obstacle)
{
  GtkWidget *texts = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  g_autofree char *result = words->chance
                                ? g_strdup_printf ("%s · %s", words->bubble, words->chance)
                                : g_strdup (words->bubble);
  gtk_widget_set_hexpand (texts, TRUE);
  add_label (texts, words->title, "answer-title");
  add_label (texts, result, "answer-result");
  add_label (texts, words->costs, "answer-costs");
  if (words->how)
    add_label (texts, words->how, "answer-costs");
  if (obstacle)
    add_label (texts, obstacle, "answer-costs");
  return texts;
}

GtkWidget *
ph_answer_row_new (const PhAnswerWords *words, const char *obstacle)
{
  PhAnswerRow *self = g_object_new (PH_TYPE_ANSWER_ROW, NULL);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  gtk_box_append (GTK_BOX (box), texts_of (words, obstacle));
  if (!obstacle)
    {
      g_autofree char *name = g_strdup_printf (_ ("Do it: %s"), words->title);
      self->button = gtk_button_new_with_label (_ ("Do It"));
      gtk_widget_set_valign (self->button, GTK_ALIGN_CENTER);
      gtk_accessible_update_property (GTK_ACCESSIBLE (self->button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                      name, -1);
      g_signal_connect_swapped (self->button, "clicked", G_CALLBACK (clicked_cb), self);
      gtk_box_append (GTK_BOX (box), self->button);
    }
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (self), box);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  words->spoken, -1);
  return GTK_WIDGET (self);
}

gboolean
ph_answer_row_can_apply (PhAnswerRow *self)
{
  g_return_val_if_fail (PH_IS_ANSWER_ROW (self), FALSE);
  return self->button != NULL;
}
