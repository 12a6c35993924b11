/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A bubble at the end of its vial is no reading. What to turn, and which way, to bring it back
 * until it floats: the direction of a step is to be trusted even where the hand is only assumed. No
 * toolkit here.
 */
#pragma once

#include <glib.h>

#include "model/answer.h"

G_BEGIN_DECLS

/** How far a coarse move turns an angle [deg], and how many discs it takes where none can turn. */
#define PH_COARSE_TURN_DEG 10.0
#define PH_COARSE_DISCS 2.0

/** The move that brings the tilt back from the end it stands at (`tilt_right`: the top limb is far
 * to the right): the angle that turns it most in its coarse step, else the stack that does. FALSE
 * where nothing that may change would. */
gboolean ph_coarse_move (const PhPartStep *steps, size_t n, gboolean tilt_right,
                         PhPartChange *change);

G_END_DECLS
