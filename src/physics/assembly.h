/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A bow with its fitted pieces: where each stands, what each weighs, and their sum. The sum is
 * kept as a balanced tree of mass records, so that a change of one piece costs the moved pieces
 * and the records above them, and gives bit for bit what a full recompute gives.
 */
#pragma once

#include "physics/piece.h"

/** The bow alone, at full draw. */
typedef struct
{
  double mass_kg;
  PhVec3 com_m;      /* from P, bow frame */
  PhVec3 gyration_m; /* radii about axes through the mass centre parallel to x, y, z (I = m k²) */
} PhBowBody;

/** Where a piece stands, bow frame. */
typedef struct
{
  PhVec3 root_m; /* an accessory: its mass centre */
  PhVec3 end_m;  /* far face of bar, stack, damper; else the root */
  PhFrame frame; /* d, l', t' (an accessory: x, y, z) */
} PhPlace;

typedef struct PhAssembly PhAssembly;

/** Copies the pieces (n ≥ 0, hosts before guests: asserted), places and weighs them all. */
PhAssembly *ph_assembly_new (const PhBowBody *bow, const PhPiece *pieces, int n);
void ph_assembly_free (PhAssembly *assembly);

int ph_assembly_count (const PhAssembly *assembly);
const PhPiece *ph_assembly_piece (const PhAssembly *assembly, int i);
const PhPlace *ph_assembly_place (const PhAssembly *assembly, int i);
/** What the swing and lift of piece i turn it from: the frame of the socket or end it sits on (seat
 * SOCKET or END, asserted). */
PhFrame ph_assembly_seat_frame (const PhAssembly *assembly, int i);
/** What hangs directly on piece i: the first of them and, from each, the next on the same host, in
 * array order; −1 at the end. What hangs on the bow is in no such list. */
int ph_assembly_first_guest (const PhAssembly *assembly, int i);
int ph_assembly_next_guest (const PhAssembly *assembly, int i);
/** Record of piece i; of the bow for i = PH_HOST_BOW. */
const PhMass *ph_assembly_mass (const PhAssembly *assembly, int i);
/** Sum of the bow and every piece. */
const PhMass *ph_assembly_total (const PhAssembly *assembly);
/** The sum over piece i and all that hangs on it, however far out. */
PhMass ph_assembly_subtree_mass (const PhAssembly *assembly, int i);

/** What follows from the total, from sums kept about the mass centre: to the last digits even for
 * a compact rig far from P, where ph_mass_properties of ph_assembly_total loses some. The mass
 * must be above 0 (asserted). */
PhMassProperties ph_assembly_properties (const PhAssembly *assembly);

/** Places and weighs everything anew: what ph_assembly_new did. */
void ph_assembly_recompute (PhAssembly *assembly);

/** Replaces piece i (same host, seat and kind: asserted) and recomputes it, what hangs on it, and
 * the sums above. */
void ph_assembly_set_piece (PhAssembly *assembly, int i, const PhPiece *piece);
