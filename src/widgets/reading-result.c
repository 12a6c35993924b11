/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "widgets/reading-result.h"

#include <glib/gi18n.h>
#include <math.h>

#include "document/format.h"
#include "widgets/tilt-words.h"

char *
ph_reading_result_words (const PhReadingResult *result)
{
  PhReading reading = ph_reading_of (result->draws_deg, result->n_draws);
  if (result->sd_deg > 0)
    reading.sd_deg = result->sd_deg;
  g_autofree char *mean = ph_tilt_phrase (ph_reading_mean_deg (&reading), result->level);
  g_autofree char *sd = ph_format_number (ph_reading_sd_deg (&reading), 2);
  g_autofree char *first = g_utf8_strup (mean, 1);
  g_autoptr (GString) draws = g_string_new (NULL);
  for (size_t i = 0; i < result->n_draws; i++)
    {
      g_autofree char *words = ph_tilt_words (result->draws_deg[i], result->level);
      g_string_append_printf (draws, "%s%s", i ? ", " : "", words);
    }
  if (result->n_draws < 2)
    return g_strdup_printf (_ ("%s%s, give or take %s° (one draw)"), first, mean + 1, sd);
  return g_strdup_printf (_ ("%s%s, give or take %s° (%s)"), first, mean + 1, sd, draws->str);
}

char *
ph_reading_prediction_words (const PhReadingResult *result)
{
  if (isnan (result->predicted_deg))
    return g_strdup (_ ("Nothing was predicted: the assumed hand could not hold this rig."));
  g_autofree char *words = ph_tilt_words (result->predicted_deg, result->level);
  if (!result->own_hand)
    return g_strdup_printf (_ ("An assumed hand gave %s. This does not count as a prediction: from "
                               "the next check on, your own hand predicts."),
                            words);
  return g_strdup_printf (_ ("Predicted before it was read: %s."), words);
}

char *
ph_check_verdict_words (const PhCheck *check, const PhCheckRecord *record, gboolean level)
{
  if (!record->sealed)
    return NULL;
  g_autofree char *words = ph_tilt_words (check->predicted_deg, level);
  if (isnan (record->half_deg) && record->own_hand)
    return g_strdup_printf (_ ("predicted %s; how sure that was is not kept"), words);
  if (isnan (record->half_deg))
    return g_strdup (_ ("before it the hand was only assumed"));
  g_autofree char *half = ph_tilt_half (record->half_deg);
  return g_strdup_printf (
      record->held ? _ ("predicted %s %s: held") : _ ("predicted %s %s: missed"), words, half);
}

char *
ph_check_held_words (const PhCheckRecord *records, size_t n)
{
  size_t held, counted = ph_check_records_count (records, n, &held);
  if (counted == 0)
    return NULL;
  return g_strdup_printf (_ ("Predictions that held: %zu of %zu"), held, counted);
}
