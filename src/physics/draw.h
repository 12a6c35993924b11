/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The full-draw geometry and the archer's own numbers, SI.
 */
#pragma once

#include "math/vec3.h"

typedef struct
{
  double draw_length_m;    /* true draw length: nocking point to grip pivot, above 0 */
  double nock_height_m;    /* nocking point above P */
  double holding_weight_n; /* at full draw */
  double stature_m;        /* above 0 */
  double body_mass_kg;     /* above 0 */
  double brace_height_m;   /* NAN where the bow states none */
  double axle_to_axle_m;   /* recurve: tip to tip, strung; NAN where the bow states none */
} PhDraw;

/** The nocking point N = (−draw_length, 0, nock_height), bow frame. */
PhVec3 ph_draw_nock (const PhDraw *draw);

/** cos β of the line from nock to grip about which the held bow can turn, tan β = nock height /
 * draw length. */
double ph_draw_cos_beta (const PhDraw *draw);

/** Height of the point above that line, w = x sin β + z cos β [m]; negative below. */
double ph_draw_height_above_line (const PhDraw *draw, PhVec3 point_m);
