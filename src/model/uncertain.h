/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How well each number of a rig is known, and how a result moves with each: the inputs of first
 * order propagation. The bow and every part carry a source; where no `sd` is stated it stands for
 * these deviations (our own, common practice, no source), guessed / catalogue / measured:
 * bow mass 150 / 40 / 3 g, bow com_mm 12, 4, 12 / 8, 3, 8 / 2, 2, 2 mm, bow gyration_mm 12 / 8 /
 * 3 %; a part's mass (a stack's: each_g) 8 / 3 / 0.5 %, a bracket's com_mm or accessory's at_mm 8 /
 * 4 / 1 mm; the swing and lift of a bar or bracket 1° whatever the source. A source that is not
 * stated is catalogue. A stated sd of any other number counts too.
 */
#pragma once

#include "model/compile.h"
#include "model/fields.h"

/** One number (one component of a vector) that is not known exactly. */
typedef struct
{
  int part; /* index in rig->parts; −1 the bow */
  const PhField *field;
  int component;      /* 0–2 of a vector, else 0 */
  double sd;          /* above 0, in the field's own unit */
  double measured_sd; /* what it would be once measured: never more than sd */
  PhSource source;    /* never PH_SOURCE_UNSTATED */
  bool is_open;       /* not measured itself: the source says so, or `sd` is still a guess's or a
                         catalogue's (two scales say nothing of the side) */
} PhUncertain;

typedef struct
{
  PhUncertain *items; /* bow first, then fitted parts in file order, fields in the file's order */
  size_t n;
} PhUncertains;

/** All of a checked rig whose deviation is above 0. Free with ph_uncertains_clear. */
PhUncertains ph_uncertains_of (const PhRig *rig);
void ph_uncertains_clear (PhUncertains *list);

/** Deviation of one number of part `part` (−1: the bow), stated or by source; 0 where neither says
 * anything. The part must know the key (asserted). */
double ph_uncertain_sd (const PhRig *rig, int part, const char *key, int component);

/** "guessed", "catalogue" or "measured". */
const char *ph_source_word (PhSource source);
/** PH_SOURCE_CATALOGUE for one that is not stated. */
PhSource ph_source_meant (PhSource source);

/** Most values that are followed at once. */
#define PH_SLOPES_MOST 4

/** Works out `values` of a compiled rig. */
typedef void (*PhRigValues) (const PhCompiled *compiled, void *data, double *values);

/** Change of each of n values per unit of each item, by central differences (one-sided at the end
 * of a field's range, and where a part's frame would turn over: physics, section 2): a new array of
 * list->n rows of n. Costs two updates of a part an item. */
double *ph_uncertain_slopes (const PhRig *rig, const PhUncertains *list, PhRigValues values,
                             size_t n, void *data);
