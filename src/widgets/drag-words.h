/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a view says while a part is dragged. No toolkit here.
 */
#pragma once

#include "widgets/number-ref.h"

G_BEGIN_DECLS

/** The number being dragged in the archer's words: "out 26°", "down 12.3°, in tenths", "6 weights".
 * `fine`: it goes in tenths. New string. */
char *ph_drag_value_said (const PhNumberRef *ref, const PhRig *rig, const PhCompiled *compiled,
                          double value, gboolean fine);

/** "Drag a bar's end to turn it". Translated, borrowed. */
const char *ph_drag_hint (void);
/** What may be done during a drag: "Shift: in tenths · Escape: as before". Translated, borrowed. */
const char *ph_drag_keys_hint (gboolean angle);

G_END_DECLS
