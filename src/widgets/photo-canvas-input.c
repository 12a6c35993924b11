/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The pointer, fingers and keys of the canvas. A press on a point holds it, elsewhere it moves the
 * picture; a press that goes nowhere sets the next point.
 */
#include <math.h>

#include "widgets/photo-canvas-private.h"
#include "widgets/photo-mark.h"

#define GRAB_PX 12.0
#define CLICK_PX 4.0
#define PAN_STEP_PX 40.0
/* From the rim, a point that the keys have moved [px]. */
#define SHOW_MARGIN_PX 30.0
/* Between two points that Return has set without moving the first. */
#define BESIDE_PX 60.0

/* Points. */

static PhPhotoPoint
point_at (PhPhotoCanvas *self, double picture_x, double picture_y, double seen_at_scale)
{
  double right = ph_photo_picture_get_width (self->picture);
  double bottom = ph_photo_picture_get_height (self->picture);
  return (PhPhotoPoint){ CLAMP (picture_x, 0, right), CLAMP (picture_y, 0, bottom),
                         ph_photo_click_sd (seen_at_scale) };
}

static int
mark_near (PhPhotoCanvas *self, double x, double y)
{
  const PhPhotoClicks *clicks = ph_photo_canvas_clicks (self);
  double nearest = GRAB_PX;
  int found = -1;
  for (guint i = 0; i < clicks->n; i++)
    {
      double mx, my;
      ph_photo_place_to_frame (&self->place, clicks->clicks[i].at.x, clicks->clicks[i].at.y, &mx,
                               &my);
      double way = hypot (mx - x, my - y);
      if (way <= nearest)
        {
          nearest = way;
          found = (int)i;
        }
    }
  return found;
}

static gboolean
is_in_picture (PhPhotoCanvas *self, double x, double y)
{
  return x >= 0 && y >= 0 && x <= ph_photo_picture_get_width (self->picture)
         && y <= ph_photo_picture_get_height (self->picture);
}

/* FALSE: none is wanted, or not there. */
static gboolean
set_next (PhPhotoCanvas *self, double x, double y)
{
  double px, py;
  ph_photo_place_to_picture (&self->place, x, y, &px, &py);
  if (!is_in_picture (self, px, py))
    return FALSE;
  int i = ph_photo_clicks_add (ph_photo_canvas_clicks (self),
                               point_at (self, px, py, self->place.scale));
  if (i < 0)
    return FALSE;
  ph_photo_canvas_clicks_changed (self);
  gtk_widget_grab_focus (self->marks[i]);
  return TRUE;
}

/* The pointer's button. */

static void
drag_begin_cb (PhPhotoCanvas *self, double x, double y, GtkGesture *drag)
{
  guint button = gtk_gesture_single_get_current_button (GTK_GESTURE_SINGLE (drag));
  if (!self->picture || button == GDK_BUTTON_SECONDARY)
    {
      gtk_gesture_set_state (drag, GTK_EVENT_SEQUENCE_DENIED);
      return;
    }
  self->held = button == GDK_BUTTON_MIDDLE ? -1 : mark_near (self, x, y);
  self->panning = button == GDK_BUTTON_MIDDLE;
  self->panned_x = self->panned_y = 0;
  if (self->held < 0)
    {
      gtk_widget_grab_focus (GTK_WIDGET (self));
      return;
    }
  PhPhotoPoint at = ph_photo_canvas_clicks (self)->clicks[self->held].at;
  self->from_x = at.x;
  self->from_y = at.y;
  gtk_widget_grab_focus (self->marks[self->held]);
  ph_photo_canvas_show_loupe (self, at.x, at.y);
}

static void
drag_held (PhPhotoCanvas *self, double dx, double dy)
{
  double scale = self->place.scale;
  PhPhotoPoint at = point_at (self, self->from_x + dx / scale, self->from_y + dy / scale, scale);
  ph_photo_clicks_move (ph_photo_canvas_clicks (self), (guint)self->held, at);
  ph_photo_canvas_clicks_changed (self);
  ph_photo_canvas_show_loupe (self, at.x, at.y);
}

static void
drag_update_cb (PhPhotoCanvas *self, double dx, double dy)
{
  self->panning = self->panning || hypot (dx, dy) > CLICK_PX;
  if (!self->picture || !self->panning)
    return;
  if (self->held >= 0)
    {
      drag_held (self, dx, dy);
      return;
    }
  PhPhotoFrame frame = ph_photo_canvas_frame (self);
  ph_photo_canvas_hide_loupe (self);
  ph_photo_canvas_set_place (
      self, ph_photo_place_pan (&self->place, &frame, dx - self->panned_x, dy - self->panned_y));
  self->panned_x = dx;
  self->panned_y = dy;
}

static void
drag_end_cb (PhPhotoCanvas *self, double dx, double dy, GtkGesture *drag)
{
  double x = 0, y = 0;
  int held = self->held;
  gboolean moved = self->panning;
  (void)dx;
  (void)dy;
  self->held = -1;
  self->panning = FALSE;
  if (!self->picture || moved)
    return;
  const PhPhotoClicks *clicks = ph_photo_canvas_clicks (self);
  gtk_gesture_drag_get_start_point (GTK_GESTURE_DRAG (drag), &x, &y);
  /* A bubble may well end where a line of its vial stands; two points of one line never do. */
  if (held < 0 || clicks->clicks[held].on != ph_photo_clicks_next (clicks))
    set_next (self, x, y);
}

static void
drag_cancel_cb (PhPhotoCanvas *self)
{
  self->held = -1;
  self->panning = FALSE;
}

/* Hovering, zooming. */

static void
hover (PhPhotoCanvas *self)
{
  double px, py, x = self->pointer_x, y = self->pointer_y;
  if (!self->picture || self->held >= 0 || self->panning)
    return;
  ph_photo_place_to_picture (&self->place, x, y, &px, &py);
  gboolean near = mark_near (self, x, y) >= 0;
  gboolean wanted = ph_photo_clicks_next (ph_photo_canvas_clicks (self)) != PH_PHOTO_NOTHING;
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), near ? "move" : wanted ? "crosshair" : NULL);
  if ((near || wanted) && is_in_picture (self, px, py))
    ph_photo_canvas_show_loupe (self, px, py);
  else
    ph_photo_canvas_hide_loupe (self);
}

static void
motion_cb (PhPhotoCanvas *self, double x, double y)
{
  /* The toolkit tells of a pointer at rest, too, whenever a point below it moves. */
  if (x == self->pointer_x && y == self->pointer_y)
    return;
  self->pointer_x = x;
  self->pointer_y = y;
  hover (self);
}

static void
leave_cb (PhPhotoCanvas *self)
{
  self->pointer_x = self->pointer_y = -1;
  if (self->held < 0)
    ph_photo_canvas_hide_loupe (self);
}

static void
zoom_about (PhPhotoCanvas *self, double factor, double x, double y)
{
  PhPhotoFrame frame = ph_photo_canvas_frame (self);
  ph_photo_canvas_set_place (self, ph_photo_place_zoom (&self->place, &frame, factor, x, y));
}

static gboolean
scroll_cb (PhPhotoCanvas *self, double dx, double dy)
{
  (void)dx;
  if (!self->picture || self->held >= 0)
    return self->picture != NULL;
  zoom_about (self, pow (PH_PHOTO_ZOOM_STEP, -dy), self->pointer_x, self->pointer_y);
  hover (self);
  return TRUE;
}

/* Two fingers: whatever the first of them held is given up, and it sets no point. */
static void
pinch_begin_cb (PhPhotoCanvas *self)
{
  self->held = -1;
  self->panning = TRUE;
  self->pinch = 1;
}

static void
pinch_update_cb (PhPhotoCanvas *self, double factor, GtkGesture *pinch)
{
  double x, y;
  if (!self->picture || !gtk_gesture_get_bounding_box_center (pinch, &x, &y))
    return;
  zoom_about (self, factor / self->pinch, x, y);
  self->pinch = factor;
}

/* Keys. */

static gboolean
arrow_of (guint keyval, double *dx, double *dy)
{
  *dx = keyval == GDK_KEY_Right || keyval == GDK_KEY_KP_Right ? 1
        : keyval == GDK_KEY_Left || keyval == GDK_KEY_KP_Left ? -1
                                                              : 0;
  *dy = keyval == GDK_KEY_Down || keyval == GDK_KEY_KP_Down ? 1
        : keyval == GDK_KEY_Up || keyval == GDK_KEY_KP_Up   ? -1
                                                            : 0;
  return *dx != 0 || *dy != 0;
}

static void
nudge (PhPhotoCanvas *self, int i, double dx, double dy)
{
  PhPhotoPoint at = ph_photo_canvas_clicks (self)->clicks[i].at;
  PhPhotoFrame frame = ph_photo_canvas_frame (self);
  /* Whoever moves by keys looks through the loupe. */
  at = point_at (self, at.x + dx, at.y + dy, ph_photo_canvas_loupe_scale (self));
  ph_photo_clicks_move (ph_photo_canvas_clicks (self), (guint)i, at);
  self->place = ph_photo_place_show (&self->place, &frame, at.x, at.y, SHOW_MARGIN_PX);
  ph_photo_canvas_clicks_changed (self);
  ph_photo_canvas_show_loupe (self, at.x, at.y);
}

static gboolean
set_in_middle (PhPhotoCanvas *self)
{
  double x = gtk_widget_get_width (GTK_WIDGET (self)) / 2.0;
  double y = gtk_widget_get_height (GTK_WIDGET (self)) / 2.0;
  for (int i = 0; i < PH_PHOTO_CLICKS_MOST && mark_near (self, x, y) >= 0; i++)
    y += BESIDE_PX;
  if (!set_next (self, x, y))
    return FALSE;
  PhPhotoPoint at = ph_photo_canvas_clicks (self)->clicks[ph_photo_canvas_clicks (self)->n - 1].at;
  ph_photo_canvas_show_loupe (self, at.x, at.y);
  return TRUE;
}

static void
zoom_by_key (PhPhotoCanvas *self, double factor)
{
  int i = ph_photo_canvas_focused (self);
  if (i < 0)
    {
      ph_photo_canvas_zoom (self, factor);
      return;
    }
  double x, y;
  PhPhotoPoint at = ph_photo_canvas_clicks (self)->clicks[i].at;
  ph_photo_place_to_frame (&self->place, at.x, at.y, &x, &y);
  zoom_about (self, factor, x, y);
}

static gboolean
command_key (PhPhotoCanvas *self, guint keyval)
{
  switch (keyval)
    {
    case GDK_KEY_plus:
    case GDK_KEY_equal:
    case GDK_KEY_KP_Add:
      zoom_by_key (self, PH_PHOTO_ZOOM_STEP);
      return TRUE;
    case GDK_KEY_minus:
    case GDK_KEY_KP_Subtract:
      zoom_by_key (self, 1 / PH_PHOTO_ZOOM_STEP);
      return TRUE;
    case GDK_KEY_0:
    case GDK_KEY_KP_0:
      ph_photo_canvas_zoom (self, 0);
      return TRUE;
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
    case GDK_KEY_space:
      return set_in_middle (self);
    case GDK_KEY_BackSpace:
    case GDK_KEY_Delete:
    case GDK_KEY_Escape:
      return ph_photo_canvas_undo (self);
    default:
      return FALSE;
    }
}

static gboolean
key_cb (PhPhotoCanvas *self, guint keyval, guint code, GdkModifierType state)
{
  double dx, dy;
  int i = ph_photo_canvas_focused (self);
  (void)code;
  if (!self->picture || self->held >= 0)
    return FALSE;
  if (!arrow_of (keyval, &dx, &dy))
    return command_key (self, keyval);
  PhPhotoFrame frame = ph_photo_canvas_frame (self);
  if (i >= 0 && !(state & GDK_CONTROL_MASK))
    nudge (self, i, state & GDK_SHIFT_MASK ? 10 * dx : dx, state & GDK_SHIFT_MASK ? 10 * dy : dy);
  else
    ph_photo_canvas_set_place (
        self, ph_photo_place_pan (&self->place, &frame, -PAN_STEP_PX * dx, -PAN_STEP_PX * dy));
  return TRUE;
}

void
ph_photo_canvas_init_input (PhPhotoCanvas *self)
{
  GtkGesture *drag = gtk_gesture_drag_new (), *pinch = gtk_gesture_zoom_new ();
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *scroll =
      gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_VERTICAL);
  GtkEventController *keys = gtk_event_controller_key_new ();
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (drag), 0);
  g_signal_connect_swapped (drag, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect_swapped (drag, "drag-update", G_CALLBACK (drag_update_cb), self);
  g_signal_connect_swapped (drag, "drag-end", G_CALLBACK (drag_end_cb), self);
  g_signal_connect_swapped (drag, "cancel", G_CALLBACK (drag_cancel_cb), self);
  g_signal_connect_swapped (pinch, "begin", G_CALLBACK (pinch_begin_cb), self);
  g_signal_connect_swapped (pinch, "scale-changed", G_CALLBACK (pinch_update_cb), self);
  g_signal_connect_swapped (motion, "enter", G_CALLBACK (motion_cb), self);
  g_signal_connect_swapped (motion, "motion", G_CALLBACK (motion_cb), self);
  g_signal_connect_swapped (motion, "leave", G_CALLBACK (leave_cb), self);
  g_signal_connect_swapped (scroll, "scroll", G_CALLBACK (scroll_cb), self);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), self);
  GtkEventController *const all[] = { GTK_EVENT_CONTROLLER (drag), GTK_EVENT_CONTROLLER (pinch),
                                      motion, scroll, keys };
  for (gsize i = 0; i < G_N_ELEMENTS (all); i++)
    gtk_widget_add_controller (GTK_WIDGET (self), all[i]);
}
