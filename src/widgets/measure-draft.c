/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A line's direction is the difference of its two points, or of unit length where angles were
 * typed, so that either comes back as typed.
 */
#include "widgets/measure-draft.h"

#include <glib/gi18n.h>
#include <math.h>

#include "base/units.h"

/* Two points nearer than this give no direction worth having. */
#define APART_MM 20.0
/* What a unit vector's length may be off by rounding. */
#define UNIT_ROUNDING 1e-9
/* An angle back to what was typed: thousandths are far below what a level tells. */
#define ANGLE_STEPS 1e9

void
ph_measure_direction (double side_deg, double across_deg, double direction[3])
{
  double side = ph_rad_from_deg (side_deg), across = ph_rad_from_deg (across_deg);
  direction[0] = sin (side) * cos (across);
  direction[1] = sin (across);
  direction[2] = -cos (side) * cos (across);
}

void
ph_measure_angles (const double direction[3], double *side_deg, double *across_deg)
{
  double x = direction[0], y = direction[1], z = direction[2];
  double side = ph_deg_from_rad (atan2 (x, -z)), across = ph_deg_from_rad (atan2 (y, hypot (x, z)));
  *side_deg = round (side * ANGLE_STEPS) / ANGLE_STEPS;
  *across_deg = round (across * ANGLE_STEPS) / ANGLE_STEPS;
}

PhMeasureDraft
ph_measure_draft_empty (PhMethod method)
{
  PhMeasureDraft draft = { .readings = ph_readings_default (method) };
  if (method == PH_METHOD_TWO_STRING)
    draft.readings.axis = 0; /* as it is drawn */
  for (int i = 0; i < PH_DRAFT_LINES; i++)
    {
      draft.line_sds[i] = PH_READING_SD_LINE_MM;
      draft.angles[i][0] = draft.angles[i][1] = NAN;
      for (int p = 0; p < 2; p++)
        for (int c = 0; c < 3; c++)
          draft.points[i][p][c] = NAN;
    }
  return draft;
}

PhMeasureDraft
ph_measure_draft_of (const PhReadings *readings)
{
  PhMeasureDraft draft = ph_measure_draft_empty (readings->method);
  draft.readings = *readings;
  draft.readings.lines = NULL;
  draft.readings.n_lines = 0;
  for (size_t i = 0; i < readings->n_lines && i < PH_DRAFT_LINES; i++)
    {
      const PhReadLine *line = &readings->lines[i];
      draft.line_sds[i] = line->sd_mm;
      const double *d = line->direction;
      draft.by_angle[i] = fabs (d[0] * d[0] + d[1] * d[1] + d[2] * d[2] - 1) < UNIT_ROUNDING;
      if (draft.by_angle[i])
        ph_measure_angles (d, &draft.angles[i][0], &draft.angles[i][1]);
      for (int c = 0; c < 3; c++)
        {
          draft.points[i][0][c] = line->point_mm[c];
          if (!draft.by_angle[i])
            draft.points[i][1][c] = line->point_mm[c] + d[c];
        }
    }
  return draft;
}

static int
count_missing (const double *numbers, int n)
{
  int missing = 0;
  for (int i = 0; i < n; i++)
    missing += isnan (numbers[i]) ? 1 : 0;
  return missing;
}

/* How many of its numbers are not typed, and how many it has. */
static int
missing_of_line (const PhMeasureDraft *draft, int i, int *all)
{
  int of_point = count_missing (draft->points[i][0], 3);
  *all = draft->by_angle[i] ? 5 : 6;
  return of_point
         + (draft->by_angle[i] ? count_missing (draft->angles[i], 2)
                               : count_missing (draft->points[i][1], 3));
}

/* Null, or what is wrong with it; borrowed. */
static const char *
finish_line (const PhMeasureDraft *draft, int i, PhReadLine *line)
{
  const double *angles = draft->angles[i];
  double square = 0;
  *line = (PhReadLine){ .sd_mm = draft->line_sds[i] };
  for (int c = 0; c < 3; c++)
    {
      line->point_mm[c] = draft->points[i][0][c];
      line->direction[c] = draft->points[i][1][c] - line->point_mm[c];
      square += line->direction[c] * line->direction[c];
    }
  if (draft->by_angle[i])
    {
      if (fabs (angles[0]) > 180 || fabs (angles[1]) >= 90)
        return _ ("From the side a plumb line’s angle lies within ±180°, out of the bow’s plane "
                  "within ±90°.");
      ph_measure_direction (angles[0], angles[1], line->direction);
    }
  else if (!(sqrt (square) >= APART_MM))
    return _ ("The two points of a plumb line should lie farther apart: 20 mm at least.");
  return line->sd_mm > 0 ? NULL : _ ("No plumb line is exact: its ± should be above 0.");
}

static const char *
finish_lines (const PhMeasureDraft *draft, PhReadings *readings)
{
  for (int i = 0; i < PH_DRAFT_LINES; i++)
    {
      PhReadLine line;
      int all, missing = missing_of_line (draft, i, &all);
      if (missing == all && i == PH_DRAFT_LINES - 1)
        break;
      if (missing)
        return _ ("Two plumb lines are needed, three are better: type a point of each and a second "
                  "point, or its angles.");
      const char *wrong = finish_line (draft, i, &line);
      if (wrong)
        return wrong;
      ph_readings_add_line (readings, &line);
    }
  return NULL;
}

const char *
ph_measure_draft_finish (const PhMeasureDraft *draft, PhReadings *readings)
{
  const PhReadings *read = &draft->readings;
  const double of_scales[] = { read->f1_n, read->f2_n, read->d_mm };
  const double of_swing[] = { read->mass_g, read->distance_mm, read->swings, read->seconds };
  const double of_strings[] = { read->mass_g, read->spacing_mm, read->length_mm, read->swings,
                                read->seconds };
  const char *wrong = NULL;
  *readings = *read;
  if (read->method == PH_METHOD_HANGING)
    wrong = finish_lines (draft, readings);
  else if ((read->method == PH_METHOD_SCALES && count_missing (of_scales, 3))
           || (read->method == PH_METHOD_SWING && count_missing (of_swing, 4))
           || (read->method == PH_METHOD_TWO_STRING && count_missing (of_strings, 5)))
    wrong = _ ("Type the readings above; the result follows by itself.");
  if (wrong)
    ph_readings_clear (readings);
  return wrong;
}
