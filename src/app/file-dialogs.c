/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * GtkFileChooserNative: the newer file dialog is not in the oldest toolkit that is promised. A
 * request lives from the dialog's opening to its answer.
 */
#include "app/file-dialogs.h"

#include <glib/gi18n.h>
#include <string.h>

#include "app/file-name.h"
#include "app/question.h"

typedef struct
{
  GtkFileChooserNative *dialog;
  GtkWindow *parent; /* weak */
  PhFileChosen chosen;
  gpointer data;
  GFile *file; /* waits for "overwrite?" */
} Request;

static void
answer_request (Request *request, GFile *file)
{
  if (request->parent)
    {
      g_object_remove_weak_pointer (G_OBJECT (request->parent), (gpointer *)&request->parent);
      request->chosen (file, request->data);
    }
  g_clear_object (&request->file);
  g_object_unref (request->dialog);
  g_free (request);
}

static void
overwrite_cb (PhAnswer answer, gpointer data)
{
  Request *request = data;
  answer_request (request, answer == PH_ANSWER_LOSE ? request->file : NULL);
}

/* The file as it will be named, and whether that name was not the one the dialog asked about. */
static GFile *
with_suffix (GFile *file, gboolean *added)
{
  g_autofree char *name = g_file_get_basename (file);
  *added = !g_str_has_suffix (name, ".json");
  if (!*added)
    return g_object_ref (file);
  g_autofree char *longer = g_strconcat (name, PH_RIG_SUFFIX, NULL);
  g_autoptr (GFile) folder = g_file_get_parent (file);
  return g_file_get_child (folder, longer);
}

static void
ask_overwrite (Request *request)
{
  g_autofree char *name = g_file_get_basename (request->file);
  g_autofree char *text = g_strdup_printf (_ ("Replace “%s”?"), name);
  ph_question_ask (request->parent, text, _ ("A file of that name stands there already."),
                   _ ("_Replace"), _ ("_Keep It"), overwrite_cb, request);
}

static void
response_cb (GtkNativeDialog *dialog, int response, Request *request)
{
  g_autoptr (GFile) file = response == GTK_RESPONSE_ACCEPT
                               ? gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog))
                               : NULL;
  gtk_native_dialog_hide (dialog);
  if (!file
      || gtk_file_chooser_get_action (GTK_FILE_CHOOSER (dialog)) != GTK_FILE_CHOOSER_ACTION_SAVE)
    {
      answer_request (request, file);
      return;
    }
  gboolean added;
  request->file = with_suffix (file, &added);
  if (added && request->parent && g_file_query_exists (request->file, NULL))
    ask_overwrite (request);
  else
    answer_request (request, request->file);
}

static void
add_filters (GtkFileChooser *chooser)
{
  g_autoptr (GtkFileFilter) rigs = gtk_file_filter_new ();
  gtk_file_filter_set_name (rigs, _ ("Rigs (*.json)"));
  /* Not only *.rig.json: a rig saved under a name of one's own must be found again. */
  gtk_file_filter_add_pattern (rigs, "*.json");
  g_autoptr (GtkFileFilter) all = gtk_file_filter_new ();
  gtk_file_filter_set_name (all, _ ("All files"));
  gtk_file_filter_add_pattern (all, "*");
  gtk_file_chooser_add_filter (chooser, rigs);
  gtk_file_chooser_add_filter (chooser, all);
}

static GtkFileChooser *
new_request (GtkWindow *parent, const char *title, GtkFileChooserAction action,
             const char *accept_label, PhFileChosen chosen, gpointer data)
{
  Request *request = g_new0 (Request, 1);
  request->dialog = gtk_file_chooser_native_new (title, parent, action, accept_label, NULL);
  request->chosen = chosen;
  request->data = data;
  g_set_weak_pointer (&request->parent, parent);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (request->dialog), TRUE);
  add_filters (GTK_FILE_CHOOSER (request->dialog));
  g_signal_connect (request->dialog, "response", G_CALLBACK (response_cb), request);
  return GTK_FILE_CHOOSER (request->dialog);
}

void
ph_file_dialog_open (GtkWindow *parent, const char *title, PhFileChosen chosen, gpointer data)
{
  GtkFileChooser *chooser =
      new_request (parent, title, GTK_FILE_CHOOSER_ACTION_OPEN, _ ("_Open"), chosen, data);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

static GFile *
usual_folder (void)
{
  const char *documents = g_get_user_special_dir (G_USER_DIRECTORY_DOCUMENTS);
  return g_file_new_for_path (documents ? documents : g_get_home_dir ());
}

void
ph_file_dialog_save (GtkWindow *parent, const char *title, GFile *now, const char *rig_title,
                     PhFileChosen chosen, gpointer data)
{
  GtkFileChooser *chooser =
      new_request (parent, title, GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Save"), chosen, data);
  g_autoptr (GFile) folder = now ? g_file_get_parent (now) : usual_folder ();
  g_autofree char *name = now ? g_file_get_basename (now) : ph_file_name_for (rig_title);
  /* Offered without its suffix, which is put back on: the dialog selects a name up to its last dot,
   * and whoever typed over that would lose a part of ".rig.json". */
  if (g_str_has_suffix (name, PH_RIG_SUFFIX))
    name[strlen (name) - strlen (PH_RIG_SUFFIX)] = '\0';
  gtk_file_chooser_set_current_folder (chooser, folder, NULL);
  gtk_file_chooser_set_current_name (chooser, name);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}
