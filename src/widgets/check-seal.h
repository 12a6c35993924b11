/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A prediction, sealed with its time before a check is read, and which rig it was made for. No
 * toolkit here.
 */
#pragma once

#include "document/document.h"

G_BEGIN_DECLS

typedef struct
{
  double predicted_deg; /* NAN: the rig would not settle */
  double sure_deg;      /* ph_checks_sure_deg */
  char *predicted_at;   /* ISO 8601; null where nothing was predicted */
  double mass_kg, cos_beta;
  PhVec3 com_m;
} PhCheckSeal;

/** Of the open rig, now. Clear with ph_check_seal_clear. */
PhCheckSeal ph_check_seal_now (PhDocument *document);
void ph_check_seal_clear (PhCheckSeal *seal);
/** Whether the open rig still has the mass, the balance point and the draw it was made for. */
gboolean ph_check_seal_fits (const PhCheckSeal *seal, PhDocument *document);

G_END_DECLS
