/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Is this rig one that can be computed? Every listed error of the rig format that concerns more
 * than one key's own type: ranges, repeated ids, cycles, sockets, nesting, fittings, total mass.
 */
#pragma once

#include "model/issue.h"
#include "model/rig.h"

/** Adds every error and note of `rig` to `issues`. True when there is no error: the rig can be
 * compiled. Present values outside their limits stretch the nearer limit, in the rig (only where
 * there is no error). */
bool ph_check_rig (PhRig *rig, PhIssues *issues);

/** The notes alone: unknown keys, radii of gyration that no body has. */
void ph_check_notes (const PhRig *rig, PhIssues *issues);

/** Stretches the limits of one part to its present values. */
void ph_limits_stretch (PhPart *part);
