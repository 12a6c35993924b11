/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A tilt in the words of how it is read: where the sight carries a level the words follow the
 * bubble, which runs to the high side; where it carries none they follow the bow. Tilts are the
 * file's: degrees, positive when the top limb tips to the archer's right. No toolkit here.
 */
#pragma once

#include <glib.h>

#include "model/rig.h"

G_BEGIN_DECLS

/** Whether the bow's sight carries a level. */
gboolean ph_tilt_has_level (const PhRig *rig);

/** "0.4° left"; what rounds to nothing is "centred", or "plumb" without a level. Missing is "–".
 * New string. */
char *ph_tilt_words (double tilt_deg, gboolean level);

/** "bubble 0.4° left", "leans 0.4° right", "bubble centred", "stands plumb". New string. */
char *ph_tilt_phrase (double tilt_deg, gboolean level);

/** The file's tilt of so many degrees read to that side. */
double ph_tilt_of_side (double size_deg, gboolean left, gboolean level);
/** Whether a tilt is read to the left. */
gboolean ph_tilt_is_left (double tilt_deg, gboolean level);

/** Reads "1.5 left", "right 1°", "centred", or a bare number under the file's sign; a sign and a
 * side together are refused. FALSE: it is none of these; `*tilt_deg` is left. */
gboolean ph_tilt_parse (const char *text, gboolean level, double *tilt_deg);

/** "±0.3°": half of an interval. New string. */
char *ph_tilt_half (double half_deg);

G_END_DECLS
