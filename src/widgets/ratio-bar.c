/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Three flat rectangles at most, no cairo. Colours: the widget's own colour for the bar, thinner
 * ones of it for the trough and the mark.
 */
#include "widgets/ratio-bar.h"

#define HEIGHT 8
#define WIDTH_LEAST 40
#define WIDTH_NATURAL 60
#define MARK_MORE 3 /* how far the mark stands out above and below */

struct _PhRatioBar
{
  GtkWidget parent_instance;

  float from, to; /* of the width */
  gboolean mark, trough;
};

G_DEFINE_FINAL_TYPE (PhRatioBar, ph_ratio_bar, GTK_TYPE_WIDGET)

static void
show (PhRatioBar *self, float from, float to, gboolean mark, gboolean trough)
{
  if (self->from == from && self->to == to && self->mark == mark && self->trough == trough)
    return;
  self->from = from;
  self->to = to;
  self->mark = mark;
  self->trough = trough;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
ph_ratio_bar_show_fill (PhRatioBar *self, double fill, gboolean mark)
{
  g_return_if_fail (PH_IS_RATIO_BAR (self));
  show (self, 0.0f, (float)CLAMP (fill, 0.0, 1.0), mark, TRUE);
}

void
ph_ratio_bar_show_side (PhRatioBar *self, double side)
{
  g_return_if_fail (PH_IS_RATIO_BAR (self));
  float end = 0.5f + 0.5f * (float)CLAMP (side, -1.0, 1.0);
  show (self, MIN (0.5f, end), MAX (0.5f, end), TRUE, FALSE);
}

static void
ph_ratio_bar_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                      int *natural, int *minimum_baseline, int *natural_baseline)
{
  (void)widget;
  (void)for_size;
  *minimum_baseline = *natural_baseline = -1;
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? WIDTH_LEAST : HEIGHT + 2 * MARK_MORE;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? WIDTH_NATURAL : *minimum;
}

static void
add_box (GtkSnapshot *snapshot, GdkRGBA color, float alpha, graphene_rect_t box)
{
  color.alpha *= alpha;
  gtk_snapshot_append_color (snapshot, &color, &box);
}

static void
ph_ratio_bar_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  PhRatioBar *self = PH_RATIO_BAR (widget);
  float width = (float)gtk_widget_get_width (widget);
  float y = ((float)gtk_widget_get_height (widget) - HEIGHT) / 2.0f;
  GdkRGBA color;
  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &color);
  if (self->trough)
    add_box (snapshot, color, 0.18f, GRAPHENE_RECT_INIT (0.0f, y, width, HEIGHT));
  add_box (snapshot, color, 0.62f,
           GRAPHENE_RECT_INIT (self->from * width, y, (self->to - self->from) * width, HEIGHT));
  if (self->mark)
    add_box (snapshot, color, 1.0f,
             GRAPHENE_RECT_INIT (width / 2.0f - 1.0f, y - MARK_MORE, 2.0f, HEIGHT + 2 * MARK_MORE));
}

static void
ph_ratio_bar_class_init (PhRatioBarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  widget_class->measure = ph_ratio_bar_measure;
  widget_class->snapshot = ph_ratio_bar_snapshot;
  gtk_widget_class_set_css_name (widget_class, "ratiobar");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
ph_ratio_bar_init (PhRatioBar *self)
{
  gtk_widget_set_valign (GTK_WIDGET (self), GTK_ALIGN_CENTER);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
}

GtkWidget *
ph_ratio_bar_new (void)
{
  return g_object_new (PH_TYPE_RATIO_BAR, NULL);
}
