/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A known hand costs one more solution of the equilibrium (the reference's), an unknown one some
 * fifty with a reference and two without: microseconds either way.
 */
#include "model/settle.h"

#include <math.h>

#define QUARTER_TURN_RAD 1.5707963267948966

/* The interval is symmetric in the cant; a wide one may pass a quarter turn, where the bubble's
 * tilt would come back: it is cut there. */
static PhLeanRange
known_band (const PhReport *report)
{
  PhLeanRange band = { NAN, NAN, false };
  if (isnan (report->cant_90_rad[0]))
    return band;
  band.lo_rad = ph_cant_bubble (&report->roll, fmax (report->cant_90_rad[0], -QUARTER_TURN_RAD));
  band.hi_rad = ph_cant_bubble (&report->roll, fmin (report->cant_90_rad[1], QUARTER_TURN_RAD));
  return band;
}

static double
tilt_in_hand (const PhRoll *roll, const PhHand *hand)
{
  double cant;
  if (ph_cant_predict (roll, hand->stiffness_nm_per_rad, hand->bias_nm, &cant) != PH_OK)
    return NAN;
  return ph_cant_bubble (roll, cant);
}

static void
compare (PhSettle *settle, const PhReport *report, const PhReport *reference)
{
  settle->has_reference = true;
  if (!settle->hand_known)
    {
      settle->reference_tilt_rad = ph_lean_tilt (&reference->roll, PH_HAND_STIFFNESS);
      settle->change = ph_lean_change_range (&reference->roll, &report->roll);
      return;
    }
  settle->reference_tilt_rad = tilt_in_hand (&reference->roll, &report->hand);
  settle->change.lo_rad = settle->tilt_rad - settle->reference_tilt_rad;
  settle->change.hi_rad = settle->change.lo_rad;
}

PhSettle
ph_settle_of (const PhRig *rig, const PhReport *report, const PhReport *reference)
{
  PhSettle settle = {
    .has_level = rig->bow.kind == PH_BOW_COMPOUND,
    .hand_known = report->hand_fitted,
    .heavy_side = ph_report_heavy_side (report),
    .reference_tilt_rad = NAN,
    .change = { NAN, NAN, false },
  };
  if (settle.hand_known)
    {
      settle.tilt_rad = report->stable ? report->bubble_rad : (double)NAN;
      settle.band = known_band (report);
    }
  else
    {
      settle.tilt_rad = ph_lean_tilt (&report->roll, PH_HAND_STIFFNESS);
      settle.band = ph_lean_range (&report->roll);
    }
  settle.settles = !isnan (settle.tilt_rad);
  if (reference)
    compare (&settle, report, reference);
  return settle;
}
