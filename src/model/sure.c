/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Slopes of balance point and cant, squared with the deviations and added up.
 */
#include "model/sure.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "base/units.h"

/* What is followed: the mass centre's three components, and the cant. */
enum
{
  CANT = 3,
  VALUES
};

static void
balance_and_cant (const PhCompiled *compiled, void *data, double *values)
{
  const PhHand *hand = data;
  PhMassProperties mass = ph_assembly_properties (compiled->assembly);
  PhRoll roll = ph_roll_of (mass.mass_kg, mass.com_m, &compiled->draw);
  values[0] = mass.com_m.x;
  values[1] = mass.com_m.y;
  values[2] = mass.com_m.z;
  values[CANT] = NAN;
  if (!isnan (hand->bias_nm))
    ph_cant_predict (&roll, hand->stiffness_nm_per_rad, hand->bias_nm, &values[CANT]);
}

int
ph_sure_check_of_this_rig (const PhRig *rig)
{
  PhCompiled *compiled = ph_compile_rig (rig);
  PhMassProperties mass = ph_assembly_properties (compiled->assembly);
  ph_compiled_free (compiled);
  const double com[3] = { mass.com_m.x, mass.com_m.y, mass.com_m.z };
  for (size_t i = 0; i < rig->archer.n_checks; i++)
    {
      const PhCheck *check = &rig->archer.checks[i];
      bool same =
          !check->aside && fabs (check->mass_g - ph_to_milli (mass.mass_kg)) <= PH_SAME_RIG_G;
      for (int c = 0; c < 3; c++)
        same = same && fabs (check->com_mm[c] - ph_to_milli (com[c])) <= PH_SAME_RIG_MM;
      if (same)
        return (int)i;
    }
  return -1;
}

static bool
is_absorbed (const PhSure *sure, const PhUncertain *item)
{
  return sure->absorbed_by >= 0 && item->part < 0 && item->component == 1
         && strcmp (item->field->key, "com_mm") == 0;
}

static PhSureFrom *
entry_of (PhSure *sure, const PhUncertain *item)
{
  PhSureFrom *last = sure->n ? &sure->from[sure->n - 1] : NULL;
  if (last && last->part == item->part && last->key == item->field->key)
    return last;
  last = &sure->from[sure->n++];
  *last = (PhSureFrom){ item->part, item->field->key, sure->n, item->source, { 0 }, 0, 0, false };
  return last;
}

/* Adds up all of it; if_measured_… holds the variance that measuring takes away for now. */
static double
add_up (PhSure *sure, const PhUncertains *list, const double *slopes)
{
  double com[3] = { 0, 0, 0 }, cant = 0;
  for (size_t i = 0; i < list->n; i++)
    {
      const PhUncertain *item = &list->items[i];
      const double *slope = &slopes[i * VALUES];
      for (int c = 0; c < 3; c++)
        com[c] += slope[c] * slope[c] * item->sd * item->sd;
      double by = is_absorbed (sure, item) ? 0 : slope[CANT] * slope[CANT];
      double own = by * item->sd * item->sd;
      PhSureFrom *entry = entry_of (sure, item);
      entry->cant_variance[item->component] = own;
      entry->is_open |= item->is_open;
      entry->if_measured_cant_sd_rad += own - by * item->measured_sd * item->measured_sd;
      cant += own;
    }
  for (int c = 0; c < 3; c++)
    sure->com_sd_m[c] = sqrt (com[c]);
  return cant;
}

static int
compare (const void *a, const void *b)
{
  const PhSureFrom *x = a, *y = b;
  if (x->share != y->share && !isnan (x->share))
    return x->share < y->share ? 1 : -1;
  return x->order < y->order ? -1 : 1;
}

static void
share_out (PhSure *sure, double variance)
{
  for (size_t i = 0; i < sure->n; i++)
    {
      PhSureFrom *entry = &sure->from[i];
      double own = entry->cant_variance[0] + entry->cant_variance[1] + entry->cant_variance[2];
      entry->share = variance == 0 ? 0 : own / variance;
      entry->if_measured_cant_sd_rad = sqrt (fmax (0, variance - entry->if_measured_cant_sd_rad));
    }
  if (isnan (variance))
    for (size_t i = 0; i < sure->n; i++)
      sure->from[i].if_measured_cant_sd_rad = NAN; /* fmax drops it */
  qsort (sure->from, sure->n, sizeof *sure->from, compare);
}

static void
fill_lean (PhSure *sure, const PhRig *rig, const PhHand *hand, double variance)
{
  PhCompiled *compiled = ph_compile_rig (rig);
  double values[VALUES];
  balance_and_cant (compiled, (void *)hand, values);
  PhMassProperties mass = ph_assembly_properties (compiled->assembly);
  PhRoll roll = ph_roll_of (mass.mass_kg, mass.com_m, &compiled->draw);
  double cant = values[CANT], bubble = ph_cant_bubble (&roll, cant);
  ph_compiled_free (compiled);
  sure->settles = !isnan (cant) && !isnan (variance);
  sure->cant_sd_rad = sure->settles ? sqrt (variance) : (double)NAN;
  /* d bubble/d cant of asin (cosβ sin φ) */
  sure->bubble_sd_rad = sure->cant_sd_rad * roll.cos_beta * cos (cant) / cos (bubble);
  sure->hand_cant_sd_rad = sure->settles ? ph_cant_sd (&roll, hand, cant) : (double)NAN;
}

PhSure
ph_sure_of (const PhRig *rig)
{
  PhHand hand;
  PhSure sure = { .absorbed_by = ph_sure_check_of_this_rig (rig) };
  if (ph_compile_hand (rig, &hand, &sure.hand_fitted) != PH_OK)
    hand = (PhHand){ NAN, NAN, NAN, NAN, NAN };
  PhUncertains list = ph_uncertains_of (rig);
  double *slopes = ph_uncertain_slopes (rig, &list, balance_and_cant, VALUES, &hand);
  sure.from = ph_alloc_zeroed (list.n + 1, sizeof *sure.from);
  double variance = add_up (&sure, &list, slopes);
  share_out (&sure, variance);
  fill_lean (&sure, rig, &hand, variance);
  free (slopes);
  ph_uncertains_clear (&list);
  return sure;
}

void
ph_sure_clear (PhSure *sure)
{
  free (sure->from);
  *sure = (PhSure){ 0 };
}

bool
ph_sure_matters_most (const PhSure *sure, PhMatters *matters)
{
  const PhSureFrom *best = NULL;
  if (!sure->settles || !(sure->cant_sd_rad > 0))
    return false;
  for (size_t i = 0; i < sure->n; i++)
    if (sure->from[i].is_open
        && (!best || sure->from[i].if_measured_cant_sd_rad < best->if_measured_cant_sd_rad))
      best = &sure->from[i];
  if (!best || !(best->if_measured_cant_sd_rad < sure->cant_sd_rad))
    return false;
  int most = 0;
  for (int c = 1; c < 3; c++)
    if (best->cant_variance[c] > best->cant_variance[most])
      most = c;
  double on_bubble = sure->bubble_sd_rad / sure->cant_sd_rad;
  *matters = (PhMatters){ best->part, best->key, most, best->source,
                          sqrt (best->cant_variance[most]) * on_bubble };
  return ph_deg_from_rad (matters->bubble_sd_rad) >= PH_MATTERS_LEAST_DEG;
}
