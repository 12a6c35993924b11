/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Opening, saving, sharing, and the reference. The store does the reading and the atomic writing;
 * here it is decided what that means for the open rig. Files of this machine only: a place that has
 * no path is refused with a way out.
 */
#include <glib/gi18n-lib.h>

#include <stdlib.h>

#include "base/text.h"
#include "document/document-private.h"

/* Reading. */

static gboolean
refuse_read (GError **error, PhStatus status, const PhIssues *issues)
{
  int code = status == PH_ERR_READ || status == PH_ERR_TOO_LARGE ? PH_DOCUMENT_ERROR_FILE
                                                                 : PH_DOCUMENT_ERROR_RIG;
  size_t errors = ph_issues_errors (issues);
  const PhIssue *first = NULL;
  for (size_t i = 0; i < issues->n && first == NULL; i++)
    if (!issues->items[i].is_note)
      first = &issues->items[i];
  char *line = first != NULL ? ph_issue_line (first) : g_strdup (_ (ph_status_text (status)));
  if (errors > 1)
    g_set_error (error, PH_DOCUMENT_ERROR, code,
                 ngettext ("%s (and %zu more error)", "%s (and %zu more errors)", errors - 1), line,
                 errors - 1);
  else
    g_set_error_literal (error, PH_DOCUMENT_ERROR, code, line);
  free (line);
  return FALSE;
}

gboolean
ph_document_read (PhDocument *self, const char *path, PhRig **rig, GError **error)
{
  PhIssues issues = { 0 };
  PhStatus status = ph_rig_load (path, rig, &issues);
  ph_issues_clear (&self->errors);
  if (status != PH_OK)
    {
      refuse_read (error, status, &issues);
      self->errors = issues;
      return FALSE;
    }
  ph_issues_clear (&issues); /* notes: the report has them too */
  return TRUE;
}

static char *
path_of (GFile *file, GError **error)
{
  char *path = g_file_get_path (file);
  if (path == NULL)
    g_set_error (error, PH_DOCUMENT_ERROR, PH_DOCUMENT_ERROR_FILE,
                 _ ("This place cannot be reached as a folder of this computer: choose another."));
  return path;
}

/* "Harbour club indoor" of "…/Harbour club indoor.rig.json". */
static char *
own_name_of (GFile *file)
{
  g_autofree char *base = g_file_get_basename (file);
  return ph_rig_name_of_path (base);
}

static void
set_file (PhDocument *self, GFile *file)
{
  if (self->file == file || (self->file != NULL && file != NULL && g_file_equal (self->file, file)))
    return;
  g_set_object (&self->file, file);
  ph_document_notify (self, PROP_FILE);
}

void
ph_document_replace (PhDocument *self, PhRig *rig, GFile *file, const char *own_name, PhRig *saved)
{
  char *name = g_strdup (own_name);
  g_clear_pointer (&self->gesture, ph_step_free);
  ph_document_forget_steps (self);
  ph_rig_free (self->saved);
  self->saved = saved;
  ph_computed_take (&self->open, rig);
  g_free (self->own_name);
  self->own_name = name;
  self->stamp = (PhFileStamp){ 0 };
  set_file (self, file);
  ph_document_select_if_there (self, NULL);
  ph_document_refresh (self);
}

static gboolean
open_file (PhDocument *self, GFile *file, gboolean as_copy, GError **error)
{
  g_autofree char *path = path_of (file, error);
  g_autofree char *own_name = own_name_of (file);
  PhRig *rig = NULL;
  if (path == NULL)
    return FALSE;
  /* Looked at before it is read: a write in between then counts as a change, never as known. */
  PhFileStamp stamp = ph_file_stamp_of (path);
  if (!ph_document_read (self, path, &rig, error))
    return FALSE;

  g_object_freeze_notify (G_OBJECT (self));
  ph_document_replace (self, rig, as_copy ? NULL : file, own_name, ph_rig_copy (rig));
  if (!as_copy)
    self->stamp = stamp;
  ph_document_keep_safe (self);
  ph_document_tell_replaced (self);
  g_object_thaw_notify (G_OBJECT (self));
  return TRUE;
}

gboolean
ph_document_load (PhDocument *self, GFile *file, GError **error)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self) && G_IS_FILE (file), FALSE);
  return open_file (self, file, FALSE, error);
}

gboolean
ph_document_load_copy (PhDocument *self, GFile *file, GError **error)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self) && G_IS_FILE (file), FALSE);
  return open_file (self, file, TRUE, error);
}

void
ph_document_new_rig (PhDocument *self, const PhStarter *starter, const char *name)
{
  g_return_if_fail (PH_IS_DOCUMENT (self) && starter != NULL);
  PhRig *rig = ph_starter_rig (starter, name);
  g_object_freeze_notify (G_OBJECT (self));
  ph_issues_clear (&self->errors);
  ph_document_replace (self, rig, NULL, NULL, ph_rig_copy (rig));
  ph_document_keep_safe (self);
  ph_document_tell_replaced (self);
  g_object_thaw_notify (G_OBJECT (self));
}

/* Writing. */

static gboolean
write_rig (const PhRig *rig, GFile *file, const char *path, GError **error)
{
  char *why = NULL;
  if (ph_rig_save (rig, path, &why) == PH_OK)
    return TRUE;
  g_autofree char *name = g_file_get_parse_name (file);
  g_set_error (error, PH_DOCUMENT_ERROR, PH_DOCUMENT_ERROR_FILE,
               _ ("“%s” could not be written: %s. Your rig is still open here: free some space, or "
                  "choose another place to save."),
               name, why);
  free (why);
  return FALSE;
}

/* Whether another rig stands at `path` than the one this document knows to be there. */
static gboolean
was_changed (PhDocument *self, const char *path)
{
  if (!ph_file_stamp_differs (&self->stamp, path))
    return FALSE;
  PhRig *there = NULL;
  PhIssues issues = { 0 };
  gboolean same = self->saved != NULL && ph_rig_load (path, &there, &issues) == PH_OK
                  && ph_rig_equal (there, self->saved);
  ph_issues_clear (&issues);
  ph_rig_free (there);
  return !same; /* touched or copied over itself is no change */
}

gboolean
ph_document_save_anyway (PhDocument *self, GFile *file, GError **error)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self), FALSE);
  g_autoptr (GFile) target = g_object_ref (file != NULL ? file : self->file);
  g_autofree char *path = path_of (target, error);
  if (path == NULL)
    return FALSE;

  g_object_freeze_notify (G_OBJECT (self));
  ph_document_end_gesture (self);
  gboolean ok = write_rig (self->open.rig, target, path, error);
  if (ok)
    {
      ph_rig_free (self->saved);
      self->saved = ph_rig_copy (self->open.rig);
      self->stamp = ph_file_stamp_of (path);
      g_free (self->own_name);
      self->own_name = own_name_of (target);
      set_file (self, target);
      ph_document_refresh (self);
      ph_document_keep_safe (self);
    }
  g_object_thaw_notify (G_OBJECT (self));
  return ok;
}

gboolean
ph_document_save (PhDocument *self, GFile *file, GError **error)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self), FALSE);
  GFile *target = file != NULL ? file : self->file;
  g_return_val_if_fail (G_IS_FILE (target), FALSE);
  g_autofree char *path = path_of (target, error);
  if (path == NULL)
    return FALSE;
  if (self->file != NULL && g_file_equal (target, self->file) && was_changed (self, path))
    {
      g_autofree char *name = g_file_get_parse_name (target);
      g_set_error (error, PH_DOCUMENT_ERROR, PH_DOCUMENT_ERROR_CHANGED,
                   _ ("“%s” was changed by another program since it was opened here. Overwrite "
                      "it, or save your rig under another name."),
                   name);
      return FALSE;
    }
  return ph_document_save_anyway (self, target, error);
}

gboolean
ph_document_share (PhDocument *self, GFile *file, GError **error)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self) && G_IS_FILE (file), FALSE);
  g_autofree char *path = path_of (file, error);
  if (path == NULL)
    return FALSE;
  PhRig *shared = ph_rig_without_archer (self->open.rig);
  gboolean ok = write_rig (shared, file, path, error);
  ph_rig_free (shared);
  return ok;
}

/* The reference. */

/* Takes over `rig`; a rig without a name carries that of its file from now on. */
static void
take_reference (PhDocument *self, PhRig *rig, const char *own_name)
{
  if (rig != NULL && rig->name == NULL)
    rig->name = ph_text_dup (own_name);
  ph_computed_take (&self->reference, rig);
  ph_document_refresh (self);
  ph_document_tell (self, PH_TOUCHED_TEXT);
}

void
ph_document_reference_take (PhDocument *self)
{
  g_return_if_fail (PH_IS_DOCUMENT (self));
  take_reference (self, ph_rig_copy (self->open.rig), self->title);
}

gboolean
ph_document_reference_load (PhDocument *self, GFile *file, GError **error)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self) && G_IS_FILE (file), FALSE);
  g_autofree char *path = path_of (file, error);
  g_autofree char *own_name = own_name_of (file);
  PhIssues issues = { 0 };
  PhRig *rig = NULL;
  if (path == NULL)
    return FALSE;
  PhStatus status = ph_rig_load (path, &rig, &issues);
  if (status != PH_OK)
    refuse_read (error, status, &issues);
  else
    take_reference (self, rig, own_name);
  ph_issues_clear (&issues);
  return status == PH_OK;
}

void
ph_document_reference_clear (PhDocument *self)
{
  g_return_if_fail (PH_IS_DOCUMENT (self));
  if (self->reference.rig != NULL)
    take_reference (self, NULL, NULL);
}
