/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Numbers that are only guessed: which they are, what measurement would replace them, and saying
 * that it was made. A number is guessed where its bow or part is, unless it has a stated deviation
 * of its own. No toolkit here.
 */
#pragma once

#include "widgets/number-ref.h"

G_BEGIN_DECLS

gboolean ph_guess_is (const PhNumberRef *ref, const PhRig *rig);

/** How to measure it, as sentences; translated, borrowed. Null for a number that is never marked.
 */
const char *ph_guess_advice (const PhNumberRef *ref);

/** States the deviation that a careful measurement leaves (deciding section 6: measured), one undo
 * step; all three components of a vector. */
gboolean ph_guess_set_measured (const PhNumberRef *ref, PhDocument *document, GError **error);

G_END_DECLS
