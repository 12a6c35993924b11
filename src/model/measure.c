/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each method works out the whole rig first, then the bow alone as a function of the compiled rig,
 * whose slopes carry the parts' deviations along.
 */
#include "model/measure.h"

#include <assert.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "base/units.h"
#include "model/check.h"
#include "model/uncertain.h"
#include "physics/bare.h"
#include "physics/hanging.h"
#include "physics/scales.h"
#include "physics/swing.h"

/* What the reading alone says, SI. */
typedef struct
{
  const PhReadings *readings;
  PhScales scales;
  PhHanging hanging;
  PhSwingResult swing;
} Whole;

static PhMass
mass_of_parts (const PhCompiled *compiled)
{
  PhMass sum = { 0 };
  for (size_t i = 0; i < compiled->n_pieces; i++)
    sum = ph_mass_add (sum, *ph_assembly_mass (compiled->assembly, (int)i));
  return sum;
}

static PhVec3
bow_com (const PhCompiled *compiled)
{
  const PhMass *bow = ph_assembly_mass (compiled->assembly, PH_HOST_BOW);
  return bow->mass_kg > 0 ? ph_vec3_scale (bow->moment_kg_m, 1 / bow->mass_kg) : ph_vec3 (0, 0, 0);
}

/* The bow alone: x and mass by scales, three of com by hanging, an inertia by swinging; SI. */
static void
bare_values (const PhCompiled *compiled, void *data, double *values)
{
  const Whole *whole = data;
  PhMass parts = mass_of_parts (compiled);
  double bow_kg = ph_assembly_mass (compiled->assembly, PH_HOST_BOW)->mass_kg;
  if (whole->readings->method == PH_METHOD_SCALES)
    {
      PhScalesResult bare = ph_scales_result (&whole->scales, parts.mass_kg, parts.moment_kg_m.x);
      values[0] = bare.x_m;
      values[1] = bare.mass_kg;
    }
  else if (whole->readings->method == PH_METHOD_HANGING)
    {
      PhVec3 com = ph_bare_com (whole->hanging.com_m, bow_kg, &parts);
      values[0] = com.x;
      values[1] = com.y;
      values[2] = com.z;
    }
  else
    values[0] = ph_bare_inertia (whole->swing.value, whole->readings->axis, bow_kg,
                                 bow_com (compiled), &parts);
}

static size_t
count_values (PhMethod method)
{
  static const size_t counts[PH_METHODS] = { 2, 3, 1, 1 };
  return counts[method];
}

/* Variances that the rig's own numbers bring into the bare values. */
static void
variances_of_rig (const PhRig *rig, Whole *whole, double variances[PH_SLOPES_MOST])
{
  size_t n = count_values (whole->readings->method);
  PhUncertains list = ph_uncertains_of (rig);
  double *slopes = ph_uncertain_slopes (rig, &list, bare_values, n, whole);
  for (size_t k = 0; k < n; k++)
    variances[k] = 0;
  for (size_t i = 0; i < list.n; i++)
    for (size_t k = 0; k < n; k++)
      {
        double part = slopes[i * n + k] * list.items[i].sd;
        variances[k] += part * part;
      }
  free (slopes);
  ph_uncertains_clear (&list);
}

static void
refuse (PhMeasured *measured, PhRefused refused)
{
  measured->refused = ph_text_dup (ph_refused_text (refused));
}

static void
measure_scales (const PhRig *rig, const PhCompiled *compiled, Whole *whole, PhMeasured *measured)
{
  const PhReadings *read = whole->readings;
  double variances[PH_SLOPES_MOST];
  whole->scales = (PhScales){ read->f1_n, read->f2_n, ph_from_milli (read->d_mm), read->sd_n,
                              ph_from_milli (read->sd_mm) };
  PhScalesResult all = ph_scales_result (&whole->scales, 0, 0);
  PhMass parts = mass_of_parts (compiled);
  PhScalesResult bare = ph_scales_result (&whole->scales, parts.mass_kg, parts.moment_kg_m.x);
  measured->whole[0] = ph_to_milli (all.x_m);
  measured->whole_sd[0] = ph_to_milli (all.x_sd_m);
  measured->whole_mass_g = ph_to_milli (all.mass_kg);
  if (all.refused || bare.refused)
    {
      refuse (measured, all.refused ? all.refused : bare.refused);
      return;
    }
  variances_of_rig (rig, whole, variances);
  measured->value[0] = measured->bow.com_mm[0] = ph_to_milli (bare.x_m);
  measured->sd[0] = ph_to_milli (hypot (bare.x_sd_m, sqrt (variances[0])));
  measured->bow.sd_com_mm[0] = measured->sd[0];
  measured->bow.mass_g = ph_to_milli (bare.mass_kg);
  measured->bow.sd_mass_g = ph_to_milli (hypot (bare.mass_sd_kg, sqrt (variances[1])));
  measured->has_com = measured->has_mass = true;
}

static PhVec3
from_milli (const double v[3])
{
  return ph_vec3 (ph_from_milli (v[0]), ph_from_milli (v[1]), ph_from_milli (v[2]));
}

static PhHanging
hang (const PhReadings *read)
{
  PhPlumbLine *lines = ph_alloc ((read->n_lines + 1) * sizeof *lines);
  for (size_t i = 0; i < read->n_lines; i++)
    {
      const double *d = read->lines[i].direction;
      double most = fmax (fabs (d[0]), fmax (fabs (d[1]), fabs (d[2])));
      assert (most > 0 && read->lines[i].sd_mm > 0);
      lines[i].point_m = from_milli (read->lines[i].point_mm);
      lines[i].direction = ph_vec3_unit (ph_vec3 (d[0] / most, d[1] / most, d[2] / most));
      lines[i].sd_m = ph_from_milli (read->lines[i].sd_mm);
    }
  PhHanging result = ph_hanging_of (lines, read->n_lines);
  free (lines);
  return result;
}

static void
measure_hanging (const PhRig *rig, const PhCompiled *compiled, Whole *whole, PhMeasured *measured)
{
  double bare[3], variances[PH_SLOPES_MOST];
  whole->hanging = hang (whole->readings);
  measured->n = 3;
  measured->spread_mm = ph_to_milli (whole->hanging.spread_m);
  if (whole->hanging.refused || !(rig->bow.mass_g > 0))
    {
      refuse (measured, whole->hanging.refused ? whole->hanging.refused : PH_REFUSED_PARTS_HEAVY);
      return;
    }
  const PhSym3 *c = &whole->hanging.covariance_m2;
  const double all[3] = { c->xx, c->yy, c->zz };
  const PhVec3 com = whole->hanging.com_m;
  const double at[3] = { com.x, com.y, com.z };
  double bow_kg = ph_from_milli (rig->bow.mass_g);
  double lever = 1 + mass_of_parts (compiled).mass_kg / bow_kg; /* M/m_bow */
  variances_of_rig (rig, whole, variances);
  bare_values (compiled, whole, bare);
  for (int k = 0; k < 3; k++)
    {
      measured->whole[k] = ph_to_milli (at[k]);
      measured->whole_sd[k] = ph_to_milli (sqrt (all[k]));
      measured->value[k] = measured->bow.com_mm[k] = ph_to_milli (bare[k]);
      measured->sd[k] = ph_to_milli (sqrt (lever * lever * all[k] + variances[k]));
      measured->bow.sd_com_mm[k] = measured->sd[k];
    }
  measured->has_com = true;
}

static PhSwingResult
swing (const PhReadings *read)
{
  double mass_kg = ph_from_milli (read->mass_g), mass_sd_kg = ph_from_milli (read->sd_mass_g);
  PhSwing one = { mass_kg,    ph_from_milli (read->distance_mm),    read->swings,    read->seconds,
                  mass_sd_kg, ph_from_milli (read->sd_distance_mm), read->sd_seconds };
  PhTwoString two = { mass_kg,
                      ph_from_milli (read->spacing_mm),
                      ph_from_milli (read->length_mm),
                      read->swings,
                      read->seconds,
                      mass_sd_kg,
                      ph_from_milli (read->sd_spacing_mm),
                      ph_from_milli (read->sd_length_mm),
                      read->sd_seconds };
  return read->method == PH_METHOD_SWING ? ph_swing_result (&one) : ph_two_string_result (&two);
}

static void
measure_swing (const PhRig *rig, const PhCompiled *compiled, Whole *whole, PhMeasured *measured)
{
  int axis = whole->readings->axis;
  double bare, variances[PH_SLOPES_MOST], bow_kg = ph_from_milli (rig->bow.mass_g);
  whole->swing = swing (whole->readings);
  if (!whole->swing.refused && !(bow_kg > 0))
    whole->swing.refused = PH_REFUSED_PARTS_HEAVY;
  if (!whole->swing.refused)
    bare_values (compiled, whole, &bare);
  if (!whole->swing.refused && bare < 0)
    whole->swing.refused = PH_REFUSED_PARTS_INERTIA;
  if (whole->swing.refused)
    {
      refuse (measured, whole->swing.refused);
      return;
    }
  variances_of_rig (rig, whole, variances);
  measured->whole[0] = whole->swing.value;
  measured->whole_sd[0] = whole->swing.sd;
  measured->value[0] = bare;
  measured->sd[0] = hypot (whole->swing.sd, sqrt (variances[0]));
  double k = sqrt (bare / bow_kg);
  double by_mass = k / (2 * bow_kg) * ph_from_milli (measured->bow.sd_mass_g);
  double by_inertia = k > 0 ? measured->sd[0] / (2 * k * bow_kg) : sqrt (measured->sd[0] / bow_kg);
  measured->bow.gyration_mm[axis] = ph_to_milli (k);
  measured->bow.sd_gyration_mm[axis] = ph_to_milli (hypot (by_inertia, by_mass));
  measured->has_gyration = true;
}

static PhBowNumbers
numbers_of (const PhRig *rig)
{
  PhBowNumbers bow = { .mass_g = rig->bow.mass_g,
                       .sd_mass_g = ph_uncertain_sd (rig, -1, "mass_g", 0) };
  memcpy (bow.com_mm, rig->bow.com_mm, sizeof bow.com_mm);
  memcpy (bow.gyration_mm, rig->bow.gyration_mm, sizeof bow.gyration_mm);
  for (int c = 0; c < 3; c++)
    {
      bow.sd_com_mm[c] = ph_uncertain_sd (rig, -1, "com_mm", c);
      bow.sd_gyration_mm[c] = ph_uncertain_sd (rig, -1, "gyration_mm", c);
    }
  return bow;
}

static PhMeasured
measured_nothing (const PhRig *rig, const PhCompiled *compiled, const PhReadings *readings)
{
  static const char *const inertias[] = { "inertia_x_kg_m2", "inertia_y_kg_m2", "inertia_z_kg_m2" };
  PhMeasured measured = { .n = 1, .whole_mass_g = NAN, .spread_mm = NAN };
  PhMass parts = mass_of_parts (compiled);
  const double moment[3] = { parts.moment_kg_m.x, parts.moment_kg_m.y, parts.moment_kg_m.z };
  measured.quantity = readings->method == PH_METHOD_SCALES    ? "com_x_mm"
                      : readings->method == PH_METHOD_HANGING ? "com_mm"
                                                              : inertias[readings->axis];
  measured.n_parts = compiled->n_pieces;
  measured.parts_mass_g = ph_to_milli (parts.mass_kg);
  for (int c = 0; c < 3; c++)
    {
      measured.value[c] = measured.sd[c] = measured.whole[c] = measured.whole_sd[c] = NAN;
      measured.parts_com_mm[c] =
          parts.mass_kg > 0 ? ph_to_milli (moment[c] / parts.mass_kg) : (double)NAN;
    }
  measured.bow = numbers_of (rig);
  return measured;
}

/* Back to nothing measured, with the reason. */
static void
take_back (const PhRig *rig, PhMeasured *measured, char *why)
{
  measured->refused = why;
  measured->has_mass = measured->has_com = measured->has_gyration = false;
  measured->bow = numbers_of (rig);
  for (int c = 0; c < 3; c++)
    measured->value[c] = measured->sd[c] = NAN;
}

/* A bow that no rig file takes is no reading. */
static void
check_result (const PhRig *rig, PhMeasured *measured)
{
  for (int k = 0; k < measured->n; k++)
    if (!isfinite (measured->value[k]) || !isfinite (measured->sd[k]))
      {
        take_back (rig, measured, ph_text_dup (ph_refused_text (PH_REFUSED_NOT_FINITE)));
        return;
      }
  PhIssues issues = { 0 };
  PhRig *draft = ph_rig_copy (rig);
  ph_edit_use_measured (draft, measured);
  if (!ph_check_rig (draft, &issues))
    for (size_t i = 0; i < issues.n; i++)
      if (!issues.items[i].is_note)
        {
          take_back (rig, measured, ph_issue_line (&issues.items[i]));
          measured->issue = ph_issue_take (&issues, i);
          break;
        }
  ph_issues_clear (&issues);
  ph_rig_free (draft);
}

PhMeasured
ph_measure (const PhRig *rig, const PhReadings *readings)
{
  static void (*const methods[PH_METHODS]) (const PhRig *, const PhCompiled *, Whole *,
                                            PhMeasured *) = { measure_scales, measure_hanging,
                                                              measure_swing, measure_swing };
  Whole whole = { .readings = readings };
  PhCompiled *compiled = ph_compile_rig (rig);
  PhMeasured measured = measured_nothing (rig, compiled, readings);
  methods[readings->method](rig, compiled, &whole, &measured);
  if (!measured.refused)
    check_result (rig, &measured);
  ph_compiled_free (compiled);
  return measured;
}

void
ph_measured_clear (PhMeasured *measured)
{
  free (measured->refused);
  ph_issue_free (measured->issue);
  *measured = (PhMeasured){ 0 };
}
