/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One dialog for every question, so that the buttons always stand in the same order.
 */
#include "app/question.h"

#include <glib/gi18n.h>

typedef struct
{
  PhAnswered answered;
  gpointer data;
} Question;

static void
response_cb (GtkWindow *dialog, int response, Question *question)
{
  PhAnswer answer = response == GTK_RESPONSE_ACCEPT   ? PH_ANSWER_KEEP
                    : response == GTK_RESPONSE_REJECT ? PH_ANSWER_LOSE
                                                      : PH_ANSWER_CANCEL;
  Question kept = *question;
  /* The answer may close the parent, and this emission outlives that: let go of it first. */
  gtk_window_set_transient_for (dialog, NULL);
  gtk_window_destroy (dialog);
  kept.answered (answer, kept.data);
}

static void
free_question (gpointer data, GClosure *closure)
{
  (void)closure;
  g_free (data);
}

/* Beside the label's own name the toolkit's 4.8 tells the mnemonic's: "_Save Save". */
static GtkWidget *
add_button (GtkDialog *dialog, const char *label, int response)
{
  GtkWidget *button = gtk_dialog_add_button (dialog, label, response);
  GtkAccessible *accessible = GTK_ACCESSIBLE (button);
  g_autofree char *name = NULL;
  g_auto (GStrv) pieces = g_strsplit (label, "_", -1);
  name = g_strjoinv ("", pieces);
  gtk_accessible_reset_relation (accessible, GTK_ACCESSIBLE_RELATION_LABELLED_BY);
  gtk_accessible_update_property (accessible, GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  return button;
}

void
ph_question_ask (GtkWindow *parent, const char *text, const char *secondary, const char *lose_label,
                 const char *keep_label, PhAnswered answered, gpointer data)
{
  g_return_if_fail (GTK_IS_WINDOW (parent) && answered != NULL);
  GtkWidget *dialog =
      gtk_message_dialog_new (parent, GTK_DIALOG_MODAL | GTK_DIALOG_DESTROY_WITH_PARENT,
                              GTK_MESSAGE_QUESTION, GTK_BUTTONS_NONE, "%s", text);
  gtk_message_dialog_format_secondary_text (GTK_MESSAGE_DIALOG (dialog), "%s", secondary);
  gtk_accessible_update_property (GTK_ACCESSIBLE (dialog), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
  GtkWidget *lose = add_button (GTK_DIALOG (dialog), lose_label, GTK_RESPONSE_REJECT);
  gtk_widget_add_css_class (lose, "destructive-action");
  add_button (GTK_DIALOG (dialog), _ ("_Cancel"), GTK_RESPONSE_CANCEL);
  GtkWidget *keep = add_button (GTK_DIALOG (dialog), keep_label, GTK_RESPONSE_ACCEPT);
  gtk_widget_add_css_class (keep, "suggested-action");
  gtk_dialog_set_default_response (GTK_DIALOG (dialog), GTK_RESPONSE_ACCEPT);

  Question *question = g_new (Question, 1);
  *question = (Question){ answered, data };
  g_signal_connect_data (dialog, "response", G_CALLBACK (response_cb), question, free_question, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}
