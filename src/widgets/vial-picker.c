/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Lines stand half a mark to either side of the middle and then a mark apart, so that a centred
 * bubble stands between two of them as on the sight. A dozen strokes of cairo.
 */
#include "widgets/vial-picker.h"

#include <math.h>

#include "widgets/say.h"

#define HEIGHT 76
#define WIDTH_LEAST 260
#define MARGIN 0.7 /* beyond the last mark, so that the bubble there is seen whole [marks] */
#define HALF 0.42  /* half of the bubble's length [marks] */

struct _PhVialPicker
{
  GtkWidget parent_instance;
  double marks;
  char *name; /* owned */
};

enum
{
  PICKED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (PhVialPicker, ph_vial_picker, GTK_TYPE_WIDGET)

static double
px_per_mark (PhVialPicker *self)
{
  return gtk_widget_get_width (GTK_WIDGET (self)) / 2.0 / (PH_VIAL_MARKS + MARGIN);
}

static void
tell_value (PhVialPicker *self)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_VALUE_MIN,
                                  -PH_VIAL_MARKS, GTK_ACCESSIBLE_PROPERTY_VALUE_MAX, PH_VIAL_MARKS,
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_NOW,
                                  isnan (self->marks) ? 0.0 : self->marks, -1);
}

void
ph_vial_picker_set_marks (PhVialPicker *self, double marks)
{
  g_return_if_fail (PH_IS_VIAL_PICKER (self));
  self->marks = isnan (marks) ? marks : CLAMP (marks, -PH_VIAL_MARKS, PH_VIAL_MARKS);
  tell_value (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

double
ph_vial_picker_get_marks (PhVialPicker *self)
{
  g_return_val_if_fail (PH_IS_VIAL_PICKER (self), NAN);
  return self->marks;
}

void
ph_vial_picker_set_text (PhVialPicker *self, const char *text)
{
  g_return_if_fail (PH_IS_VIAL_PICKER (self));
  g_autofree char *said = g_strdup_printf ("%s: %s", self->name, text);
  ph_say (GTK_WIDGET (self), said);
}

static void
pick (PhVialPicker *self, double marks)
{
  double round_marks = round (marks / PH_VIAL_MARKS_STEP) * PH_VIAL_MARKS_STEP;
  ph_vial_picker_set_marks (self, round_marks);
  g_signal_emit (self, signals[PICKED], 0, self->marks);
}

static void
pick_at (PhVialPicker *self, double x)
{
  double middle = gtk_widget_get_width (GTK_WIDGET (self)) / 2.0;
  pick (self, (middle - x) / px_per_mark (self));
}

static void
drag_begin_cb (PhVialPicker *self, double x, double y, GtkGestureDrag *drag)
{
  (void)y;
  (void)drag;
  gtk_widget_grab_focus (GTK_WIDGET (self));
  pick_at (self, x);
}

static void
drag_update_cb (PhVialPicker *self, double dx, double dy, GtkGestureDrag *drag)
{
  double x, y;
  (void)dy;
  gtk_gesture_drag_get_start_point (drag, &x, &y);
  pick_at (self, x + dx);
}

static gboolean
key_cb (PhVialPicker *self, guint keyval, guint code, GdkModifierType state)
{
  double step = state & GDK_SHIFT_MASK ? 5 * PH_VIAL_MARKS_STEP : PH_VIAL_MARKS_STEP;
  double now = isnan (self->marks) ? 0 : self->marks;
  (void)code;
  switch (keyval)
    {
    case GDK_KEY_Left:
    case GDK_KEY_KP_Left:
      pick (self, now + step);
      return TRUE;
    case GDK_KEY_Right:
    case GDK_KEY_KP_Right:
      pick (self, now - step);
      return TRUE;
    case GDK_KEY_Home:
      pick (self, 0);
      return TRUE;
    default:
      return FALSE;
    }
}

/* Drawing. */

static void
set_named (PhVialPicker *self, cairo_t *cr, const char *name, double alpha)
{
  GdkRGBA color;
  GtkStyleContext *style = gtk_widget_get_style_context (GTK_WIDGET (self));
  if (!gtk_style_context_lookup_color (style, name, &color))
    gtk_style_context_get_color (style, &color);
  cairo_set_source_rgba (cr, (double)color.red, (double)color.green, (double)color.blue,
                         (double)color.alpha * alpha);
}

static void
glass_path (cairo_t *cr, double width)
{
  double r = HEIGHT / 2.0 - 2.0;
  cairo_new_sub_path (cr);
  cairo_arc (cr, width - 2.0 - r, HEIGHT / 2.0, r, -G_PI / 2, G_PI / 2);
  cairo_arc (cr, 2.0 + r, HEIGHT / 2.0, r, G_PI / 2, 1.5 * G_PI);
  cairo_close_path (cr);
}

static void
draw_lines (PhVialPicker *self, cairo_t *cr, double width)
{
  set_named (self, cr, "ph_vial_ink", 0.85);
  for (int i = 0; i < (int)PH_VIAL_MARKS; i++)
    for (int side = -1; side <= 1; side += 2)
      {
        double x = floor (width / 2.0 + side * (i + 0.5) * px_per_mark (self)) + 0.5;
        cairo_set_line_width (cr, i == 0 ? 3.0 : 1.0);
        cairo_move_to (cr, x, 3.0);
        cairo_line_to (cr, x, HEIGHT - 3.0);
        cairo_stroke (cr);
      }
}

static void
draw_bubble (PhVialPicker *self, cairo_t *cr, double width)
{
  gboolean read = !isnan (self->marks);
  double x = width / 2.0 - (read ? self->marks : 0) * px_per_mark (self);
  cairo_save (cr);
  cairo_translate (cr, x, HEIGHT / 2.0);
  cairo_scale (cr, HALF * px_per_mark (self), 21.0);
  cairo_new_sub_path (cr);
  cairo_arc (cr, 0, 0, 1, 0, 2 * G_PI);
  cairo_restore (cr);
  set_named (self, cr, "ph_vial_bubble", read ? 1.0 : 0.3);
  cairo_fill_preserve (cr);
  set_named (self, cr, read ? "ph_vial_on_bubble" : "ph_vial_ink", 1.0);
  cairo_set_line_width (cr, 2.5);
  if (!read)
    cairo_set_dash (cr, (double[]){ 7.0, 4.0 }, 2, 0.0);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0.0);
}

static void
ph_vial_picker_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  PhVialPicker *self = PH_VIAL_PICKER (widget);
  double width = gtk_widget_get_width (widget);
  cairo_t *cr = gtk_snapshot_append_cairo (
      snapshot, &GRAPHENE_RECT_INIT (0.0f, 0.0f, (float)width, (float)HEIGHT));
  glass_path (cr, width);
  set_named (self, cr, "ph_vial_liquid", 1.0);
  cairo_fill (cr);
  draw_lines (self, cr, width);
  draw_bubble (self, cr, width);
  glass_path (cr, width);
  set_named (self, cr, "ph_vial_ink", 0.75);
  cairo_set_line_width (cr, 1.5);
  cairo_stroke (cr);
  cairo_destroy (cr);
}

static void
ph_vial_picker_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                        int *natural, int *minimum_baseline, int *natural_baseline)
{
  (void)widget;
  (void)for_size;
  *minimum_baseline = *natural_baseline = -1;
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? WIDTH_LEAST : HEIGHT;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 2 * WIDTH_LEAST : HEIGHT;
}

static void
ph_vial_picker_finalize (GObject *object)
{
  g_free (PH_VIAL_PICKER (object)->name);
  G_OBJECT_CLASS (ph_vial_picker_parent_class)->finalize (object);
}

static void
ph_vial_picker_class_init (PhVialPickerClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = ph_vial_picker_finalize;
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  widget_class->snapshot = ph_vial_picker_snapshot;
  widget_class->measure = ph_vial_picker_measure;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_SLIDER);
  gtk_widget_class_set_css_name (widget_class, "vialpicker");
  signals[PICKED] = g_signal_new ("picked", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                  NULL, NULL, G_TYPE_NONE, 1, G_TYPE_DOUBLE);
}

static void
ph_vial_picker_init (PhVialPicker *self)
{
  GtkGesture *drag = gtk_gesture_drag_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();
  self->marks = NAN;
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  g_signal_connect_swapped (drag, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect_swapped (drag, "drag-update", G_CALLBACK (drag_update_cb), self);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drag));
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  tell_value (self);
}

GtkWidget *
ph_vial_picker_new (const char *name)
{
  PhVialPicker *self = g_object_new (PH_TYPE_VIAL_PICKER, NULL);
  self->name = g_strdup (name);
  ph_say (GTK_WIDGET (self), name);
  return GTK_WIDGET (self);
}
