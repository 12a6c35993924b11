/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Shares of the moments as words: whose they are and which way they pull. No toolkit here.
 */
#pragma once

#include <glib.h>

#include "model/rig.h"

G_BEGIN_DECLS

/** A part's name, or "Bow" for −1. Borrowed, valid until the next edit. */
const char *ph_share_name (const PhRig *rig, int part);

/** Its id as the document's selection has it: "bow" for −1. Borrowed. */
const char *ph_share_id (const PhRig *rig, int part);

/** The index of what is selected, as in a share: −1 the bow; INT_MIN for nothing. */
int ph_share_selected (const PhRig *rig, const char *selected);

/** "0.12 left", "0.05 right", "0.00": N·m of roll. (transfer full) */
char *ph_roll_share_text (double moment_nm);
/** "0.46 down", "0.34 up": N·m of pitch, for the nose. (transfer full) */
char *ph_pitch_share_text (double moment_nm);

G_END_DECLS
