/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The fit of a hand, kept for as long as the same checks are asked about: a drag changes the rig,
 * not what was read, and a thousand checks take a third of a second to fit.
 */
#pragma once

#include "physics/hand.h"

/** ph_hand_fit, to the last bit. The last answer is kept, one for each thread. */
PhStatus ph_hand_fit_kept (const PhBubbleCheck *checks, size_t n, PhHand *hand);
