/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where the bow settles. The torque f(φ) = −side·cosφ + top·sinφ − Kφ + B has at most one rising
 * stretch within ±60° on the side it pushes to, and its ends are known in closed form; so the
 * first zero lies in a stretch where f falls, found by a safeguarded Newton. About 100 ns.
 */
#include "physics/cant.h"

#include <assert.h>
#include <float.h>
#include <math.h>
#include <stdbool.h>

#include "base/units.h"

PhRoll
ph_roll_of (double mass_kg, PhVec3 com_m, const PhDraw *draw)
{
  double cos_beta = ph_draw_cos_beta (draw);
  double pull = mass_kg * PH_GRAVITY * cos_beta;
  return (PhRoll){ pull * com_m.y, pull * ph_draw_height_above_line (draw, com_m), cos_beta };
}

double
ph_roll_torque (const PhRoll *roll, double cant_rad)
{
  return roll->top_nm * sin (cant_rad) - roll->side_nm * cos (cant_rad);
}

double
ph_roll_stiffness (const PhRoll *roll, double cant_rad)
{
  return -roll->side_nm * sin (cant_rad) - roll->top_nm * cos (cant_rad);
}

/* The torque toward the side it pushes to at plumb, g(ψ) = side·cosψ + top·sinψ − Kψ + B with
   ψ ≥ 0 and g(0) > 0: a push to the left is mirrored. */
typedef struct
{
  double side, top, stiffness, bias;
} Push;

static double
push_at (const Push *push, double angle)
{
  return push->side * cos (angle) + push->top * sin (angle) - push->stiffness * angle + push->bias;
}

/* The zero in [lo, hi], where g falls from above 0 to 0 or below. */
static double
settle_between (const Push *push, double lo, double hi, double guess)
{
  double angle = guess > lo && guess < hi ? guess : 0.5 * (lo + hi);
  double most = fabs (push->side) + fabs (push->top);
  for (int step = 0; step < 100; step++)
    {
      double s = sin (angle), c = cos (angle);
      double level = push->side * c + push->top * s;
      double value = level - push->stiffness * angle + push->bias;
      double slope = push->top * c - push->side * s - push->stiffness;
      if (value > 0)
        lo = angle;
      else
        hi = angle;
      double next = angle - value / slope;
      /* Also where the slope is 0 or of the wrong sign: then next is no number or outside. */
      if (!(next >= lo && next <= hi))
        next = 0.5 * (lo + hi);
      else
        {
          /* Newton's next error is about (g″ δ²/2 + g‴ δ³/3)/g′, and g″ = −level. */
          double change = next - angle;
          double curve = fabs (level) + most * fabs (change);
          if (curve * change * change <= -slope * next * (DBL_EPSILON / 2))
            return next;
        }
      if (next == angle)
        break;
      angle = next;
    }
  return angle;
}

/* Finds the stretch within (0, 60°] in which g first falls to 0. */
static PhStatus
settle (const Push *push, double *angle)
{
  double limit = PH_CANT_LIMIT_RAD, lo = 0, hi = limit;
  double square = push->side * push->side + push->top * push->top;
  if (square > push->stiffness * push->stiffness)
    {
      /* g′ = R cos(ψ − centre) − K is above 0 within centre ± half, half < 90°; the same stretch
         a turn further lies outside 0 … 60°. */
      double half = acos (push->stiffness / sqrt (square));
      double centre = -atan2 (push->side, push->top);
      double rise_from = centre - half, rise_to = centre + half;
      if (rise_to > 0 && rise_from < limit)
        {
          if (rise_from > 0 && push_at (push, rise_from) <= 0)
            hi = rise_from;
          else if (rise_to < limit)
            lo = rise_to;
          else
            return PH_ERR_TOPPLES;
        }
    }
  if (hi == limit && push_at (push, limit) > 0)
    return PH_ERR_TOPPLES;
  double at_plumb = push->side + push->bias;
  *angle = settle_between (push, lo, hi, at_plumb / (push->stiffness - push->top));
  return PH_OK;
}

PhStatus
ph_cant_predict (const PhRoll *roll, double stiffness_nm_per_rad, double bias_nm, double *cant_rad)
{
  assert (stiffness_nm_per_rad > 0);
  double torque = bias_nm - roll->side_nm;
  if (torque == 0)
    {
      if (!(roll->top_nm < stiffness_nm_per_rad))
        return PH_ERR_TOPPLES;
      *cant_rad = 0;
      return PH_OK;
    }
  bool right = torque > 0;
  Push push = { right ? -roll->side_nm : roll->side_nm, roll->top_nm, stiffness_nm_per_rad,
                right ? bias_nm : -bias_nm };
  double angle;
  PhStatus status = settle (&push, &angle);
  if (status == PH_OK)
    *cant_rad = right ? angle : -angle;
  return status;
}

double
ph_cant_bubble (const PhRoll *roll, double cant_rad)
{
  return asin (roll->cos_beta * sin (cant_rad));
}

double
ph_cant_sd (const PhRoll *roll, const PhHand *hand, double cant_rad)
{
  double variance = cant_rad * cant_rad * hand->kk - 2 * cant_rad * hand->kb + hand->bb;
  double stiffness = hand->stiffness_nm_per_rad + ph_roll_stiffness (roll, cant_rad);
  return sqrt (fmax (variance, 0)) / stiffness;
}
