/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Less weight behind the grip for a rig that is level already: one stack's count down, with at
 * most one angle of any adjustable to match. No more back weight than centring needs (common
 * practice).
 */
#pragma once

#include "physics/level.h"

/** Of each stack behind the grip, alone and with each angle, what saves most mass and keeps the
 * bubble within the tolerance (of those the one first in Level's order); most mass saved first.
 * `within` false: the rig is not within the tolerance, and there are none. */
PhLevel ph_lighter_of (const PhTask *task, const PhWant *want);
