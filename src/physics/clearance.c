/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Capsules against the string's sweep.
 */
#include "physics/clearance.h"

#include "math/distance.h"

static bool
counts (const PhPiece *piece)
{
  return ph_piece_has_length_axis (piece)
         && !(piece->kind == PH_PIECE_WEIGHTS && piece->count == 0);
}

double
ph_clearance_of (const PhAssembly *assembly, int i, const PhDraw *draw)
{
  const PhPiece *piece = ph_assembly_piece (assembly, i);
  if (!counts (piece) || isnan (draw->brace_height_m) || isnan (draw->axle_to_axle_m))
    return (double) NAN;
  double half = draw->axle_to_axle_m / 2;
  const PhVec3 sweep[3] = { ph_draw_nock (draw), ph_vec3 (-draw->brace_height_m, 0, half),
                            ph_vec3 (-draw->brace_height_m, 0, -half) };
  const PhPlace *place = ph_assembly_place (assembly, i);
  return ph_distance_segment_triangle (place->root_m, place->end_m, sweep) - piece->diameter_m / 2;
}
