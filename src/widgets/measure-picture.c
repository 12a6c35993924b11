/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * On a grid of 160 × 130 units. The bow is seen from its side, in its own frame: the grip at 0, 0,
 * x ahead, y down.
 */
#include "widgets/measure-picture.h"

#include <glib/gi18n.h>
#include <math.h>

#include "widgets/say.h"

#define GRID_WIDTH 160.0
#define GRID_HEIGHT 130.0

struct _PhMeasurePicture
{
  GtkWidget parent_instance;
  PhMethod method;
};

G_DEFINE_FINAL_TYPE (PhMeasurePicture, ph_measure_picture, GTK_TYPE_WIDGET)

static void
line (cairo_t *cr, double width, double x0, double y0, double x1, double y1)
{
  cairo_set_line_width (cr, width);
  cairo_move_to (cr, x0, y0);
  cairo_line_to (cr, x1, y1);
  cairo_stroke (cr);
}

static void
dashed (cairo_t *cr, double x0, double y0, double x1, double y1)
{
  cairo_set_dash (cr, (double[]){ 4, 2.5 }, 2, 0);
  line (cr, 1.2, x0, y0, x1, y1);
  cairo_set_dash (cr, NULL, 0, 0);
}

static void
dot (cairo_t *cr, double x, double y, double radius)
{
  cairo_new_sub_path (cr);
  cairo_arc (cr, x, y, radius, 0, 2 * G_PI);
  cairo_fill (cr);
}

static void
letter (cairo_t *cr, const char *text, double x, double y)
{
  cairo_select_font_face (cr, "sans-serif", CAIRO_FONT_SLANT_ITALIC, CAIRO_FONT_WEIGHT_NORMAL);
  cairo_set_font_size (cr, 11);
  cairo_move_to (cr, x, y);
  cairo_show_text (cr, text);
}

/* A length between two points, with its ends marked. */
static void
measure_line (cairo_t *cr, double x0, double y0, double x1, double y1)
{
  double length = hypot (x1 - x0, y1 - y0), ux = (x1 - x0) / length, uy = (y1 - y0) / length;
  line (cr, 0.9, x0, y0, x1, y1);
  line (cr, 0.9, x0 - 3 * uy, y0 + 3 * ux, x0 + 3 * uy, y0 - 3 * ux);
  line (cr, 0.9, x1 - 3 * uy, y1 + 3 * ux, x1 + 3 * uy, y1 - 3 * ux);
}

/* Riser, limbs, string and a front bar; the balance point as a ring with a cross. */
static void
draw_bow (cairo_t *cr, gboolean balance)
{
  cairo_set_line_width (cr, 3.6);
  cairo_move_to (cr, 3, -24);
  cairo_curve_to (cr, 9, -14, 1, -6, 1, 0);
  cairo_curve_to (cr, 1, 6, 9, 14, 3, 24);
  cairo_stroke (cr);
  cairo_set_line_width (cr, 2.2);
  for (int side = -1; side <= 1; side += 2)
    {
      cairo_move_to (cr, 3, side * 23);
      cairo_curve_to (cr, 1, side * 32, -5, side * 40, -14, side * 46);
      cairo_stroke (cr);
    }
  line (cr, 0.7, -14, -46, -14, 46);
  line (cr, 1.8, 4, 13, 50, 16);
  line (cr, 4.4, 47, 16, 52, 16.4);
  if (!balance)
    return;
  cairo_set_line_width (cr, 1.1);
  cairo_new_sub_path (cr);
  cairo_arc (cr, 14, 8, 4, 0, 2 * G_PI);
  cairo_stroke (cr);
  line (cr, 1.1, 10, 8, 18, 8);
  line (cr, 1.1, 14, 4, 14, 12);
}

static void
bow_at (cairo_t *cr, double x, double y, double degrees, gboolean balance)
{
  cairo_save (cr);
  cairo_translate (cr, x, y);
  cairo_rotate (cr, degrees * G_PI / 180);
  draw_bow (cr, balance);
  cairo_restore (cr);
}

/* A scale with an edge that reaches up to `top`. */
static void
draw_scale (cairo_t *cr, double x, double top, const char *name)
{
  line (cr, 1.6, x, top, x, 112);
  cairo_rectangle (cr, x - 12, 112, 24, 8);
  cairo_set_line_width (cr, 1.4);
  cairo_stroke (cr);
  letter (cr, name, x + 15, 121);
}

static void
draw_scales (cairo_t *cr)
{
  bow_at (cr, 55, 52, 0, TRUE);
  draw_scale (cr, 57, 54, "1");
  draw_scale (cr, 99, 68, "2");
  measure_line (cr, 57, 104, 99, 104);
  letter (cr, "d", 75, 101);
}

/* Hung from the bow's own point (px, py) at (x, y): the balance point, its (14, 8), comes to rest
   below, or `aside` degrees beside that. Tells where it then is. */
static void
hang_from (cairo_t *cr, double x, double y, double px, double py, double aside, double scale,
           double at[2])
{
  double turn = atan2 (14 - px, 8 - py) + aside * G_PI / 180;
  cairo_save (cr);
  cairo_translate (cr, x, y);
  cairo_scale (cr, scale, scale);
  cairo_rotate (cr, turn);
  cairo_translate (cr, -px, -py);
  draw_bow (cr, TRUE);
  at[0] = 14;
  at[1] = 8;
  cairo_user_to_device (cr, &at[0], &at[1]);
  cairo_restore (cr);
  cairo_device_to_user (cr, &at[0], &at[1]);
}

static void
draw_hanging (cairo_t *cr)
{
  static const double hung[][4] = { { 42, 20, -14, -46 }, { 118, 20, 50, 16 } };
  for (int i = 0; i < 2; i++)
    {
      double at[2];
      line (cr, 1, hung[i][0], 4, hung[i][0], hung[i][1]);
      dot (cr, hung[i][0], hung[i][1], 2.4);
      hang_from (cr, hung[i][0], hung[i][1], hung[i][2], hung[i][3], 0, 0.8, at);
      dashed (cr, hung[i][0], hung[i][1], hung[i][0], 124);
    }
}

static void
draw_pendulum (cairo_t *cr)
{
  double at[2], x = 76, y = 46;
  line (cr, 2.4, x - 16, y - 3, x - 4, y - 3);
  hang_from (cr, x, y, 4, -22, -7, 1, at);
  dot (cr, x, y, 2.6);
  dashed (cr, x, y, at[0], at[1]);
  measure_line (cr, x + 34, y, x + 34 + at[0] - x, at[1]);
  letter (cr, "l", x + 40, (y + at[1]) / 2 + 3);
  cairo_set_line_width (cr, 1.1);
  cairo_new_sub_path (cr);
  cairo_arc (cr, x, y, 78, 0.40 * G_PI, 0.60 * G_PI);
  cairo_stroke (cr);
}

static void
draw_two_strings (cairo_t *cr)
{
  line (cr, 2.4, 40, 8, 124, 8);
  line (cr, 1, 56, 8, 56, 78);
  line (cr, 1, 108, 8, 108, 78);
  bow_at (cr, 74, 86, 90, FALSE);
  dot (cr, 82, 86, 2.6);
  measure_line (cr, 56, 26, 108, 26);
  letter (cr, "D", 78, 22);
  measure_line (cr, 126, 9, 126, 77);
  letter (cr, "h", 131, 46);
  cairo_set_line_width (cr, 1.1);
  cairo_save (cr);
  cairo_translate (cr, 82, 112);
  cairo_scale (cr, 30, 8);
  cairo_new_sub_path (cr);
  cairo_arc (cr, 0, 0, 1, 0.1 * G_PI, 0.9 * G_PI);
  cairo_restore (cr);
  cairo_stroke (cr);
}

static void
ph_measure_picture_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  static void (*const draw[PH_METHODS]) (cairo_t *) = { draw_scales, draw_hanging, draw_pendulum,
                                                        draw_two_strings };
  PhMeasurePicture *self = PH_MEASURE_PICTURE (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  double scale = MIN (width / GRID_WIDTH, height / GRID_HEIGHT);
  GdkRGBA colour;
  graphene_rect_t all = GRAPHENE_RECT_INIT (0, 0, (float)width, (float)height);
  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &colour);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &all);
  gdk_cairo_set_source_rgba (cr, &colour);
  cairo_translate (cr, (width - scale * GRID_WIDTH) / 2, (height - scale * GRID_HEIGHT) / 2);
  cairo_scale (cr, scale, scale);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  draw[self->method](cr);
  cairo_destroy (cr);
}

static void
ph_measure_picture_measure (GtkWidget *widget, GtkOrientation orientation, int for_size,
                            int *minimum, int *natural, int *minimum_baseline,
                            int *natural_baseline)
{
  (void)widget;
  (void)for_size;
  *minimum = (int)(orientation == GTK_ORIENTATION_HORIZONTAL ? GRID_WIDTH : GRID_HEIGHT);
  *natural = *minimum * 3 / 2;
  *minimum_baseline = *natural_baseline = -1;
}

static void
ph_measure_picture_class_init (PhMeasurePictureClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  widget_class->snapshot = ph_measure_picture_snapshot;
  widget_class->measure = ph_measure_picture_measure;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
ph_measure_picture_init (PhMeasurePicture *self)
{
  ph_measure_picture_set_method (self, PH_METHOD_SCALES);
}

GtkWidget *
ph_measure_picture_new (void)
{
  return g_object_new (PH_TYPE_MEASURE_PICTURE, NULL);
}

void
ph_measure_picture_set_method (PhMeasurePicture *self, PhMethod method)
{
  static const char *const names[PH_METHODS] = {
    N_ ("Drawing: the bow stands level with its grip on one scale and its front bar on another"),
    N_ ("Drawing: the bow hangs from two points in turn, a plumb line through its balance point"),
    N_ ("Drawing: the bow rocks about an edge above its balance point"),
    N_ ("Drawing: the bow hangs level on two upright strings and turns between them"),
  };
  g_return_if_fail (PH_IS_MEASURE_PICTURE (self));
  self->method = method;
  ph_say (GTK_WIDGET (self), _ (names[method]));
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
