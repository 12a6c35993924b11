/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every edit: the model does it or refuses, then the results are computed anew and everybody is
 * told. Outside a gesture an edit is a gesture of its own. Clipboard and reference swap are here
 * too, since they edit.
 */
#include <glib/gi18n-lib.h>

#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "document/document-private.h"
#include "document/refusal.h"
#include "document/undo-label.h"
#include "model/check.h"
#include "model/fields.h"
#include "store/rig-file.h"

/* One edit from its start to its end. */
typedef struct
{
  PhDocument *document;
  gboolean own_gesture;
  PhIssues issues;
} Edit;

static Edit
start_edit (PhDocument *self)
{
  Edit edit = { .document = self, .own_gesture = self->gesture == NULL };
  g_object_freeze_notify (G_OBJECT (self));
  if (edit.own_gesture)
    ph_document_begin_gesture (self);
  return edit;
}

/* A refusal from issues, which are cleared: the first one's sentence. */
static void
refuse (PhDocument *self, int code, PhIssues *issues, GError **error)
{
  g_autofree char *text = issues->n > 0
                              ? ph_refusal_of_issue (self->open.rig, &issues->items[0], self->units)
                              : g_strdup (_ ("The rig does not allow this change."));
  g_set_error_literal (error, PH_DOCUMENT_ERROR, code, text);
  ph_issues_clear (issues);
}

/* `ok` as the model said; `part` is the one whose numbers changed, −1: compile all anew. */
static gboolean
finish_edit (Edit *edit, gboolean ok, PhTouched touched, int part, GError **error)
{
  PhDocument *self = edit->document;
  if (!ok && (error == NULL || *error == NULL))
    refuse (self, PH_DOCUMENT_ERROR_REFUSED, &edit->issues, error);
  ph_issues_clear (&edit->issues);
  if (ok)
    {
      self->gesture->beyond_numbers |= touched != PH_TOUCHED_NUMBERS;
      if (part >= 0)
        {
          ph_compiled_update_part (self->open.compiled, self->open.rig, (size_t)part);
          ph_computed_report (&self->open);
        }
      else if (touched != PH_TOUCHED_TEXT)
        ph_computed_take (&self->open, self->open.rig);
      ph_document_refresh (self);
      ph_document_tell (self, touched);
    }
  if (edit->own_gesture)
    ph_document_end_gesture (self);
  g_object_thaw_notify (G_OBJECT (self));
  return ok;
}

/* Index of the part, or a refusal: what was clicked a moment ago may be gone. */
static gboolean
find_part (PhDocument *self, const char *id, size_t *i, GError **error)
{
  int found = id != NULL ? ph_rig_find (self->open.rig, id) : -1;
  if (found < 0)
    {
      g_set_error (error, PH_DOCUMENT_ERROR, PH_DOCUMENT_ERROR_REFUSED,
                   _ ("This part is not in the rig any more."));
      return FALSE;
    }
  *i = (size_t)found;
  return TRUE;
}

/* Numbers. */

/* Where the number is out of its own range that is said; other refusals are the issue's. */
static void
refuse_range (const PhField *field, double value, PhUnits units, GError **error)
{
  g_autofree char *text = ph_refusal_of_range (field, value, units);
  if (text != NULL)
    g_set_error_literal (error, PH_DOCUMENT_ERROR, PH_DOCUMENT_ERROR_REFUSED, text);
}

gboolean
ph_document_set_number (PhDocument *self, const char *part_id, const char *key, int component,
                        double value, GError **error)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self) && key != NULL, FALSE);
  size_t i;
  if (!find_part (self, part_id, &i, error))
    return FALSE;
  const PhField *field = ph_field_find_part (self->open.rig->parts[i].kind, key, NULL);
  g_return_val_if_fail (field != NULL, FALSE);

  Edit edit = start_edit (self);
  bool ok = ph_edit_set_number (self->open.rig, i, key, component, value, &edit.issues);
  if (!ok)
    refuse_range (field, value, self->units, error);
  /* A place along the bar, or none, is another seat: that is for a full compilation. */
  gboolean same_seat = !g_str_equal (key, "along_mm");
  gboolean fitted = self->open.compiled->piece_of_part[i] >= 0;
  return finish_edit (&edit, ok, PH_TOUCHED_NUMBERS, same_seat && fitted ? (int)i : -1, error);
}

gboolean
ph_document_set_bow_number (PhDocument *self, const char *key, int component, double value,
                            GError **error)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self) && key != NULL, FALSE);
  const PhField *field = ph_field_find (PH_OBJECT_BOW, key, NULL);
  g_return_val_if_fail (field != NULL, FALSE);
  Edit edit = start_edit (self);
  bool ok = ph_edit_set_bow_number (self->open.rig, key, component, value, &edit.issues);
  if (!ok)
    refuse_range (field, value, self->units, error);
  return finish_edit (&edit, ok, PH_TOUCHED_NUMBERS, -1, error);
}

gboolean
ph_document_set_archer_number (PhDocument *self, const char *key, double value, GError **error)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self) && key != NULL, FALSE);
  const PhField *field = ph_field_find (PH_OBJECT_ARCHER, key, NULL);
  if (field == NULL)
    field = ph_field_find (PH_OBJECT_HAND, key, NULL);
  g_return_val_if_fail (field != NULL, FALSE);
  Edit edit = start_edit (self);
  bool ok = ph_edit_set_archer_number (self->open.rig, key, value, &edit.issues);
  if (!ok)
    refuse_range (field, value, self->units, error);
  return finish_edit (&edit, ok, PH_TOUCHED_NUMBERS, -1, error);
}

/* Texts. */

gboolean
ph_document_set_part_name (PhDocument *self, const char *part_id, const char *name, GError **error)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self) && name != NULL, FALSE);
  size_t i;
  if (!find_part (self, part_id, &i, error))
    return FALSE;
  Edit edit = start_edit (self);
  bool ok = ph_edit_set_name (self->open.rig, i, name, &edit.issues);
  return finish_edit (&edit, ok, PH_TOUCHED_TEXT, -1, error);
}

gboolean
ph_document_set_title (PhDocument *self, const char *title, GError **error)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self) && title != NULL, FALSE);
  Edit edit = start_edit (self);
  bool ok = ph_edit_set_rig_name (self->open.rig, title, &edit.issues);
  return finish_edit (&edit, ok, PH_TOUCHED_TEXT, -1, error);
}

gboolean
ph_document_set_notes (PhDocument *self, const char *notes, GError **error)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self) && notes != NULL, FALSE);
  Edit edit = start_edit (self);
  bool ok = ph_edit_set_rig_notes (self->open.rig, notes, &edit.issues);
  return finish_edit (&edit, ok, PH_TOUCHED_TEXT, -1, error);
}

/* The tree. */

gboolean
ph_document_set_off (PhDocument *self, const char *part_id, gboolean off, GError **error)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self), FALSE);
  size_t i;
  if (!find_part (self, part_id, &i, error))
    return FALSE;
  Edit edit = start_edit (self);
  bool ok = ph_edit_set_off (self->open.rig, i, off, &edit.issues);
  return finish_edit (&edit, ok, PH_TOUCHED_STRUCTURE, -1, error);
}

/* The edit put a part there: it becomes the selected one before anybody is told. */
static gboolean
finish_added (Edit *edit, gboolean ok, size_t index, GError **error)
{
  PhDocument *self = edit->document;
  if (ok)
    ph_document_select_if_there (self, self->open.rig->parts[index].id);
  return finish_edit (edit, ok, PH_TOUCHED_STRUCTURE, -1, error);
}

gboolean
ph_document_add (PhDocument *self, const PhPart *part, const char *on, GError **error)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self) && part != NULL && on != NULL, FALSE);
  Edit edit = start_edit (self);
  size_t index = 0;
  bool ok = ph_edit_add (self->open.rig, part, on, &index, &edit.issues);
  return finish_added (&edit, ok, index, error);
}

gboolean
ph_document_insert (PhDocument *self, const PhPart *part, const char *below_id, const char *socket,
                    GError **error)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self) && part != NULL, FALSE);
  size_t i, index = 0;
  if (!find_part (self, below_id, &i, error))
    return FALSE;
  Edit edit = start_edit (self);
  bool ok = ph_edit_insert (self->open.rig, part, i, socket, &index, &edit.issues);
  if (ok && edit.own_gesture)
    self->gesture->label = ph_undo_label_between (self->open.rig, index, i);
  return finish_added (&edit, ok, index, error);
}

gboolean
ph_document_duplicate (PhDocument *self, const char *part_id, GError **error)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self), FALSE);
  size_t i, index = 0;
  if (!find_part (self, part_id, &i, error))
    return FALSE;
  Edit edit = start_edit (self);
  bool ok = ph_edit_duplicate (self->open.rig, i, &index, &edit.issues);
  return finish_added (&edit, ok, index, error);
}

void
ph_document_remove (PhDocument *self, const char *part_id)
{
  g_return_if_fail (PH_IS_DOCUMENT (self));
  size_t i;
  if (!find_part (self, part_id, &i, NULL))
    return;
  Edit edit = start_edit (self);
  PhRig *rig = self->open.rig;
  int host = ph_rig_host (rig, i, NULL);
  g_autofree char *next = g_strdup (host >= 0 ? rig->parts[host].id : "bow");
  g_autofree char *name = ph_undo_label_with_guests (rig, i);
  g_autofree char *text = g_strdup_printf (_ ("Removed %s"), name);
  ph_edit_remove (rig, i);
  ph_document_select_if_there (self, next);
  finish_edit (&edit, TRUE, PH_TOUCHED_STRUCTURE, -1, NULL);
  ph_document_tell_removed (self, text);
}

gboolean
ph_document_rehang (PhDocument *self, const char *part_id, const char *on, GError **error)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self) && on != NULL, FALSE);
  size_t i;
  if (!find_part (self, part_id, &i, error))
    return FALSE;
  Edit edit = start_edit (self);
  bool ok = ph_edit_rehang (self->open.rig, i, on, &edit.issues);
  return finish_edit (&edit, ok, PH_TOUCHED_STRUCTURE, -1, error);
}

void
ph_document_mirror (PhDocument *self)
{
  g_return_if_fail (PH_IS_DOCUMENT (self));
  Edit edit = start_edit (self);
  if (edit.own_gesture)
    self->gesture->label = g_strdup (_ ("mirrored for the other hand"));
  ph_edit_mirror (self->open.rig);
  finish_edit (&edit, TRUE, PH_TOUCHED_NUMBERS, -1, NULL);
}

gboolean
ph_document_edit (PhDocument *self, PhDocumentEdit change, gpointer data, GError **error)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self) && change != NULL, FALSE);
  Edit edit = start_edit (self);
  PhRig *copy = ph_rig_copy (self->open.rig);
  gboolean ok = change (copy, data, &edit.issues) && ph_check_rig (copy, &edit.issues);
  if (ok)
    {
      ph_rig_free (self->open.rig);
      self->open.rig = copy;
      ph_document_select_if_there (self, self->selected);
    }
  else
    ph_rig_free (copy);
  return finish_edit (&edit, ok, PH_TOUCHED_STRUCTURE, -1, error);
}

/* The clipboard. */

char *
ph_document_copy (PhDocument *self, const char *part_id)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self), NULL);
  size_t i;
  if (!find_part (self, part_id, &i, NULL))
    return NULL;
  PhFragment fragment = ph_edit_copy (self->open.rig, i);
  char *printed = ph_fragment_print (fragment.parts, fragment.n);
  char *text = g_strdup (printed);
  free (printed);
  ph_fragment_clear (&fragment);
  return text;
}

/* Whether the place `on` is one of `id`'s own. */
static gboolean
is_place_of (const char *on, const char *id)
{
  size_t n = strlen (id);
  return strncmp (on, id, n) == 0 && (on[n] == '\0' || on[n] == ':');
}

/* A free place for such a part, on `near_id` if there is one. (transfer full) */
static char *
place_near (const PhRig *rig, const PhPart *part, const char *near_id)
{
  char **places = ph_edit_places (rig, part->kind, -1);
  const char *chosen = places[0];
  for (size_t i = 0; near_id != NULL && places[i] != NULL; i++)
    if (is_place_of (places[i], near_id))
      {
        chosen = places[i];
        break;
      }
  char *place = g_strdup (chosen);
  ph_edit_places_free (places);
  return place;
}

gboolean
ph_document_paste (PhDocument *self, const char *text, const char *near_id, GError **error)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self) && text != NULL, FALSE);
  PhFragment fragment = { 0 };
  PhIssues issues = { 0 };
  if (ph_fragment_parse (text, strlen (text), &fragment.parts, &fragment.n, &issues) != PH_OK)
    {
      refuse (self, PH_DOCUMENT_ERROR_RIG, &issues, error);
      return FALSE;
    }
  ph_issues_clear (&issues);
  g_autofree char *on = place_near (self->open.rig, &fragment.parts[0], near_id);
  size_t index = 0;
  gboolean done = FALSE;
  if (on == NULL)
    g_set_error (error, PH_DOCUMENT_ERROR, PH_DOCUMENT_ERROR_REFUSED,
                 _ ("There is no free place for this: take something off first."));
  else
    {
      Edit edit = start_edit (self);
      done = ph_edit_paste (self->open.rig, &fragment, on, &index, &edit.issues);
      done = finish_added (&edit, done, index, error);
    }
  ph_fragment_clear (&fragment);
  return done;
}

/* The reference. */

void
ph_document_reference_swap (PhDocument *self)
{
  g_return_if_fail (PH_IS_DOCUMENT (self));
  if (self->reference.rig == NULL)
    return;
  ph_document_end_gesture (self);
  g_object_freeze_notify (G_OBJECT (self));
  ph_document_begin_gesture (self);
  PhStep *step = self->gesture;
  step->label = g_strdup (_ ("swapped with the reference"));
  step->with_reference = true;
  step->reference = ph_rig_copy (self->reference.rig);

  PhComputed stood = self->open;
  self->open = self->reference;
  self->reference = stood;
  if (self->reference.rig->name == NULL)
    self->reference.rig->name = ph_text_dup (self->title);
  ph_document_select_if_there (self, self->selected);
  ph_document_end_gesture (self);
  ph_document_tell (self, PH_TOUCHED_STRUCTURE);
  g_object_thaw_notify (G_OBJECT (self));
}
