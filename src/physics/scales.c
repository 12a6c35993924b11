/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * With F = F₁ + F₂, m = F/g − parts and x = (F₂ d/g − S)/m:
 * ∂x/∂F₁ = −x/(g m), ∂x/∂F₂ = (d − x)/(g m), ∂x/∂d = F₂/(g m).
 */
#include "physics/scales.h"

#include <math.h>

#include "base/units.h"

PhScalesResult
ph_scales_result (const PhScales *scales, double parts_kg, double parts_kg_m)
{
  PhScalesResult result = { PH_NOT_REFUSED, NAN, NAN, NAN, NAN };
  double mass = (scales->f1_n + scales->f2_n) / PH_GRAVITY - parts_kg;
  if (!(scales->f1_n + scales->f2_n > 0))
    result.refused = PH_REFUSED_NO_WEIGHT;
  else if (scales->d_m == 0)
    result.refused = PH_REFUSED_ONE_PLACE;
  else if (!(mass > 0))
    result.refused = PH_REFUSED_PARTS_HEAVY;
  if (result.refused)
    return result;
  double left_n = PH_GRAVITY * mass;
  result.mass_kg = mass;
  result.mass_sd_kg = sqrt (2) * scales->sd_n / PH_GRAVITY;
  result.x_m = (scales->f2_n * scales->d_m - PH_GRAVITY * parts_kg_m) / left_n;
  double by_first = result.x_m / left_n * scales->sd_n;
  double by_second = (scales->d_m - result.x_m) / left_n * scales->sd_n;
  double by_distance = scales->f2_n / left_n * scales->sd_m;
  result.x_sd_m = hypot (hypot (by_first, by_second), by_distance);
  return result;
}
