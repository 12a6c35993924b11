/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The bow view under a pointer and under fingers. A press on a part drags it, elsewhere it moves
 * the picture; a press that goes nowhere is a click, which selects, and again in the same place
 * selects what is hidden behind. The toolkit reports a press to several gestures at once: the drag
 * decides.
 */
#include "widgets/bow-view-private.h"

#include <glib/gi18n.h>
#include <math.h>

#include "scene/pick.h"

#define TOUCH_SLACK_PX 16.0f
#define ZOOM_STEP 1.15
#define PAN_STEP_PX 40.0
/* Parts under one point that a walk in depth knows. */
#define DEPTH_MOST 16

/* A reference that is only looked at cannot be picked: its indices are not the open rig's. */
static int
part_near (PhBowView *self, double x, double y, float slack_px)
{
  if (ph_document_get_flipped (self->document))
    return PH_PART_NONE;
  ph_bow_view_refresh (self);
  return ph_pick_part (self->outlines, self->list, (PhPixel){ (float)x, (float)y }, slack_px);
}

int
ph_bow_view_part_at (PhBowView *self, double x, double y)
{
  g_return_val_if_fail (PH_IS_BOW_VIEW (self), PH_PART_NONE);
  return part_near (self, x, y, PH_PICK_SLACK_PX);
}

/* Selecting. */

static int
selected_index (PhBowView *self)
{
  int part = ph_document_get_selected_part (self->document);
  return part < 0 && ph_document_get_selected (self->document) ? PH_PART_BOW : part;
}

/* What is behind the selected part there; after the last the first again. */
static int
part_behind (PhBowView *self, double x, double y)
{
  int parts[DEPTH_MOST], selected = selected_index (self);
  if (ph_document_get_flipped (self->document))
    return PH_PART_NONE;
  ph_bow_view_refresh (self);
  gsize n = ph_pick_parts (self->outlines, self->list, (PhPixel){ (float)x, (float)y }, parts,
                           DEPTH_MOST);
  for (gsize i = 0; i < n; i++)
    if (parts[i] == selected && ph_document_get_selected (self->document))
      return parts[(i + 1) % n];
  return n ? parts[0] : PH_PART_NONE;
}

static void
select_part (PhBowView *self, int part)
{
  const PhRig *rig = ph_document_get_rig (self->document);
  const char *id = part >= 0 ? rig->parts[part].id : part == PH_PART_BOW ? "bow" : NULL;
  ph_document_select (self->document, id);
}

/* A second click of a double click stays with what the first one selected. */
static void
clicked (PhBowView *self, double x, double y, gboolean touch, gboolean deeper, guint32 time)
{
  int double_ms = 400;
  g_object_get (gtk_widget_get_settings (GTK_WIDGET (self)), "gtk-double-click-time", &double_ms,
                NULL);
  gboolean again = hypot (x - self->click_x, y - self->click_y) < PH_DRAG_THRESHOLD_PX
                   && ph_document_get_selected (self->document);
  gboolean quick = again && time - self->click_time < (guint32)double_ms;
  self->click_x = x;
  self->click_y = y;
  self->click_time = time;
  if (deeper || (again && !quick && part_behind (self, x, y) != PH_PART_NONE))
    select_part (self, part_behind (self, x, y));
  else if (!quick)
    select_part (self, part_near (self, x, y, touch ? TOUCH_SLACK_PX : PH_PICK_SLACK_PX));
}

/* Hovering. */

/* Where the end would go: up and down or to and fro. */
static const char *
turning_cursor (PhBowView *self, int part)
{
  PhHandle handle;
  if (!ph_handle_of (ph_document_get_compiled (self->document), (gsize)part, &handle))
    return "pointer";
  PhGrip grip = ph_handle_grip (&handle, &self->camera, (PhPixel){ 0.0f, 0.0f });
  if (self->view == PH_VIEW_FREE)
    return "grab";
  return fabsf (grip.way.x) > fabsf (grip.way.y) ? "ew-resize" : "ns-resize";
}

static void
point_at (PhBowView *self, double x, double y)
{
  PhHold hold = ph_view_hold_at (self, x, y, FALSE);
  const char *cursor = NULL;
  if (hold.kind == PH_HOLD_TURN)
    cursor = turning_cursor (self, hold.part);
  else if (hold.kind == PH_HOLD_STACK)
    cursor = "grab";
  else if (hold.kind != PH_HOLD_NONE || ph_bow_view_part_at (self, x, y) != PH_PART_NONE)
    cursor = "pointer";
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), cursor);
  ph_view_drag_hover (self, hold);
}

static void
motion_cb (PhBowView *self, double x, double y, GtkEventController *controller)
{
  self->pointer_x = x;
  self->pointer_y = y;
  GdkModifierType state = gtk_event_controller_get_current_event_state (controller);
  if (!(state & (GDK_BUTTON1_MASK | GDK_BUTTON2_MASK | GDK_BUTTON3_MASK)))
    point_at (self, x, y);
}

static void
leave_cb (PhBowView *self)
{
  if (!ph_view_drag_is_on (self))
    ph_view_drag_hover (self, (PhHold){ PH_HOLD_NONE, -1 });
}

static gboolean
query_tooltip_cb (PhBowView *self, int x, int y, gboolean keyboard, GtkTooltip *tooltip)
{
  const PhRig *rig = ph_document_get_rig (self->document);
  if (ph_view_drag_is_on (self))
    return FALSE;
  PhHold hold = ph_view_hold_at (self, x, y, FALSE);
  if (!keyboard && (hold.kind == PH_HOLD_LESS || hold.kind == PH_HOLD_MORE))
    {
      gtk_tooltip_set_text (tooltip, hold.kind == PH_HOLD_LESS ? _ ("One weight less")
                                                               : _ ("One weight more"));
      return TRUE;
    }
  int part =
      keyboard ? ph_document_get_selected_part (self->document) : ph_bow_view_part_at (self, x, y);
  if (part == PH_PART_NONE && hold.kind == PH_HOLD_TURN)
    part = hold.part;
  if (part < 0 && (keyboard || part == PH_PART_NONE))
    return FALSE;
  gtk_tooltip_set_text (tooltip, part >= 0 ? ph_part_name (&rig->parts[part]) : _ ("Bow"));
  return TRUE;
}

/* Dragging. */

static gboolean
is_touch (GtkGesture *gesture)
{
  GdkEvent *event =
      gtk_gesture_get_last_event (gesture, gtk_gesture_get_last_updated_sequence (gesture));
  GdkDevice *device = event ? gdk_event_get_device (event) : NULL;
  return device && gdk_device_get_source (device) == GDK_SOURCE_TOUCHSCREEN;
}

static GdkModifierType
state_of (GtkGesture *gesture)
{
  return gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (gesture));
}

static void
drag_begin_cb (PhBowView *self, double x, double y, GtkGesture *gesture)
{
  guint button = gtk_gesture_single_get_current_button (GTK_GESTURE_SINGLE (gesture));
  if (button == GDK_BUTTON_SECONDARY)
    {
      gtk_gesture_set_state (gesture, GTK_EVENT_SEQUENCE_DENIED);
      return;
    }
  gtk_widget_grab_focus (GTK_WIDGET (self));
  self->dragged_x = self->dragged_y = 0;
  ph_view_drag_press (self, x, y, is_touch (gesture));
  if (button == GDK_BUTTON_MIDDLE)
    self->drag.held.kind = PH_HOLD_NONE;
}

static void
pan_by (PhBowView *self, double dx, double dy)
{
  ph_bow_view_emit_pan (self, dx - self->dragged_x, dy - self->dragged_y);
  self->dragged_x = dx;
  self->dragged_y = dy;
}

static void
drag_update_cb (PhBowView *self, double dx, double dy, GtkGesture *gesture)
{
  gboolean fine = (state_of (gesture) & GDK_SHIFT_MASK) != 0;
  if (ph_view_drag_move (self, dx, dy, fine))
    {
      if (ph_view_drag_is_on (self))
        {
          gtk_gesture_set_state (gesture, GTK_EVENT_SEQUENCE_CLAIMED);
          gtk_widget_set_cursor_from_name (GTK_WIDGET (self), "grabbing");
        }
      return;
    }
  if (self->dragged_x == 0 && self->dragged_y == 0 && hypot (dx, dy) < PH_DRAG_THRESHOLD_PX)
    return;
  gtk_gesture_set_state (gesture, GTK_EVENT_SEQUENCE_CLAIMED);
  pan_by (self, dx, dy);
}

/* − and + are pressed like buttons. */
static gboolean
press_handle (PhBowView *self)
{
  PhHoldKind kind = self->drag.held.kind;
  if (kind != PH_HOLD_LESS && kind != PH_HOLD_MORE)
    return FALSE;
  ph_bow_view_end_key_gesture (self);
  if (!ph_bow_view_add_weights (self, kind == PH_HOLD_MORE ? 1 : -1))
    gtk_widget_error_bell (GTK_WIDGET (self));
  ph_bow_view_end_key_gesture (self);
  return TRUE;
}

void
ph_bow_view_tap (PhBowView *self, double x, double y, gboolean touch, gboolean deeper, guint32 time)
{
  if (!press_handle (self))
    clicked (self, x, y, touch, deeper, time);
}

static void
drag_end_cb (PhBowView *self, double dx, double dy, GtkGesture *gesture)
{
  PhViewDrag *drag = &self->drag;
  guint button = gtk_gesture_single_get_current_button (GTK_GESTURE_SINGLE (gesture));
  gboolean click = button != GDK_BUTTON_MIDDLE && !drag->started && !drag->over
                   && self->dragged_x == 0 && self->dragged_y == 0
                   && hypot (dx, dy) < PH_DRAG_THRESHOLD_PX;
  if (drag->started)
    {
      double x = drag->press_x + dx, y = drag->press_y + dy;
      ph_view_drag_release (self);
      if (!drag->touch)
        point_at (self, x, y);
    }
  else if (click)
    ph_bow_view_tap (self, drag->press_x, drag->press_y, is_touch (gesture),
                     (state_of (gesture) & GDK_ALT_MASK) != 0,
                     gtk_event_controller_get_current_event_time (GTK_EVENT_CONTROLLER (gesture)));
  drag->held.kind = PH_HOLD_NONE;
}

/* The toolkit took the press away (another gesture, the pointer's grab): as if given up. */
static void
drag_cancel_cb (PhBowView *self)
{
  ph_view_drag_give_up (self);
  self->drag.over = TRUE;
}

/* A second button during a drag gives it up; no gesture of the toolkit's tells of it. */
static gboolean
event_cb (PhBowView *self, GdkEvent *event)
{
  if (gdk_event_get_event_type (event) != GDK_BUTTON_PRESS || !ph_view_drag_is_on (self)
      || gdk_button_event_get_button (event) == GDK_BUTTON_PRIMARY)
    return FALSE;
  ph_view_drag_give_up (self);
  return TRUE;
}

static void
released_cb (PhBowView *self, int n, double x, double y)
{
  const char *selected = ph_document_get_selected (self->document);
  if (n == 2 && selected && ph_bow_view_part_at (self, x, y) != PH_PART_NONE)
    ph_bow_view_emit_activated (self, selected);
}

/* Zooming. */

static gboolean
scroll_cb (PhBowView *self, double dx, double dy, GtkEventController *controller)
{
  GdkModifierType state = gtk_event_controller_get_current_event_state (controller);
  if (ph_view_drag_is_on (self))
    return TRUE;
  if (state & GDK_SHIFT_MASK)
    ph_bow_view_emit_pan (self, -dy * PAN_STEP_PX, 0);
  else if (dy != 0)
    ph_bow_view_emit_zoom (self, pow (ZOOM_STEP, -dy), self->pointer_x, self->pointer_y);
  if (dx != 0)
    ph_bow_view_emit_pan (self, -dx * PAN_STEP_PX, 0);
  return TRUE;
}

/* Two fingers: whatever one of them held is given up; their middle moves the picture. */
void
ph_bow_view_pinch_begin (PhBowView *self, double x, double y)
{
  ph_view_drag_give_up (self);
  self->drag.over = TRUE;
  self->pinch_scale = 1.0;
  self->pinch_x = x;
  self->pinch_y = y;
}

void
ph_bow_view_pinch_to (PhBowView *self, double scale, double x, double y)
{
  if (!(scale > 0))
    return;
  if (x != self->pinch_x || y != self->pinch_y)
    ph_bow_view_emit_pan (self, x - self->pinch_x, y - self->pinch_y);
  if (scale != self->pinch_scale)
    ph_bow_view_emit_zoom (self, scale / self->pinch_scale, x, y);
  self->pinch_scale = scale;
  self->pinch_x = x;
  self->pinch_y = y;
}

static void
pinch_begin_cb (PhBowView *self, GdkEventSequence *sequence, GtkGesture *gesture)
{
  double x = 0, y = 0;
  (void)sequence;
  gtk_gesture_get_bounding_box_center (gesture, &x, &y);
  ph_bow_view_pinch_begin (self, x, y);
}

static void
pinch_update_cb (PhBowView *self, GdkEventSequence *sequence, GtkGesture *gesture)
{
  double x, y;
  (void)sequence;
  if (gtk_gesture_get_bounding_box_center (gesture, &x, &y))
    ph_bow_view_pinch_to (self, gtk_gesture_zoom_get_scale_delta (GTK_GESTURE_ZOOM (gesture)), x,
                          y);
}

/* The menu of a part: what the list's menu has that needs no row of its own. */

static GMenuModel *
part_menu (void)
{
  GMenu *menu = g_menu_new ();
  g_menu_append (menu, _ ("Duplicate"), "win.duplicate");
  g_menu_append (menu, _ ("Copy"), "win.copy");
  g_menu_append (menu, _ ("Paste"), "win.paste");
  g_menu_append (menu, _ ("Fitted"), "win.toggle-fitted");
  g_menu_append (menu, _ ("Remove"), "win.remove");
  return G_MENU_MODEL (menu);
}

static void
drop_menu_cb (PhBowView *self)
{
  g_clear_pointer (&self->menu, gtk_widget_unparent);
}

static void
open_menu (PhBowView *self, double x, double y, gboolean touch)
{
  int part = part_near (self, x, y, touch ? TOUCH_SLACK_PX : PH_PICK_SLACK_PX);
  if (part == PH_PART_NONE)
    return;
  select_part (self, part);
  if (!self->menu)
    {
      g_autoptr (GMenuModel) model = part_menu ();
      self->menu = gtk_popover_menu_new_from_model (model);
      gtk_popover_set_has_arrow (GTK_POPOVER (self->menu), FALSE);
      gtk_widget_set_halign (self->menu, GTK_ALIGN_START);
      gtk_widget_set_parent (self->menu, GTK_WIDGET (self));
    }
  gtk_popover_set_pointing_to (GTK_POPOVER (self->menu), &(GdkRectangle){ (int)x, (int)y, 1, 1 });
  gtk_popover_popup (GTK_POPOVER (self->menu));
}

static void
menu_click_cb (PhBowView *self, int n, double x, double y)
{
  (void)n;
  open_menu (self, x, y, FALSE);
}

/* The finger is still down: when it comes up, that is no tap. */
static void
long_press_cb (PhBowView *self, double x, double y)
{
  if (ph_view_drag_is_on (self))
    return;
  self->drag.over = TRUE;
  open_menu (self, x, y, TRUE);
}

/* Controllers. */

static void
add_drag (PhBowView *self)
{
  GtkGesture *drag = gtk_gesture_drag_new ();
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (drag), 0);
  g_signal_connect_swapped (drag, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect_swapped (drag, "drag-update", G_CALLBACK (drag_update_cb), self);
  g_signal_connect_swapped (drag, "drag-end", G_CALLBACK (drag_end_cb), self);
  g_signal_connect_swapped (drag, "cancel", G_CALLBACK (drag_cancel_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drag));

  GtkEventController *events = gtk_event_controller_legacy_new ();
  gtk_event_controller_set_propagation_phase (events, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (events, "event", G_CALLBACK (event_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), events);
}

static void
add_clicks (PhBowView *self)
{
  GtkGesture *click = gtk_gesture_click_new (), *menu = gtk_gesture_click_new ();
  GtkGesture *press = gtk_gesture_long_press_new ();
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (menu), GDK_BUTTON_SECONDARY);
  gtk_gesture_single_set_touch_only (GTK_GESTURE_SINGLE (press), TRUE);
  g_signal_connect_swapped (click, "released", G_CALLBACK (released_cb), self);
  g_signal_connect_swapped (menu, "pressed", G_CALLBACK (menu_click_cb), self);
  g_signal_connect_swapped (press, "pressed", G_CALLBACK (long_press_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (menu));
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (press));
}

static void
add_zoom_and_hover (PhBowView *self)
{
  GtkGesture *pinch = gtk_gesture_zoom_new ();
  GtkEventController *scroll =
      gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_BOTH_AXES);
  GtkEventController *motion = gtk_event_controller_motion_new ();
  g_signal_connect_swapped (pinch, "begin", G_CALLBACK (pinch_begin_cb), self);
  g_signal_connect_swapped (pinch, "update", G_CALLBACK (pinch_update_cb), self);
  g_signal_connect_swapped (scroll, "scroll", G_CALLBACK (scroll_cb), self);
  g_signal_connect_swapped (motion, "motion", G_CALLBACK (motion_cb), self);
  g_signal_connect_swapped (motion, "leave", G_CALLBACK (leave_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (pinch));
  gtk_widget_add_controller (GTK_WIDGET (self), scroll);
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
}

void
ph_bow_view_init_pointer (PhBowView *self)
{
  self->drag.held = self->drag.hover = (PhHold){ PH_HOLD_NONE, -1 };
  self->click_x = self->click_y = -100;
  add_drag (self);
  add_clicks (self);
  add_zoom_and_hover (self);
  gtk_widget_set_has_tooltip (GTK_WIDGET (self), TRUE);
  g_signal_connect (self, "query-tooltip", G_CALLBACK (query_tooltip_cb), NULL);
  g_signal_connect (self, "destroy", G_CALLBACK (drop_menu_cb), NULL);
}
