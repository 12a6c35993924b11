/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Readings while they are being typed: any number may still be missing (NAN). A plumb line is typed
 * as two points, where the bow hangs from and another point that the line crosses, since that is
 * what a tape can measure. No toolkit here.
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
  double line_sds[PH_DRAFT_LINES];     /* mm */
} PhMeasureDraft;

/** Nothing typed yet, deviations as model/measure.h has them. Owns nothing. */
PhMeasureDraft ph_measure_draft_empty (PhMethod method);
/** From readings that were taken before; lines beyond the third are left out. */
PhMeasureDraft ph_measure_draft_of (const PhReadings *readings);

/** Null: all is typed, and `*readings` is to be cleared with ph_readings_clear. Else what is still
 * missing or cannot be, as a translated sentence; borrowed. */
const char *ph_measure_draft_finish (const PhMeasureDraft *draft, PhReadings *readings);

G_END_DECLS
