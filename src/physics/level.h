/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Level: the smallest change that brings the bubble where it is wanted. Every whole step of every
 * adjustable, and where no single one is enough every pair: exactly what trying them all would
 * find. Twelve adjustables with all their pairs take about 10 ms.
 */
#pragma once

#include "physics/answers.h"

/** With more adjustables than this, pairs are tried among those whose single comes nearest. */
#define PH_LEVEL_PAIRS_AMONG 40

typedef struct
{
  bool within;  /* the rig is within the tolerance already: there are no answers */
  bool limited; /* pairs were tried among PH_LEVEL_PAIRS_AMONG adjustables only */
  PhOutcome now;
  PhAnswers answers; /* in order */
} PhLevel;

/** Free with ph_level_clear. */
PhLevel ph_level_of (const PhTask *task, const PhWant *want);
/** The same from a scan that is there already. */
PhLevel ph_level_of_scan (const PhScan *scan, const PhWant *want);
/** Singles alone, in order, added to `answers`; whether one lands within the tolerance. */
bool ph_level_singles (const PhScan *scan, const PhWant *want, PhAnswers *answers);
void ph_level_clear (PhLevel *level);
/** The first answer of a single change in all of Level's order; false where there is none. Pairs
 * are only tried where they could change which that is. */
bool ph_level_first_single (const PhScan *scan, const PhWant *want, PhAnswer *first);

/** The steps of row i whose bubble is nearest the target (equally near: fewest, then the lower);
 * `*miss` is how far from it, INFINITY where none settles. */
int ph_level_nearest (const PhScan *scan, const PhWant *want, int i, double *miss);

/** Called for each combination of two adjustables i < j, both changed, that is clear of the string
 * and lands within the tolerance. */
typedef void (*PhPairVisit) (const PhAnswer *answer, void *data);
/** Visits them all. Only steps for which `allow` (null: all) says so. */
typedef bool (*PhPairAllow) (int adjustable, int steps, void *data);
void ph_level_pair (const PhScan *scan, const PhWant *want, int i, int j, PhPairAllow allow,
                    PhPairVisit visit, void *data);
