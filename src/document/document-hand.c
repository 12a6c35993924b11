/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each edit is the model's, handed to ph_document_edit with its arguments in a struct.
 */
#include "document/document-hand.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "document/document-private.h"
#include "document/refusal.h"
#include "document/undo-label.h"
#include "model/fields.h"

/* A promise of the other side is kept to rounding; that of another rig is not. */
#define PROMISE_RAD 1e-9

static gboolean
refuse (GError **error, const char *text)
{
  g_set_error_literal (error, PH_DOCUMENT_ERROR, PH_DOCUMENT_ERROR_REFUSED, text);
  return FALSE;
}

/* Bubble checks. */

typedef struct
{
  size_t i;
  const PhReading *reading;
  gboolean aside;
} CheckEdit;

static gboolean
edit_check (PhDocument *self, PhDocumentEdit edit, CheckEdit *data, GError **error)
{
  if (data->i >= ph_document_get_rig (self)->archer.n_checks)
    return refuse (error, _ ("This bubble check is not in the rig any more."));
  return ph_document_edit (self, edit, data, error);
}

static bool
do_add_check (PhRig *rig, gpointer data, PhIssues *issues)
{
  return ph_edit_add_check (rig, data, NULL, issues);
}

gboolean
ph_document_add_check (PhDocument *self, const PhReading *reading, GError **error)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self) && reading != NULL, FALSE);
  return ph_document_edit (self, do_add_check, (gpointer)reading, error);
}

static bool
do_change_check (PhRig *rig, gpointer data, PhIssues *issues)
{
  const CheckEdit *edit = data;
  return ph_edit_change_check (rig, edit->i, edit->reading, issues);
}

gboolean
ph_document_change_check (PhDocument *self, guint i, const PhReading *reading, GError **error)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self) && reading != NULL, FALSE);
  return edit_check (self, do_change_check, &(CheckEdit){ i, reading, FALSE }, error);
}

static bool
do_set_aside (PhRig *rig, gpointer data, PhIssues *issues G_GNUC_UNUSED)
{
  const CheckEdit *edit = data;
  ph_edit_set_check_aside (rig, edit->i, edit->aside);
  return true;
}

gboolean
ph_document_set_check_aside (PhDocument *self, guint i, gboolean aside, GError **error)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self), FALSE);
  return edit_check (self, do_set_aside, &(CheckEdit){ i, NULL, aside }, error);
}

static bool
do_delete_check (PhRig *rig, gpointer data, PhIssues *issues G_GNUC_UNUSED)
{
  const CheckEdit *edit = data;
  ph_edit_delete_check (rig, edit->i);
  return true;
}

gboolean
ph_document_delete_check (PhDocument *self, guint i, GError **error)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self), FALSE);
  return edit_check (self, do_delete_check, &(CheckEdit){ i, NULL, FALSE }, error);
}

/* What may change, and how well it is known. */

typedef struct
{
  int part; /* −1: the bow */
  const char *key;
  double lo, hi;
  gboolean locked;
  PhSource source;
} PartEdit;

static gboolean
edit_part (PhDocument *self, const char *id, PhDocumentEdit edit, PartEdit *data, GError **error)
{
  const PhRig *rig = ph_document_get_rig (self);
  data->part = ph_rig_find (rig, id);
  if (data->part < 0)
    return refuse (error, _ ("This part is not in the rig any more."));
  g_return_val_if_fail (data->key == NULL
                            || ph_field_find_part (rig->parts[data->part].kind, data->key, NULL)
                                   != NULL,
                        FALSE);
  return ph_document_edit (self, edit, data, error);
}

static bool
do_set_locked (PhRig *rig, gpointer data, PhIssues *issues G_GNUC_UNUSED)
{
  const PartEdit *edit = data;
  ph_edit_set_locked (rig, (size_t)edit->part, edit->locked);
  return true;
}

gboolean
ph_document_set_locked (PhDocument *self, const char *part_id, gboolean locked, GError **error)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self) && part_id != NULL, FALSE);
  return edit_part (self, part_id, do_set_locked, &(PartEdit){ .locked = locked }, error);
}

static bool
do_set_limits (PhRig *rig, gpointer data, PhIssues *issues)
{
  const PartEdit *edit = data;
  return ph_edit_set_limits (rig, (size_t)edit->part, edit->key, edit->lo, edit->hi, issues);
}

gboolean
ph_document_set_limits (PhDocument *self, const char *part_id, const char *key, double lo,
                        double hi, GError **error)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self) && part_id != NULL && key != NULL, FALSE);
  return edit_part (self, part_id, do_set_limits, &(PartEdit){ .key = key, .lo = lo, .hi = hi },
                    error);
}

static bool
do_clear_limits (PhRig *rig, gpointer data, PhIssues *issues G_GNUC_UNUSED)
{
  const PartEdit *edit = data;
  ph_edit_clear_limits (rig, (size_t)edit->part, edit->key);
  return true;
}

gboolean
ph_document_clear_limits (PhDocument *self, const char *part_id, const char *key, GError **error)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self) && part_id != NULL && key != NULL, FALSE);
  return edit_part (self, part_id, do_clear_limits, &(PartEdit){ .key = key }, error);
}

gboolean
ph_document_set_wanted_bubble (PhDocument *self, double deg, GError **error)
{
  return ph_document_set_archer_number (self, "wanted_bubble_deg", deg, error);
}

static bool
do_set_source (PhRig *rig, gpointer data, PhIssues *issues G_GNUC_UNUSED)
{
  const PartEdit *edit = data;
  ph_edit_set_source (rig, edit->part, edit->source);
  return true;
}

gboolean
ph_document_set_source (PhDocument *self, const char *part_id, PhSource source, GError **error)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self) && part_id != NULL, FALSE);
  PartEdit edit = { .part = -1, .source = source };
  if (g_str_equal (part_id, "bow"))
    return ph_document_edit (self, do_set_source, &edit, error);
  return edit_part (self, part_id, do_set_source, &edit, error);
}

/* What it proposes. */

PhPartStep *
ph_document_steps (PhDocument *self, size_t *n)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self) && n != NULL, NULL);
  return ph_part_steps_of (ph_document_get_rig (self), n);
}

PhPartAnswers
ph_document_level (PhDocument *self, const PhLevelQuestion *question)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self) && question != NULL, (PhPartAnswers){ 0 });
  return ph_part_answers_of (ph_document_get_rig (self), question);
}

static gboolean
is_mirror (const PhPartAnswer *answer)
{
  return answer->n_changes == 1 && g_str_equal (answer->changes[0].key, PH_KEY_MIRROR);
}

/* Mirroring has no number to start from: it is of this rig where it makes what was promised. */
static gboolean
mirror_fits (const PhRig *rig, const PhPartAnswer *answer)
{
  const PhPart *part = &rig->parts[answer->changes[0].part];
  if ((part->kind != PH_PART_BAR && part->kind != PH_PART_BRACKET)
      || !ph_rig_is_fitted (rig, (size_t)answer->changes[0].part))
    return FALSE;
  PhRig *copy = ph_rig_copy (rig);
  gboolean fits = TRUE; /* what is refused is refused with its own reason */
  if (ph_edit_apply_answer (copy, answer, NULL))
    {
      PhCompiled *compiled = ph_compile_rig (copy);
      PhReport *report = ph_report_new (copy, compiled);
      fits = fabs (report->bubble_rad - answer->outcome.bubble_rad) <= PROMISE_RAD;
      ph_report_free (report);
      ph_compiled_free (compiled);
    }
  ph_rig_free (copy);
  return fits;
}

/* Whether the rig still has what the answer starts from. */
static gboolean
still_fits (const PhRig *rig, const PhPartAnswer *answer)
{
  for (int c = 0; c < answer->n_changes; c++)
    {
      const PhPartChange *change = &answer->changes[c];
      if (change->part < 0 || (size_t)change->part >= rig->n_parts)
        return FALSE;
      if (is_mirror (answer))
        return mirror_fits (rig, answer);
      const PhPart *part = &rig->parts[change->part];
      const PhField *field = ph_field_find_part (part->kind, change->key, NULL);
      if (field == NULL || ph_field_number (field, part, 0) != change->from)
        return FALSE;
    }
  return TRUE;
}

typedef struct
{
  const PhPartAnswer *answer;
  PhUnits units;
  GString *label;
} Application;

/* What one change is called as a step of its own. (transfer full) */
static char *
step_label (const PhRig *before, const PhRig *after, const PhPartChange *change, PhUnits units)
{
  if (!g_str_equal (change->key, PH_KEY_MIRROR))
    return ph_undo_label (before, after, units);
  g_autofree char *name = ph_name_inside (ph_part_name (&after->parts[change->part]));
  /* Translators: an undo step: "side mount to the other side" of the bow. */
  return g_strdup_printf (_ ("%s to the other side"), name);
}

/* One change after the other, each named as its own step would be. */
static bool
do_apply (PhRig *rig, gpointer data, PhIssues *issues)
{
  Application *application = data;
  for (int c = 0; c < application->answer->n_changes; c++)
    {
      const PhPartChange *change = &application->answer->changes[c];
      PhRig *before = ph_rig_copy (rig);
      bool done = ph_edit_apply_change (rig, change, issues);
      g_autofree char *step = done ? step_label (before, rig, change, application->units) : NULL;
      ph_rig_free (before);
      if (!done)
        return false;
      g_string_append_printf (application->label, "%s%s", c > 0 ? ", " : "", step);
    }
  return true;
}

gboolean
ph_document_apply_answer (PhDocument *self, const PhPartAnswer *answer, GError **error)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self) && answer != NULL, FALSE);
  if (!still_fits (ph_document_get_rig (self), answer))
    return refuse (error, _ ("The rig has changed since this was worked out: ask again."));
  g_autoptr (GString) label = g_string_new (NULL);
  Application application = { answer, ph_document_get_units (self), label };
  gboolean own_gesture = !ph_document_in_gesture (self);
  g_object_freeze_notify (G_OBJECT (self));
  if (own_gesture)
    ph_document_begin_gesture (self);
  gboolean done = ph_document_edit (self, do_apply, &application, error);
  if (done && own_gesture)
    self->gesture->label =
        is_mirror (answer) ? g_strdup (label->str)
                           /* Translators: an undo step; the rest is as "back bar out 20° → 26°". */
                           : g_strdup_printf (_ ("level: %s"), label->str);
  if (own_gesture)
    ph_document_end_gesture (self);
  g_object_thaw_notify (G_OBJECT (self));
  return done;
}

char *
ph_document_answer_obstacle (PhDocument *self, const PhPartAnswer *answer)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self) && answer != NULL, NULL);
  const PhRig *open = ph_document_get_rig (self);
  if (!still_fits (open, answer))
    return g_strdup (_ ("The rig has changed since this was worked out: ask again."));
  PhIssues issues = { 0 };
  PhRig *copy = ph_rig_copy (open);
  char *text = NULL;
  if (!ph_edit_apply_answer (copy, answer, &issues))
    text = ph_refusal_of_issue (open, &issues.items[0], ph_document_get_units (self));
  ph_issues_clear (&issues);
  ph_rig_free (copy);
  return text;
}

/* The open rig with the answer in it; null where it does not fit. */
static PhRig *
rig_with_answer (const PhRig *open, const PhPartAnswer *answer)
{
  if (answer == NULL || !still_fits (open, answer))
    return NULL;
  PhIssues issues = { 0 };
  PhRig *rig = ph_rig_copy (open);
  if (!ph_edit_apply_answer (rig, answer, &issues))
    g_clear_pointer (&rig, ph_rig_free);
  ph_issues_clear (&issues);
  return rig;
}

void
ph_document_preview_answer (PhDocument *self, const PhPartAnswer *answer)
{
  g_return_if_fail (PH_IS_DOCUMENT (self));
  PhRig *rig = rig_with_answer (ph_document_get_rig (self), answer);
  if (rig == NULL && self->preview.rig == NULL)
    return;
  ph_computed_take (&self->preview, rig);
  ph_document_notify (self, PROP_FLIPPED);
}

PhPartChecks
ph_document_next_checks (PhDocument *self)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self), (PhPartChecks){ 0 });
  return ph_part_checks_of (ph_document_get_rig (self));
}
