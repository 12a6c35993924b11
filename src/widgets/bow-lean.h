/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The lean as the views draw it and say it: by the fitted hand, or by weight alone while the hand
 * is not known. No toolkit here.
 */
#pragma once

#include <glib.h>

#include "model/settle.h"

G_BEGIN_DECLS

typedef struct
{
  float lean_rad;   /* as drawn, positive to the archer's right */
  gboolean stopped; /* the drawing ends at 30° */
} PhLeanDrawn;

/** `slope_rad` is the grip–nock line's. A rig that topples is drawn at the stop, on the side that
 * is heavy. */
PhLeanDrawn ph_lean_drawn_of (const PhSettle *settle, double slope_rad, double factor);

/** The same for the reference rig, in the same hand; plumb where there is none or it topples. */
PhLeanDrawn ph_lean_drawn_reference (const PhSettle *settle, double slope_rad, double factor);

/** "leans left 1.4°"; while the hand is not known "leans left (firm to loose hand: 0.7–2.5°)"; or
 * that it topples. New string. */
char *ph_lean_said (const PhSettle *settle);

/** "lean drawn 5 times", with what else must be said of the drawing. New string. */
char *ph_lean_drawing_said (const PhSettle *settle, PhLeanDrawn drawn, double factor);

G_END_DECLS
