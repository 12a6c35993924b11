/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A press remembers what lies under it; the gesture opens once the pointer has gone far enough, and
 * until then it may still be a click. A step costs what any edit costs, and one more compilation of
 * the rig for the words.
 */
#include "widgets/view-drag.h"

#include <glib/gi18n.h>
#include <math.h>

#include "model/fields.h"
#include "scene/pick.h"
#include "widgets/bow-view-private.h"
#include "widgets/drag-words.h"
#include "widgets/step-effect.h"

#define TOUCH_REACH_PX 22.0f
#define POINTER_REACH_PX 14.0f
/* A stack that is seen shorter than this is not drawn out by its length. */
#define STACK_SEEN_LEAST 0.5f
#define STEP_COARSE 1.0
#define STEP_FINE 0.1

static const PhHold nothing = { PH_HOLD_NONE, -1 };

int
ph_view_turning_part (const PhRig *rig, int part)
{
  while (part >= 0 && rig->parts[part].kind != PH_PART_BAR
         && rig->parts[part].kind != PH_PART_BRACKET)
    {
      int host = ph_rig_host (rig, (gsize)part, NULL);
      if (host < 0)
        return rig->parts[part].kind == PH_PART_ACCESSORY ? -1 : part;
      part = host;
    }
  return part;
}

static int
handle_part (PhBowView *self, int part)
{
  PhHandle handle;
  int turns = ph_view_turning_part (ph_document_get_rig (self->document), part);
  const PhCompiled *compiled = ph_document_get_compiled (self->document);
  return turns >= 0 && ph_handle_of (compiled, (gsize)turns, &handle) ? turns : -1;
}

static gboolean
is_fitted_stack (PhBowView *self, int part)
{
  return part >= 0 && ph_document_get_rig (self->document)->parts[part].kind == PH_PART_WEIGHTS
         && ph_document_get_compiled (self->document)->piece_of_part[part] >= 0;
}

/* What is under a point. */

PhHold
ph_view_hold_at (PhBowView *self, double x, double y, gboolean touch)
{
  if (ph_document_get_flipped (self->document))
    return nothing;
  PhPixel at = { (float)x, (float)y };
  int selected = ph_document_get_selected_part (self->document);
  ph_bow_view_refresh (self);
  PhMarkHand hand = { .compiled = self->scene->compiled,
                      .turns = handle_part (self, selected),
                      .stack = is_fitted_stack (self, selected) ? selected : -1 };
  PhHold hold =
      ph_view_handle_at (&hand, &self->camera, at, touch ? TOUCH_REACH_PX : POINTER_REACH_PX);
  if (hold.kind != PH_HOLD_NONE)
    return hold;
  int part =
      ph_pick_part (self->outlines, self->list, at, touch ? TOUCH_REACH_PX : PH_PICK_SLACK_PX);
  if (part < 0)
    return nothing;
  if (part == hand.stack)
    return (PhHold){ PH_HOLD_STACK, part };
  int turns = handle_part (self, part);
  /* A finger moves the picture unless it is on what was tapped before. */
  if (touch && turns != hand.turns)
    return nothing;
  return turns >= 0 ? (PhHold){ PH_HOLD_TURN, turns } : nothing;
}

void
ph_view_drag_hover (PhBowView *self, PhHold hold)
{
  PhHold *hover = &self->drag.hover;
  if (hover->kind == hold.kind && (hold.kind == PH_HOLD_NONE || hover->part == hold.part))
    return;
  *hover = hold;
  ph_bow_view_remark (self);
}

/* Beginning. */

static void
take_limits (PhViewDrag *drag, const PhLimits *limits)
{
  const PhField *field = ph_field_find (PH_OBJECT_PART, drag->ref.key, NULL);
  g_assert (field != NULL);
  drag->lo = limits->given ? limits->lo : field->lo;
  drag->hi = limits->given ? limits->hi : field->hi;
}

/* The pointer went along a stack that is seen from its side: it gets longer or shorter. */
static gboolean
begin_stack (PhBowView *self, PhPixel pulled)
{
  PhViewDrag *drag = &self->drag;
  PhPixel way;
  float share;
  const PhRig *rig = ph_document_get_rig (self->document);
  int part = drag->held.part;
  if (drag->held.kind == PH_HOLD_TURN
      || !ph_handle_axis (ph_document_get_compiled (self->document), (gsize)part, &self->camera,
                          &way, &share))
    return FALSE;
  float along = fabsf (way.x * pulled.x + way.y * pulled.y);
  float across = fabsf (way.x * pulled.y - way.y * pulled.x);
  if (drag->held.kind == PH_HOLD_STACK && (share < STACK_SEEN_LEAST || along < across))
    return FALSE;
  drag->held.kind = PH_HOLD_STACK;
  drag->ref = ph_number_ref (PH_NUMBER_PART, rig->parts[part].id, "count", 0);
  drag->way = way;
  drag->px_per_step = PH_DRAG_DISC_PX;
  take_limits (drag, &rig->parts[part].limit_count);
  return TRUE;
}

static gboolean
begin_turn (PhBowView *self, PhPixel pulled)
{
  PhViewDrag *drag = &self->drag;
  PhHandle handle;
  const PhRig *rig = ph_document_get_rig (self->document);
  int part = handle_part (self, drag->held.part);
  if (part < 0 || !ph_handle_of (ph_document_get_compiled (self->document), (gsize)part, &handle))
    return FALSE;
  PhGrip grip = ph_handle_grip (&handle, &self->camera, pulled);
  gboolean swing = grip.turn == PH_TURN_SWING;
  const PhPart *turned = &rig->parts[part];
  drag->held = (PhHold){ PH_HOLD_TURN, part };
  drag->ref = ph_number_ref (PH_NUMBER_PART, turned->id, swing ? "swing_deg" : "lift_deg", 0);
  drag->turn = grip.turn;
  drag->way = grip.way;
  drag->px_per_step = PH_DRAG_STEP_PX;
  take_limits (drag, swing ? &turned->limit_swing : &turned->limit_lift);
  return TRUE;
}

static void
forget (PhViewDrag *drag)
{
  g_clear_pointer (&drag->from_report, ph_report_free);
  g_clear_pointer (&drag->from_compiled, ph_compiled_free);
  g_clear_pointer (&drag->from_rig, ph_rig_free);
  g_clear_pointer (&drag->value_said, g_free);
  g_clear_pointer (&drag->effect_said, g_free);
  ph_number_ref_clear (&drag->ref);
}

static void
say (PhBowView *self)
{
  PhViewDrag *drag = &self->drag;
  PhStepEffect effect;
  g_free (drag->value_said);
  drag->value_said =
      ph_drag_value_said (&drag->ref, ph_document_get_rig (self->document),
                          ph_document_get_compiled (self->document), drag->value, drag->fine);
  g_clear_pointer (&drag->effect_said, g_free);
  if (drag->value != drag->start
      && ph_step_effect_try (drag->from_rig, drag->from_report, drag->from_compiled, &drag->ref,
                             drag->value, &effect))
    {
      g_autofree char *moved = ph_step_effect_movement (&effect);
      /* Translators: what the whole drag did until now: "so far: bubble 1.1° to the left". Without
       * it that would be read as where the bubble stands. */
      drag->effect_said = g_strdup_printf (_ ("so far: %s"), moved);
    }
}

static gboolean
start (PhBowView *self, PhPixel pulled)
{
  PhViewDrag *drag = &self->drag;
  ph_bow_view_end_key_gesture (self);
  if (ph_document_in_gesture (self->document)
      || (!begin_stack (self, pulled) && !begin_turn (self, pulled)))
    return FALSE;
  const PhRig *rig = ph_document_get_rig (self->document);
  drag->start = drag->base = drag->value = ph_number_ref_read (&drag->ref, rig);
  drag->fine = FALSE;
  drag->moved = drag->last_x = drag->last_y = 0;
  drag->from_rig = ph_rig_copy (rig);
  drag->from_compiled = ph_compile_rig (drag->from_rig);
  drag->from_report = ph_report_new (drag->from_rig, drag->from_compiled);
  ph_document_select (self->document, drag->ref.part);
  ph_document_begin_gesture (self->document);
  drag->started = TRUE;
  say (self);
  return TRUE;
}

/* The way. */

static void
go (PhBowView *self, double dx, double dy, gboolean fine)
{
  PhViewDrag *drag = &self->drag;
  gboolean count = drag->held.kind == PH_HOLD_STACK;
  double step = fine && !count ? STEP_FINE : STEP_COARSE;
  double steps = ph_drag_steps (drag->way, dx - drag->last_x, dy - drag->last_y, drag->px_per_step);
  if (drag->fine != (fine && !count))
    {
      drag->fine = !drag->fine;
      drag->base = drag->value;
      drag->moved = 0;
    }
  /* No farther than the limits: the way back begins at once. */
  drag->moved = CLAMP (drag->moved + step * steps, fmin (drag->lo, drag->base) - drag->base,
                       fmax (drag->hi, drag->base) - drag->base);
  drag->last_x = dx;
  drag->last_y = dy;
  double to = ph_drag_value (drag->base, drag->moved / step, step, drag->lo, drag->hi);
  g_autoptr (GError) error = NULL;
  if (to != drag->value && ph_number_ref_write (&drag->ref, self->document, to, &error))
    {
      if (!count)
        ph_bow_scene_ease (self->document, GTK_WIDGET (self), &drag->ref, drag->value);
      drag->value = to;
    }
  else if (error)
    ph_bow_view_emit_refused (self, error->message);
  say (self);
  ph_bow_view_remark (self);
}

void
ph_view_drag_press (PhBowView *self, double x, double y, gboolean touch)
{
  PhViewDrag *drag = &self->drag;
  ph_view_drag_give_up (self);
  drag->held = ph_view_hold_at (self, x, y, touch);
  drag->touch = touch;
  drag->started = drag->over = FALSE;
  drag->press_x = x;
  drag->press_y = y;
}

gboolean
ph_view_drag_move (PhBowView *self, double dx, double dy, gboolean fine)
{
  PhViewDrag *drag = &self->drag;
  if (drag->held.kind == PH_HOLD_NONE || drag->over)
    return drag->over;
  if (!drag->started && hypot (dx, dy) < PH_DRAG_THRESHOLD_PX)
    return TRUE;
  if (!drag->started && !start (self, (PhPixel){ (float)dx, (float)dy }))
    drag->over = TRUE;
  /* An undo, or a rig that was opened meanwhile, has ended it. */
  if (drag->started && !ph_document_in_gesture (self->document))
    ph_view_drag_release (self);
  if (drag->started && !drag->over)
    go (self, dx, dy, fine);
  return TRUE;
}

/* The end. */

static void
end (PhBowView *self)
{
  PhViewDrag *drag = &self->drag;
  drag->started = FALSE;
  drag->over = TRUE;
  drag->held = nothing;
  forget (drag);
  ph_bow_view_remark (self);
}

void
ph_view_drag_release (PhBowView *self)
{
  PhViewDrag *drag = &self->drag;
  if (!drag->started)
    return;
  if (ph_document_in_gesture (self->document))
    ph_document_end_gesture (self->document);
  ph_bow_view_set_dragged (self, TRUE);
  const PhRig *rig = ph_document_get_rig (self->document);
  int part = ph_rig_find (rig, drag->ref.part);
  g_autofree char *said = part < 0
                              ? NULL
                              : g_strdup_printf ("%s, %s%s%s", ph_part_name (&rig->parts[part]),
                                                 drag->value_said, drag->effect_said ? ": " : "",
                                                 drag->effect_said ? drag->effect_said : "");
  end (self);
  ph_bow_view_tell (self, said);
}

void
ph_view_drag_give_up (PhBowView *self)
{
  PhViewDrag *drag = &self->drag;
  gboolean started = drag->started;
  if (!started)
    return;
  end (self);
  if (ph_document_in_gesture (self->document))
    ph_document_cancel_gesture (self->document);
}

gboolean
ph_view_drag_is_on (PhBowView *self)
{
  return self->drag.started;
}

/* What is shown. */

static const char *
hint_of (PhBowView *self)
{
  const PhViewDrag *drag = &self->drag;
  if (drag->started)
    return drag->touch ? NULL : ph_drag_keys_hint (drag->held.kind == PH_HOLD_TURN);
  /* In one place only, and not to somebody who has done it. */
  if (self->dragged || ph_document_in_gesture (self->document)
      || (self->view != PH_VIEW_SIDE && self->view != PH_VIEW_FREE))
    return NULL;
  const PhRig *rig = ph_document_get_rig (self->document);
  for (gsize i = 0; i < rig->n_parts; i++)
    if (rig->parts[i].kind == PH_PART_BAR && handle_part (self, (int)i) >= 0)
      return ph_drag_hint ();
  return NULL;
}

static void
show_drag (PhBowView *self, PhMarkHand *marks)
{
  const PhViewDrag *drag = &self->drag;
  const PhRig *rig = ph_document_get_rig (self->document);
  marks->held = TRUE;
  marks->hot = drag->held;
  marks->pointer =
      (PhPixel){ (float)(drag->press_x + drag->last_x), (float)(drag->press_y + drag->last_y) };
  marks->value = drag->value_said;
  marks->effect = drag->effect_said;
  marks->turning = drag->held.kind == PH_HOLD_TURN;
  if (!marks->turning || drag->held.part >= (int)rig->n_parts)
    return;
  const PhPart *part = &rig->parts[drag->held.part];
  const PhLimits *limits = drag->turn == PH_TURN_SWING ? &part->limit_swing : &part->limit_lift;
  marks->turn = drag->turn;
  marks->start_deg = drag->start;
  marks->value_deg = drag->value;
  marks->lo_deg = limits->given ? limits->lo : NAN;
  marks->hi_deg = limits->given ? limits->hi : NAN;
}

const PhMarkHand *
ph_view_drag_marks (PhBowView *self)
{
  PhViewDrag *drag = &self->drag;
  if (ph_document_get_flipped (self->document))
    return NULL;
  int n = (int)ph_document_get_rig (self->document)->n_parts;
  int selected = ph_document_get_selected_part (self->document);
  drag->marks = (PhMarkHand){ .compiled = self->scene->compiled,
                              .turns = handle_part (self, selected),
                              .stack = is_fitted_stack (self, selected) ? selected : -1,
                              .hot = drag->hover.part < n ? drag->hover : nothing,
                              .hint = hint_of (self) };
  if (drag->started)
    show_drag (self, &drag->marks);
  return &drag->marks;
}

void
ph_view_drag_clear (PhViewDrag *drag)
{
  forget (drag);
}
