/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Opening, saving and closing, with the questions that come before something could be lost. Each
 * question is answered later, so that what is to follow waits in a Pending.
 */
#include <glib/gi18n.h>

#include "app/data-path.h"
#include "app/file-dialogs.h"
#include "app/question.h"
#include "app/recent.h"
#include "app/window-private.h"

typedef struct
{
  PhWindow *window;
  PhThen then; /* null: nothing follows */
  gpointer data;
  GDestroyNotify free_data;
  gboolean share; /* a layout is written, not the rig */
} Pending;

static Pending *
pending_new (PhWindow *self, PhThen then, gpointer data, GDestroyNotify free_data)
{
  Pending *pending = g_new0 (Pending, 1);
  *pending = (Pending){ g_object_ref (self), then, data, free_data, FALSE };
  return pending;
}

/* Ends the wait; `go_on`: what was to follow follows now. */
static void
pending_end (Pending *pending, gboolean go_on)
{
  if (go_on && pending->then)
    pending->then (pending->window, pending->data);
  if (pending->free_data)
    pending->free_data (pending->data);
  g_object_unref (pending->window);
  g_free (pending);
}

static char *
shown_name (GFile *file)
{
  g_autofree char *base = g_file_get_basename (file);
  return g_filename_display_name (base);
}

/* Errors. */

void
ph_window_tell_trouble (PhWindow *self, const char *text, const PhIssues *issues)
{
  g_return_if_fail (PH_IS_WINDOW (self) && text != NULL);
  ph_banner_say (self->file_banner, PH_BANNER_ERROR, text, issues);
}

void
ph_window_tell_file_error (PhWindow *self, GFile *file, const GError *error, const PhIssues *issues)
{
  g_autofree char *name = shown_name (file);
  g_autofree char *text = NULL;
  if (g_error_matches (error, PH_DOCUMENT_ERROR, PH_DOCUMENT_ERROR_RIG))
    text = g_strdup_printf (_ ("“%s” was not opened, because it has errors: %s. Your rig is still "
                               "here."),
                            name, error->message);
  else
    text = g_strdup_printf (_ ("“%s” was not opened: %s. Your rig is still here."), name,
                            error->message);
  ph_window_tell_trouble (self, text, issues);
}

/* Saving. */

static void choose_and_write (Pending *pending, const char *title);
static void write_and_end (Pending *pending, GFile *file, gboolean anyway);

static void
changed_on_disk_cb (PhAnswer answer, gpointer data)
{
  Pending *pending = data;
  if (answer == PH_ANSWER_KEEP)
    choose_and_write (pending, _ ("Save the rig as"));
  else if (answer == PH_ANSWER_LOSE)
    write_and_end (pending, NULL, TRUE);
  else
    pending_end (pending, FALSE);
}

static void
ask_changed_on_disk (Pending *pending)
{
  g_autofree char *name = shown_name (ph_document_get_file (pending->window->document));
  g_autofree char *text =
      g_strdup_printf (_ ("“%s” has been changed by somebody else since you opened it"), name);
  ph_question_ask (GTK_WINDOW (pending->window), text,
                   _ ("Overwriting loses what is in the file now. Saving under another name keeps "
                      "both."),
                   _ ("_Overwrite"), _ ("_Save As…"), changed_on_disk_cb, pending);
}

/* `file` null: the document's own. */
static void
write_and_end (Pending *pending, GFile *file, gboolean anyway)
{
  PhWindow *self = pending->window;
  g_autoptr (GError) error = NULL;
  gboolean written = anyway ? ph_document_save_anyway (self->document, file, &error)
                            : ph_document_save (self->document, file, &error);
  if (g_error_matches (error, PH_DOCUMENT_ERROR, PH_DOCUMENT_ERROR_CHANGED))
    {
      ask_changed_on_disk (pending);
      return;
    }
  if (written)
    {
      ph_banner_close (self->file_banner);
      ph_recent_add (ph_document_get_file (self->document));
    }
  else
    ph_window_tell_trouble (self, error->message, NULL);
  pending_end (pending, written);
}

static void
share_and_end (Pending *pending, GFile *file)
{
  PhWindow *self = pending->window;
  g_autoptr (GError) error = NULL;
  gboolean written = ph_document_share (self->document, file, &error);
  if (written)
    {
      g_autofree char *name = shown_name (file);
      g_autofree char *text = g_strdup_printf (
          _ ("“%s” written: the layout, without the archer, checks and body data"), name);
      ph_toast_say (self->toast, text, NULL, NULL);
    }
  else
    ph_window_tell_trouble (self, error->message, NULL);
  pending_end (pending, written);
}

static void
place_chosen_cb (GFile *file, gpointer data)
{
  Pending *pending = data;
  if (!file)
    pending_end (pending, FALSE);
  else if (pending->share)
    share_and_end (pending, file);
  else
    write_and_end (pending, file, FALSE);
}

static void
choose_and_write (Pending *pending, const char *title)
{
  PhDocument *document = pending->window->document;
  ph_file_dialog_save (GTK_WINDOW (pending->window), title,
                       pending->share ? NULL : ph_document_get_file (document),
                       ph_document_get_title (document), place_chosen_cb, pending);
}

static void
save_then (Pending *pending)
{
  if (ph_document_get_file (pending->window->document))
    write_and_end (pending, NULL, FALSE);
  else
    choose_and_write (pending, _ ("Save the rig"));
}

void
ph_window_save (PhWindow *self)
{
  save_then (pending_new (self, NULL, NULL, NULL));
}

void
ph_window_save_as (PhWindow *self)
{
  choose_and_write (pending_new (self, NULL, NULL, NULL), _ ("Save the rig as"));
}

void
ph_window_share (PhWindow *self)
{
  Pending *pending = pending_new (self, NULL, NULL, NULL);
  pending->share = TRUE;
  choose_and_write (pending, _ ("Share the layout: no archer, checks or body data"));
}

/* Unsaved work. */

static void
unsaved_answered_cb (PhAnswer answer, gpointer data)
{
  Pending *pending = data;
  if (answer == PH_ANSWER_KEEP)
    save_then (pending);
  else
    pending_end (pending, answer == PH_ANSWER_LOSE);
}

void
ph_window_settle (PhWindow *self, const char *before_what, PhThen then, gpointer data,
                  GDestroyNotify free_data)
{
  Pending *pending = pending_new (self, then, data, free_data);
  if (self->unattended || !ph_document_get_unsaved (self->document))
    {
      pending_end (pending, TRUE);
      return;
    }
  /* Translators: the first %s is a rig's name, the second one of "before closing", "before
   * opening another rig", "before making a new rig". */
  g_autofree char *text = g_strdup_printf (_ ("Save the changes to “%s” %s?"),
                                           ph_document_get_title (self->document), before_what);
  ph_question_ask (GTK_WINDOW (self), text, _ ("What is not saved will be lost."), _ ("_Discard"),
                   _ ("_Save"), unsaved_answered_cb, pending);
}

/* Opening. */

static void
load_file (PhWindow *self, gpointer data)
{
  GFile *file = data;
  g_autoptr (GError) error = NULL;
  if (!ph_document_load (self->document, file, &error))
    {
      ph_window_tell_file_error (self, file, error, ph_document_get_issues (self->document));
      return;
    }
  ph_banner_close (self->file_banner);
  if (!self->unattended)
    ph_recent_add (file);
}

void
ph_window_open (PhWindow *self, GFile *file)
{
  g_return_if_fail (PH_IS_WINDOW (self) && G_IS_FILE (file));
  ph_window_settle (self, _ ("before opening another rig"), load_file, g_object_ref (file),
                    g_object_unref);
}

static void
load_demo (PhWindow *self, gpointer nothing)
{
  (void)nothing;
  g_autofree char *path = ph_data_path ("demo.rig.json");
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  if (ph_document_load_copy (self->document, file, &error))
    {
      ph_banner_close (self->file_banner);
      /* What the example is an example of: the form shows its angles, the views its lever arm. */
      ph_document_select (self->document, "back-bar");
    }
  else
    ph_window_tell_file_error (self, file, error, ph_document_get_issues (self->document));
}

void
ph_window_open_demo (PhWindow *self)
{
  g_return_if_fail (PH_IS_WINDOW (self));
  ph_window_settle (self, _ ("before opening another rig"), load_demo, NULL, NULL);
}

void
ph_window_open_first (PhWindow *self)
{
  g_return_if_fail (PH_IS_WINDOW (self));
  g_autoptr (GFile) last = ph_recent_last ();
  /* Under a rig that fails to load stands the example. */
  load_demo (self, NULL);
  if (last)
    load_file (self, last);
}

static void
chosen_to_open_cb (GFile *file, gpointer data)
{
  g_autoptr (PhWindow) self = data;
  if (file)
    load_file (self, file);
}

static void
choose_to_open (PhWindow *self, gpointer nothing)
{
  (void)nothing;
  ph_file_dialog_open (GTK_WINDOW (self), _ ("Open a rig"), chosen_to_open_cb, g_object_ref (self));
}

void
ph_window_choose_and_open (PhWindow *self)
{
  ph_window_settle (self, _ ("before opening another rig"), choose_to_open, NULL, NULL);
}

static void
reference_chosen_cb (GFile *file, gpointer data)
{
  g_autoptr (PhWindow) self = data;
  g_autoptr (GError) error = NULL;
  if (file && !ph_document_reference_load (self->document, file, &error))
    ph_window_tell_file_error (self, file, error, NULL);
}

void
ph_window_choose_reference (PhWindow *self)
{
  ph_file_dialog_open (GTK_WINDOW (self), _ ("Load a reference"), reference_chosen_cb,
                       g_object_ref (self));
}
