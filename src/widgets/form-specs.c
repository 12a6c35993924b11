/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two tables. What an archer turns, slides and counts comes first; what is read once off a
 * drawing or a scale stands under More.
 */
#include "widgets/form-specs.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "document/field-word.h"

#define BAR (1u << PH_PART_BAR)
#define WEIGHTS (1u << PH_PART_WEIGHTS)
#define DAMPER (1u << PH_PART_DAMPER)
#define BRACKET (1u << PH_PART_BRACKET)
#define ACCESSORY (1u << PH_PART_ACCESSORY)

#define PART(KEY, COMPONENT, LABEL, KINDS, MORE)                                                   \
  {                                                                                                \
    PH_NUMBER_PART, KEY, COMPONENT, LABEL, NULL, NULL, KINDS, MORE                                 \
  }

static const PhFormSpec part_specs[] = {
  PART ("swing_deg", 0, N_ ("Left or right"), BAR | BRACKET, FALSE),
  PART ("lift_deg", 0, N_ ("Up or down"), BAR | BRACKET, FALSE),
  PART ("at_mm", 0, NULL, ACCESSORY, FALSE),
  PART ("at_mm", 1, NULL, ACCESSORY, FALSE),
  PART ("at_mm", 2, NULL, ACCESSORY, FALSE),
  PART ("length_mm", 0, NULL, BAR | DAMPER, FALSE),
  { PH_NUMBER_END_COUNT, NULL, 0, N_ ("Weights at its end"), NULL, NULL, BAR, FALSE },
  PART ("count", 0, N_ ("Number of weights"), WEIGHTS, FALSE),
  PART ("along_mm", 0, NULL, WEIGHTS, FALSE),
  PART ("each_g", 0, NULL, WEIGHTS, FALSE),
  PART ("mass_g", 0, NULL, DAMPER | BRACKET | ACCESSORY, FALSE),

  PART ("mass_g", 0, NULL, BAR, TRUE),
  PART ("outer_mm", 0, NULL, BAR, TRUE),
  PART ("inner_mm", 0, NULL, BAR, TRUE),
  PART ("root_fitting_g", 0, NULL, BAR, TRUE),
  PART ("tip_fitting_g", 0, NULL, BAR, TRUE),
  PART ("fitting_mm", 0, NULL, BAR, TRUE),
  { PH_NUMBER_PART, "modulus_gpa", 0, NULL, N_ ("0: the bar counts as rigid."), NULL, BAR, TRUE },
  PART ("diameter_mm", 0, NULL, WEIGHTS | DAMPER, TRUE),
  PART ("each_mm", 0, NULL, WEIGHTS, TRUE),
  PART ("bore_mm", 0, NULL, WEIGHTS, TRUE),
  PART ("swing_deg", 0, N_ ("Left or right"), WEIGHTS | DAMPER, TRUE),
  PART ("lift_deg", 0, N_ ("Up or down"), WEIGHTS | DAMPER, TRUE),
  { PH_NUMBER_PART, "com_mm", 0, N_ ("Along"), NULL, N_ ("Its balance point"), BRACKET, TRUE },
  PART ("com_mm", 1, N_ ("Across, + to the left"), BRACKET, TRUE),
  PART ("com_mm", 2, N_ ("Upward"), BRACKET, TRUE),
  { PH_NUMBER_PART, "size_mm", 0, N_ ("Length"), NULL, N_ ("Its size"), BRACKET | ACCESSORY, TRUE },
  PART ("size_mm", 1, N_ ("Width"), BRACKET | ACCESSORY, TRUE),
  PART ("size_mm", 2, N_ ("Height"), BRACKET | ACCESSORY, TRUE),
  { PH_NUMBER_PART, "aperture_mm", 0, NULL, NULL, N_ ("Its aperture"), ACCESSORY, TRUE },
  PART ("aperture_mm", 1, NULL, ACCESSORY, TRUE),
  PART ("aperture_mm", 2, NULL, ACCESSORY, TRUE),
  PART ("vial_deg_per_mark", 0, NULL, ACCESSORY, TRUE),
};

#define BOW(KEY, COMPONENT, LABEL, HEADING, MORE)                                                  \
  {                                                                                                \
    PH_NUMBER_BOW, KEY, COMPONENT, LABEL, NULL, HEADING, 0, MORE                                   \
  }
#define ARCHER(KEY, LABEL, REMARK, HEADING, MORE)                                                  \
  {                                                                                                \
    PH_NUMBER_ARCHER, KEY, 0, LABEL, REMARK, HEADING, 0, MORE                                      \
  }

static const PhFormSpec bow_specs[] = {
  BOW ("mass_g", 0, N_ ("Mass without any part"), NULL, FALSE),
  BOW ("com_mm", 0, NULL, N_ ("Balance point of the bare bow"), FALSE),
  BOW ("com_mm", 1, NULL, NULL, FALSE),
  BOW ("com_mm", 2, NULL, NULL, FALSE),
  { PH_NUMBER_STATED_DRAW, NULL, 0, N_ ("Draw length, as stated"), NULL, N_ ("At full draw"), 0,
    FALSE },
  ARCHER ("draw_length_mm", N_ ("Draw length, true"),
          N_ ("True: from the nock to the deepest point of the grip. Stated: 1 ¾ in more. Before a "
              "longer setting: does the arrow still reach past the rest? Modules and stops both "
              "alike; then timing, peep, loop and draw weight again. What needs a press belongs to "
              "a qualified technician."),
          NULL, FALSE),
  ARCHER ("nock_height_mm", N_ ("Nock above the grip"), NULL, NULL, FALSE),
  ARCHER ("holding_weight_n", NULL, NULL, NULL, FALSE),
  ARCHER ("stature_mm", NULL, NULL, N_ ("Archer"), FALSE),
  ARCHER ("body_mass_g", NULL, NULL, NULL, FALSE),
  ARCHER ("wanted_bubble_deg", N_ ("Wanted lean, + to the right"), NULL, NULL, TRUE),
  BOW ("axle_to_axle_mm", 0, N_ ("Axle to axle (recurve: tip to tip)"), N_ ("Bow"), TRUE),
  BOW ("brace_height_mm", 0, NULL, NULL, TRUE),
  BOW ("gyration_mm", 0, N_ ("To roll"), N_ ("Radius at which its mass resists turning"), TRUE),
  BOW ("gyration_mm", 1, N_ ("To nod"), NULL, TRUE),
  BOW ("gyration_mm", 2, N_ ("To swing"), NULL, TRUE),
};

const PhFormSpec *
ph_form_specs (int part, gsize *n)
{
  *n = part < 0 ? G_N_ELEMENTS (bow_specs) : G_N_ELEMENTS (part_specs);
  return part < 0 ? bow_specs : part_specs;
}

gboolean
ph_form_spec_applies (const PhFormSpec *spec, const PhRig *rig, int part)
{
  if (part < 0)
    return TRUE;
  const PhPart *p = &rig->parts[part];
  if (!(spec->kinds & 1u << p->kind))
    return FALSE;
  if (spec->of == PH_NUMBER_END_COUNT)
    return ph_end_stack_possible (rig, part);
  gboolean angle = strcmp (spec->key, "swing_deg") == 0 || strcmp (spec->key, "lift_deg") == 0;
  if (angle || strcmp (spec->key, "along_mm") == 0)
    return ph_part_is_along (p) != angle;
  if (strcmp (spec->key, "aperture_mm") == 0)
    return !isnan (p->aperture_mm[0]);
  if (strcmp (spec->key, "vial_deg_per_mark") == 0)
    return !isnan (p->vial_deg_per_mark);
  return TRUE;
}

char *
ph_form_spec_label (const PhFormSpec *spec)
{
  if (spec->label)
    return g_strdup (_ (spec->label));
  PhObject object = spec->of == PH_NUMBER_PART  ? PH_OBJECT_PART
                    : spec->of == PH_NUMBER_BOW ? PH_OBJECT_BOW
                                                : PH_OBJECT_ARCHER;
  const char *word = ph_field_word_of (object, spec->key);
  if (!word)
    return g_strdup (spec->key);
  const char *second = g_utf8_next_char (word);
  g_autofree char *first = g_utf8_strup (word, second - word);
  return g_strconcat (first, second, NULL);
}
