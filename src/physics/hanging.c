/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Normal equations of three unknowns, about the first line's point so that no digits are lost.
 * With lines 10° apart their condition number stays below about 130 for equal deviations.
 */
#include "physics/hanging.h"

#include <math.h>
#include <stdbool.h>

#include "base/units.h"

static PhSym3
projector (PhVec3 n, double weight)
{
  return (PhSym3){ weight * (n.y * n.y + n.z * n.z),
                   weight * (n.x * n.x + n.z * n.z),
                   weight * (n.x * n.x + n.y * n.y),
                   -weight * n.x * n.y,
                   -weight * n.x * n.z,
                   -weight * n.y * n.z };
}

static PhSym3
inverse (PhSym3 s)
{
  PhSym3 c = { s.yy * s.zz - s.yz * s.yz, s.xx * s.zz - s.xz * s.xz, s.xx * s.yy - s.xy * s.xy,
               s.xz * s.yz - s.xy * s.zz, s.xy * s.yz - s.xz * s.yy, s.xy * s.xz - s.yz * s.xx };
  double k = 1 / (s.xx * c.xx + s.xy * c.xy + s.xz * c.xz);
  return (PhSym3){ c.xx * k, c.yy * k, c.zz * k, c.xy * k, c.xz * k, c.yz * k };
}

static bool
all_alike (const PhPlumbLine *lines, size_t n)
{
  double least_sine = sin (ph_rad_from_deg (PH_HANGING_ANGLE_DEG));
  for (size_t i = 0; i < n; i++)
    for (size_t k = i + 1; k < n; k++)
      if (ph_vec3_length (ph_vec3_cross (lines[i].direction, lines[k].direction)) >= least_sine)
        return false;
  return true;
}

static double
distance (const PhPlumbLine *line, PhVec3 at)
{
  return ph_vec3_length (ph_vec3_cross (ph_vec3_sub (at, line->point_m), line->direction));
}

PhHanging
ph_hanging_of (const PhPlumbLine *lines, size_t n)
{
  PhHanging result = {
    PH_REFUSED_PARALLEL, { NAN, NAN, NAN }, { NAN, NAN, NAN, NAN, NAN, NAN }, NAN
  };
  if (all_alike (lines, n))
    return result;
  PhSym3 sum = { 0, 0, 0, 0, 0, 0 };
  PhVec3 right = { 0, 0, 0 };
  for (size_t i = 0; i < n; i++)
    {
      PhSym3 across = projector (lines[i].direction, 1 / (lines[i].sd_m * lines[i].sd_m));
      PhVec3 from_first = ph_vec3_sub (lines[i].point_m, lines[0].point_m);
      sum = ph_sym3_add (sum, across);
      right = ph_vec3_add (right, ph_sym3_apply (across, from_first));
    }
  PhSym3 covariance = inverse (sum);
  PhVec3 com = ph_vec3_add (lines[0].point_m, ph_sym3_apply (covariance, right));
  result.spread_m = 0;
  for (size_t i = 0; i < n; i++)
    result.spread_m = fmax (result.spread_m, distance (&lines[i], com));
  result.refused = result.spread_m > PH_HANGING_SPREAD_M ? PH_REFUSED_APART : PH_NOT_REFUSED;
  if (result.refused)
    return result;
  result.com_m = com;
  result.covariance_m2 = covariance;
  return result;
}
