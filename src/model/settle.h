/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What may be said about where the bubble comes to rest: everything a screen shows of it, worked
 * out once, with the honesty of an unknown hand built in. Tilts are the bubble's in rad, positive
 * when the top limb tips to the archer's right.
 */
#pragma once

#include "model/report.h"
#include "physics/lean.h"

typedef struct
{
  bool has_level;   /* a compound's sight carries a level; else the lean is read from a photo */
  bool hand_known;  /* at least one check is in use */
  bool settles;     /* false: no tilt, the reason is the report's */
  int heavy_side;   /* of the weight alone: −1 left, +1 right, 0 neither (ph_report_heavy_side) */
  double tilt_rad;  /* where it settles; by weight alone (K 2, B 0) while the hand is unknown, the
                       file's assumed K and B then left out; NAN when it does not settle */
  PhLeanRange band; /* known hand: the 90 % interval; else loose to firm hands. NANs where none */

  bool has_reference;
  double reference_tilt_rad; /* the reference rig in this hand; NAN: topples, or no reference */
  PhLeanRange change;        /* tilt less the reference's: one number twice for a known hand, a
                                range over hands else; NANs where one of them topples */
} PhSettle;

/** `report` is that of `rig`; `reference` may be null. Both rigs are judged by the open rig's hand,
 * each with its own draw geometry. */
PhSettle ph_settle_of (const PhRig *rig, const PhReport *report, const PhReport *reference);
