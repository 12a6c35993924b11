/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Which way a part would point from a place, and the angles that a new bar starts with there. No
 * toolkit here.
 */
#pragma once

#include "document/document.h"

G_BEGIN_DECLS

/** A socket or far end, bow frame. */
typedef struct
{
  int host; /* index of the part that carries it, −1: the bow */
  PhVec3 at_m, axis;
} PhAimSeat;

/** `on` as in the rig file. False where nobody is there to carry it, or it is not fitted. */
gboolean ph_aim_seat (PhDocument *document, const char *on, PhAimSeat *seat);

/** Whether a bar for the back can point back from there: not from a mount of the bow or a far end
 * that points ahead, nor from a bracket's socket in the bow's plane that does. */
gboolean ph_aim_can_point_back (PhDocument *document, const PhAimSeat *seat);

/** Whether all of a bracket's sockets that lead sideways would lead back there; true where it has
 * none. */
gboolean ph_aim_sides_lead_back (const PhPart *bracket, const PhAimSeat *seat);

/** The socket by which a bar goes on straight through a bracket: one alone, in the middle, along
 * the bracket. Null: it has none. Borrowed. */
const char *ph_aim_through (const PhPart *bracket);

/** Which side the seat itself is on or leads to: 1 the archer's left, −1 the right, 0 neither. */
int ph_aim_side (const PhAimSeat *seat);

/** Turns `bar`, which is to hang on `on`, so that it points back and out, somewhat down, and clears
 * the string by what is asked for; where no angle does, by the most that it can. */
void ph_aim_back (PhDocument *document, PhPart *bar, const char *on);

G_END_DECLS
