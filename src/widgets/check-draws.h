/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The draws of one check while it is read: each its tilt and, where it came from a photo, how well
 * that photo tells it. No toolkit here.
 */
#pragma once

#include <glib.h>

#include "model/checks.h"

G_BEGIN_DECLS

typedef struct
{
  double deg[PH_DRAWS_MOST];          /* in the file's sign */
  double photo_sd_deg[PH_DRAWS_MOST]; /* NAN: not from a photo */
  guint n;
  /* A check that is put right, as it stood: while its draws stay, so does its deviation. */
  double was_deg[PH_DRAWS_MOST], was_sd_deg;
  guint was_n; /* 0: a new check */
} PhCheckDraws;

/** None; a new check. */
PhCheckDraws ph_check_draws_none (void);
PhCheckDraws ph_check_draws_of (const PhCheck *check);

/** Draw `i`, at most one beyond the last. */
void ph_check_draws_take (PhCheckDraws *draws, guint i, double deg, double photo_sd_deg);
gboolean ph_check_draws_from_photo (const PhCheckDraws *draws);

/** The first `n` in words: "0.4° left, 0.6° left". New string. */
char *ph_check_draws_words (const PhCheckDraws *draws, guint n, gboolean level);
/** As it will be stored (borrows the draws). Its deviation is that of any draws, which counts how
 * alike an archer's draws are, unless the photos tell them worse: √(Σ sd²)/n. */
PhReading ph_check_draws_reading (const PhCheckDraws *draws);

G_END_DECLS
