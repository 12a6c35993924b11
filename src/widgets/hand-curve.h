/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the hand's plot shows: where each check was read, what the fitted hand makes of any roll
 * moment for a rig as the open one, and where the open rig stands. No toolkit here.
 */
#pragma once

#include <glib.h>

#include "model/report.h"
#include "model/rig.h"

G_BEGIN_DECLS

#define PH_HAND_CURVE_POINTS 61

typedef struct
{
  double moment_nm; /* roll moment at plumb, positive tips to the archer's right */
  double tilt_deg;  /* of the bubble; the file's sign */
  double half_deg;  /* half of its 90 % interval; NAN where there is none */
} PhHandPoint;

typedef struct
{
  PhHandPoint *checks; /* one a check, those set aside too */
  size_t n;
  PhHandPoint open;                        /* the open rig; tilt NAN where it does not settle */
  PhHandPoint curve[PH_HAND_CURVE_POINTS]; /* tilt NAN where that rig would not settle */
  double lo_nm, hi_nm, lo_deg, hi_deg;     /* what the plot spans */
} PhHandCurve;

/** `report` is that of `rig`. Without a fitted hand the curve is all NAN. */
PhHandCurve ph_hand_curve_of (const PhRig *rig, const PhReport *report);
void ph_hand_curve_clear (PhHandCurve *curve);

/** A round step (1, 2 or 5 times a power of ten) of which about `wanted` fit into `span` > 0. */
double ph_plot_step (double span, int wanted);

G_END_DECLS
