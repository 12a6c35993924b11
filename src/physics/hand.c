/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the fitted hand predicts, and the fit. The search for it is in hand-search.c, the sum that
 * it makes least in hand-sum.c.
 */
#include "physics/hand.h"

#include <math.h>

#include "physics/hand-sum.h"

double
ph_check_predict (const PhBubbleCheck *check, double stiffness_nm_per_rad, double bias_nm)
{
  double cant;
  if (ph_cant_predict (&check->roll, stiffness_nm_per_rad, bias_nm, &cant) != PH_OK)
    return bias_nm < check->roll.side_nm ? -PH_CANT_LIMIT_RAD : PH_CANT_LIMIT_RAD;
  return ph_cant_bubble (&check->roll, cant);
}

double
ph_check_residual (const PhBubbleCheck *check, const PhHand *hand)
{
  double predicted = ph_check_predict (check, hand->stiffness_nm_per_rad, hand->bias_nm);
  return (check->bubble_rad - predicted) / check->sd_rad;
}

PhStatus
ph_hand_fit (const PhBubbleCheck *checks, size_t n, PhHand *hand)
{
  PhHandData data = { checks, n };
  PhHandPoint best = { PH_HAND_STIFFNESS, 0, 0 };
  if (n > 0)
    best = ph_hand_search (&data);
  if (!isfinite (best.value))
    return PH_ERR_NO_CONVERGENCE;
  hand->stiffness_nm_per_rad = best.k;
  hand->bias_nm = best.b;
  ph_hand_set_covariance (&data, hand);
  return PH_OK;
}
