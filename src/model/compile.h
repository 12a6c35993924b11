/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * From a checked rig to the physics: SI pieces, hosts before guests, fitted parts only.
 */
#pragma once

#include "model/rig.h"
#include "physics/assembly.h"
#include "physics/draw.h"
#include "physics/hand.h"

typedef struct
{
  PhAssembly *assembly;
  int *part_of_piece; /* piece → index in rig->parts */
  int *piece_of_part; /* part → piece, −1 when not fitted */
  size_t n_pieces, n_parts;
  PhDraw draw;
} PhCompiled;

/** `rig` must have passed ph_check_rig (asserted where it shows). Free with ph_compiled_free. */
PhCompiled *ph_compile_rig (const PhRig *rig);
void ph_compiled_free (PhCompiled *compiled);

/** Replaces the numbers of part i after an edit that left the tree as it was (same host, seat,
 * kind and fitted state; along_mm given or taken away counts as another seat). Costs the moved
 * subtree only. */
void ph_compiled_update_part (PhCompiled *compiled, const PhRig *rig, size_t i);

/** One part's piece alone; `host_piece` as in PhPiece. */
PhPiece ph_compile_piece (const PhRig *rig, size_t i, int host_piece);

/** Full-draw geometry and archer in SI. */
PhDraw ph_compile_draw (const PhRig *rig);

/** The checks in use (not aside) as physics records; `*n` of them; a new array. `index_of`, where
 * given, receives a new array of their indices in rig->archer.checks. */
PhBubbleCheck *ph_compile_checks (const PhRig *rig, size_t *n, size_t **index_of);

/** The rig's hand: fitted where a check is in use, else the file's K and B with the prior's
 * covariance. */
PhStatus ph_compile_hand (const PhRig *rig, PhHand *hand, bool *fitted);
