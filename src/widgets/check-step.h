/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The steps of the guide through a bubble check, and what they are called. No toolkit here.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  PH_STEP_CHOOSE, /* which rig is read */
  PH_STEP_SAFETY,
  PH_STEP_DRAW,
  PH_STEP_END, /* the bubble at its vial's end */
  PH_STEP_RECORD
} PhCheckStep;

/** The page's name in the guide's stack. */
const char *ph_check_step_name (PhCheckStep step);
/** Its heading; null for a draw, which says its number. Translated. */
const char *ph_check_step_title (PhCheckStep step);
/** What the button that goes on is called. `draw` counts from 0. Translated. */
const char *ph_check_step_next (PhCheckStep step, guint draw, gboolean editing);

G_END_DECLS
