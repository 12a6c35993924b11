/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Readings while they are being typed: any number may still be missing (NAN). A plumb line is typed
 * as where the bow hangs from and either another point that the line crosses, which a tape can
 * measure, or the line's two angles, which a level laid on the riser can. No toolkit here.
 */
#pragma once

#include <glib.h>

#include "model/measure.h"

G_BEGIN_DECLS

/** The third line may be left out. */
#define PH_DRAFT_LINES 3

typedef struct
{
  PhReadings readings;                 /* all but the lines */
  double points[PH_DRAFT_LINES][2][3]; /* hung from; crosses [mm, bow frame] */
  gboolean by_angle[PH_DRAFT_LINES];   /* the angles count instead of the second point */
  double angles[PH_DRAFT_LINES][2];    /* [deg] as in ph_measure_direction */
  double line_sds[PH_DRAFT_LINES];     /* mm */
} PhMeasureDraft;

/** Direction of a plumb line, downward, of unit length, in the bow frame: seen from the side it
 * runs `side_deg` off the bow's vertical, positive when it runs ahead on its way down; out of the
 * bow's plane it runs `across_deg`, positive to the archer's left on its way down. */
void ph_measure_direction (double side_deg, double across_deg, double direction[3]);
/** The two angles of a direction of any length above 0. */
void ph_measure_angles (const double direction[3], double *side_deg, double *across_deg);

/** Nothing typed yet, deviations as model/measure.h has them. Owns nothing. */
PhMeasureDraft ph_measure_draft_empty (PhMethod method);
/** From readings that were taken before; lines beyond the third are left out. A direction of unit
 * length, as ph_measure_direction makes it, comes back as angles, any other as a second point. */
PhMeasureDraft ph_measure_draft_of (const PhReadings *readings);

/** Null: all is typed, and `*readings` is to be cleared with ph_readings_clear. Else what is still
 * missing or cannot be, as a translated sentence; borrowed. */
const char *ph_measure_draft_finish (const PhMeasureDraft *draft, PhReadings *readings);

G_END_DECLS
