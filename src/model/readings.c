/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Readings as plain data, and a measured bow put into the rig.
 */
#include <assert.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "model/checks.h"
#include "model/measure.h"
#include "model/uncertain.h"

const char *
ph_method_word (PhMethod method)
{
  static const char *const words[PH_METHODS] = { "scales", "hanging", "swing", "two-string" };
  return words[method];
}

PhReadings
ph_readings_default (PhMethod method)
{
  return (PhReadings){ .method = method,
                       .f1_n = NAN,
                       .f2_n = NAN,
                       .d_mm = NAN,
                       .sd_n = PH_READING_SD_N,
                       .sd_mm = PH_READING_SD_TAPE_MM,
                       .axis = 1,
                       .mass_g = NAN,
                       .swings = NAN,
                       .seconds = NAN,
                       .sd_mass_g = PH_READING_SD_G,
                       .sd_seconds = PH_READING_SD_SECONDS,
                       .distance_mm = NAN,
                       .sd_distance_mm = PH_READING_SD_CENTRE_MM,
                       .spacing_mm = NAN,
                       .length_mm = NAN,
                       .sd_spacing_mm = PH_READING_SD_TAPE_MM,
                       .sd_length_mm = PH_READING_SD_TAPE_MM };
}

void
ph_readings_add_line (PhReadings *readings, const PhReadLine *line)
{
  readings->lines = ph_realloc (readings->lines, (readings->n_lines + 1) * sizeof *readings->lines);
  readings->lines[readings->n_lines++] = *line;
}

PhReadings
ph_readings_copy (const PhReadings *readings)
{
  PhReadings copy = *readings;
  copy.lines = NULL;
  copy.n_lines = 0;
  for (size_t i = 0; i < readings->n_lines; i++)
    ph_readings_add_line (&copy, &readings->lines[i]);
  return copy;
}

void
ph_readings_clear (PhReadings *readings)
{
  free (readings->lines);
  readings->lines = NULL;
  readings->n_lines = 0;
}

void
ph_edit_use_measured (PhRig *rig, const PhMeasured *measured)
{
  assert (!measured->refused);
  const PhBowNumbers *now = &measured->bow;
  PhBow *bow = &rig->bow;
  bool was_measured = bow->source == PH_SOURCE_MEASURED;
  bow->mass_g = now->mass_g;
  memcpy (bow->com_mm, now->com_mm, sizeof bow->com_mm);
  memcpy (bow->gyration_mm, now->gyration_mm, sizeof bow->gyration_mm);
  if (measured->has_mass || !was_measured)
    ph_sds_put (&bow->sds, &bow->n_sds, "mass_g", 1, &now->sd_mass_g);
  if (measured->has_com || !was_measured)
    ph_sds_put (&bow->sds, &bow->n_sds, "com_mm", 3, now->sd_com_mm);
  if (measured->has_gyration || !was_measured)
    ph_sds_put (&bow->sds, &bow->n_sds, "gyration_mm", 3, now->sd_gyration_mm);
  ph_edit_set_source (rig, -1, PH_SOURCE_MEASURED);
}
