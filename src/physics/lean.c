/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The lean of an unknown hand and its cost. A range costs two to about thirty solutions of the
 * equilibrium, some microseconds; a change of rigs fifty.
 */
#include "physics/lean.h"

#include <assert.h>
#include <math.h>

#include "base/units.h"

#define CHANGE_STEPS 24
#define HOLDS_TO 0.01

double
ph_lean_tilt (const PhRoll *roll, double stiffness_nm_per_rad)
{
  double cant;
  if (ph_cant_predict (roll, stiffness_nm_per_rad, 0.0, &cant) != PH_OK)
    return NAN;
  return ph_cant_bubble (roll, cant);
}

/* The loosest hand that holds a rig which the loosest of all does not, but the firmest does: the
 * hands that hold it are all those above some stiffness, so halving finds it. */
static double
loosest_that_holds (const PhRoll *roll)
{
  double falls = PH_HAND_LOOSE, holds = PH_HAND_FIRM;
  while (holds - falls > HOLDS_TO)
    {
      double middle = 0.5 * (falls + holds);
      if (isnan (ph_lean_tilt (roll, middle)))
        falls = middle;
      else
        holds = middle;
    }
  return holds;
}

PhLeanRange
ph_lean_range (const PhRoll *roll)
{
  PhLeanRange range = { NAN, NAN, false };
  double firm = ph_lean_tilt (roll, PH_HAND_FIRM);
  double loose = ph_lean_tilt (roll, PH_HAND_LOOSE);
  range.some_topple = isnan (loose);
  if (isnan (firm))
    return range;
  if (range.some_topple)
    loose = ph_lean_tilt (roll, loosest_that_holds (roll));
  range.lo_rad = fmin (firm, loose);
  range.hi_rad = fmax (firm, loose);
  return range;
}

PhLeanRange
ph_lean_change_range (const PhRoll *from, const PhRoll *to)
{
  PhLeanRange range = { NAN, NAN, false };
  for (int i = 0; i <= CHANGE_STEPS; i++)
    {
      double part = (double)i / CHANGE_STEPS;
      double hand = PH_HAND_LOOSE * pow (PH_HAND_FIRM / PH_HAND_LOOSE, part);
      double change = ph_lean_tilt (to, hand) - ph_lean_tilt (from, hand);
      if (isnan (change))
        range.some_topple = true;
      /* fmin and fmax pass over a NAN on either side. */
      range.lo_rad = fmin (range.lo_rad, change);
      range.hi_rad = fmax (range.hi_rad, change);
    }
  return range;
}

double
ph_lean_drop (double distance_m, double speed_m_s)
{
  assert (distance_m >= 0.0 && speed_m_s > 0.0);
  double flight = distance_m / speed_m_s;
  return 0.5 * PH_GRAVITY * flight * flight;
}

double
ph_lean_miss (double drop_m, double tilt_rad, double set_rad)
{
  return drop_m * (sin (tilt_rad) - sin (set_rad));
}
