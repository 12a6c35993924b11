/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Nothing is told by colour alone: a known bubble is filled and an assumed one dashed, an interval
 * is plain with an error bar and a range over hands is hatched, the reference is a thin outline
 * with a mark below, the wanted place a pair of points.
 */
#include "widgets/vial.h"

#include <glib/gi18n.h>
#include <math.h>

#include "base/units.h"
#include "document/format.h"

/* Room beyond the last degree, so that a bubble at the end of the range is seen whole. */
#define MARGIN_DEG 0.8
/* Half of the bubble's length, and where the two lines stand that frame it when it is centred. */
#define BUBBLE_DEG 0.6
#define LINES_DEG 0.68
#define TOP 4.0
#define MIDDLE (PH_VIAL_HEIGHT / 2.0)
#define BUBBLE_HIGH 42.0
#define BAND_HIGH 56.0
#define OUTSIDE 200.0 /* far enough past the vial's end to be cut off [px] */

static double
px_per_degree (double width)
{
  return width / 2.0 / (ph_deg_from_rad (PH_VIAL_RANGE_RAD) + MARGIN_DEG);
}

double
ph_vial_place (double tilt_rad, gboolean level, double width)
{
  double deg = ph_deg_from_rad (CLAMP (tilt_rad, -PH_VIAL_RANGE_RAD, PH_VIAL_RANGE_RAD));
  return width / 2.0 + (level ? -deg : deg) * px_per_degree (width);
}

static void
set_color (cairo_t *cr, const GdkRGBA *color, double alpha)
{
  cairo_set_source_rgba (cr, (double)color->red, (double)color->green, (double)color->blue,
                         (double)color->alpha * alpha);
}

static void
rounded (cairo_t *cr, double x, double y, double w, double h, double r)
{
  r = MIN (r, MIN (w, h) / 2.0);
  cairo_new_sub_path (cr);
  cairo_arc (cr, x + w - r, y + r, r, -G_PI / 2, 0.0);
  cairo_arc (cr, x + w - r, y + h - r, r, 0.0, G_PI / 2);
  cairo_arc (cr, x + r, y + h - r, r, G_PI / 2, G_PI);
  cairo_arc (cr, x + r, y + r, r, G_PI, 1.5 * G_PI);
  cairo_close_path (cr);
}

/* The glass of a level is round, the scale of a lean is a plate. */
static void
body_path (cairo_t *cr, const PhVial *vial, double width)
{
  rounded (cr, 1.0, 1.0, width - 2.0, PH_VIAL_HEIGHT - 2.0,
           vial->settle.has_level ? PH_VIAL_HEIGHT / 2.0 : 8.0);
}

static void
draw_body (cairo_t *cr, const PhVial *vial, const PhVialColors *colors, double width)
{
  cairo_pattern_t *shade = cairo_pattern_create_linear (0.0, 0.0, 0.0, PH_VIAL_HEIGHT);
  body_path (cr, vial, width);
  set_color (cr, vial->settle.has_level ? &colors->liquid : &colors->glass, 1.0);
  cairo_fill_preserve (cr);
  cairo_pattern_add_color_stop_rgba (shade, 0.0, 1.0, 1.0, 1.0, 0.22);
  cairo_pattern_add_color_stop_rgba (shade, 0.5, 1.0, 1.0, 1.0, 0.0);
  cairo_pattern_add_color_stop_rgba (shade, 1.0, 0.0, 0.0, 0.0, 0.10);
  cairo_set_source (cr, shade);
  cairo_fill (cr);
  cairo_pattern_destroy (shade);
}

static void
draw_line (cairo_t *cr, double x, double y0, double y1)
{
  double pixel = floor (x) + 0.5;
  cairo_move_to (cr, pixel, y0);
  cairo_line_to (cr, pixel, y1);
  cairo_stroke (cr);
}

/* A tick each half degree, longer each degree; the two lines that frame a centred bubble, or the
   plumb line of a lean, unless the place is needed for saying that there is neither. */
static void
draw_graduation (cairo_t *cr, const PhVial *vial, const PhVialColors *colors, double width)
{
  double step = px_per_degree (width) / 2.0;
  int ends = (int)(2.0 * ph_deg_from_rad (PH_VIAL_RANGE_RAD) + 0.5);
  cairo_set_line_width (cr, 1.0);
  set_color (cr, &colors->soft_ink, 1.0);
  for (int i = -ends; i <= ends; i++)
    {
      double x = width / 2.0 + i * step, length = i % 2 ? 5.0 : 10.0;
      draw_line (cr, x, TOP, TOP + length);
      draw_line (cr, x, PH_VIAL_HEIGHT - TOP - length, PH_VIAL_HEIGHT - TOP);
    }
  set_color (cr, &colors->ink, 0.85);
  if (!vial->settle.settles)
    return;
  if (vial->settle.has_level)
    {
      cairo_set_line_width (cr, 3.0);
      draw_line (cr, width / 2.0 - LINES_DEG * 2.0 * step, 2.0, PH_VIAL_HEIGHT - 2.0);
      draw_line (cr, width / 2.0 + LINES_DEG * 2.0 * step, 2.0, PH_VIAL_HEIGHT - 2.0);
      return;
    }
  cairo_set_line_width (cr, 2.0);
  cairo_set_dash (cr, (double[]){ 8.0, 4.0, 2.0, 4.0 }, 4, 0.0);
  draw_line (cr, width / 2.0, 2.0, PH_VIAL_HEIGHT - 2.0);
  cairo_set_dash (cr, NULL, 0, 0.0);
}

static void
draw_hatch (cairo_t *cr, double x0, double x1, double y0, double y1)
{
  cairo_set_line_width (cr, 1.5);
  for (double x = x0 - (y1 - y0); x < x1; x += 8.0)
    {
      cairo_move_to (cr, x, y1);
      cairo_line_to (cr, x + (y1 - y0), y0);
    }
  cairo_stroke (cr);
}

/* Where the two ends of a band stand, the left one first; one past the end of the range, or open
   because the loosest hands topple, runs out of the vial. */
static void
band_ends (const PhVial *vial, double width, double ends[2])
{
  const PhLeanRange *band = &vial->settle.band;
  gboolean level = vial->settle.has_level, open = band->some_topple && !vial->settle.hand_known;
  double lo = ph_vial_place (band->lo_rad, level, width);
  double hi = ph_vial_place (band->hi_rad, level, width);
  ends[0] = fmin (lo, hi);
  ends[1] = fmax (lo, hi);
  gboolean past_lo = -PH_VIAL_RANGE_RAD > band->lo_rad || (open && band->hi_rad < 0.0);
  gboolean past_hi = PH_VIAL_RANGE_RAD < band->hi_rad || (open && band->lo_rad > 0.0);
  if (level ? past_hi : past_lo)
    ends[0] = -OUTSIDE;
  if (level ? past_lo : past_hi)
    ends[1] = width + OUTSIDE;
}

/* From where the bubble's one edge would be at one end to its other edge at the other: wherever the
   bubble is, it is inside. */
static void
draw_band (cairo_t *cr, const PhVial *vial, const PhVialColors *colors, double width)
{
  gboolean hatched = !vial->settle.hand_known;
  double half = BUBBLE_DEG * px_per_degree (width), y = MIDDLE - BAND_HIGH / 2.0, ends[2];
  if (isnan (vial->settle.band.lo_rad))
    return;
  band_ends (vial, width, ends);
  double x0 = ends[0] - half, x1 = ends[1] + half;
  cairo_save (cr);
  rounded (cr, x0, y, x1 - x0, BAND_HIGH, BAND_HIGH / 2.0);
  set_color (cr, &colors->ink, hatched ? 0.07 : 0.16);
  cairo_fill_preserve (cr);
  cairo_clip (cr);
  set_color (cr, &colors->ink, 0.28);
  if (hatched)
    draw_hatch (cr, x0, x1, y, y + BAND_HIGH);
  cairo_restore (cr);
}

static void
bubble_path (cairo_t *cr, double x, double width, double shrink)
{
  double half = BUBBLE_DEG * px_per_degree (width) - shrink, high = BUBBLE_HIGH - 2.0 * shrink;
  cairo_save (cr);
  cairo_translate (cr, x, MIDDLE);
  cairo_scale (cr, half, high / 2.0);
  cairo_new_sub_path (cr);
  cairo_arc (cr, 0.0, 0.0, 1.0, 0.0, 2.0 * G_PI);
  cairo_restore (cr);
}

/* The bow seen from behind, as a stave that leans with the tilt (not to scale: 5 px at the end of
   the range would not be seen). */
static void
stave_path (cairo_t *cr, const PhVial *vial, double x)
{
  double lean = CLAMP (vial->shown_rad / PH_VIAL_RANGE_RAD, -1.0, 1.0) * 12.0;
  cairo_new_sub_path (cr);
  cairo_move_to (cr, x + lean - 5.0, 7.0);
  cairo_line_to (cr, x + lean + 5.0, 7.0);
  cairo_line_to (cr, x - lean + 5.0, PH_VIAL_HEIGHT - 7.0);
  cairo_line_to (cr, x - lean - 5.0, PH_VIAL_HEIGHT - 7.0);
  cairo_close_path (cr);
}

static void
marker_path (cairo_t *cr, const PhVial *vial, double x, double width)
{
  if (vial->settle.has_level)
    bubble_path (cr, x, width, 0.0);
  else
    stave_path (cr, vial, x);
}

/* The interval as an error bar: seen also when it is narrower than the bubble. An end out of the
   vial has no cap. */
static void
draw_error_bar (cairo_t *cr, const PhVial *vial, const GdkRGBA *color, double width)
{
  double y = MIDDLE + BUBBLE_HIGH * 0.22, ends[2];
  if (!vial->settle.hand_known || isnan (vial->settle.band.lo_rad))
    return;
  band_ends (vial, width, ends);
  set_color (cr, color, 1.0);
  cairo_set_line_width (cr, 2.0);
  for (int i = 0; i < 2; i++)
    {
      cairo_move_to (cr, ends[i], y - 5.0);
      cairo_line_to (cr, ends[i], y + 5.0);
    }
  cairo_move_to (cr, ends[0], y);
  cairo_line_to (cr, ends[1], y);
  cairo_stroke (cr);
}

/* A known bubble with the error bar across it, in a colour that is read on the bubble there and in
   the ink beside it; an assumed one as a dashed outline. */
static void
draw_marker (cairo_t *cr, const PhVial *vial, const PhVialColors *colors, double width)
{
  double x = ph_vial_place (vial->shown_rad, vial->settle.has_level, width);
  gboolean filled = vial->settle.hand_known;
  draw_error_bar (cr, vial, &colors->ink, width);
  cairo_save (cr);
  marker_path (cr, vial, x, width);
  set_color (cr, &colors->bubble, filled ? 1.0 : 0.35);
  cairo_fill_preserve (cr);
  set_color (cr, filled ? &colors->on_bubble : &colors->ink, 1.0);
  cairo_set_line_width (cr, 2.5);
  if (!filled)
    cairo_set_dash (cr, (double[]){ 7.0, 4.0 }, 2, 0.0);
  cairo_stroke_preserve (cr);
  cairo_set_dash (cr, NULL, 0, 0.0);
  cairo_clip (cr);
  draw_error_bar (cr, vial, &colors->on_bubble, width);
  cairo_restore (cr);
}

static void
draw_point (cairo_t *cr, double x, double tip_y, double base_y)
{
  cairo_move_to (cr, x, tip_y);
  cairo_line_to (cr, x - 6.0, base_y);
  cairo_line_to (cr, x + 6.0, base_y);
  cairo_close_path (cr);
  cairo_fill (cr);
}

static void
draw_others (cairo_t *cr, const PhVial *vial, const PhVialColors *colors, double width)
{
  gboolean level = vial->settle.has_level;
  set_color (cr, &colors->ink, 0.9);
  if (vial->wanted_rad != 0.0)
    {
      double x = ph_vial_place (vial->wanted_rad, level, width);
      draw_point (cr, x, 13.0, 3.0);
      draw_point (cr, x, PH_VIAL_HEIGHT - 13.0, PH_VIAL_HEIGHT - 3.0);
    }
  if (!isnan (vial->settle.reference_tilt_rad))
    {
      double x = ph_vial_place (vial->settle.reference_tilt_rad, level, width);
      cairo_set_line_width (cr, 1.0);
      bubble_path (cr, x, width, -3.0);
      cairo_stroke (cr);
      draw_line (cr, x, PH_VIAL_HEIGHT - 14.0, PH_VIAL_HEIGHT - 1.0);
    }
}

/* Beyond the end: an arrow in the direction in which the bubble has gone. */
static void
draw_end_arrow (cairo_t *cr, const PhVial *vial, const PhVialColors *colors, double width)
{
  double x = ph_vial_place (vial->settle.tilt_rad, vial->settle.has_level, width);
  double side = x < width / 2.0 ? -1.0 : 1.0;
  if (!(fabs (vial->settle.tilt_rad) > PH_VIAL_RANGE_RAD))
    return;
  x += side * (BUBBLE_DEG * px_per_degree (width) - 8.0);
  set_color (cr, &colors->warning, 1.0);
  cairo_set_line_width (cr, 4.0);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  for (int i = 0; i < 2; i++)
    {
      cairo_move_to (cr, x - side * (6.0 + 9.0 * i), MIDDLE - 9.0);
      cairo_line_to (cr, x + side * (2.0 - 9.0 * i), MIDDLE);
      cairo_line_to (cr, x - side * (6.0 + 9.0 * i), MIDDLE + 9.0);
      cairo_stroke (cr);
    }
}

static void
draw_text (cairo_t *cr, PangoLayout *layout, const char *text, double x, double y)
{
  int width, height;
  pango_layout_set_text (layout, text, -1);
  pango_layout_get_pixel_size (layout, &width, &height);
  cairo_move_to (cr, x - width / 2.0, y);
  pango_cairo_show_layout (cr, layout);
}

static void
draw_numbers (cairo_t *cr, const PhVial *vial, const PhVialColors *colors, PangoLayout *layout,
              double width)
{
  int ends = (int)(ph_deg_from_rad (PH_VIAL_RANGE_RAD) + 0.5);
  set_color (cr, &colors->soft_ink, 1.0);
  for (int i = -ends; i <= ends; i++)
    {
      g_autofree char *number = ph_format_number (abs (i), 0);
      g_autofree char *text = g_strconcat (number, "°", NULL);
      draw_text (cr, layout, text, width / 2.0 + i * px_per_degree (width), PH_VIAL_HEIGHT + 1.0);
    }
  if (vial->settle.settles)
    return;
  set_color (cr, &colors->ink, 1.0);
  draw_text (cr, layout, _ ("⚠ tips over"), width / 2.0, MIDDLE - 9.0);
}

void
ph_vial_draw (cairo_t *cr, const PhVial *vial, const PhVialColors *colors, PangoLayout *layout,
              double width)
{
  draw_body (cr, vial, colors, width);
  cairo_save (cr);
  body_path (cr, vial, width);
  cairo_clip (cr);
  draw_band (cr, vial, colors, width);
  draw_graduation (cr, vial, colors, width);
  if (vial->settle.settles)
    {
      draw_marker (cr, vial, colors, width);
      draw_end_arrow (cr, vial, colors, width);
    }
  draw_others (cr, vial, colors, width);
  cairo_restore (cr);
  body_path (cr, vial, width);
  set_color (cr, &colors->ink, 0.75);
  cairo_set_line_width (cr, 1.5);
  cairo_stroke (cr);
  draw_numbers (cr, vial, colors, layout, width);
}
