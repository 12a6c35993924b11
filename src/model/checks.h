/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Edits of what the archer teaches the rig: bubble checks, and what may change (limits) or how well
 * a number is known (source). As in model/edit.h a change that would break the rig is refused with
 * an issue and leaves it as it was. Locks: ph_edit_set_locked; the wanted bubble:
 * ph_edit_set_archer_number with "wanted_bubble_deg".
 */
#pragma once

#include "model/edit.h"
#include "model/report.h"

/** A check is one to three draws, stored as one. */
#define PH_DRAWS_MOST 3
/** Standard deviation of a single draw, and the least that the mean of several may claim [deg]. */
#define PH_DRAW_SD_DEG 0.3
#define PH_DRAWS_SD_LEAST_DEG 0.15

/** What a helper read. */
typedef struct
{
  const double *draws_deg; /* 1 to 3 bubble tilts, each |b| < 60° */
  size_t n_draws;
  double sd_deg;            /* NAN: max (0.15, s/√n) of several draws, 0.3 of one */
  const char *date;         /* "2026-03-01"; null: none */
  const char *note;         /* null or empty: none */
  double predicted_deg;     /* what was predicted before the reading; NAN: nothing */
  const char *predicted_at; /* when, ISO 8601; null: not said */
  double predicted_90_deg;  /* how sure that was: ph_checks_sure_deg; NAN: it was not */
} PhReading;

/** A reading with nothing in it but its draws. */
PhReading ph_reading_of (const double *draws_deg, size_t n_draws);

/** Mean and standard deviation of a reading's draws, as they are stored. */
double ph_reading_mean_deg (const PhReading *reading);
double ph_reading_sd_deg (const PhReading *reading);

/** What the rig's hand predicts for the rig as it stands [deg]: to be sealed before the reading.
 * NAN where it does not settle. */
double ph_checks_predict_deg (const PhRig *rig);
/** How sure that is: half of the bubble's 90 % interval [deg], the reading's own scatter apart. To
 * be sealed beside it. NAN where the hand is only assumed or cannot hold the rig. */
double ph_checks_sure_deg (const PhReport *report);

/** Records a reading of the rig as it stands: its mass, mass centre and draw are filled in.
 * `*index`, where given, is its place. */
bool ph_edit_add_check (PhRig *rig, const PhReading *reading, size_t *index, PhIssues *issues);
/** Other draws, deviation, date and note for check i; the rig that it was read on and the sealed
 * prediction stay. */
bool ph_edit_change_check (PhRig *rig, size_t i, const PhReading *reading, PhIssues *issues);
/** Set aside: kept and listed, not used. */
void ph_edit_set_check_aside (PhRig *rig, size_t i, bool aside);
void ph_edit_delete_check (PhRig *rig, size_t i);

/** Limits of a part's "swing_deg", "lift_deg" or "count" (its kind must know the key: asserted). A
 * present value outside stretches them. */
bool ph_edit_set_limits (PhRig *rig, size_t i, const char *key, double lo, double hi,
                         PhIssues *issues);
/** Back to the program's default. */
void ph_edit_clear_limits (PhRig *rig, size_t i, const char *key);

/** How well part i's (i < 0: the bow's) numbers are known. */
void ph_edit_set_source (PhRig *rig, int i, PhSource source);

/** Whether the text is a day of the calendar as "2026-03-01". */
bool ph_is_date (const char *text);
