/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "widgets/check-seal.h"

#include <math.h>

#include "base/units.h"
#include "model/checks.h"

PhCheckSeal
ph_check_seal_now (PhDocument *document)
{
  const PhReport *report = ph_document_get_report (document);
  g_autoptr (GDateTime) now = g_date_time_new_now_utc ();
  PhCheckSeal seal = { .predicted_deg = ph_deg_from_rad (report->bubble_rad),
                       .sure_deg = ph_checks_sure_deg (report),
                       .mass_kg = report->mass.mass_kg,
                       .cos_beta = report->roll.cos_beta,
                       .com_m = report->mass.com_m };
  if (!isnan (seal.predicted_deg))
    seal.predicted_at = g_date_time_format_iso8601 (now);
  return seal;
}

void
ph_check_seal_clear (PhCheckSeal *seal)
{
  g_free (seal->predicted_at);
  *seal = (PhCheckSeal){ .predicted_deg = NAN, .sure_deg = NAN };
}

gboolean
ph_check_seal_fits (const PhCheckSeal *seal, PhDocument *document)
{
  const PhReport *report = ph_document_get_report (document);
  const PhVec3 *a = &seal->com_m, *b = &report->mass.com_m;
  return seal->mass_kg == report->mass.mass_kg && seal->cos_beta == report->roll.cos_beta
         && a->x == b->x && a->y == b->y && a->z == b->z;
}
