/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the measuring page says: how each method is done safely, what came of it, what it changes,
 * and which guess matters most. Translated; no toolkit here.
 */
#pragma once

#include "document/document-measure.h"

G_BEGIN_DECLS

/** Borrowed. */
const char *ph_measure_gives (PhMethod method);
const char *ph_measure_how (PhMethod method);
const char *ph_measure_safety (void);

/** The result, its sources and what was taken out; or why the reading cannot be. (transfer full) */
char *ph_measure_result_words (const PhMeasureAnswer *answer, PhUnits units);
/** "67.8 ± 5.8 mm"; a NAN is "–". (transfer full) */
char *ph_measure_plus_minus (double value, double sd, PhQuantity quantity, PhUnits units);

/** "The guess that matters most now: the bow’s own side offset (guessed): ±1.1° of bubble."
 * (transfer full) */
char *ph_matters_words (const PhRig *rig, const PhMatters *matters);

G_END_DECLS
