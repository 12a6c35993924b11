/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What was read and what had been predicted, as sentences. No toolkit here.
 */
#pragma once

#include <glib.h>

#include "model/check-record.h"
#include "model/checks.h"

G_BEGIN_DECLS

typedef struct
{
  const double *draws_deg;
  size_t n_draws;
  double predicted_deg; /* NAN: nothing was predicted */
  gboolean own_hand;    /* the prediction rested on this archer's own hand */
  gboolean level;
  double sd_deg; /* of the mean; 0: as the draws scatter */
} PhReadingResult;

/** "Bubble 0.6° left, give or take 0.2° (0.5° left, 0.6° left, 0.8° left)". New string. */
char *ph_reading_result_words (const PhReadingResult *result);
/** "Predicted before it was read: 0.4° left." New string. */
char *ph_reading_prediction_words (const PhReadingResult *result);

/** A check in the list: "predicted 0.4° left ± 0.6°: held"; null where nothing was predicted. */
char *ph_check_verdict_words (const PhCheck *check, const PhCheckRecord *record, gboolean level);
/** "Predictions that held: 3 of 4"; null where there were none. New string. */
char *ph_check_held_words (const PhCheckRecord *records, size_t n);

G_END_DECLS
