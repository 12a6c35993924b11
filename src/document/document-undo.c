/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Gestures and steps. A step is a whole copy of the rig as it stood; undo exchanges it with what
 * stands now, so that the same record serves redo. A gesture costs one copy at its start and one
 * comparison at its end.
 */
#include <math.h>

#include "document/document-private.h"
#include "document/undo-label.h"
#include "model/fields.h"

void
ph_step_free (gpointer data)
{
  PhStep *step = data;
  if (step == NULL)
    return;
  ph_rig_free (step->rig);
  ph_rig_free (step->reference);
  g_free (step->label);
  g_free (step->selected_before);
  g_free (step->selected_after);
  g_free (step);
}

void
ph_document_forget_steps (PhDocument *self)
{
  g_ptr_array_set_size (self->undo, 0);
  g_ptr_array_set_size (self->redo, 0);
}

void
ph_document_push_step (PhDocument *self, PhStep *step)
{
  g_free (step->selected_after);
  step->selected_after = g_strdup (self->selected);
  g_ptr_array_set_size (self->redo, 0);
  g_ptr_array_add (self->undo, step);
  if (self->undo->len > PH_DOCUMENT_STEPS_MOST)
    g_ptr_array_remove_index (self->undo, 0);
}

/* Gestures. */

gboolean
ph_document_in_gesture (PhDocument *self)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self), FALSE);
  return self->gesture != NULL;
}

void
ph_document_begin_gesture (PhDocument *self)
{
  g_return_if_fail (PH_IS_DOCUMENT (self));
  g_return_if_fail (self->gesture == NULL);
  self->gesture = g_new0 (PhStep, 1);
  self->gesture->rig = ph_rig_copy (self->open.rig);
  self->gesture->selected_before = g_strdup (self->selected);
}

static gboolean
same_numbers (PhObject object, const void *a, const void *b)
{
  size_t n;
  const PhField *fields = ph_fields_of (object, &n);
  for (size_t i = 0; i < n; i++)
    for (int c = 0; c < ph_field_components (&fields[i]); c++)
      {
        double one = ph_field_number (&fields[i], a, c), two = ph_field_number (&fields[i], b, c);
        if (one != two && !(isnan (one) && isnan (two)))
          return FALSE;
      }
  return TRUE;
}

/* Numbers that went out and came back: what else that wrote (a key that was absent, a limit that
   was stretched) is put back too, so that it is no change at all. */
static void
put_back_beside (const PhRig *before, PhRig *after)
{
  for (size_t i = 0; i < after->n_parts && i < before->n_parts; i++)
    {
      const PhPart *a = &before->parts[i];
      PhPart *b = &after->parts[i];
      if (a->kind != b->kind || !same_numbers (PH_OBJECT_PART, a, b))
        continue;
      b->given = a->given;
      b->limit_swing = a->limit_swing;
      b->limit_lift = a->limit_lift;
      b->limit_count = a->limit_count;
    }
  if (same_numbers (PH_OBJECT_BOW, &before->bow, &after->bow))
    after->bow.given = before->bow.given;
  const PhArcher *a = &before->archer;
  PhArcher *b = &after->archer;
  if (a->bow_hand != b->bow_hand || !same_numbers (PH_OBJECT_ARCHER, a, b)
      || !same_numbers (PH_OBJECT_HAND, a, b))
    return;
  b->given = a->given;
  b->hand_given = a->hand_given;
  b->present = a->present;
  b->hand_present = a->hand_present;
}

void
ph_document_end_gesture (PhDocument *self)
{
  g_return_if_fail (PH_IS_DOCUMENT (self));
  PhStep *step = g_steal_pointer (&self->gesture);
  if (step == NULL)
    return;
  if (!step->with_reference && !step->beyond_numbers)
    put_back_beside (step->rig, self->open.rig);
  if (!step->with_reference && ph_rig_equal (step->rig, self->open.rig))
    {
      ph_step_free (step);
      ph_document_refresh (self);
      return;
    }
  if (step->label == NULL)
    step->label = ph_undo_label (step->rig, self->open.rig, self->units);
  g_object_freeze_notify (G_OBJECT (self));
  ph_document_push_step (self, step);
  ph_document_refresh (self);
  ph_document_keep_safe (self);
  g_object_thaw_notify (G_OBJECT (self));
}

static gboolean
same_structure (const PhRig *a, const PhRig *b)
{
  if (a->n_parts != b->n_parts)
    return FALSE;
  for (size_t i = 0; i < a->n_parts; i++)
    if (g_strcmp0 (a->parts[i].id, b->parts[i].id) != 0
        || g_strcmp0 (a->parts[i].on, b->parts[i].on) != 0 || a->parts[i].off != b->parts[i].off)
      return FALSE;
  return TRUE;
}

/* Exchanges the open rig (and the reference, where the step has it) with the step's. */
static PhTouched
exchange (PhDocument *self, PhStep *step)
{
  PhRig *stood = g_steal_pointer (&self->open.rig);
  PhTouched touched = same_structure (stood, step->rig) ? PH_TOUCHED_NUMBERS : PH_TOUCHED_STRUCTURE;
  ph_computed_take (&self->open, step->rig);
  step->rig = stood;
  if (step->with_reference)
    {
      PhRig *compared = g_steal_pointer (&self->reference.rig);
      ph_computed_take (&self->reference, step->reference);
      step->reference = compared;
    }
  return touched;
}

void
ph_document_cancel_gesture (PhDocument *self)
{
  g_return_if_fail (PH_IS_DOCUMENT (self));
  PhStep *step = g_steal_pointer (&self->gesture);
  if (step == NULL)
    return;
  if (!ph_rig_equal (step->rig, self->open.rig))
    {
      g_object_freeze_notify (G_OBJECT (self));
      PhTouched touched = exchange (self, step);
      ph_document_select_if_there (self, step->selected_before);
      ph_document_refresh (self);
      ph_document_tell (self, touched);
      g_object_thaw_notify (G_OBJECT (self));
    }
  ph_step_free (step);
}

/* Takes the last step of `from`, exchanges it and puts it on `to`. */
static gboolean
travel (PhDocument *self, GPtrArray *from, GPtrArray *to, gboolean back)
{
  ph_document_end_gesture (self);
  if (from->len == 0)
    return FALSE;
  PhStep *step = g_ptr_array_steal_index (from, from->len - 1);
  g_object_freeze_notify (G_OBJECT (self));
  PhTouched touched = exchange (self, step);
  g_ptr_array_add (to, step);
  g_autofree char *stood = g_strdup (self->selected);
  const char *wanted = back ? step->selected_before : step->selected_after;
  ph_document_select_if_there (self, wanted != NULL ? wanted : stood);
  if (self->selected == NULL) /* the part that was selected then is not there: what stands now */
    ph_document_select_if_there (self, stood);
  ph_document_refresh (self);
  ph_document_keep_safe (self);
  ph_document_tell (self, touched);
  g_object_thaw_notify (G_OBJECT (self));
  return TRUE;
}

gboolean
ph_document_undo (PhDocument *self)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self), FALSE);
  return travel (self, self->undo, self->redo, TRUE);
}

gboolean
ph_document_redo (PhDocument *self)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self), FALSE);
  return travel (self, self->redo, self->undo, FALSE);
}
