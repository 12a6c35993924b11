/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The report: every floor's answer to one rig, gathered. A number that does not exist is NAN; a
 * zero is +0, so that no reader meets a "-0".
 */
#include "model/report.h"

#include <math.h>
#include <stdlib.h>

#include "base/number.h"
#include "base/text.h"
#include "base/units.h"
#include "model/check.h"
#include "physics/cant.h"
#include "physics/clearance.h"

/** How far from the bow's plane weights behind the grip are still "back" and not "side". */
#define SIDE_FROM_M 0.060
/** Roll moment under which neither side is called heavy. */
#define LEVEL_WITHIN_NM 0.0005

/* −0 becomes 0, all else stays. */
static double
plain_zero (double value)
{
  return value == 0 ? 0 : value;
}

static PhShare
share_of (const PhMass *mass, int part, double cos_beta)
{
  double m = mass->mass_kg;
  return (PhShare){
    .part = part,
    .mass_kg = m,
    .com_m = m > 0 ? ph_vec3_scale (mass->moment_kg_m, 1 / m) : ph_vec3 (NAN, NAN, NAN),
    .roll_moment_nm = plain_zero (-PH_GRAVITY * mass->moment_kg_m.y * cos_beta),
    .pitch_moment_nm = plain_zero (PH_GRAVITY * mass->moment_kg_m.x),
  };
}

static void
fill_shares (PhReport *report, const PhCompiled *compiled)
{
  double cos_beta = ph_draw_cos_beta (&compiled->draw);
  report->shares = ph_alloc ((compiled->n_pieces + 1) * sizeof *report->shares);
  report->shares[report->n_shares++] =
      share_of (ph_assembly_mass (compiled->assembly, PH_HOST_BOW), -1, cos_beta);
  for (size_t i = 0; i < compiled->n_parts; i++)
    {
      int piece = compiled->piece_of_part[i];
      if (piece >= 0)
        report->shares[report->n_shares++] =
            share_of (ph_assembly_mass (compiled->assembly, piece), (int)i, cos_beta);
    }
}

static void
fill_cant (PhReport *report)
{
  const PhHand *hand = &report->hand;
  double cant;
  PhStatus status =
      ph_cant_predict (&report->roll, hand->stiffness_nm_per_rad, hand->bias_nm, &cant);
  if (status != PH_OK)
    {
      report->reason = ph_status_text (status);
      return;
    }
  report->stable = true;
  report->cant_rad = plain_zero (cant);
  report->bubble_rad = plain_zero (ph_cant_bubble (&report->roll, cant));
  report->cant_sd_rad = ph_cant_sd (&report->roll, hand, cant);
  if (!report->hand_fitted)
    return;
  report->cant_90_rad[0] = report->cant_rad - PH_SD_90 * report->cant_sd_rad;
  report->cant_90_rad[1] = report->cant_rad + PH_SD_90 * report->cant_sd_rad;
}

static void
fill_roll (PhReport *report, const PhRig *rig, const PhCompiled *compiled)
{
  const PhMassProperties *mass = &report->mass;
  report->roll = ph_roll_of (mass->mass_kg, mass->com_m, &compiled->draw);
  report->roll_moment_nm = plain_zero (ph_roll_torque (&report->roll, 0));
  report->above_line_m = plain_zero (ph_draw_height_above_line (&compiled->draw, mass->com_m));
  report->gravity_stiffness_nm_per_rad = plain_zero (ph_roll_stiffness (&report->roll, 0));
  report->cant_rad = report->bubble_rad = report->cant_sd_rad = NAN;
  report->cant_90_rad[0] = report->cant_90_rad[1] = NAN;
  if (ph_compile_hand (rig, &report->hand, &report->hand_fitted) == PH_OK)
    fill_cant (report);
  else
    {
      report->hand = (PhHand){ NAN, NAN, NAN, NAN, NAN };
      report->reason = "no hand could be found that explains the bubble checks";
    }
}

static void
fill_hold (PhReport *report, const PhCompiled *compiled)
{
  const PhMassProperties *mass = &report->mass;
  const PhSym3 *grip = &mass->inertia_grip_kg_m2;
  report->pitch = ph_pitch_of (mass, &compiled->draw);
  report->inertia_nock_kg_m2 = ph_inertia_about (
      mass->mass_kg, mass->com_m, mass->inertia_com_kg_m2, ph_draw_nock (&compiled->draw));
  double both = grip->xx * grip->zz;
  report->cross_coupling = both > 0 ? fabs (grip->xz) / sqrt (both) : (double)NAN;
}

/* Tenths of a millimetre, downward: 14.96 mm must not read as the 15 mm that it lacks. */
static void
note_clearance (PhReport *report, const PhPart *part, double clearance_m)
{
  char number[PH_NUMBER_SIZE];
  double shown = floor (ph_to_milli (clearance_m) * 10) / 10;
  ph_number_print (plain_zero (fabs (shown)), number);
  if (clearance_m < 0)
    ph_issues_add (&report->notes, PH_WHERE_PART, part->id, NULL, true,
                   "stands %s mm into the string's way; it should be at least 15 mm from it",
                   number);
  else
    ph_issues_add (&report->notes, PH_WHERE_PART, part->id, NULL, true,
                   "comes within %s mm of the string's way; it should be at least 15 mm from it",
                   number);
}

static void
fill_clearance (PhReport *report, const PhRig *rig, const PhCompiled *compiled)
{
  report->n_parts = rig->n_parts;
  report->part_clearance_m = ph_alloc ((rig->n_parts + 1) * sizeof *report->part_clearance_m);
  report->clearance_m = NAN;
  report->clearance_part = -1;
  for (size_t i = 0; i < rig->n_parts; i++)
    {
      int piece = compiled->piece_of_part[i];
      double own =
          piece < 0 ? (double)NAN : ph_clearance_of (compiled->assembly, piece, &compiled->draw);
      report->part_clearance_m[i] = own;
      if (isnan (own))
        continue;
      if (report->clearance_part < 0 || own < report->clearance_m)
        {
          report->clearance_m = own;
          report->clearance_part = (int)i;
        }
      if (own < PH_CLEARANCE_LEAST_M)
        note_clearance (report, &rig->parts[i], own);
    }
}

static void
fill_weights (PhReport *report, const PhRig *rig)
{
  for (size_t k = 1; k < report->n_shares; k++)
    {
      const PhShare *share = &report->shares[k];
      const PhPart *part = &rig->parts[share->part];
      if (part->kind != PH_PART_WEIGHTS || !(share->mass_kg > 0))
        continue;
      double *sum = &report->side_g;
      if (share->com_m.x > 0)
        sum = &report->front_g;
      else if (fabs (share->com_m.y) <= SIDE_FROM_M)
        sum = &report->back_g;
      *sum += ph_part_mass_g (part);
    }
}

static void
fill_bars (PhReport *report, const PhCompiled *compiled)
{
  report->bars = ph_alloc ((compiled->n_pieces + 1) * sizeof *report->bars);
  for (size_t i = 0; i < compiled->n_parts; i++)
    {
      int piece = compiled->piece_of_part[i];
      if (piece >= 0 && ph_beam_bends (compiled->assembly, piece))
        report->bars[report->n_bars++] =
            (PhBarBend){ (int)i, ph_beam_of (compiled->assembly, piece) };
    }
}

PhReport *
ph_report_new (const PhRig *rig, const PhCompiled *compiled)
{
  PhReport *report = ph_alloc_zeroed (1, sizeof *report);
  report->mass = ph_assembly_properties (compiled->assembly);
  ph_check_notes (rig, &report->notes);
  fill_shares (report, compiled);
  fill_roll (report, rig, compiled);
  fill_hold (report, compiled);
  fill_clearance (report, rig, compiled);
  fill_weights (report, rig);
  fill_bars (report, compiled);
  return report;
}

void
ph_report_free (PhReport *report)
{
  if (!report)
    return;
  free (report->shares);
  free (report->part_clearance_m);
  free (report->bars);
  ph_issues_clear (&report->notes);
  free (report);
}

int
ph_report_heavy_side (const PhReport *report)
{
  if (fabs (report->roll_moment_nm) <= LEVEL_WITHIN_NM)
    return 0;
  return report->roll_moment_nm > 0 ? 1 : -1;
}
