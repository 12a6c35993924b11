/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Rigs that a crash or a power cut left unsaved: offered one after the other, newest first, in a
 * banner over whatever is open. Closing the banner leaves them for the next start.
 */
#include <gio/gio.h>
#include <glib/gi18n.h>

#include "app/window-private.h"

static void offer_next (PhWindow *self);

/* When the file was written last, as the person's clock has it; null where it cannot be told. */
static char *
when_written (const char *path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GFileInfo) info =
      g_file_query_info (file, G_FILE_ATTRIBUTE_TIME_MODIFIED, G_FILE_QUERY_INFO_NONE, NULL, NULL);
  g_autoptr (GDateTime) written = info ? g_file_info_get_modification_date_time (info) : NULL;
  g_autoptr (GDateTime) local = written ? g_date_time_to_local (written) : NULL;
  /* Translators: date and time of day, as strftime writes them. */
  return local ? g_date_time_format (local, _ ("%-d %B, %H:%M")) : NULL;
}

static void
load_recovered (PhWindow *self, gpointer data)
{
  const char *path = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GFile) file = g_file_new_for_path (path);
  if (!ph_document_load_recovered (self->document, path, &error))
    ph_window_tell_file_error (self, file, error, ph_document_get_issues (self->document));
}

static void
open_cb (PhBanner *banner, gpointer data)
{
  (void)banner;
  PhWindow *self = data;
  ph_window_settle (self, _ ("before opening another rig"), load_recovered,
                    g_strdup (*self->offered), g_free);
  self->offered++;
  offer_next (self);
}

static void
discard_cb (PhBanner *banner, gpointer data)
{
  (void)banner;
  PhWindow *self = data;
  ph_document_discard_recovered (self->document, *self->offered);
  self->offered++;
  offer_next (self);
}

static void
offer_next (PhWindow *self)
{
  if (!self->offered || !*self->offered)
    return;
  g_autofree char *title = ph_document_dup_recovered_title (self->document, *self->offered);
  g_autofree char *when = when_written (*self->offered);
  g_autofree char *text =
      when ? g_strdup_printf (_ ("An unsaved rig was found: “%s”, of %s"), title, when)
           : g_strdup_printf (_ ("An unsaved rig was found: “%s”"), title);
  ph_banner_say (self->recovery_banner, PH_BANNER_QUESTION, text, NULL);
  ph_banner_add_answer (self->recovery_banner, _ ("Open It"), open_cb, self);
  ph_banner_add_answer (self->recovery_banner, _ ("Discard"), discard_cb, self);
}

void
ph_window_offer_recovered (PhWindow *self)
{
  g_return_if_fail (PH_IS_WINDOW (self));
  g_strfreev (self->recovered);
  self->recovered = ph_document_find_recovered (self->document);
  self->offered = self->recovered;
  offer_next (self);
}
