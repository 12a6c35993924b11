/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Drawn on a grid of 100 × 80 units, the left hand holding the bow; the right hand's picture is its
 * mirror. The figure faces the reader, so the archer's left arm points to the reader's right. A
 * still picture of thirty strokes: cairo is fast enough.
 */
#include "widgets/archer-picture.h"

#define GRID_WIDTH 100.0
#define GRID_HEIGHT 80.0

struct _PhArcherPicture
{
  GtkWidget parent_instance;
  PhBowHand bow_hand;
};

G_DEFINE_FINAL_TYPE (PhArcherPicture, ph_archer_picture, GTK_TYPE_WIDGET)

static void
limb (cairo_t *cr, double width, const double (*points)[2], int n)
{
  cairo_set_line_width (cr, width);
  cairo_move_to (cr, points[0][0], points[0][1]);
  for (int i = 1; i < n; i++)
    cairo_line_to (cr, points[i][0], points[i][1]);
  cairo_stroke (cr);
}

static void
draw_figure (cairo_t *cr)
{
  static const double bow_arm[][2] = { { 44, 31 }, { 81, 29 } };
  static const double string_arm[][2] = { { 34, 32 }, { 16, 29 }, { 37, 26.5 } };
  static const double left_leg[][2] = { { 43, 55 }, { 49, 78 } };
  static const double right_leg[][2] = { { 35, 55 }, { 29, 78 } };
  cairo_arc (cr, 39, 17, 8.5, 0, 2 * G_PI);
  cairo_fill (cr);
  limb (cr, 6, bow_arm, 2);
  limb (cr, 6, string_arm, 3);
  limb (cr, 7.5, left_leg, 2);
  limb (cr, 7.5, right_leg, 2);
  cairo_move_to (cr, 32, 31);
  cairo_line_to (cr, 46, 31);
  cairo_line_to (cr, 44, 55);
  cairo_line_to (cr, 34, 55);
  cairo_close_path (cr);
  cairo_set_line_width (cr, 5);
  cairo_stroke_preserve (cr);
  cairo_fill (cr);
}

static void
draw_face (cairo_t *cr)
{
  /* Holes rather than a second colour: they read on any background. */
  cairo_save (cr);
  cairo_set_operator (cr, CAIRO_OPERATOR_CLEAR);
  cairo_arc (cr, 37.5, 16, 1.5, 0, 2 * G_PI);
  cairo_arc (cr, 43.5, 16, 1.5, 0, 2 * G_PI);
  cairo_fill (cr);
  cairo_restore (cr);
}

static void
draw_bow (cairo_t *cr)
{
  static const double string[][2] = { { 74, 3 }, { 38, 26.5 }, { 74, 55 } };
  static const double arrow[][2] = { { 38, 26.5 }, { 95, 25.5 } };
  limb (cr, 1.2, string, 3);
  limb (cr, 1.6, arrow, 2);
  cairo_move_to (cr, 74, 3);
  cairo_curve_to (cr, 77, 10, 84, 14, 84, 22);
  cairo_curve_to (cr, 84, 26, 82, 27, 82, 29);
  cairo_curve_to (cr, 82, 31, 84, 33, 84, 36);
  cairo_curve_to (cr, 84, 44, 77, 48, 74, 55);
  cairo_set_line_width (cr, 4);
  cairo_stroke (cr);
}

static void
ph_archer_picture_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  PhArcherPicture *self = PH_ARCHER_PICTURE (widget);
  double width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  double scale = MIN (width / GRID_WIDTH, height / GRID_HEIGHT);
  GtkStyleContext *style = gtk_widget_get_style_context (widget);
  GdkRGBA ink, accent;
  gtk_style_context_get_color (style, &ink);
  if (!gtk_style_context_lookup_color (style, "theme_selected_bg_color", &accent))
    accent = ink;

  cairo_t *cr =
      gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float)width, (float)height));
  cairo_translate (cr, width / 2, (height - GRID_HEIGHT * scale) / 2);
  cairo_scale (cr, self->bow_hand == PH_BOW_HAND_LEFT ? scale : -scale, scale);
  cairo_translate (cr, -GRID_WIDTH / 2, 0);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  gdk_cairo_set_source_rgba (cr, &ink);
  draw_figure (cr);
  draw_face (cr);
  gdk_cairo_set_source_rgba (cr, &accent);
  draw_bow (cr);
  cairo_destroy (cr);
}

static void
ph_archer_picture_class_init (PhArcherPictureClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  widget_class->snapshot = ph_archer_picture_snapshot;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
ph_archer_picture_init (PhArcherPicture *self)
{
  gtk_widget_set_size_request (GTK_WIDGET (self), 140, 112);
}

GtkWidget *
ph_archer_picture_new (PhBowHand bow_hand)
{
  PhArcherPicture *self = g_object_new (PH_TYPE_ARCHER_PICTURE, NULL);
  self->bow_hand = bow_hand;
  return GTK_WIDGET (self);
}
