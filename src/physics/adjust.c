/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Steps inside limits. The quotient only guesses how many there are; the values themselves decide,
 * so that none lies outside by a rounding.
 */
#include "physics/adjust.h"

#include <assert.h>
#include <math.h>

#include "base/units.h"

double
ph_adjust_value (const PhAdjustable *adjustable, int k)
{
  return adjustable->now + k * adjustable->step;
}

void
ph_adjust_count_steps (PhAdjustable *adjustable, double most)
{
  assert (adjustable->step > 0);
  double hi = fmin (adjustable->hi, most);
  int down = (int)floor ((adjustable->now - adjustable->lo) / adjustable->step) + 1;
  int up = (int)floor ((hi - adjustable->now) / adjustable->step) + 1;
  while (down > 0 && ph_adjust_value (adjustable, -down) < adjustable->lo)
    down--;
  while (up > 0 && ph_adjust_value (adjustable, up) > hi)
    up--;
  adjustable->steps_down = down > 0 ? down : 0;
  adjustable->steps_up = up > 0 ? up : 0;
}

PhPiece
ph_adjust_piece (const PhPiece *piece, PhAdjustKey key, double value)
{
  PhPiece changed = *piece;
  switch (key)
    {
    case PH_ADJUST_SWING:
      changed.swing_rad = ph_rad_from_deg (value);
      break;
    case PH_ADJUST_LIFT:
      changed.lift_rad = ph_rad_from_deg (value);
      break;
    case PH_ADJUST_COUNT:
      assert (piece->kind == PH_PIECE_WEIGHTS && value >= 0);
      changed.count = (int)value;
      changed.length_m = value * piece->each_m;
      changed.body = ph_body_cylinder (value * piece->each_kg, 0, changed.length_m,
                                       piece->diameter_m / 2, piece->inner_m / 2);
      break;
    }
  return changed;
}
