/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The bow measured instead of guessed: from readings taken on the whole rig as it stands to the
 * bow alone, the fitted parts taken out by computation. Readings are in the units of a readings
 * file (N, mm, g, s; bow frame: x ahead, y to the archer's left, z up). Deviations are of first
 * order and hold the reading's own together with those of the parts that were taken out (and of
 * the bow's other numbers where they come in). Weighed and hung undrawn: at full draw limbs and
 * cams stand farther back and the balance point moves some millimetres; that is not modelled.
 */
#pragma once

#include "model/issue.h"
#include "model/rig.h"

typedef enum
{
  PH_METHOD_SCALES,
  PH_METHOD_HANGING,
  PH_METHOD_SWING,
  PH_METHOD_TWO_STRING
} PhMethod;
#define PH_METHODS 4

/** Deviations of a reading that states none (ours, common practice, no source): a hanging scale
 * reads to 5 g; a tape is laid to 1 mm; a plumb line is marked, and a mass centre known, to 2 mm; a
 * bow is weighed to 3 g; a thumb on a watch scatters by 0.2 s from first to last swing. */
#define PH_READING_SD_N 0.05
#define PH_READING_SD_TAPE_MM 1.0
#define PH_READING_SD_LINE_MM 2.0
#define PH_READING_SD_CENTRE_MM 2.0
#define PH_READING_SD_G 3.0
#define PH_READING_SD_SECONDS 0.2

/** A plumb line seen in the bow frame. */
typedef struct
{
  double point_mm[3];  /* any point that it passes through */
  double direction[3]; /* any length above 0, up or down */
  double sd_mm;        /* how far off it may be sideways, above 0 */
} PhReadLine;

/** One set of readings; which fields count is the method's. Each sd_ belongs to the value of that
 * name. */
typedef struct
{
  PhMethod method;
  /* Scales: the bow level, its grip pivot over the first, the second at x = d. */
  double f1_n, f2_n, d_mm, sd_n, sd_mm;
  /* Hanging. */
  PhReadLine *lines;
  size_t n_lines;
  /* Swing, two-string: about an axis parallel to the bow's x, y or z (0–2); mass of all that
     swings; full periods in so many seconds. */
  int axis;
  double mass_g, swings, seconds, sd_mass_g, sd_seconds;
  double distance_mm, sd_distance_mm; /* swing: from the axis to the mass centre */
  double spacing_mm, length_mm, sd_spacing_mm, sd_length_mm; /* two-string */
} PhReadings;

/** Empty readings of that method with the deviations above; values NAN, axis y. */
PhReadings ph_readings_default (PhMethod method);
void ph_readings_add_line (PhReadings *readings, const PhReadLine *line);
void ph_readings_clear (PhReadings *readings);
PhReadings ph_readings_copy (const PhReadings *readings);
/** "scales", "hanging", "swing", "two-string": the key in a readings file. */
const char *ph_method_word (PhMethod method);

/** The bow's own numbers with the deviation of each, file units. */
typedef struct
{
  double mass_g, com_mm[3], gyration_mm[3];
  double sd_mass_g, sd_com_mm[3], sd_gyration_mm[3];
} PhBowNumbers;

typedef struct
{
  char *refused;                /* why the reading cannot be, plain English; null: it stands */
  PhIssue *issue;               /* where a rig cannot have such a bow: why; null: another reason */
  const char *quantity;         /* "com_x_mm", "com_mm", "inertia_x_kg_m2" (its axis) */
  int n;                        /* how many numbers: 3 for hanging, else 1 */
  double value[3], sd[3];       /* of the bow alone, mm or kg·m² about its mass centre; NAN where
                                   refused */
  double whole[3], whole_sd[3]; /* the same of all that was read, parts included */
  double whole_mass_g;          /* scales: what they carry together; else NAN */
  double spread_mm;             /* hanging: greatest distance from a line; else NAN */

  size_t n_parts;                       /* fitted parts taken out */
  double parts_mass_g, parts_com_mm[3]; /* theirs together; NANs where they weigh nothing */

  bool has_mass, has_com, has_gyration; /* which of the bow's keys it measures */
  PhBowNumbers bow;                     /* with the reading used; as it is where refused */
} PhMeasured;

/** `rig` must have passed ph_check_rig. Clear with ph_measured_clear. */
PhMeasured ph_measure (const PhRig *rig, const PhReadings *readings);
void ph_measured_clear (PhMeasured *measured);

/** Takes over a reading that stands (asserted): the bow's numbers, source measured, and `sd` of
 * the keys that were measured. A key that was not keeps what its old source meant as a stated sd,
 * so that it does not pass for measured. Scales measure mass and the first number of com_mm,
 * hanging com_mm, swinging one radius of gyration (so that the bow's mass × its square is the
 * inertia). */
void ph_edit_use_measured (PhRig *rig, const PhMeasured *measured);
