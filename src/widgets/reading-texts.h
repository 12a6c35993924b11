/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What each reading says: from the report to words and numbers in the units of the screen. A number
 * that cannot be computed is "–" with its reason beside it. No toolkit here.
 */
#pragma once

#include <glib.h>

#include "base/quantity.h"
#include "model/report.h"
#include "model/settle.h"

G_BEGIN_DECLS

/** What the readings are made from; all borrowed. */
typedef struct
{
  const PhRig *rig;
  const PhCompiled *compiled;
  const PhReport *report;
  const PhReport *reference; /* null: nothing to compare with */
  PhUnits units;
} PhReadingSource;

typedef struct
{
  char *value;      /* the reading; null only where it is shown by other means */
  char *detail;     /* what it means, or why it is missing; null: none */
  char *change;     /* against the reference; null: none */
  char *more;       /* moments, loads and the like, shown on demand; null: none */
  gboolean warning; /* to be marked as such; the words say it too */
} PhReadingText;

void ph_reading_text_clear (PhReadingText *text);

/** "2.974 kg"; front, back and side weights. */
PhReadingText ph_reading_mass (const PhReadingSource *source);
/** "68 ahead, 2 left, 23 low"; of the grip throat. */
PhReadingText ph_reading_balance (const PhReadingSource *source);
/** "like 8.7 oz"; at the front bar's tip (model/front-tip.h). The change is that of the pull, as
 * weight at the open rig's tip, so that another length of bar does not hide it. */
PhReadingText ph_reading_front (const PhReadingSource *source);
/** "feels like 3.3 kg"; weighs 2.97 kg. */
PhReadingText ph_reading_arm (const PhReadingSource *source);
/** "tips forward, slowly" (model/shot-feel.h). */
PhReadingText ph_reading_shot (const PhReadingSource *source);
/** "61 mm"; the nearest part, and a warning under PH_CLEARANCE_LEAST_M. */
PhReadingText ph_reading_string (const PhReadingSource *source);

/** What the archer shoots with and at. */
typedef struct
{
  double speed_m_s;  /* 0: not stated */
  double distance_m; /* to the target */
  double face_mm;    /* diameter of the ten-zone face */
} PhShooting;

/** "4.2 cm right"; at that distance, in rings of that face. A range while the hand is unknown. */
PhReadingText ph_reading_cost (const PhReadingSource *source, const PhShooting *shooting);

/** The three turns of the bow about the grip. */
typedef enum
{
  PH_TURN_ROLL,
  PH_TURN_NOD,
  PH_TURN_SWING
} PhTurn;
#define PH_TURNS 3

typedef struct
{
  char *value;   /* "+4.0 %", or "0.412" (kg·m²) without a reference */
  char *more;    /* "0.412 kg·m²" beside a reference's change; null without one */
  double fill;   /* 0 to 1: of the bar */
  gboolean mark; /* the reference stands at the bar's middle */
} PhTurnText;

/** With a reference the bar is the ratio to it, full at twice; without one it is the share of the
 * greatest of the three. */
PhTurnText ph_reading_turn (const PhReadingSource *source, PhTurn turn);
void ph_turn_text_clear (PhTurnText *text);

/** The tensor about the grip and the principal moments, one line each. (transfer full) */
char *ph_reading_tensor (const PhReport *report);

G_END_DECLS
