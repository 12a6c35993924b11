/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A ring that leaves its point free to be seen, light within dark, so that it shows on any picture.
 */
#include "widgets/photo-mark.h"

#include <glib/gi18n.h>

#define RADIUS 9.0

struct _PhPhotoMark
{
  GtkWidget parent_instance;
  gboolean round;
};

G_DEFINE_FINAL_TYPE (PhPhotoMark, ph_photo_mark, GTK_TYPE_WIDGET)

static void
trace (PhPhotoMark *self, cairo_t *cr)
{
  double middle = PH_PHOTO_MARK_PX / 2.0;
  cairo_new_sub_path (cr);
  if (self->round)
    cairo_arc (cr, middle, middle, RADIUS, 0, 2 * G_PI);
  else
    cairo_rectangle (cr, middle - RADIUS, middle - RADIUS, 2 * RADIUS, 2 * RADIUS);
}

static void
ph_photo_mark_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  PhPhotoMark *self = PH_PHOTO_MARK (widget);
  cairo_t *cr = gtk_snapshot_append_cairo (
      snapshot, &GRAPHENE_RECT_INIT (0, 0, PH_PHOTO_MARK_PX, PH_PHOTO_MARK_PX));
  trace (self, cr);
  cairo_set_line_width (cr, 4.5);
  cairo_set_source_rgba (cr, 0, 0, 0, 0.75);
  cairo_stroke_preserve (cr);
  cairo_set_line_width (cr, 2);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_stroke (cr);
  cairo_destroy (cr);
}

static void
ph_photo_mark_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                       int *natural, int *minimum_baseline, int *natural_baseline)
{
  (void)widget;
  (void)orientation;
  (void)for_size;
  *minimum = *natural = PH_PHOTO_MARK_PX;
  *minimum_baseline = *natural_baseline = -1;
}

static void
ph_photo_mark_class_init (PhPhotoMarkClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  widget_class->snapshot = ph_photo_mark_snapshot;
  widget_class->measure = ph_photo_mark_measure;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_widget_class_set_css_name (widget_class, "photomark");
}

static void
ph_photo_mark_init (PhPhotoMark *self)
{
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_accessible_update_property (
      GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
      _ ("The arrow keys move it by a pixel of the picture, with Shift by ten."), -1);
}

GtkWidget *
ph_photo_mark_new (PhPhotoTarget on)
{
  PhPhotoMark *self = g_object_new (PH_TYPE_PHOTO_MARK, NULL);
  self->round = on == PH_PHOTO_STRING || on == PH_PHOTO_VIAL_LINE;
  return GTK_WIDGET (self);
}
