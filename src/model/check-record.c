/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * "Before" is file order: checks are only ever added at the end.
 */
#include "model/check-record.h"

#include <math.h>
#include <stdlib.h>

#include "base/text.h"
#include "base/units.h"
#include "model/compile.h"

/* Every check of the rig, those set aside too, in file order. */
static PhBubbleCheck *
all_checks (const PhRig *rig)
{
  size_t n;
  PhRig *copy = ph_rig_copy (rig);
  for (size_t i = 0; i < copy->archer.n_checks; i++)
    copy->archer.checks[i].aside = false;
  PhBubbleCheck *checks = ph_compile_checks (copy, &n, NULL);
  ph_rig_free (copy);
  return checks;
}

/* Standard deviation of one reading of that rig about what the hand predicts [rad]. */
static double
reading_sd (const PhBubbleCheck *check, const PhHand *hand)
{
  double cant;
  if (ph_cant_predict (&check->roll, hand->stiffness_nm_per_rad, hand->bias_nm, &cant) != PH_OK)
    return NAN;
  double s = check->roll.cos_beta * sin (cant);
  double by_cant = check->roll.cos_beta * cos (cant) / sqrt (1 - s * s);
  return hypot (ph_cant_sd (&check->roll, hand, cant) * by_cant, check->sd_rad);
}

static void
judge_prediction (PhCheckRecord *record, const PhCheck *check, const PhBubbleCheck *checks,
                  const PhBubbleCheck *used, size_t n_used, size_t i)
{
  PhHand hand;
  record->sealed = !isnan (check->predicted_deg);
  record->own_hand = n_used > 0;
  if (!record->sealed || n_used == 0 || ph_hand_fit (used, n_used, &hand) != PH_OK)
    return;
  record->half_deg = PH_SD_90 * ph_deg_from_rad (reading_sd (&checks[i], &hand));
  record->held = fabs (check->bubble_deg - check->predicted_deg) <= record->half_deg;
}

PhCheckRecord *
ph_check_records_of (const PhRig *rig)
{
  const PhArcher *archer = &rig->archer;
  PhHand now;
  bool fitted;
  bool known = ph_compile_hand (rig, &now, &fitted) == PH_OK && fitted;
  PhCheckRecord *records = ph_alloc ((archer->n_checks + 1) * sizeof *records);
  PhBubbleCheck *checks = all_checks (rig);
  PhBubbleCheck *used = ph_alloc ((archer->n_checks + 1) * sizeof *used);
  size_t n_used = 0;
  for (size_t i = 0; i < archer->n_checks; i++)
    {
      records[i] = (PhCheckRecord){ .half_deg = NAN, .residual_sd = NAN };
      judge_prediction (&records[i], &archer->checks[i], checks, used, n_used, i);
      if (known)
        records[i].residual_sd = ph_check_residual (&checks[i], &now);
      records[i].disagrees = fabs (records[i].residual_sd) > PH_CHECK_DISAGREES;
      if (!archer->checks[i].aside)
        used[n_used++] = checks[i];
    }
  free (used);
  free (checks);
  return records;
}

size_t
ph_check_records_count (const PhCheckRecord *records, size_t n, size_t *held)
{
  size_t counted = 0;
  *held = 0;
  for (size_t i = 0; i < n; i++)
    {
      if (!isnan (records[i].half_deg))
        counted++;
      if (records[i].held)
        *held += 1;
    }
  return counted;
}
