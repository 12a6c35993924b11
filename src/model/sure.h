/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How sure the balance point and the cant are, given how well each number of the rig is known
 * (model/uncertain.h), and which of them matters most. First order, all numbers independent; the
 * hand held as it is, its own covariance beside them.
 *
 * Not counted twice: bubble checks read on the very rig that is open have already taken up what
 * the bow's own side offset (com_mm, its y) is off by, since the fitted hand explains the reading
 * with that offset in it. So where a check in use (not aside) was read at this rig's mass within
 * 0.5 g and its mass centre within 0.05 mm in each component, the offset adds nothing to the cant;
 * to the balance point it still does.
 */
#pragma once

#include "model/uncertain.h"

/** A check counts as read on this very rig within these. */
#define PH_SAME_RIG_G 0.5
#define PH_SAME_RIG_MM 0.05

/** One key of the bow or of a part, its components together. */
typedef struct
{
  int part; /* −1 the bow */
  const char *key;
  size_t order; /* in the file */
  PhSource source;
  double cant_variance[3];        /* of each component [rad²]; NAN where the rig does not settle */
  double share;                   /* of the cant's variance, 0–1; NAN likewise */
  double if_measured_cant_sd_rad; /* of the cant, were this key measured; NAN likewise */
  bool is_open;                   /* not measured itself, or some component of it not */
} PhSureFrom;

typedef struct
{
  bool settles;
  double cant_sd_rad;      /* of the cant, from the rig's numbers alone; NAN unless it settles */
  double bubble_sd_rad;    /* the same seen on the bubble */
  double hand_cant_sd_rad; /* beside it: from the hand's covariance (its prior's while assumed) */
  bool hand_fitted;
  double com_sd_m[3]; /* of the balance point, from the rig's numbers */
  int absorbed_by;    /* a check read on this very rig, index in the archer's list; −1: none */
  PhSureFrom *from;   /* greatest share first, of equals in file order */
  size_t n;
} PhSure;

/** `rig` must have passed ph_check_rig. Costs some microseconds a number; clear with
 * ph_sure_clear. */
PhSure ph_sure_of (const PhRig *rig);
void ph_sure_clear (PhSure *sure);

/** The guess that matters most now. */
typedef struct
{
  int part; /* −1 the bow */
  const char *key;
  int component; /* of the key: the one the cant depends on most */
  PhSource source;
  double bubble_sd_rad; /* what its deviation alone does to the bubble */
} PhMatters;

/** The key whose measuring would make the cant surest, as long as its deviation moves the bubble by
 * 0.05° or more; of a bow that was measured too, where its own `sd` says that this number was left
 * open (two scales say nothing of the side). False where there is none, or where the rig does not
 * settle. For a page that says what to measure next. */
bool ph_sure_matters_most (const PhSure *sure, PhMatters *matters);
#define PH_MATTERS_LEAST_DEG 0.05

/** The check in use that was read on this very rig, or −1. */
int ph_sure_check_of_this_rig (const PhRig *rig);
