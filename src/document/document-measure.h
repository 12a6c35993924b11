/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Measuring the open rig's bow: what readings would make of it, using them as one undo step, and
 * the readings that are kept with the rig. Computed on demand, a few milliseconds.
 */
#pragma once

#include "document/document.h"
#include "model/measure.h"
#include "model/sure.h"

G_BEGIN_DECLS

/** How the rig balances and settles, and how sure that is from the rig's own numbers (the hand
 * apart). */
typedef struct
{
  double com_mm[3], com_sd_mm[3];
  gboolean settles;
  double bubble_deg, bubble_sd_deg; /* NAN where it does not settle */
} PhStanding;

typedef struct
{
  PhMeasured measured;
  char *refusal; /* where a rig cannot have such a bow: why, as a sentence in the person's
                    words and units; null: it can, or `measured.refused` says why not */
  PhStanding before, after; /* the same where the reading is refused */
} PhMeasureAnswer;

/** Free with ph_measure_answer_clear. */
PhMeasureAnswer ph_document_measure (PhDocument *self, const PhReadings *readings);
void ph_measure_answer_clear (PhMeasureAnswer *answer);

/** Takes the readings over into the bow and keeps them with the rig: one undo step, "bow measured".
 * FALSE: the reading cannot be, error says why. */
gboolean ph_document_use_readings (PhDocument *self, const PhReadings *readings, GError **error);

/** The readings of that method (of a pendulum: of that axis, −1 any) that are kept with the rig.
 * `*parts_changed` (may be null): other parts are fitted now than when they were taken, so that the
 * readings do not hold for the rig as it stands. FALSE: there are none. Clear with
 * ph_readings_clear. */
gboolean ph_document_dup_readings (PhDocument *self, PhMethod method, int axis,
                                   PhReadings *readings, gboolean *parts_changed);

/** The guess that matters most for the bubble now; FALSE: none does. */
gboolean ph_document_guess_that_matters (PhDocument *self, PhMatters *matters);

G_END_DECLS
