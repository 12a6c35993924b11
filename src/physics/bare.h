/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The bow alone from a reading of the whole rig: what its fitted parts add is taken out. Records
 * add, so this is subtraction; all in the bow frame, about the grip pivot P. Pure functions.
 */
#pragma once

#include "physics/mass.h"

/** Mass centre of the bow from that of the whole: (M C − S)/m_bow, M = m_bow + the parts' mass, S
 * their first moment. `bow_kg` above 0. */
PhVec3 ph_bare_com (PhVec3 whole_com_m, double bow_kg, const PhMass *parts);

/** Moment of inertia of the bow about the axis x, y or z (0–2) through its own mass centre, from
 * that of the whole about the parallel axis through the whole's mass centre:
 * I − I_parts − μ d², μ = m_bow m_parts/(m_bow + m_parts), d the distance of the two mass centres
 * across the axis. May come out negative: then the reading cannot be. */
double ph_bare_inertia (double whole_kg_m2, int axis, double bow_kg, PhVec3 bow_com_m,
                        const PhMass *parts);
