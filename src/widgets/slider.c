/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * GtkScale with its own idea of steps. The toolkit's scroll handling is switched off, its drag
 * reports are rounded to steps before they become a value, and press and release are watched from
 * outside, since the scale's own gestures claim the pointer. The fill from 0 is drawn over the
 * trough up to the knob, because the toolkit can only fill from an end.
 */
#include "widgets/slider.h"

#include <math.h>

struct _PhSlider
{
  GtkScale parent_instance;

  double lo, hi, step, fine;
  gboolean setting;  /* a value from outside, not a move */
  gboolean dragging; /* between press and release */
};

enum
{
  DRAG_BEGIN,
  DRAG_END,
  MOVED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (PhSlider, ph_slider, GTK_TYPE_SCALE)

/* Of a step: a value this near to a multiple is that multiple. */
#define NEAR 1e-6

double
ph_slider_next (double value, double step, int steps)
{
  double at = value / step;
  double nearest = round (at);
  if (fabs (at - nearest) < NEAR)
    return (nearest + steps) * step;
  return (steps > 0 ? floor (at) + steps : ceil (at) + steps) * step;
}

static double
clamp_to_range (PhSlider *self, double value)
{
  GtkAdjustment *adjustment = gtk_range_get_adjustment (GTK_RANGE (self));
  return CLAMP (value, gtk_adjustment_get_lower (adjustment),
                gtk_adjustment_get_upper (adjustment));
}

static void
move_to (PhSlider *self, double value)
{
  double now = gtk_range_get_value (GTK_RANGE (self)), to = clamp_to_range (self, value);
  if (to == now)
    return;
  self->setting = TRUE;
  gtk_range_set_value (GTK_RANGE (self), to);
  self->setting = FALSE;
  g_signal_emit (self, signals[MOVED], 0, to);
}

static gboolean
shift_is_held (PhSlider *self)
{
  if (gtk_widget_has_css_class (GTK_WIDGET (self), "fine-tune"))
    return TRUE; /* the toolkit's own, after a long press */
  GdkSeat *seat = gdk_display_get_default_seat (gtk_widget_get_display (GTK_WIDGET (self)));
  GdkDevice *pointer = seat ? gdk_seat_get_pointer (seat) : NULL;
  return pointer && (gdk_device_get_modifier_state (pointer) & GDK_SHIFT_MASK);
}

static int
steps_of_scroll (GtkScrollType scroll)
{
  switch ((int)scroll)
    {
    case GTK_SCROLL_STEP_FORWARD:
      return 1;
    case GTK_SCROLL_STEP_BACKWARD:
      return -1;
    case GTK_SCROLL_PAGE_FORWARD:
      return 5;
    case GTK_SCROLL_PAGE_BACKWARD:
      return -5;
    default:
      return 0;
    }
}

/* The toolkit proposes a value: rounded here, and never passed on. */
static gboolean
ph_slider_change_value (GtkRange *range, GtkScrollType scroll, double value)
{
  PhSlider *self = PH_SLIDER (range);
  int steps = steps_of_scroll (scroll);
  double now = gtk_range_get_value (range);
  if (steps)
    move_to (self, ph_slider_next (now, self->step, steps));
  else
    {
      double step = scroll == GTK_SCROLL_JUMP && shift_is_held (self) ? self->fine : self->step;
      double clamped = clamp_to_range (self, value);
      move_to (self, round (clamped / step) * step);
    }
  return TRUE;
}

/* Set by a tool for the disabled rather than by hand or by set_value. */
static void
ph_slider_value_changed (GtkRange *range)
{
  PhSlider *self = PH_SLIDER (range);
  if (!self->setting)
    g_signal_emit (self, signals[MOVED], 0, gtk_range_get_value (range));
}

static gboolean
key_cb (GtkEventControllerKey *keys G_GNUC_UNUSED, guint keyval, guint code G_GNUC_UNUSED,
        GdkModifierType state, PhSlider *self)
{
  int way = 0;
  gboolean inverted = gtk_range_get_inverted (GTK_RANGE (self));
  if (keyval == GDK_KEY_Left || keyval == GDK_KEY_KP_Left)
    way = inverted ? 1 : -1;
  else if (keyval == GDK_KEY_Right || keyval == GDK_KEY_KP_Right)
    way = inverted ? -1 : 1;
  else if (keyval == GDK_KEY_Up || keyval == GDK_KEY_KP_Up || keyval == GDK_KEY_plus
           || keyval == GDK_KEY_KP_Add)
    way = 1;
  else if (keyval == GDK_KEY_Down || keyval == GDK_KEY_KP_Down || keyval == GDK_KEY_minus
           || keyval == GDK_KEY_KP_Subtract)
    way = -1;
  if (!way || (state & GDK_ALT_MASK))
    return FALSE;
  double step = state & GDK_CONTROL_MASK ? self->fine : self->step;
  int times = (state & GDK_SHIFT_MASK) && way && keyval != GDK_KEY_plus ? 5 : 1;
  move_to (self, ph_slider_next (gtk_range_get_value (GTK_RANGE (self)), step, way * times));
  return TRUE;
}

static void
drag_begin (PhSlider *self)
{
  if (self->dragging)
    return;
  self->dragging = TRUE;
  g_signal_emit (self, signals[DRAG_BEGIN], 0);
}

static void
drag_end (PhSlider *self)
{
  if (!self->dragging)
    return;
  self->dragging = FALSE;
  g_signal_emit (self, signals[DRAG_END], 0);
}

/* The release reaches the scale's own gesture after this; the last move has come before. */
static gboolean
event_cb (GtkEventControllerLegacy *legacy G_GNUC_UNUSED, GdkEvent *event, PhSlider *self)
{
  switch ((int)gdk_event_get_event_type (event))
    {
    case GDK_BUTTON_PRESS:
      if (gdk_button_event_get_button (event) == GDK_BUTTON_PRIMARY)
        drag_begin (self);
      break;
    case GDK_TOUCH_BEGIN:
      drag_begin (self);
      break;
    case GDK_BUTTON_RELEASE:
    case GDK_TOUCH_END:
    case GDK_TOUCH_CANCEL:
    case GDK_GRAB_BROKEN:
      drag_end (self);
      break;
    default:
      break;
    }
  return FALSE;
}

static void
stop_wheel (PhSlider *self)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (GTK_WIDGET (self));
  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);
      if (GTK_IS_EVENT_CONTROLLER_SCROLL (controller))
        gtk_event_controller_set_propagation_phase (controller, GTK_PHASE_NONE);
    }
}

/* Where a value lies on the trough, in the slider's coordinates. */
static double
position_of (PhSlider *self, const graphene_rect_t *trough, double value)
{
  GtkAdjustment *adjustment = gtk_range_get_adjustment (GTK_RANGE (self));
  double lo = gtk_adjustment_get_lower (adjustment), hi = gtk_adjustment_get_upper (adjustment);
  double part = hi > lo ? (value - lo) / (hi - lo) : 0;
  if (gtk_range_get_inverted (GTK_RANGE (self)))
    part = 1 - part;
  return trough->origin.x + part * trough->size.width;
}

static GtkWidget *
child_named (GtkWidget *parent, const char *name)
{
  GtkWidget *child = gtk_widget_get_first_child (parent);
  while (child && g_strcmp0 (gtk_widget_get_css_name (child), name) != 0)
    child = gtk_widget_get_next_sibling (child);
  return child;
}

static void
ph_slider_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  PhSlider *self = PH_SLIDER (widget);
  GTK_WIDGET_CLASS (ph_slider_parent_class)->snapshot (widget, snapshot);
  if (gtk_scale_get_has_origin (GTK_SCALE (self)))
    return;
  GtkWidget *trough = child_named (widget, "trough");
  GtkWidget *knob = trough ? child_named (trough, "slider") : NULL;
  graphene_rect_t at, knob_at;
  GdkRGBA accent;
  if (!knob || !gtk_widget_compute_bounds (trough, widget, &at)
      || !gtk_widget_compute_bounds (knob, widget, &knob_at)
      || !gtk_style_context_lookup_color (gtk_widget_get_style_context (widget), "ph_accent",
                                          &accent))
    return;
  double zero = position_of (self, &at, 0);
  double left = knob_at.origin.x, right = left + knob_at.size.width;
  double from = zero < left ? zero : right, to = zero < left ? left : zero;
  if (to <= from || (zero >= left && zero <= right))
    return;
  if (!gtk_widget_is_sensitive (widget))
    accent.alpha *= 0.4f;
  gtk_snapshot_append_color (
      snapshot, &accent,
      &GRAPHENE_RECT_INIT ((float)from, at.origin.y, (float)(to - from), at.size.height));
}

static void
ph_slider_unmap (GtkWidget *widget)
{
  drag_end (PH_SLIDER (widget));
  GTK_WIDGET_CLASS (ph_slider_parent_class)->unmap (widget);
}

static void
ph_slider_class_init (PhSliderClass *klass)
{
  GType type = G_TYPE_FROM_CLASS (klass);
  GTK_WIDGET_CLASS (klass)->snapshot = ph_slider_snapshot;
  GTK_WIDGET_CLASS (klass)->unmap = ph_slider_unmap;
  GTK_RANGE_CLASS (klass)->change_value = ph_slider_change_value;
  GTK_RANGE_CLASS (klass)->value_changed = ph_slider_value_changed;
  signals[DRAG_BEGIN] =
      g_signal_new ("drag-begin", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[DRAG_END] =
      g_signal_new ("drag-end", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[MOVED] = g_signal_new ("moved", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                                 1, G_TYPE_DOUBLE);
}

static void
ph_slider_init (PhSlider *self)
{
  self->step = self->fine = 1;
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_HORIZONTAL);
  gtk_range_set_adjustment (GTK_RANGE (self), gtk_adjustment_new (0, 0, 1, 1, 5, 0));
  gtk_scale_set_draw_value (GTK_SCALE (self), FALSE);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_add_css_class (GTK_WIDGET (self), "part-slider");
  stop_wheel (self);

  GtkEventController *keys = gtk_event_controller_key_new ();
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  GtkEventController *legacy = gtk_event_controller_legacy_new ();
  gtk_event_controller_set_propagation_phase (legacy, GTK_PHASE_CAPTURE);
  g_signal_connect (legacy, "event", G_CALLBACK (event_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), legacy);
}

GtkWidget *
ph_slider_new (void)
{
  return g_object_new (PH_TYPE_SLIDER, NULL);
}

void
ph_slider_set_range (PhSlider *self, double lo, double hi, double step, double fine)
{
  g_return_if_fail (PH_IS_SLIDER (self) && lo <= hi && step > 0 && fine > 0);
  self->lo = lo;
  self->hi = hi;
  self->step = step;
  self->fine = fine;
  gtk_scale_set_has_origin (GTK_SCALE (self), lo >= 0 || hi <= 0);
  ph_slider_set_value (self, gtk_range_get_value (GTK_RANGE (self)));
}

void
ph_slider_set_value (PhSlider *self, double value)
{
  g_return_if_fail (PH_IS_SLIDER (self));
  self->setting = TRUE;
  gtk_adjustment_configure (gtk_range_get_adjustment (GTK_RANGE (self)), value,
                            fmin (self->lo, value), fmax (self->hi, value), self->step,
                            5 * self->step, 0);
  self->setting = FALSE;
}

void
ph_slider_set_label (PhSlider *self, const char *label)
{
  g_return_if_fail (PH_IS_SLIDER (self));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
}

void
ph_slider_set_value_text (PhSlider *self, const char *text)
{
  g_return_if_fail (PH_IS_SLIDER (self));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT, text,
                                  -1);
}
