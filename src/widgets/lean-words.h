/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the bubble says, as sentences. Where a sight carries a level the words follow the bubble,
 * which runs to the high side; where it carries none they follow the bow. Degrees stand in the
 * headline only for a known hand. No toolkit here.
 */
#pragma once

#include <glib.h>

#include "model/settle.h"

G_BEGIN_DECLS

typedef struct
{
  char *headline;     /* "0.4° left", or a sentence */
  gboolean is_number; /* the headline is a reading, to be set large */
  char *detail;       /* interval or range, which way the bow leans; null: none */
  char *compare;      /* against the reference; null: none */
  char *spoken;       /* all of it as one text for a screen reader */
} PhLeanWords;

/** `reason` is the report's sentence for a rig that does not settle, or null; `reference_name` may
 * be null; `vial_rad` is how far the vial is drawn; `wanted_rad` the archer's wanted tilt. */
PhLeanWords ph_lean_words_of (const PhSettle *settle, const char *reason,
                              const char *reference_name, double vial_rad, double wanted_rad);
void ph_lean_words_clear (PhLeanWords *words);

/** "Bubble", or the lean and how it is read where there is no level. Translated, borrowed. */
const char *ph_lean_title (const PhSettle *settle);

/** "Left side heavy → bow leans left → bubble runs right." Translated, borrowed. */
const char *ph_lean_chain (const PhSettle *settle);

/** A tilt to the digits it deserves: 0.1°, half that where `sure_to_rad` (the whole width of its
 * interval, NAN when unknown) is below 0.2°. "0.4°", "0.35°"; no sign. (transfer full) */
char *ph_lean_degrees (double tilt_rad, double sure_to_rad);

G_END_DECLS
