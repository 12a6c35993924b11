/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The trade's habit decides between kinds: turn a bar before weight is moved.
 */
#include "widgets/coarse-move.h"

#include <math.h>

/* Effects below this are not worth a draw [rad a step]: 0.005°. */
#define LEAST_RAD 8.7e-5

/* Where one adjustable ends after its coarse step toward the middle, within its limits and by whole
 * steps; its present value where it cannot move. */
static double
coarse_end (const PhPartStep *step, gboolean tilt_right, gboolean is_count)
{
  double wanted = tilt_right ? -1 : 1, way = step->effect.bubble_rad * wanted > 0 ? 1 : -1;
  double most = (is_count ? PH_COARSE_DISCS : PH_COARSE_TURN_DEG) / step->step;
  double room = (way > 0 ? step->hi - step->now : step->now - step->lo) / step->step;
  return step->now + way * fmax (0, floor (fmin (most, room) + 1e-9)) * step->step;
}

static gboolean
best_of_kind (const PhPartStep *steps, size_t n, gboolean tilt_right, gboolean counts,
              PhPartChange *change)
{
  double best = 0;
  for (size_t i = 0; i < n; i++)
    {
      const PhPartStep *step = &steps[i];
      gboolean is_count = g_str_equal (step->key, "count");
      if (is_count != counts || !(fabs (step->effect.bubble_rad) > LEAST_RAD))
        continue;
      double end = coarse_end (step, tilt_right, is_count);
      double moved = fabs (step->effect.bubble_rad * (end - step->now) / step->step);
      if (moved <= best)
        continue;
      best = moved;
      *change = (PhPartChange){ step->part, step->key, step->now, end };
    }
  return best > 0;
}

gboolean
ph_coarse_move (const PhPartStep *steps, size_t n, gboolean tilt_right, PhPartChange *change)
{
  return best_of_kind (steps, n, tilt_right, FALSE, change)
         || best_of_kind (steps, n, tilt_right, TRUE, change);
}
