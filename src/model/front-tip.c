/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Finds the front bar and its tip in one pass over the pieces each.
 */
#include "model/front-tip.h"

#include <math.h>

#include "base/units.h"

static int
find_front_bar (const PhCompiled *compiled)
{
  for (size_t part = 0; part < compiled->n_parts; part++)
    {
      int piece = compiled->piece_of_part[part];
      if (piece < 0 || ph_assembly_piece (compiled->assembly, piece)->kind != PH_PIECE_BAR)
        continue;
      if (ph_assembly_place (compiled->assembly, piece)->frame.a.x > PH_POINTS_FORWARD)
        return piece;
    }
  return -1;
}

static bool
hangs_beyond (const PhAssembly *assembly, int piece, int bar)
{
  while (piece > bar)
    piece = ph_assembly_piece (assembly, piece)->host; /* hosts stand before guests */
  return piece == bar;
}

PhFrontTip
ph_front_tip (const PhCompiled *compiled, const PhReport *report)
{
  const PhAssembly *assembly = compiled->assembly;
  PhFrontTip tip = { -1, NAN, NAN };
  int bar = find_front_bar (compiled);
  if (bar < 0)
    return tip;
  tip.bar = compiled->part_of_piece[bar];
  for (int i = bar; i < ph_assembly_count (assembly); i++)
    if (ph_piece_has_length_axis (ph_assembly_piece (assembly, i))
        && hangs_beyond (assembly, i, bar))
      tip.ahead_m = fmax (tip.ahead_m, ph_assembly_place (assembly, i)->end_m.x);
  if (tip.ahead_m > 0.0)
    tip.weight_kg = report->pitch.moment_nm / (PH_GRAVITY * tip.ahead_m);
  return tip;
}
