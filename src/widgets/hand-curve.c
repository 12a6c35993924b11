/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The curve keeps the open rig's height above the grip–nock line: only its sideways moment varies.
 */
#include "widgets/hand-curve.h"

#include <math.h>

#include "base/units.h"
#include "model/compile.h"

/* Room around what is shown, and the least that is spanned. */
#define ROOM 0.12
#define LEAST_NM 0.2
#define LEAST_DEG 2.0

static PhHandPoint
point_of (const PhRoll *roll, const PhHand *hand)
{
  PhHandPoint point = { -roll->side_nm, NAN, NAN };
  double cant;
  if (ph_cant_predict (roll, hand->stiffness_nm_per_rad, hand->bias_nm, &cant) != PH_OK)
    return point;
  double s = roll->cos_beta * sin (cant);
  double by_cant = roll->cos_beta * cos (cant) / sqrt (1 - s * s);
  point.tilt_deg = ph_deg_from_rad (ph_cant_bubble (roll, cant));
  point.half_deg = PH_SD_90 * ph_deg_from_rad (ph_cant_sd (roll, hand, cant) * by_cant);
  return point;
}

static void
add_checks (PhHandCurve *curve, const PhRig *rig)
{
  const PhArcher *archer = &rig->archer;
  curve->n = archer->n_checks;
  curve->checks = g_new0 (PhHandPoint, curve->n + 1);
  for (size_t i = 0; i < curve->n; i++)
    {
      const PhCheck *check = &archer->checks[i];
      double beta = atan2 (check->nock_height_mm, check->draw_length_mm);
      double side = ph_from_milli (check->mass_g) * PH_GRAVITY * cos (beta)
                    * ph_from_milli (check->com_mm[1]);
      curve->checks[i] = (PhHandPoint){ -side, check->bubble_deg, PH_SD_90 * check->sd_deg };
    }
}

static void
span (PhHandCurve *curve, const PhHandPoint *point)
{
  double half = isnan (point->half_deg) ? 0 : point->half_deg;
  curve->lo_nm = fmin (curve->lo_nm, point->moment_nm);
  curve->hi_nm = fmax (curve->hi_nm, point->moment_nm);
  if (isnan (point->tilt_deg))
    return;
  curve->lo_deg = fmin (curve->lo_deg, point->tilt_deg - half);
  curve->hi_deg = fmax (curve->hi_deg, point->tilt_deg + half);
}

static void
widen (double *lo, double *hi, double least)
{
  double more = fmax ((*hi - *lo) * ROOM, (least - (*hi - *lo)) / 2);
  *lo -= more;
  *hi += more;
}

PhHandCurve
ph_hand_curve_of (const PhRig *rig, const PhReport *report)
{
  PhHandCurve curve = { 0 };
  add_checks (&curve, rig);
  curve.open = point_of (&report->roll, &report->hand);
  if (!report->hand_fitted)
    curve.open.tilt_deg = curve.open.half_deg = NAN;
  span (&curve, &curve.open); /* and plumb: 0 is in the span from the start */
  for (size_t i = 0; i < curve.n; i++)
    span (&curve, &curve.checks[i]);
  widen (&curve.lo_nm, &curve.hi_nm, LEAST_NM);
  widen (&curve.lo_deg, &curve.hi_deg, LEAST_DEG);
  for (int i = 0; i < PH_HAND_CURVE_POINTS; i++)
    {
      PhRoll roll = report->roll;
      double t = (double)i / (PH_HAND_CURVE_POINTS - 1);
      roll.side_nm = -(curve.lo_nm + (curve.hi_nm - curve.lo_nm) * t);
      curve.curve[i] = point_of (&roll, &report->hand);
      if (!report->hand_fitted)
        curve.curve[i].tilt_deg = curve.curve[i].half_deg = NAN;
    }
  return curve;
}

void
ph_hand_curve_clear (PhHandCurve *curve)
{
  g_clear_pointer (&curve->checks, g_free);
  curve->n = 0;
}

double
ph_plot_step (double span, int wanted)
{
  double rough = span / wanted, ten = pow (10, floor (log10 (rough)));
  double times = rough / ten;
  return ten * (times < 1.5 ? 1 : times < 3.5 ? 2 : times < 7.5 ? 5 : 10);
}
