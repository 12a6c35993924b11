/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * On a grid of 120 × 90 units. The archer faces the reader and shoots to the right, the bow in the
 * left hand; mirrored for one held in the right. The helper stands on the side of the bow arm,
 * behind the string. Some thirty strokes of cairo each.
 */
#include "widgets/check-picture.h"

#include <math.h>

#include "widgets/tilt-words.h"

#define GRID_WIDTH 120.0
#define GRID_HEIGHT 90.0

struct _PhCheckPicture
{
  GtkWidget parent_instance;
  int step;
  PhDocument *document; /* owned */
};

G_DEFINE_FINAL_TYPE (PhCheckPicture, ph_check_picture, GTK_TYPE_WIDGET)

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
draw_body (cairo_t *cr, double x, double head_y)
{
  const double left_leg[][2] = { { x + 3, 60 }, { x + 8, 86 } };
  const double right_leg[][2] = { { x - 3, 60 }, { x - 8, 86 } };
  cairo_arc (cr, x, head_y, 7.5, 0, 2 * G_PI);
  cairo_fill (cr);
  limb (cr, 6.5, left_leg, 2);
  limb (cr, 6.5, right_leg, 2);
  cairo_move_to (cr, x - 6, head_y + 13);
  cairo_line_to (cr, x + 6, head_y + 13);
  cairo_line_to (cr, x + 5, 60);
  cairo_line_to (cr, x - 5, 60);
  cairo_close_path (cr);
  cairo_set_line_width (cr, 4.5);
  cairo_stroke_preserve (cr);
  cairo_fill (cr);
}

/* Lids, as holes: they read on any ground. */
static void
draw_closed_eyes (cairo_t *cr, double x, double y)
{
  cairo_save (cr);
  cairo_set_operator (cr, CAIRO_OPERATOR_CLEAR);
  cairo_set_line_width (cr, 1.3);
  for (int side = -1; side <= 1; side += 2)
    {
      cairo_new_sub_path (cr);
      cairo_arc (cr, x + 1 + side * 2.8, y - 1.5, 1.7, 0.15 * G_PI, 0.85 * G_PI);
      cairo_stroke (cr);
    }
  cairo_restore (cr);
}

static void
draw_archer (cairo_t *cr, double x)
{
  const double bow_arm[][2] = { { x + 5, 36 }, { x + 40, 34 } };
  const double string_arm[][2] = { { x - 5, 37 }, { x - 22, 34 }, { x - 2, 31 } };
  draw_body (cr, x, 22);
  limb (cr, 5, bow_arm, 2);
  limb (cr, 5, string_arm, 3);
  draw_closed_eyes (cr, x, 22);
}

static void
draw_bow (cairo_t *cr, double x)
{
  const double string[][2] = { { x + 34, 8 }, { x - 1, 31 }, { x + 34, 60 } };
  const double arrow[][2] = { { x - 1, 31 }, { x + 54, 30 } };
  limb (cr, 1, string, 3);
  limb (cr, 1.5, arrow, 2);
  cairo_move_to (cr, x + 34, 8);
  cairo_curve_to (cr, x + 37, 15, x + 43, 18, x + 43, 27);
  cairo_curve_to (cr, x + 43, 31, x + 41, 32, x + 41, 34);
  cairo_curve_to (cr, x + 41, 36, x + 43, 37, x + 43, 41);
  cairo_curve_to (cr, x + 43, 50, x + 37, 53, x + 34, 60);
  cairo_set_line_width (cr, 3.4);
  cairo_stroke (cr);
}

/* Time goes by while it comes to rest: two arcs and a plumb line beside the bow. */
static void
draw_settling (cairo_t *cr, double x)
{
  const double plumb[][2] = { { x + 62, 6 }, { x + 62, 62 } };
  cairo_set_line_width (cr, 1.4);
  for (int i = 0; i < 2; i++)
    {
      double r = 34.0 + 5 * i;
      cairo_new_sub_path (cr);
      cairo_arc (cr, x + 41, 44, r, -0.56 * G_PI + 0.03 * i, -0.44 * G_PI - 0.03 * i);
      cairo_stroke (cr);
    }
  cairo_set_dash (cr, (double[]){ 4, 2, 1, 2 }, 4, 0);
  limb (cr, 1.2, plumb, 2);
  cairo_set_dash (cr, NULL, 0, 0);
  cairo_arc (cr, x + 62, 65, 3, 0, 2 * G_PI);
  cairo_fill (cr);
}

/* The helper, behind the string on the bow arm's side, and the line of sight to the level. */
static void
draw_helper (cairo_t *cr, double x)
{
  const double arm[][2] = { { x + 4, 40 }, { x + 12, 52 } };
  draw_body (cr, x, 25);
  limb (cr, 4.5, arm, 2);
}

static void
draw_look (cairo_t *cr, double from_x, double to_x)
{
  const double look[][2] = { { from_x, 24 }, { to_x, 27 } };
  cairo_set_dash (cr, (double[]){ 3, 2.5 }, 2, 0);
  limb (cr, 1.4, look, 2);
  cairo_set_dash (cr, NULL, 0, 0);
}

/* The level, large: glass, two lines, a bubble a little to the left. */
static void
draw_level (cairo_t *cr, double x, double y)
{
  double r = 6;
  cairo_new_sub_path (cr);
  cairo_arc (cr, x + 14, y, r, -G_PI / 2, G_PI / 2);
  cairo_arc (cr, x - 14, y, r, G_PI / 2, 1.5 * G_PI);
  cairo_close_path (cr);
  cairo_set_line_width (cr, 1.6);
  cairo_stroke (cr);
  for (int side = -1; side <= 1; side += 2)
    {
      const double line[][2] = { { x + side * 6, y - r }, { x + side * 6, y + r } };
      limb (cr, 1.6, line, 2);
    }
  cairo_save (cr);
  cairo_translate (cr, x - 3, y);
  cairo_scale (cr, 5, 3.4);
  cairo_new_sub_path (cr);
  cairo_arc (cr, 0, 0, 1, 0, 2 * G_PI);
  cairo_restore (cr);
  cairo_fill (cr);
}

/* Where a sight has no level, a picture is taken of the string. */
static void
draw_camera (cairo_t *cr, double x, double y)
{
  cairo_rectangle (cr, x - 11, y - 6, 22, 14);
  cairo_rectangle (cr, x - 5, y - 9, 10, 3);
  cairo_set_line_width (cr, 1.6);
  cairo_stroke (cr);
  cairo_arc (cr, x, y + 1, 4, 0, 2 * G_PI);
  cairo_stroke (cr);
}

static void
draw_step (cairo_t *cr, int step, gboolean level, const GdkRGBA *ink, const GdkRGBA *accent)
{
  /* In a group, so that the lids cut holes into the figure and not into what lies below. */
  cairo_push_group (cr);
  gdk_cairo_set_source_rgba (cr, ink);
  double x = step == 3 ? 52 : 40;
  draw_archer (cr, x);
  if (step == 3)
    draw_helper (cr, 14);
  gdk_cairo_set_source_rgba (cr, accent);
  draw_bow (cr, x);
  if (step == 2)
    draw_settling (cr, x);
  if (step == 3)
    {
      draw_look (cr, 23, x + 38);
      if (level)
        draw_level (cr, 94, 76);
      else
        draw_camera (cr, 94, 76);
    }
  cairo_pop_group_to_source (cr);
  cairo_paint (cr);
}

static void
ph_check_picture_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  PhCheckPicture *self = PH_CHECK_PICTURE (widget);
  double width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  double scale = fmin (width / GRID_WIDTH, height / GRID_HEIGHT);
  const PhRig *rig = ph_document_get_rig (self->document);
  gboolean turned = rig->archer.bow_hand == PH_BOW_HAND_RIGHT;
  GtkStyleContext *style = gtk_widget_get_style_context (widget);
  GdkRGBA ink, accent;
  gtk_style_context_get_color (style, &ink);
  if (!gtk_style_context_lookup_color (style, "theme_selected_bg_color", &accent))
    accent = ink;
  cairo_t *cr =
      gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float)width, (float)height));
  double aside = (width - GRID_WIDTH * scale) / 2;
  cairo_translate (cr, turned ? width - aside : aside, (height - GRID_HEIGHT * scale) / 2);
  cairo_scale (cr, turned ? -scale : scale, scale);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  draw_step (cr, self->step, ph_tilt_has_level (rig), &ink, &accent);
  cairo_destroy (cr);
}

static void
ph_check_picture_dispose (GObject *object)
{
  g_clear_object (&PH_CHECK_PICTURE (object)->document);
  G_OBJECT_CLASS (ph_check_picture_parent_class)->dispose (object);
}

static void
ph_check_picture_class_init (PhCheckPictureClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = ph_check_picture_dispose;
  widget_class->snapshot = ph_check_picture_snapshot;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
ph_check_picture_init (PhCheckPicture *self)
{
  gtk_widget_set_size_request (GTK_WIDGET (self), 200, 150);
}

GtkWidget *
ph_check_picture_new (PhDocument *document, int step)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document) && step >= 1 && step <= 3, NULL);
  PhCheckPicture *self = g_object_new (PH_TYPE_CHECK_PICTURE, NULL);
  self->step = step;
  self->document = g_object_ref (document);
  g_signal_connect_object (document, "structure-changed", G_CALLBACK (gtk_widget_queue_draw), self,
                           G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}
