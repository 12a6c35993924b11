/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A line by total least squares: with weights w = 1/σ² and S the 2×2 sum of w (p − p̄)(p − p̄)ᵀ, its
 * direction stands at atan2 (2 Sxy, Sxx − Syy)/2, with variance 1/S_tt, S_tt the sum along it.
 */
#include "physics/photo.h"

#include <assert.h>
#include <math.h>

#include "base/units.h"
#include "physics/cant.h"

double
ph_photo_click_sd (double scale)
{
  assert (scale > 0);
  return fmax (PH_PHOTO_EDGE_SD_PX, PH_PHOTO_CLICK_SD_PX / scale);
}

static double
apart (const PhPhotoPoint *a, const PhPhotoPoint *b)
{
  return hypot (a->x - b->x, a->y - b->y);
}

/* Whether the points span a line at all. */
static PhRefused
span_of (const PhPhotoLine *line)
{
  double longest = 0;
  for (size_t i = 0; i < line->n; i++)
    for (size_t k = i + 1; k < line->n; k++)
      {
        double way = apart (&line->points[i], &line->points[k]);
        if (!isfinite (way))
          return PH_REFUSED_NOT_FINITE;
        if (way < PH_PHOTO_APART_PX)
          return PH_REFUSED_COINCIDE;
        longest = fmax (longest, way);
      }
  return longest < PH_PHOTO_LINE_LEAST_PX ? PH_REFUSED_SHORT : PH_NOT_REFUSED;
}

static void
take_mean (PhPhotoFit *fit, const PhPhotoLine *line)
{
  double weights = 0, x = 0, y = 0;
  for (size_t i = 0; i < line->n; i++)
    {
      const PhPhotoPoint *p = &line->points[i];
      double w = 1 / (p->sd_px * p->sd_px);
      weights += w;
      x += w * p->x;
      y += w * p->y;
    }
  fit->x = x / weights;
  fit->y = y / weights;
}

PhPhotoFit
ph_photo_fit (const PhPhotoLine *line)
{
  assert (line->n >= 2);
  PhPhotoFit fit = { span_of (line), NAN, NAN, NAN, NAN, NAN };
  double xx = 0, xy = 0, yy = 0;
  if (fit.refused)
    return fit;
  take_mean (&fit, line);
  for (size_t i = 0; i < line->n; i++)
    {
      const PhPhotoPoint *p = &line->points[i];
      double w = 1 / (p->sd_px * p->sd_px), x = p->x - fit.x, y = p->y - fit.y;
      xx += w * x * x;
      xy += w * x * y;
      yy += w * y * y;
    }
  double angle = atan2 (2 * xy, xx - yy) / 2;
  fit.dx = cos (angle);
  fit.dy = sin (angle);
  double along = xx * fit.dx * fit.dx + 2 * xy * fit.dx * fit.dy + yy * fit.dy * fit.dy;
  double across = fmax (0, xx + yy - along); /* Σ (distance from the line/σ)² */
  double scatter = line->n > 2 ? across / (double)(line->n - 2) : 0;
  if (scatter > PH_PHOTO_CROOKED_SD * PH_PHOTO_CROOKED_SD)
    return (PhPhotoFit){ PH_REFUSED_CROOKED, NAN, NAN, NAN, NAN, NAN };
  fit.sd_rad = sqrt (fmax (1, scatter) / along);
  return fit;
}

static PhPhotoReading
refuse (PhRefused why)
{
  return (PhPhotoReading){ why, NAN, NAN, NAN, NAN };
}

PhPhotoReading
ph_photo_read_lines (const PhPhotoLine *string, const PhPhotoLine *edge, bool mirrored)
{
  PhPhotoFit s = ph_photo_fit (string), e = ph_photo_fit (edge);
  if (s.refused || e.refused)
    return refuse (s.refused ? s.refused : e.refused);
  double cross = e.dx * s.dy - e.dy * s.dx, dot = e.dx * s.dx + e.dy * s.dy;
  /* y runs down: a positive turn from x to y is the way of the clock. Lines have no ends, so the
     angle is taken within a quarter turn. */
  double angle = dot < 0 ? atan2 (-cross, -dot) : atan2 (cross, dot);
  if (fabs (angle) >= PH_CANT_LIMIT_RAD)
    return refuse (PH_REFUSED_TOO_STEEP);
  return (PhPhotoReading){ .refused = PH_NOT_REFUSED,
                           .tilt_rad = mirrored ? -angle : angle,
                           .tilt_sd_rad = fmax (hypot (s.sd_rad, e.sd_rad), PH_PHOTO_SD_LEAST_RAD),
                           .marks = NAN,
                           .marks_sd = NAN };
}

/* In the picture, along the vial: from the middle between the lines to the bubble's middle. */
typedef struct
{
  double lx, ly, length; /* from the left line to the right one [px] */
  double along, across; /* of the bubble's middle [marks]; along: positive to the picture's right */
  double sd;            /* of along */
} Offset;

/* With L = l₂ − l₁ and d = b̄ − l̄, m = d·L/|L|²: ∂m/∂b = L/(2|L|²) of either end, and
   ∂m/∂l = −L/(2|L|²) ± (d − 2mL)/|L|², + for l₂. */
static Offset
offset_of (const PhPhotoPoint *l1, const PhPhotoPoint *l2, const PhPhotoPoint bubble[2])
{
  Offset o = { .lx = l2->x - l1->x, .ly = l2->y - l1->y };
  double square = o.lx * o.lx + o.ly * o.ly;
  double dx = (bubble[0].x + bubble[1].x - l1->x - l2->x) / 2;
  double dy = (bubble[0].y + bubble[1].y - l1->y - l2->y) / 2;
  o.length = sqrt (square);
  o.along = (dx * o.lx + dy * o.ly) / square;
  o.across = (dy * o.lx - dx * o.ly) / square;
  double hx = o.lx / (2 * square), hy = o.ly / (2 * square);
  double tx = (dx - 2 * o.along * o.lx) / square, ty = (dy - 2 * o.along * o.ly) / square;
  double by_bubble = hypot (hx, hy) * hypot (bubble[0].sd_px, bubble[1].sd_px);
  double by_first = hypot (-hx - tx, -hy - ty) * l1->sd_px;
  double by_second = hypot (-hx + tx, -hy + ty) * l2->sd_px;
  o.sd = hypot (by_bubble, hypot (by_first, by_second));
  return o;
}

PhPhotoReading
ph_photo_read_vial (const PhPhotoVial *vial, bool mirrored)
{
  const PhPhotoPoint *l1 = &vial->marks[0], *l2 = &vial->marks[1];
  double marks_apart = apart (l1, l2), bubble_long = apart (&vial->bubble[0], &vial->bubble[1]);
  if (!isfinite (marks_apart) || !isfinite (bubble_long))
    return refuse (PH_REFUSED_NOT_FINITE);
  if (marks_apart < PH_PHOTO_APART_PX || bubble_long < PH_PHOTO_APART_PX)
    return refuse (PH_REFUSED_COINCIDE);
  if (marks_apart < PH_PHOTO_VIAL_LEAST_PX)
    return refuse (PH_REFUSED_VIAL_SMALL);
  Offset o = l1->x < l2->x ? offset_of (l1, l2, vial->bubble) : offset_of (l2, l1, vial->bubble);
  /* Which line is the left one cannot be told of a vial that stands upright. */
  if (fabs (o.ly) >= o.lx)
    return refuse (PH_REFUSED_VIAL_STEEP);
  if (fabs (o.along) > PH_PHOTO_MARKS_MOST || fabs (o.across) > 1
      || bubble_long > 2 * PH_PHOTO_MARKS_MOST * o.length)
    return refuse (PH_REFUSED_BESIDE_VIAL);
  double marks = mirrored ? o.along : -o.along, tilt = marks * vial->rad_per_mark;
  if (fabs (tilt) >= PH_CANT_LIMIT_RAD)
    return refuse (PH_REFUSED_NOT_FINITE);
  double by_worth = isnan (vial->rad_per_mark_sd) ? 0 : marks * vial->rad_per_mark_sd;
  double sd = fmax (hypot (o.sd * vial->rad_per_mark, by_worth), PH_PHOTO_SD_LEAST_RAD);
  return (PhPhotoReading){ .refused = PH_NOT_REFUSED,
                           .tilt_rad = tilt,
                           .tilt_sd_rad = isnan (tilt) ? (double)NAN : sd,
                           .marks = marks,
                           .marks_sd = o.sd };
}
