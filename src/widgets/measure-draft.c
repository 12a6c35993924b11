/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A line's direction is the difference of its two points, so that both come back as typed.
 */
#include "widgets/measure-draft.h"

#include <glib/gi18n.h>
#include <math.h>

/* Two points nearer than this give no direction worth having. */
#define APART_MM 20.0

PhMeasureDraft
ph_measure_draft_empty (PhMethod method)
{
  PhMeasureDraft draft = { .readings = ph_readings_default (method) };
  if (method == PH_METHOD_TWO_STRING)
    draft.readings.axis = 0; /* as it is drawn */
  for (int i = 0; i < PH_DRAFT_LINES; i++)
    {
      draft.line_sds[i] = PH_READING_SD_LINE_MM;
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
      for (int c = 0; c < 3; c++)
        {
          draft.points[i][0][c] = line->point_mm[c];
          draft.points[i][1][c] = line->point_mm[c] + line->direction[c];
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

static const char *
finish_lines (const PhMeasureDraft *draft, PhReadings *readings)
{
  for (int i = 0; i < PH_DRAFT_LINES; i++)
    {
      PhReadLine line = { .sd_mm = draft->line_sds[i] };
      int missing = count_missing (&draft->points[i][0][0], 6);
      double square = 0;
      if (missing == 6 && i == PH_DRAFT_LINES - 1)
        break;
      if (missing)
        return _ ("Two plumb lines are needed, three are better: type two points of each.");
      for (int c = 0; c < 3; c++)
        {
          line.point_mm[c] = draft->points[i][0][c];
          line.direction[c] = draft->points[i][1][c] - line.point_mm[c];
          square += line.direction[c] * line.direction[c];
        }
      if (!(sqrt (square) >= APART_MM))
        return _ ("The two points of a plumb line should lie farther apart: 20 mm at least.");
      if (!(line.sd_mm > 0))
        return _ ("No plumb line is exact: its ± should be above 0.");
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
