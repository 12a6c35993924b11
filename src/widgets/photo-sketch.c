/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * On a grid of 180 × 220 units, y down. The lean is drawn larger than any archer's, to be seen.
 */
#include "widgets/photo-sketch.h"

#include <glib/gi18n.h>

#include "widgets/say.h"

#define GRID_WIDTH 180.0
#define GRID_HEIGHT 220.0
#define LEAN_RAD 0.14
/* Of the grip, about which the bow is turned. */
#define BOW_X 78.0
#define BOW_Y 106.0
#define HALF_STRING 82.0
#define EDGE_X 142.0

struct _PhPhotoSketch
{
  GtkWidget parent_instance;
};

G_DEFINE_FINAL_TYPE (PhPhotoSketch, ph_photo_sketch, GTK_TYPE_WIDGET)

static void
line (cairo_t *cr, double width, double x0, double y0, double x1, double y1)
{
  cairo_set_line_width (cr, width);
  cairo_move_to (cr, x0, y0);
  cairo_line_to (cr, x1, y1);
  cairo_stroke (cr);
}

static void
ring (cairo_t *cr, double x, double y)
{
  cairo_set_line_width (cr, 1.4);
  cairo_new_sub_path (cr);
  cairo_arc (cr, x, y, 4.5, 0, 2 * G_PI);
  cairo_stroke (cr);
}

static void
square (cairo_t *cr, double x, double y)
{
  cairo_set_line_width (cr, 1.4);
  cairo_rectangle (cr, x - 4.5, y - 4.5, 9, 9);
  cairo_stroke (cr);
}

static void
draw_frame (cairo_t *cr)
{
  cairo_set_line_width (cr, 1.2);
  cairo_rectangle (cr, 6, 6, GRID_WIDTH - 12, GRID_HEIGHT - 12);
  cairo_stroke (cr);
  for (int i = 0; i < 2; i++) /* a door's frame */
    line (cr, 1.6, EDGE_X + 10 * i, 6, EDGE_X + 10 * i, GRID_HEIGHT - 6);
  square (cr, EDGE_X, 30);
  square (cr, EDGE_X, 190);
}

/* Limbs and riser behind their string, as they are seen from behind. */
static void
draw_bow (cairo_t *cr)
{
  cairo_save (cr);
  cairo_translate (cr, BOW_X, BOW_Y);
  cairo_rotate (cr, -LEAN_RAD);
  cairo_push_group (cr);
  for (int side = -1; side <= 1; side += 2)
    line (cr, 4, -3, side * 26, -3, side * (HALF_STRING - 4));
  line (cr, 8, -4, -24, -4, 24);
  cairo_pop_group_to_source (cr);
  cairo_paint_with_alpha (cr, 0.45);
  cairo_restore (cr);
}

static void
draw_string (cairo_t *cr)
{
  cairo_save (cr);
  cairo_translate (cr, BOW_X, BOW_Y);
  cairo_rotate (cr, -LEAN_RAD);
  line (cr, 1.4, 0, -HALF_STRING, 0, HALF_STRING);
  ring (cr, 0, -HALF_STRING + 14);
  ring (cr, 0, HALF_STRING - 14);
  cairo_restore (cr);
}

/* The angle, at the string's foot, from a plumb dash to the string. */
static void
draw_angle (cairo_t *cr)
{
  double foot_x = BOW_X + HALF_STRING * 0.139543, foot_y = BOW_Y + HALF_STRING * 0.990216;
  cairo_set_dash (cr, (double[]){ 4, 3 }, 2, 0);
  line (cr, 1, foot_x, foot_y, foot_x, foot_y - 150);
  cairo_set_dash (cr, NULL, 0, 0);
  cairo_set_line_width (cr, 1.4);
  cairo_new_sub_path (cr);
  cairo_arc (cr, foot_x, foot_y, 128, -G_PI / 2 - LEAN_RAD, -G_PI / 2);
  cairo_stroke (cr);
}

static void
ph_photo_sketch_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  double width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  double scale = MIN (width / GRID_WIDTH, height / GRID_HEIGHT);
  GdkRGBA ink;
  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &ink);
  cairo_t *cr =
      gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float)width, (float)height));
  gdk_cairo_set_source_rgba (cr, &ink);
  cairo_translate (cr, (width - GRID_WIDTH * scale) / 2, (height - GRID_HEIGHT * scale) / 2);
  cairo_scale (cr, scale, scale);
  draw_frame (cr);
  draw_bow (cr);
  gdk_cairo_set_source_rgba (cr, &ink);
  draw_string (cr);
  draw_angle (cr);
  cairo_destroy (cr);
}

static void
ph_photo_sketch_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                         int *natural, int *minimum_baseline, int *natural_baseline)
{
  (void)widget;
  (void)for_size;
  *minimum = (int)(orientation == GTK_ORIENTATION_HORIZONTAL ? GRID_WIDTH : GRID_HEIGHT);
  *natural = *minimum * 3 / 2;
  *minimum_baseline = *natural_baseline = -1;
}

static void
ph_photo_sketch_class_init (PhPhotoSketchClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  widget_class->snapshot = ph_photo_sketch_snapshot;
  widget_class->measure = ph_photo_sketch_measure;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
ph_photo_sketch_init (PhPhotoSketch *self)
{
  ph_say (GTK_WIDGET (self),
          _ ("Drawing: the bow from straight behind, a door frame beside it, and the angle between "
             "the string and plumb"));
}

GtkWidget *
ph_photo_sketch_new (void)
{
  return g_object_new (PH_TYPE_PHOTO_SKETCH, NULL);
}
