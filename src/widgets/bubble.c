/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One small cairo area, drawn anew only when what it shows changes; while easing, once a frame for
 * 120 ms. Colours come from the style sheet (ph_vial_…), so that themes can differ.
 */
#include "widgets/bubble.h"

#include <math.h>

#include "widgets/say.h"
#include "widgets/vial.h"

#define EASE_MICROSECONDS 120000
#define WIDTH_LEAST 280
#define WIDTH_NATURAL 460

struct _PhBubble
{
  GtkWidget parent_instance;

  /* owned */
  PangoLayout *layout;

  PhVial vial;
  gboolean shown; /* ph_bubble_show was called */
  double ease_from_rad;
  gint64 ease_start; /* frame time; 0: not begun */
  guint ease_tick;   /* 0: not easing */
};

G_DEFINE_FINAL_TYPE (PhBubble, ph_bubble, GTK_TYPE_WIDGET)

static GdkRGBA
look_up (GtkWidget *widget, const char *name)
{
  GdkRGBA color;
  GtkStyleContext *style = gtk_widget_get_style_context (widget);
  if (!gtk_style_context_lookup_color (style, name, &color))
    gtk_style_context_get_color (style, &color);
  return color;
}

static int
numbers_height (PhBubble *self)
{
  int height;
  pango_layout_set_text (self->layout, "0°", -1);
  pango_layout_get_pixel_size (self->layout, NULL, &height);
  return height + 2;
}

static void
ph_bubble_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                   int *natural, int *minimum_baseline, int *natural_baseline)
{
  PhBubble *self = PH_BUBBLE (widget);
  (void)for_size;
  *minimum_baseline = *natural_baseline = -1;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = WIDTH_LEAST;
      *natural = WIDTH_NATURAL;
      return;
    }
  *minimum = *natural = PH_VIAL_HEIGHT + numbers_height (self);
}

static void
ph_bubble_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  PhBubble *self = PH_BUBBLE (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  if (!self->shown || width <= 0)
    return;
  PhVialColors colors = {
    .ink = look_up (widget, "ph_vial_ink"),
    .soft_ink = look_up (widget, "ph_vial_soft_ink"),
    .glass = look_up (widget, "ph_vial_glass"),
    .liquid = look_up (widget, "ph_vial_liquid"),
    .bubble = look_up (widget, "ph_vial_bubble"),
    .on_bubble = look_up (widget, "ph_vial_on_bubble"),
    .warning = look_up (widget, "ph_vial_warning"),
  };
  cairo_t *cr = gtk_snapshot_append_cairo (
      snapshot, &GRAPHENE_RECT_INIT (0.0f, 0.0f, (float)width, (float)height));
  ph_vial_draw (cr, &self->vial, &colors, self->layout, width);
  cairo_destroy (cr);
}

static void
stop_easing (PhBubble *self)
{
  if (self->ease_tick)
    gtk_widget_remove_tick_callback (GTK_WIDGET (self), self->ease_tick);
  self->ease_tick = 0;
}

static gboolean
ease_cb (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  PhBubble *self = PH_BUBBLE (widget);
  gint64 now = gdk_frame_clock_get_frame_time (clock);
  (void)data;
  if (self->ease_start == 0)
    self->ease_start = now;
  double part = MIN ((double)(now - self->ease_start) / EASE_MICROSECONDS, 1.0);
  double eased = 1.0 - (1.0 - part) * (1.0 - part) * (1.0 - part);
  double to = self->vial.settle.tilt_rad;
  self->vial.shown_rad = self->ease_from_rad + (to - self->ease_from_rad) * eased;
  gtk_widget_queue_draw (widget);
  if (part < 1.0)
    return G_SOURCE_CONTINUE;
  self->ease_tick = 0;
  return G_SOURCE_REMOVE;
}

static gboolean
may_ease (PhBubble *self, double from_rad)
{
  gboolean enabled;
  GtkWidget *widget = GTK_WIDGET (self);
  g_object_get (gtk_widget_get_settings (widget), "gtk-enable-animations", &enabled, NULL);
  return enabled && gtk_widget_get_mapped (widget) && !isnan (from_rad)
         && !isnan (self->vial.settle.tilt_rad) && from_rad != self->vial.settle.tilt_rad;
}

void
ph_bubble_show (PhBubble *self, const PhSettle *settle, double wanted_rad, gboolean ease,
                const char *spoken)
{
  g_return_if_fail (PH_IS_BUBBLE (self) && settle != NULL);
  double from = self->shown ? self->vial.shown_rad : NAN;
  stop_easing (self);
  self->vial = (PhVial){ *settle, settle->tilt_rad, wanted_rad };
  self->shown = TRUE;
  if (ease && may_ease (self, from))
    {
      self->vial.shown_rad = self->ease_from_rad = from;
      self->ease_start = 0;
      self->ease_tick = gtk_widget_add_tick_callback (GTK_WIDGET (self), ease_cb, NULL, NULL);
    }
  ph_say (GTK_WIDGET (self), spoken);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
renew_layout (PhBubble *self)
{
  g_clear_object (&self->layout);
  self->layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), NULL);
}

/* Another theme or text size. */
static void
ph_bubble_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (ph_bubble_parent_class)->css_changed (widget, change);
  renew_layout (PH_BUBBLE (widget));
  gtk_widget_queue_resize (widget);
}

static void
ph_bubble_unmap (GtkWidget *widget)
{
  PhBubble *self = PH_BUBBLE (widget);
  stop_easing (self);
  self->vial.shown_rad = self->vial.settle.tilt_rad;
  GTK_WIDGET_CLASS (ph_bubble_parent_class)->unmap (widget);
}

static void
ph_bubble_dispose (GObject *object)
{
  PhBubble *self = PH_BUBBLE (object);
  stop_easing (self);
  g_clear_object (&self->layout);
  G_OBJECT_CLASS (ph_bubble_parent_class)->dispose (object);
}

static void
ph_bubble_class_init (PhBubbleClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = ph_bubble_dispose;
  widget_class->measure = ph_bubble_measure;
  widget_class->snapshot = ph_bubble_snapshot;
  widget_class->css_changed = ph_bubble_css_changed;
  widget_class->unmap = ph_bubble_unmap;
  gtk_widget_class_set_css_name (widget_class, "vial");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
ph_bubble_init (PhBubble *self)
{
  renew_layout (self);
}

GtkWidget *
ph_bubble_new (void)
{
  return g_object_new (PH_TYPE_BUBBLE, NULL);
}
