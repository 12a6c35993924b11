/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every number of a rig at once, SI, bow frame: what the window shows and plumbhold-calc prints.
 * What cannot be computed is NAN (or a null text), with its reason beside it.
 */
#pragma once

#include "model/compile.h"
#include "model/issue.h"
#include "physics/beam.h"
#include "physics/pitch.h"

typedef struct
{
  int part; /* index in rig->parts; −1 the bow */
  double mass_kg;
  PhVec3 com_m;           /* NANs for a part without mass */
  double roll_moment_nm;  /* −g m y cosβ */
  double pitch_moment_nm; /* g m x */
} PhShare;

typedef struct
{
  int part;
  PhBeam beam;
} PhBarBend;

typedef struct
{
  PhMassProperties mass;
  PhShare *shares; /* the bow first, then fitted parts in file order */
  size_t n_shares;

  PhRoll roll;
  PhHand hand;
  bool hand_fitted;      /* false: K and B are assumed */
  double roll_moment_nm; /* τ(0), positive tips to the archer's right */
  double above_line_m;   /* w; negative when the mass hangs below the grip–nock line */
  double gravity_stiffness_nm_per_rad;
  bool stable;                 /* settles within 60° */
  double cant_rad, bubble_rad; /* NAN when not stable */
  double cant_sd_rad;          /* NAN when not stable; the prior's while assumed */
  double cant_90_rad[2];       /* NAN while assumed or not stable */
  const char *reason;          /* English sentence when not stable, else null */

  PhPitch pitch;
  PhSym3 inertia_nock_kg_m2; /* about the nocking point */
  double cross_coupling;     /* |Ixz|/√(Ixx Izz) about P; NAN where not defined */

  double clearance_m;       /* least of the rig; NAN where not defined or nothing counts */
  int clearance_part;       /* index in rig->parts, −1 */
  double *part_clearance_m; /* one a rig part; NAN where not counted */
  size_t n_parts;

  double front_g, back_g, side_g; /* discs of fitted stacks by where their mass centre is:
     ahead of the grip; behind it within 60 mm of the bow's plane; behind it and farther out */

  PhBarBend *bars; /* flexible fitted bars, file order */
  size_t n_bars;

  PhIssues notes; /* of the loaded rig and of these results (clearance) */
} PhReport;

/** `rig` must have passed ph_check_rig. `compiled` is its compilation. */
PhReport *ph_report_new (const PhRig *rig, const PhCompiled *compiled);
void ph_report_free (PhReport *report);

/** The sentence under the lean: "Left side heavy", … is the screen's; this is the sign: −1 the
 * left is heavy (bow leans left, bubble runs right), +1 the right, 0 neither by more than
 * 0.0005 N·m. */
int ph_report_heavy_side (const PhReport *report);
