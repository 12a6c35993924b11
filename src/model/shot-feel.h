/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the bow does at the shot, in words. The string's hold is gone at once and the bow starts to
 * turn about the grip with an angular acceleration a; in the 0.4 s in which an archer still holds
 * the form after a shot it turns by a/2 · (0.4 s)². The bounds are our own, no source: under 3° it
 * is not seen (0.65 rad/s²), from 15° on it is quick (3.27 rad/s²).
 */
#pragma once

#define PH_SHOT_SECONDS 0.4
#define PH_SHOT_SEEN_DEG 3.0
#define PH_SHOT_QUICK_DEG 15.0

typedef enum
{
  PH_SHOT_UNKNOWN, /* no inertia, no answer */
  PH_SHOT_STAYS,
  PH_SHOT_FORWARD_SLOWLY,
  PH_SHOT_FORWARD_QUICKLY,
  PH_SHOT_BACK_SLOWLY,
  PH_SHOT_BACK_QUICKLY
} PhShotFeel;

/** How far it has turned after PH_SHOT_SECONDS [deg], forward positive; NAN stays NAN. */
double ph_shot_turn_deg (double release_pitch_rad_s2);

PhShotFeel ph_shot_feel (double release_pitch_rad_s2);
