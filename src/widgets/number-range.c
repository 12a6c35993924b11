/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Angles and counts follow the part's limits and else the defaults that level works with (deciding
 * section 1): swing ±60°, lift ±45°, 0 to 12 weights.
 */
#include "widgets/number-range.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "model/adjust.h"

typedef struct
{
  const char *key;
  int component; /* −1: any */
  double lo, hi;
} Reach;

/* mm. A bar's length; a damper's is told apart below. */
static const Reach reaches[] = {
  { "length_mm", -1, 50, 1000 },
  { "at_mm", 0, -100, 400 },
  { "at_mm", 1, -150, 150 },
  { "at_mm", 2, -150, 300 },
};
#define DAMPER_LONGEST_MM 120
#define DRAW_LEAST_MM 500
#define DRAW_MOST_MM 850

static gboolean
is_metric (PhUnits units)
{
  return strcmp (ph_quantity_unit (PH_QUANTITY_LENGTH, units), "mm") == 0;
}

/* Steps of a number that is typed rather than slid. */
static double
typed_step (PhQuantity quantity, PhUnits units)
{
  const char *unit = ph_quantity_unit (quantity, units);
  switch (quantity)
    {
    case PH_QUANTITY_BOW_MASS:
      return strcmp (unit, "kg") == 0 ? 0.01 : 0.05;
    case PH_QUANTITY_MASS:
      return strcmp (unit, "g") == 0 ? 1 : 0.1;
    case PH_QUANTITY_DIAMETER:
      return 0.1;
    case PH_QUANTITY_LENGTH:
    case PH_QUANTITY_STATURE:
      return strcmp (unit, "mm") == 0 ? 1 : 0.05;
    case PH_QUANTITY_STIFFNESS:
    case PH_QUANTITY_MOMENT:
      return 0.1;
    case PH_QUANTITY_ANGLE:
    case PH_QUANTITY_FORCE:
    case PH_QUANTITY_MODULUS:
    case PH_QUANTITY_SPEED:
    case PH_QUANTITY_COUNT:
    default:
      return 1;
    }
}

static PhNumberRange
within (PhLimits limits, double lo, double hi)
{
  PhNumberRange range = { TRUE, lo, hi, 1, 0.1 };
  if (limits.given)
    {
      range.lo = limits.lo;
      range.hi = limits.hi;
    }
  return range;
}

static PhNumberRange
of_length (double lo, double hi, PhUnits units)
{
  gboolean metric = is_metric (units);
  return (PhNumberRange){ TRUE, lo, hi, metric ? 10 : 0.5, metric ? 1 : 0.125 };
}

static PhNumberRange
of_count (const PhRig *rig, int stack)
{
  PhLimits none = { 0 };
  PhNumberRange range =
      within (stack < 0 ? none : rig->parts[stack].limit_count, 0, PH_LIMIT_COUNT);
  range.fine = 1;
  return range;
}

static gboolean
part_range (const PhNumberRef *ref, const PhRig *rig, PhUnits units, PhNumberRange *range)
{
  int i = ph_rig_find (rig, ref->part);
  if (i < 0)
    return FALSE;
  const PhPart *part = &rig->parts[i];
  if (strcmp (ref->key, "swing_deg") == 0)
    return *range = within (part->limit_swing, -PH_LIMIT_SWING_DEG, PH_LIMIT_SWING_DEG), TRUE;
  if (strcmp (ref->key, "lift_deg") == 0)
    return *range = within (part->limit_lift, -PH_LIMIT_LIFT_DEG, PH_LIMIT_LIFT_DEG), TRUE;
  if (strcmp (ref->key, "count") == 0)
    return *range = of_count (rig, i), TRUE;
  if (strcmp (ref->key, "along_mm") == 0)
    {
      int bar = ph_rig_host (rig, (size_t)i, NULL);
      return *range = of_length (0, bar < 0 ? 0 : rig->parts[bar].length_mm, units), TRUE;
    }
  for (gsize r = 0; r < G_N_ELEMENTS (reaches); r++)
    if (strcmp (ref->key, reaches[r].key) == 0
        && (reaches[r].component < 0 || reaches[r].component == ref->component))
      {
        gboolean damper = part->kind == PH_PART_DAMPER;
        *range = of_length (damper ? 10 : reaches[r].lo, damper ? DAMPER_LONGEST_MM : reaches[r].hi,
                            units);
        return TRUE;
      }
  return FALSE;
}

PhNumberRange
ph_number_range (const PhNumberRef *ref, const PhRig *rig, PhUnits units)
{
  PhNumberRange range = { 0 };
  if (ref->of == PH_NUMBER_STATED_DRAW)
    return of_length (DRAW_LEAST_MM, DRAW_MOST_MM, units);
  if (ref->of == PH_NUMBER_END_COUNT)
    {
      int bar = ph_rig_find (rig, ref->part);
      return of_count (rig, bar < 0 ? -1 : ph_end_stack (rig, bar));
    }
  if (ref->of == PH_NUMBER_PART && part_range (ref, rig, units, &range))
    return range;
  range.step = range.fine = typed_step (ph_number_ref_quantity (ref), units);
  return range;
}

char *
ph_step_words (const PhNumberRef *ref, PhUnits units, const char *way)
{
  switch (ph_number_ref_quantity (ref))
    {
    case PH_QUANTITY_ANGLE:
      return way ? g_strdup_printf (_ ("one degree %s"), way) : g_strdup (_ ("one more degree"));
    case PH_QUANTITY_COUNT:
      return g_strdup (_ ("one more"));
    case PH_QUANTITY_LENGTH:
      if (way)
        return g_strdup_printf (is_metric (units) ? _ ("10 mm %s") : _ ("half an inch %s"), way);
      return g_strdup (is_metric (units) ? _ ("10 mm more") : _ ("half an inch more"));
    case PH_QUANTITY_DIAMETER:
    case PH_QUANTITY_STATURE:
    case PH_QUANTITY_MASS:
    case PH_QUANTITY_BOW_MASS:
    case PH_QUANTITY_FORCE:
    case PH_QUANTITY_MODULUS:
    case PH_QUANTITY_STIFFNESS:
    case PH_QUANTITY_MOMENT:
    case PH_QUANTITY_SPEED:
    default:
      return g_strdup (_ ("one step more"));
    }
}
