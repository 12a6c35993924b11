/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * When the document's rig is kept beside, and how one that was left behind comes back. A failing
 * write is told once, through "recovery-error", and tried anew after every gesture.
 */
#include <glib/gi18n-lib.h>

#include "document/document-private.h"

void
ph_document_set_recovery_folder (PhDocument *self, const char *path)
{
  g_return_if_fail (PH_IS_DOCUMENT (self) && path != NULL);
  ph_recovery_free (self->recovery);
  self->recovery = ph_recovery_new (path);
}

static void
fill_origin (PhDocument *self, PhOrigin *origin)
{
  *origin = (PhOrigin){ .uri = self->file != NULL ? g_file_get_uri (self->file) : NULL,
                        .own_name = g_strdup (self->own_name),
                        .stamp = self->stamp };
}

void
ph_document_keep_safe (PhDocument *self)
{
  if (!self->unsaved)
    {
      ph_recovery_drop (self->recovery);
      ph_document_set_recovery_error (self, NULL);
      return;
    }
  PhOrigin origin;
  char *why = NULL;
  fill_origin (self, &origin);
  if (ph_recovery_keep (self->recovery, self->open.rig, self->reference.rig, &origin, &why))
    ph_document_set_recovery_error (self, NULL);
  else
    {
      g_autofree char *text =
          g_strdup_printf (_ ("Unsaved changes cannot be kept safe (%s). Save the rig now."), why);
      ph_document_set_recovery_error (self, text);
      g_free (why);
    }
  ph_origin_clear (&origin);
}

char **
ph_document_find_recovered (PhDocument *self)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self), NULL);
  return ph_recovery_find (self->recovery);
}

/* The rig at `path`, or null where it cannot be read. */
static PhRig *
read_quietly (const char *path)
{
  PhRig *rig = NULL;
  PhIssues issues = { 0 };
  if (path == NULL || ph_rig_load (path, &rig, &issues) != PH_OK)
    rig = NULL;
  ph_issues_clear (&issues);
  return rig;
}

char *
ph_document_dup_recovered_title (PhDocument *self, const char *path)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self) && path != NULL, NULL);
  PhOrigin origin;
  PhRig *rig = read_quietly (path);
  ph_recovery_read_origin (path, &origin);
  const char *name = rig != NULL && rig->name != NULL && *rig->name != '\0' ? rig->name
                     : origin.own_name != NULL                              ? origin.own_name
                                                                            : _ ("Untitled rig");
  char *title = g_strdup (name);
  ph_origin_clear (&origin);
  ph_rig_free (rig);
  return title;
}

/* The document takes over what was read; `origin` is cleared. */
static void
open_recovered (PhDocument *self, PhRig *rig, const char *path, PhOrigin *origin)
{
  g_autofree char *reference = ph_recovery_reference_path (path);
  g_autoptr (GFile) file = origin->uri != NULL ? g_file_new_for_uri (origin->uri) : NULL;
  g_autofree char *on_disk = file != NULL ? g_file_get_path (file) : NULL;

  /* What stands there now is the rig that was being edited only where nobody wrote it since. */
  gboolean known = origin->stamp.known && !ph_file_stamp_differs (&origin->stamp, on_disk);
  ph_document_replace (self, rig, file, origin->own_name, known ? read_quietly (on_disk) : NULL);
  self->stamp = origin->stamp;
  PhRig *compared = read_quietly (reference);
  if (compared != NULL)
    ph_computed_take (&self->reference, compared);
  ph_origin_clear (origin);
}

gboolean
ph_document_load_recovered (PhDocument *self, const char *path, GError **error)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self) && path != NULL, FALSE);
  PhRig *rig = NULL;
  PhOrigin origin = { 0 };
  if (!ph_document_read (self, path, &rig, error))
    return FALSE;
  if (!ph_recovery_adopt (self->recovery, path, &origin))
    {
      ph_rig_free (rig);
      g_set_error (error, PH_DOCUMENT_ERROR, PH_DOCUMENT_ERROR_FILE,
                   _ ("Another window has this rig open already. Look for it there."));
      return FALSE;
    }
  open_recovered (self, rig, path, &origin);
  ph_document_keep_safe (self);
  ph_document_tell_replaced (self);
  return TRUE;
}

void
ph_document_discard_recovered (PhDocument *self, const char *path)
{
  g_return_if_fail (PH_IS_DOCUMENT (self) && path != NULL);
  ph_recovery_discard (self->recovery, path);
}

void
ph_document_forget_recovery (PhDocument *self)
{
  g_return_if_fail (PH_IS_DOCUMENT (self));
  ph_recovery_drop (self->recovery);
}
