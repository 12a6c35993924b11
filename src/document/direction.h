/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Which way a part's angles turn it, as an archer says it: out and in where its end is off the
 * bow's plane, left and right near it, forward and back on a socket that points sideways. Read
 * from the compiled rig, since only there the ends have a place.
 */
#pragma once

#include <glib.h>

#include "model/compile.h"

G_BEGIN_DECLS

/** Nearer to the bow's plane than this, out and in are called left and right [m]. */
#define PH_DIRECTION_NEAR_PLANE_M 0.010

/** What the positive and the negative of a number mean. */
typedef enum
{
  PH_WAY_LEFT_RIGHT,   /* + left, − right: the end is near the bow's plane, or not fitted */
  PH_WAY_OUT_IN,       /* + out, − in: the end is on the archer's left */
  PH_WAY_IN_OUT,       /* + in, − out: on the right */
  PH_WAY_FORWARD_BACK, /* + forward, − back: the socket points sideways */
  PH_WAY_UP_DOWN,      /* + up, − down */
  PH_WAY_AHEAD_BEHIND, /* of the grip */
  PH_WAY_ABOVE_BELOW   /* the grip */
} PhWay;

/** `part` is an index in the compiled rig's parts. */
PhWay ph_way_of_swing (const PhCompiled *compiled, size_t part);
PhWay ph_way_of_lift (const PhCompiled *compiled, size_t part);
/** Of component 0–2 of a point from the grip. */
PhWay ph_way_of_position (int component);
/** The way that says a change from one state to the other: out and in where either end is off the
 * plane, left and right where it went through, or where the angle changed its sign (`crosses`) near
 * it. */
PhWay ph_way_of_change (PhWay before, PhWay after, gboolean crosses);

/** "out", "left", "ahead", … for a number of that sign (0 counts as positive). Translated. */
const char *ph_way_word (PhWay way, double value);

G_END_DECLS
