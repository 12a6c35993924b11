/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a lean may be while the hand is not known, and what it costs on the target. Pure functions,
 * no allocation. Tilts are the bubble's, in rad, positive when the top limb tips to the archer's
 * right (the bubble then sits to the left).
 */
#pragma once

#include <stdbool.h>

#include "physics/cant.h"

/** Loose and firm hands: the range of roll stiffness over which an unknown hand's lean is shown
 * [N·m/rad]. Our own, no source; every hand of it has no twist of its own (B = 0). */
#define PH_HAND_LOOSE 1.0
#define PH_HAND_FIRM 4.0

/** A range of tilts, lo ≤ hi; both NAN where no hand of the range holds the rig. */
typedef struct
{
  double lo_rad, hi_rad;
  bool some_topple; /* some hand of the range cannot hold the rig: that end is open */
} PhLeanRange;

/** Tilt at which a hand of that stiffness and no twist of its own holds the rig; NAN where it
 * topples. */
double ph_lean_tilt (const PhRoll *roll, double stiffness_nm_per_rad);

/** Tilts over all hands from loose to firm. A firmer hand always leans less (the zero of τ(φ) − Kφ
 * moves toward plumb as K grows), so the ends of the range are those of K; where the loosest hands
 * topple, the outer end is the tilt of the loosest that holds it, to 0.01 N·m/rad. */
PhLeanRange ph_lean_range (const PhRoll *roll);

/** Tilt of `to` less that of `from`, over the same hands: least and greatest of 25 stiffnesses
 * evenly apart in their logarithm, ends included. Hands that topple either rig are left out. */
PhLeanRange ph_lean_change_range (const PhRoll *from, const PhRoll *to);

/** How far an arrow falls below its line of departure on the way to the target, ½ g t² with
 * t = distance/speed [m]: no air drag, a level shot (a drag-free bound: a real arrow falls
 * farther). Distance ≥ 0 and speed > 0 (asserted). */
double ph_lean_drop (double distance_m, double speed_m_s);

/** Sideways miss of a sight that was set at the tilt `set_rad` and is shot at `tilt_rad`:
 * drop·(sin tilt − sin set) [m], positive to the archer's right. The sight's elevation turns with
 * the bow, so a top limb to the right sends the arrow right. */
double ph_lean_miss (double drop_m, double tilt_rad, double set_rad);
