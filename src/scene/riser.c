/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Riser, grip and limbs: sweeps along smooth centrelines. A riser is some 90 sections, cut once a
 * change of the rig.
 */
#include "scene/riser.h"

#include <assert.h>

#define HOLES_MOST 12
/* Corner radius of the riser's section over its smaller half side. */
#define ROUND 0.4f
#define LIMB_STATIONS 40
#define GRIP_STATIONS 40

#define COUNT(array) (sizeof (array) / sizeof (array)[0])

#define RISER_STATIONS (sizeof (((PhRiserLine *)0)->stations) / sizeof (PhStation))

/* Height to place, counted in stations: the riser only ever rises. */
static float
station_of_height (const PhRiserLine *riser, float z)
{
  for (size_t i = 1; i < riser->n; i++)
    {
      float below = riser->stations[i - 1].at.z, above = riser->stations[i].at.z;
      if (z <= above)
        return (float)(i - 1) + (above > below ? fmaxf (z - below, 0.0f) / (above - below) : 0.0f);
    }
  return (float)(riser->n - 1);
}

/* A hole leaves room for the boss of every mount. */
static bool
meets_boss (const PhRiserTable *table, size_t hole, float s, const PhRiserLine *riser)
{
  const PhRiserHole *cut = &table->holes[hole];
  for (size_t i = 0; i < table->n_mounts; i++)
    {
      PhPoint root = ph_riser_nearest (riser, ph_point_of (table->mounts[i].at_mm), NULL);
      if (fabsf (root.z - cut->at * s) < cut->half_long + PH_BOSS_RADIUS)
        return true;
    }
  return false;
}

static size_t
holes_of (const PhRiserTable *table, float s, const PhRiserLine *riser, PhHole *holes)
{
  float step = ph_point_length (ph_point_sub (riser->stations[1].at, riser->stations[0].at));
  size_t n = 0;
  if (step <= 0.5f)
    return 0; /* a riser this short has no room for holes */
  for (size_t i = 0; i < table->n_holes && n < HOLES_MOST; i++)
    {
      if (meets_boss (table, i, s, riser))
        continue;
      float middle = station_of_height (riser, table->holes[i].at * s);
      const PhStation *there = &riser->stations[(size_t)(middle + 0.5f)];
      /* It lies within the flat of the riser's side. */
      float flat = there->half_depth - ROUND * fminf (there->half_depth, there->half_across);
      float open = fminf (table->holes[i].half_open * there->half_depth, flat - 0.5f);
      holes[n++] = (PhHole){ .middle = middle,
                             .half_span = table->holes[i].half_long / step,
                             .half_open = open };
    }
  return n;
}

void
ph_riser_shape (PhPen pen, const PhRiserTable *table, float s, float left, PhRiserLine *riser)
{
  assert (table->n_line <= PH_CURVE_POINTS_MOST);
  PhPoint points[PH_CURVE_POINTS_MOST], even[RISER_STATIONS];
  for (size_t i = 0; i < table->n_line; i++)
    {
      const PhKnot *knot = &table->line[table->n_line - 1 - i];
      points[i] = ph_point (knot->value, 0.0f, knot->at * s);
    }
  riser->n = RISER_STATIONS;
  ph_curve_even (points, table->n_line, even, riser->n);
  ph_curve_stations (even, riser->n, riser->stations);
  for (size_t i = 0; i < riser->n; i++)
    {
      PhStation *station = &riser->stations[i];
      float height = station->at.z / s;
      station->at.y = -left * ph_knots_at (table->away, table->n_away, height);
      station->half_depth = ph_knots_at (table->depth, table->n_depth, height) / 2.0f;
      station->half_across = ph_knots_at (table->across, table->n_across, height) / 2.0f;
    }
  PhHole holes[HOLES_MOST];
  size_t n_holes = holes_of (table, s, riser, holes);
  ph_pen_sweep (ph_pen_role (pen, PH_ROLE_RISER), riser->stations, riser->n, holes, n_holes, ROUND);
}

PhPoint
ph_riser_nearest (const PhRiserLine *riser, PhPoint to, float *half_depth)
{
  PhPoint best = riser->stations[0].at;
  float least = INFINITY, half = riser->stations[0].half_depth;
  for (size_t i = 0; i + 1 < riser->n; i++)
    {
      PhPoint a = riser->stations[i].at, way = ph_point_sub (riser->stations[i + 1].at, a);
      float square = ph_point_dot (way, way);
      float t = square > 0 ? ph_point_dot (ph_point_sub (to, a), way) / square : 0.0f;
      PhPoint on = ph_point_add_scaled (a, way, fminf (fmaxf (t, 0.0f), 1.0f));
      float far = ph_point_length (ph_point_sub (to, on));
      if (far < least)
        {
          least = far;
          best = on;
          half = riser->stations[i].half_depth;
        }
    }
  if (half_depth)
    *half_depth = half;
  return best;
}

void
ph_grip_shape (PhPen pen)
{
  static const PhPoint points[] = {
    { 6, 0, 16 }, { 0, 0, 0 }, { -4, 0, -28 }, { -9, 0, -60 }, { -12, 0, -92 }
  };
  /* Thin where it runs into the riser above the throat, full in the palm, rounded at the heel,
   * which stands on the riser. */
  static const PhKnot depth[] = { { 0, 8 },      { 0.06f, 17 }, { 0.17f, 20 }, { 0.5f, 29 },
                                  { 0.78f, 36 }, { 0.93f, 40 }, { 0.98f, 37 }, { 1, 30 } };
  static const PhKnot across[] = { { 0, 16 },     { 0.08f, 24 }, { 0.2f, 25 },
                                   { 0.55f, 28 }, { 0.93f, 26 }, { 1, 19 } };
  PhPoint even[GRIP_STATIONS];
  PhStation stations[GRIP_STATIONS];
  ph_curve_even (points, COUNT (points), even, GRIP_STATIONS);
  ph_curve_stations (even, GRIP_STATIONS, stations);
  for (size_t i = 0; i < GRIP_STATIONS; i++)
    {
      float along = (float)i / (GRIP_STATIONS - 1);
      stations[i].half_depth = ph_knots_at (depth, COUNT (depth), along) / 2.0f;
      stations[i].half_across = ph_knots_at (across, COUNT (across), along) / 2.0f;
    }
  ph_pen_sweep (ph_pen_role (pen, PH_ROLE_GRIP), stations, GRIP_STATIONS, NULL, 0, 0.85f);
}

void
ph_limb_shape (PhPen pen, const PhPoint *points, size_t n, const PhLimbSize *size, PhPoint *way)
{
  PhPoint even[LIMB_STATIONS];
  PhStation stations[LIMB_STATIONS];
  ph_curve_even (points, n, even, LIMB_STATIONS);
  ph_curve_stations (even, LIMB_STATIONS, stations);
  for (size_t i = 0; i < LIMB_STATIONS; i++)
    {
      float along = (float)i / (LIMB_STATIONS - 1);
      stations[i].at.y = size->y;
      stations[i].half_depth =
          (size->depth_root + (size->depth_tip - size->depth_root) * along) / 2.0f;
      stations[i].half_across =
          (size->across_root + (size->across_tip - size->across_root) * along) / 2.0f;
    }
  ph_pen_sweep (ph_pen_role (pen, PH_ROLE_LIMB), stations, LIMB_STATIONS, NULL, 0, 0.5f);
  if (way)
    *way = ph_point_unit (ph_point_sub (even[1], even[0]));
}
