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

/* So many checks of before intervals were kept are judged: a fit each, of all before it. */
#define FITS_MOST 60
/* Two predictions of one hand are the same to more than this. */
#define SAME_DEG 1e-6

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

/* What an assumed hand gave: the file's K and B. */
static bool
is_of_an_assumed_hand (const PhCheck *check, const PhBubbleCheck *held, const PhArcher *archer)
{
  double given = ph_check_predict (held, archer->roll_stiffness_nm_per_rad, archer->roll_bias_nm);
  return fabs (ph_deg_from_rad (given) - check->predicted_deg) <= SAME_DEG;
}

/* The band that was sealed, with the reading's own scatter, each 90 %. A check of before bands were
   kept has that of the hand as all checks before it make it, whatever was set aside since. */
static double
band_deg (const PhArcher *archer, const PhBubbleCheck *checks, size_t i)
{
  const PhCheck *check = &archer->checks[i];
  PhHand hand;
  if (!isnan (check->predicted_90_deg))
    return hypot (check->predicted_90_deg, PH_SD_90 * check->sd_deg);
  if (i == 0 || i > FITS_MOST || is_of_an_assumed_hand (check, &checks[i], archer)
      || ph_hand_fit (checks, i, &hand) != PH_OK)
    return NAN;
  return PH_SD_90 * ph_deg_from_rad (reading_sd (&checks[i], &hand));
}

static void
judge_prediction (PhCheckRecord *record, const PhArcher *archer, const PhBubbleCheck *checks,
                  size_t i)
{
  const PhCheck *check = &archer->checks[i];
  record->sealed = !isnan (check->predicted_deg);
  if (!record->sealed)
    return;
  record->half_deg = band_deg (archer, checks, i);
  record->own_hand =
      !isnan (record->half_deg) || (isnan (check->predicted_90_deg) && i > FITS_MOST);
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
  for (size_t i = 0; i < archer->n_checks; i++)
    {
      records[i] = (PhCheckRecord){ .half_deg = NAN, .residual_sd = NAN };
      judge_prediction (&records[i], archer, checks, i);
      if (known)
        records[i].residual_sd = ph_check_residual (&checks[i], &now);
      records[i].disagrees = fabs (records[i].residual_sd) > PH_CHECK_DISAGREES;
    }
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
