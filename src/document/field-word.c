/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One table; a lookup is a walk over it.
 */
#include "document/field-word.h"

#include <glib/gi18n-lib.h>
#include <string.h>

typedef struct
{
  PhObject object;
  const char *key, *word;
} FieldWord;

static const FieldWord words[] = {
  { PH_OBJECT_PART, "length_mm", N_ ("length") },
  { PH_OBJECT_PART, "outer_mm", N_ ("outer diameter") },
  { PH_OBJECT_PART, "inner_mm", N_ ("inner diameter") },
  { PH_OBJECT_PART, "mass_g", N_ ("mass") },
  { PH_OBJECT_PART, "root_fitting_g", N_ ("fitting at the bow end") },
  { PH_OBJECT_PART, "tip_fitting_g", N_ ("fitting at the tip") },
  { PH_OBJECT_PART, "fitting_mm", N_ ("fitting length") },
  { PH_OBJECT_PART, "modulus_gpa", N_ ("stiffness of the tube") },
  { PH_OBJECT_PART, "each_g", N_ ("mass of one") },
  { PH_OBJECT_PART, "diameter_mm", N_ ("diameter") },
  { PH_OBJECT_PART, "each_mm", N_ ("thickness of one") },
  { PH_OBJECT_PART, "bore_mm", N_ ("hole") },
  { PH_OBJECT_PART, "along_mm", N_ ("place along the bar") },
  { PH_OBJECT_PART, "com_mm", N_ ("balance point") },
  { PH_OBJECT_PART, "size_mm", N_ ("size") },
  { PH_OBJECT_PART, "aperture_mm", N_ ("aperture") },
  { PH_OBJECT_PART, "vial_deg_per_mark", N_ ("tilt per mark of the vial") },
  { PH_OBJECT_BOW, "mass_g", N_ ("bow mass") },
  { PH_OBJECT_BOW, "com_mm", N_ ("bow balance point") },
  { PH_OBJECT_BOW, "gyration_mm", N_ ("bow radius of gyration") },
  { PH_OBJECT_BOW, "axle_to_axle_mm", N_ ("axle to axle") },
  { PH_OBJECT_BOW, "brace_height_mm", N_ ("brace height") },
  { PH_OBJECT_ARCHER, "stature_mm", N_ ("stature") },
  { PH_OBJECT_ARCHER, "body_mass_g", N_ ("body mass") },
  { PH_OBJECT_ARCHER, "draw_length_mm", N_ ("draw length") },
  { PH_OBJECT_ARCHER, "nock_height_mm", N_ ("nock height") },
  { PH_OBJECT_ARCHER, "holding_weight_n", N_ ("holding weight") },
  { PH_OBJECT_ARCHER, "wanted_bubble_deg", N_ ("wanted lean") },
  { PH_OBJECT_HAND, "roll_stiffness_nm_per_rad", N_ ("assumed firmness of the hand") },
  { PH_OBJECT_HAND, "roll_bias_nm", N_ ("assumed twist of the hand") },
};

const char *
ph_field_word_of (PhObject object, const char *key)
{
  for (size_t i = 0; i < G_N_ELEMENTS (words); i++)
    if (words[i].object == object && strcmp (words[i].key, key) == 0)
      return _ (words[i].word);
  return NULL;
}
