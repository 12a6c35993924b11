/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What an undo step did, in the archer's words, read off the two rigs: "back bar out 20° → 26°",
 * "front weights 8 → 9", "removed back bar and its weights", "draw length 660 → 670 mm". Compiles
 * both rigs where an angle changed; meant for the end of a gesture.
 */
#pragma once

#include "document/document.h"

G_BEGIN_DECLS

/** Two checked rigs that differ. New string, never null. */
char *ph_undo_label (const PhRig *before, const PhRig *after, PhUnits units);

/** "Back bar and its weights": part i and what hangs on it. New string. */
char *ph_undo_label_with_guests (const PhRig *rig, size_t i);

/** "put quick connect before front bar": part `i` now hangs between part `below` and the bow. New
 * string. */
char *ph_undo_label_between (const PhRig *rig, size_t i, size_t below);

/** A name inside a sentence: "Front bar" → "front bar"; "V bar", "DX 3" and "Anna's bar" stay. At
 * most 40 characters. New string. */
char *ph_name_inside (const char *name);

G_END_DECLS
