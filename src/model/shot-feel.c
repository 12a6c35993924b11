/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "model/shot-feel.h"

#include <math.h>
#include <stdbool.h>

#include "base/units.h"

double
ph_shot_turn_deg (double release_pitch_rad_s2)
{
  return ph_deg_from_rad (0.5 * release_pitch_rad_s2 * PH_SHOT_SECONDS * PH_SHOT_SECONDS);
}

PhShotFeel
ph_shot_feel (double release_pitch_rad_s2)
{
  double turn = ph_shot_turn_deg (release_pitch_rad_s2);
  bool quick = fabs (turn) >= PH_SHOT_QUICK_DEG;
  if (isnan (turn))
    return PH_SHOT_UNKNOWN;
  if (fabs (turn) < PH_SHOT_SEEN_DEG)
    return PH_SHOT_STAYS;
  if (turn > 0.0)
    return quick ? PH_SHOT_FORWARD_QUICKLY : PH_SHOT_FORWARD_SLOWLY;
  return quick ? PH_SHOT_BACK_QUICKLY : PH_SHOT_BACK_SLOWLY;
}
