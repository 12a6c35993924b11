/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Sentences by method. Lengths follow the units; inertia is always kg·m² to three figures.
 */
#include "widgets/measure-words.h"

#include <glib/gi18n.h>
#include <math.h>

#include "base/text.h"
#include "document/format.h"

const char *
ph_measure_safety (void)
{
  return _ ("The bow stays undrawn and is never dry-fired. Two people: one steadies it, one reads. "
            "No bow press is needed. The bars may stay on: they are taken out by computation.");
}

const char *
ph_measure_gives (PhMethod method)
{
  static const char *const gives[PH_METHODS] = {
    N_ ("Two scales: the bow’s mass, and how far ahead it balances"),
    N_ ("Hanging: the bow’s balance point, all three numbers of it"),
    N_ ("Pendulum: how the bow’s mass is spread about one axis"),
    N_ ("Two strings: how the bow’s mass is spread about one axis"),
  };
  return _ (gives[method]);
}

const char *
ph_measure_how (PhMethod method)
{
  static const char *const how[PH_METHODS] = {
    N_ ("1. Put two scales on a bench, with a narrow edge on each.\n"
        "2. Set the bow plumb and level: the deepest point of the grip on the first edge, the "
        "front "
        "bar on the second. One of you only keeps it from falling over.\n"
        "3. Read both scales.\n"
        "4. Measure d, level, from edge to edge; a minus sign where the second is behind the "
        "grip."),
    N_ ("1. Hang the bow on a strong cord from one point, clear of the floor, and let it come to "
        "rest.\n"
        "2. Hold a plumb line to the same point and mark where else it crosses the bow.\n"
        "3. Measure both points from the deepest point of the grip, as if the bow stood plumb: "
        "ahead, to the archer’s left, up. Or, instead of the second point, lay a level on the "
        "riser and type the line’s angles from the bow’s own vertical: from the side, + when it "
        "runs ahead on its way down, and out of the bow’s plane, + when it runs to the archer’s "
        "left.\n"
        "4. Again from a second point, and best a third, far from the first. The lines meet in the "
        "balance point."),
    N_ ("1. Weigh all that will move.\n"
        "2. Hang the bow on a narrow edge or a rod, so that it rocks freely about the axis chosen "
        "here.\n"
        "3. Measure l, from the edge to the balance point (hang it first to know where that is).\n"
        "4. Let it rock by a hand’s breadth at most and time 20 full periods, there and back."),
    N_ ("1. Weigh all that will move.\n"
        "2. Hang the bow level on two equal upright strings, the balance point midway between them "
        "and the axis chosen here upright.\n"
        "3. Measure D, the distance between the strings, and h, their length.\n"
        "4. Turn it by a few degrees, let go, and time 20 full periods, there and back."),
  };
  return _ (how[method]);
}

char *
ph_measure_plus_minus (double value, double sd, PhQuantity quantity, PhUnits units)
{
  if (isnan (value) || isnan (sd))
    return g_strdup ("–");
  g_autofree char *what = ph_format_quantity (value, quantity, units);
  g_autofree char *within = ph_format_quantity (sd, quantity, units);
  return g_strdup_printf ("%s ± %s", what, within);
}

static char *
inertia_words (double value, double sd)
{
  g_autofree char *what = ph_format_number (value, value < 0.1 ? 4 : 3);
  g_autofree char *within = ph_format_number (sd, 4);
  return g_strdup_printf ("%s ± %s kg·m²", what, within);
}

static char *
values_words (const PhMeasured *measured, const double *value, const double *sd, PhUnits units)
{
  if (measured->has_gyration)
    return inertia_words (value[0], sd[0]);
  g_autofree char *x = ph_measure_plus_minus (value[0], sd[0], PH_QUANTITY_DIAMETER, units);
  if (measured->n == 1)
    return g_strdup_printf (_ ("%s ahead of the grip"), x);
  g_autofree char *y = ph_measure_plus_minus (value[1], sd[1], PH_QUANTITY_DIAMETER, units);
  g_autofree char *z = ph_measure_plus_minus (value[2], sd[2], PH_QUANTITY_DIAMETER, units);
  return g_strdup_printf (_ ("ahead %s, to the left %s, up %s"), x, y, z);
}

static void
add_parts (GString *text, const PhMeasured *measured, PhUnits units)
{
  if (measured->n_parts == 0)
    {
      g_string_append (text, _ ("No part is fitted: nothing was taken out.\n"));
      return;
    }
  g_autofree char *mass = ph_format_quantity (measured->parts_mass_g, PH_QUANTITY_MASS, units);
  g_string_append_printf (text,
                          ngettext ("Taken out: %d fitted part, %s, as the rig has it now.\n",
                                    "Taken out: %d fitted parts, %s, as the rig has them now.\n",
                                    (unsigned long)measured->n_parts),
                          (int)measured->n_parts, mass);
}

char *
ph_measure_result_words (const PhMeasureAnswer *answer, PhUnits units)
{
  const PhMeasured *measured = &answer->measured;
  g_autoptr (GString) text = g_string_new (NULL);
  if (!isnan (measured->spread_mm))
    {
      g_autofree char *spread =
          ph_format_quantity (measured->spread_mm, PH_QUANTITY_DIAMETER, units);
      g_string_append_printf (text, _ ("The plumb lines miss one another’s point by at most %s.\n"),
                              spread);
    }
  if (answer->refusal)
    {
      g_string_append (text, answer->refusal);
      return g_strdup (text->str);
    }
  if (measured->refused)
    {
      g_string_append_printf (text, _ ("This reading cannot be: %s."), _ (measured->refused));
      return g_strdup (text->str);
    }
  g_autofree char *whole = values_words (measured, measured->whole, measured->whole_sd, units);
  g_autofree char *bare = values_words (measured, measured->value, measured->sd, units);
  g_string_append_printf (text, _ ("All that was read: %s\n"), whole);
  add_parts (text, measured, units);
  g_string_append_printf (text, _ ("The bow alone: %s"), bare);
  if (measured->has_mass)
    {
      g_autofree char *mass = ph_measure_plus_minus (measured->bow.mass_g, measured->bow.sd_mass_g,
                                                     PH_QUANTITY_BOW_MASS, units);
      g_string_append_printf (text, _ ("; it weighs %s"), mass);
    }
  return g_strdup (text->str);
}

static char *
number_words (const PhRig *rig, const PhMatters *matters)
{
  static const char *const of_com[] = {
    N_ ("how far ahead the bow’s own balance point is"),
    N_ ("the bow’s own side offset"),
    N_ ("how high the bow’s own balance point is"),
  };
  gboolean mass = g_str_has_suffix (matters->key, "_g");
  if (matters->part < 0)
    return g_strdup (mass ? _ ("the bow’s mass") : _ (of_com[matters->component]));
  g_autofree char *name = ph_text_cut (ph_part_name (&rig->parts[matters->part]), 40);
  return g_strdup_printf (mass ? _ ("the mass of %s") : _ ("where %s has its weight"), name);
}

char *
ph_matters_words (const PhRig *rig, const PhMatters *matters)
{
  g_autofree char *number = number_words (rig, matters);
  g_autofree char *angle = ph_format_number (matters->bubble_sd_rad * 180 / G_PI, 1);
  const char *known = matters->source == PH_SOURCE_GUESSED    ? _ ("guessed")
                      : matters->source == PH_SOURCE_MEASURED ? _ ("not measured by itself")
                                                              : _ ("only from a catalogue");
  /* Translators: a number, how it is known, degrees. */
  return g_strdup_printf (rig->bow.kind == PH_BOW_COMPOUND
                              ? _ ("The guess that matters most now: %s, %s: ±%s° of bubble.")
                              : _ ("The guess that matters most now: %s, %s: ±%s° of lean."),
                          number, known, angle);
}
