/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "widgets/check-draws.h"

#include <math.h>

#include "widgets/tilt-words.h"

PhCheckDraws
ph_check_draws_none (void)
{
  PhCheckDraws draws = { .was_sd_deg = NAN };
  for (guint i = 0; i < PH_DRAWS_MOST; i++)
    draws.photo_sd_deg[i] = NAN;
  return draws;
}

PhCheckDraws
ph_check_draws_of (const PhCheck *check)
{
  PhCheckDraws draws = ph_check_draws_none ();
  draws.n = (guint)CLAMP (check->n_draws, 1, PH_DRAWS_MOST);
  draws.deg[0] = check->bubble_deg;
  for (guint i = 0; i < draws.n && check->n_draws > 0; i++)
    draws.deg[i] = check->draws_deg[i];
  draws.was_n = draws.n;
  draws.was_sd_deg = check->sd_deg;
  memcpy (draws.was_deg, draws.deg, sizeof draws.deg);
  return draws;
}

void
ph_check_draws_take (PhCheckDraws *draws, guint i, double deg, double photo_sd_deg)
{
  g_return_if_fail (i < PH_DRAWS_MOST && i <= draws->n);
  draws->deg[i] = deg;
  draws->photo_sd_deg[i] = photo_sd_deg;
  draws->n = MAX (draws->n, i + 1);
}

gboolean
ph_check_draws_from_photo (const PhCheckDraws *draws)
{
  for (guint i = 0; i < draws->n; i++)
    if (!isnan (draws->photo_sd_deg[i]))
      return TRUE;
  return FALSE;
}

char *
ph_check_draws_words (const PhCheckDraws *draws, guint n, gboolean level)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *words = ph_tilt_words (draws->deg[i], level);
      g_string_append_printf (text, "%s%s", i ? ", " : "", words);
    }
  return g_string_free (text, FALSE);
}

static gboolean
are_as_they_were (const PhCheckDraws *draws)
{
  gboolean same = draws->was_n > 0 && draws->n == draws->was_n;
  for (guint i = 0; same && i < draws->n; i++)
    same = draws->deg[i] == draws->was_deg[i] && isnan (draws->photo_sd_deg[i]);
  return same;
}

PhReading
ph_check_draws_reading (const PhCheckDraws *draws)
{
  PhReading reading = ph_reading_of (draws->deg, draws->n);
  double squares = 0;
  for (guint i = 0; i < draws->n; i++)
    if (!isnan (draws->photo_sd_deg[i]))
      squares += draws->photo_sd_deg[i] * draws->photo_sd_deg[i];
  reading.sd_deg = are_as_they_were (draws)
                       ? draws->was_sd_deg
                       : fmax (ph_reading_sd_deg (&reading), sqrt (squares) / draws->n);
  return reading;
}
