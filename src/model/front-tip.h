/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Front pull in the words of the trade: as so much weight at the tip of the front bar. The front
 * bar is the first fitted bar in file order that points forward (d·x > 0.7, the program's rule for
 * a front bar); its tip is the farthest far end of that bar and of all that hangs beyond it, so
 * that a stack at its end is part of it.
 */
#pragma once

#include "model/report.h"

/** Pieces whose direction has more than this along x point forward. */
#define PH_POINTS_FORWARD 0.7

typedef struct
{
  int bar;          /* index in rig->parts of the front bar; −1: the rig has none */
  double ahead_m;   /* its tip from the grip throat, along x; NAN without a bar */
  double weight_kg; /* the mass that would pull as much there, pitch moment/(g · ahead): negative
                       where the rig is back-heavy; NAN without a bar or with its tip not ahead */
} PhFrontTip;

/** `compiled` and `report` must be those of one rig. */
PhFrontTip ph_front_tip (const PhCompiled *compiled, const PhReport *report);
