/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The picture at the size that suits its scale; over it the fitted lines from rim to rim, or the
 * vial; the loupe. All strokes are light within dark, since any colour may lie below them; string
 * and edge differ by their dashes.
 */
#include <math.h>

#include "widgets/photo-canvas-private.h"

#define LOUPE_RADIUS 76.0
#define LOUPE_AWAY 34.0
#define CROSS_GAP 5.0

/* The picture. */

static void
append_picture (PhPhotoCanvas *self, GtkSnapshot *snapshot, double scale, double x, double y)
{
  int device = gtk_widget_get_scale_factor (GTK_WIDGET (self));
  GdkTexture *texture = ph_photo_picture_get_texture (self->picture, scale * device);
  double width = ph_photo_picture_get_width (self->picture) * scale;
  double height = ph_photo_picture_get_height (self->picture) * scale;
  gtk_snapshot_append_texture (
      snapshot, texture, &GRAPHENE_RECT_INIT ((float)x, (float)y, (float)width, (float)height));
}

/* Strokes. */

static void
stroke (cairo_t *cr, gboolean dashed)
{
  if (dashed)
    cairo_set_dash (cr, (double[]){ 9, 6 }, 2, 0);
  cairo_set_line_width (cr, 3);
  cairo_set_source_rgba (cr, 0, 0, 0, 0.6);
  cairo_stroke_preserve (cr);
  cairo_set_line_width (cr, 1.25);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
}

static void
line_to_frame (PhPhotoCanvas *self, cairo_t *cr, double ax, double ay, double bx, double by)
{
  double fx, fy, tx, ty;
  ph_photo_place_to_frame (&self->place, ax, ay, &fx, &fy);
  ph_photo_place_to_frame (&self->place, bx, by, &tx, &ty);
  cairo_move_to (cr, fx, fy);
  cairo_line_to (cr, tx, ty);
}

/* Through its points and on, over all of the picture. */
static void
draw_fit (PhPhotoCanvas *self, cairo_t *cr, PhPhotoTarget on)
{
  PhPhotoPoint points[PH_PHOTO_LINE_MOST];
  PhPhotoLine line = ph_photo_clicks_line (ph_photo_canvas_clicks (self), on, points);
  if (line.n < 2)
    return;
  PhPhotoFit fit = ph_photo_fit (&line);
  if (fit.refused)
    return;
  double far =
      ph_photo_picture_get_width (self->picture) + ph_photo_picture_get_height (self->picture);
  line_to_frame (self, cr, fit.x - far * fit.dx, fit.y - far * fit.dy, fit.x + far * fit.dx,
                 fit.y + far * fit.dy);
  stroke (cr, on == PH_PHOTO_EDGE);
}

/* Across the vial at a point, half a mark to either side. */
static void
draw_across (PhPhotoCanvas *self, cairo_t *cr, const PhPhotoPoint *at, double lx, double ly,
             gboolean dashed)
{
  line_to_frame (self, cr, at->x + ly / 2, at->y - lx / 2, at->x - ly / 2, at->y + lx / 2);
  stroke (cr, dashed);
}

static void
draw_vial (PhPhotoCanvas *self, cairo_t *cr)
{
  PhPhotoPoint lines[PH_PHOTO_LINE_MOST], ends[PH_PHOTO_LINE_MOST];
  const PhPhotoClicks *clicks = ph_photo_canvas_clicks (self);
  PhPhotoLine marks = ph_photo_clicks_line (clicks, PH_PHOTO_VIAL_LINE, lines);
  PhPhotoLine bubble = ph_photo_clicks_line (clicks, PH_PHOTO_BUBBLE, ends);
  if (marks.n < 2)
    return;
  double lx = lines[1].x - lines[0].x, ly = lines[1].y - lines[0].y;
  for (gsize i = 0; i < marks.n; i++)
    draw_across (self, cr, &lines[i], lx, ly, FALSE);
  for (gsize i = 0; i < bubble.n; i++)
    draw_across (self, cr, &ends[i], lx, ly, TRUE);
}

void
ph_photo_canvas_paint (PhPhotoCanvas *self, GtkSnapshot *snapshot)
{
  float width = (float)gtk_widget_get_width (GTK_WIDGET (self));
  float height = (float)gtk_widget_get_height (GTK_WIDGET (self));
  append_picture (self, snapshot, self->place.scale, self->place.x, self->place.y);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, width, height));
  if (self->way == PH_PHOTO_BY_LINES)
    {
      draw_fit (self, cr, PH_PHOTO_STRING);
      draw_fit (self, cr, PH_PHOTO_EDGE);
    }
  else
    draw_vial (self, cr);
  cairo_destroy (cr);
}

/* The loupe. */

/* Beside what is looked at, on the side with more room, whole within the frame. */
static void
place_loupe (PhPhotoCanvas *self, double *x, double *y)
{
  double width = gtk_widget_get_width (GTK_WIDGET (self));
  double height = gtk_widget_get_height (GTK_WIDGET (self));
  double away = LOUPE_AWAY + LOUPE_RADIUS, least = LOUPE_RADIUS + 2;
  double at_x, at_y;
  ph_photo_place_to_frame (&self->place, self->loupe_x, self->loupe_y, &at_x, &at_y);
  *x = at_x + (at_x + 2 * away < width ? away : -away);
  *y = CLAMP (at_y - away / 2, least, MAX (height - least, least));
}

static void
draw_cross (cairo_t *cr)
{
  for (int i = 0; i < 4; i++)
    {
      cairo_rotate (cr, G_PI / 2);
      cairo_move_to (cr, CROSS_GAP, 0);
      cairo_line_to (cr, LOUPE_RADIUS * 0.55, 0);
    }
  stroke (cr, FALSE);
}

static void
draw_rim (cairo_t *cr)
{
  cairo_arc (cr, 0, 0, LOUPE_RADIUS - 1, 0, 2 * G_PI);
  cairo_set_line_width (cr, 4);
  cairo_set_source_rgba (cr, 0, 0, 0, 0.7);
  cairo_stroke_preserve (cr);
  cairo_set_line_width (cr, 2);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_stroke (cr);
}

void
ph_photo_canvas_paint_loupe (PhPhotoCanvas *self, GtkSnapshot *snapshot)
{
  double x, y, scale = ph_photo_canvas_loupe_scale (self);
  float size = 2 * (float)LOUPE_RADIUS;
  GskRoundedRect round;
  place_loupe (self, &x, &y);
  graphene_rect_t box =
      GRAPHENE_RECT_INIT ((float)(x - LOUPE_RADIUS), (float)(y - LOUPE_RADIUS), size, size);
  gsk_rounded_rect_init_from_rect (&round, &box, (float)LOUPE_RADIUS);
  gtk_snapshot_push_rounded_clip (snapshot, &round);
  gtk_snapshot_append_color (snapshot, &(GdkRGBA){ 0.15f, 0.15f, 0.15f, 1.0f }, &box);
  append_picture (self, snapshot, scale, x - self->loupe_x * scale, y - self->loupe_y * scale);
  gtk_snapshot_pop (snapshot);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &box);
  cairo_translate (cr, x, y);
  draw_rim (cr);
  draw_cross (cr);
  cairo_destroy (cr);
}
