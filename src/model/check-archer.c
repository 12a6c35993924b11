/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The bow's and the archer's own numbers, and the bubble checks.
 */
#include <math.h>
#include <stdio.h>

#include "base/number.h"
#include "model/check-own.h"

void
ph_check_bow (const PhRig *rig, PhIssues *issues)
{
  const PhBow *bow = &rig->bow;
  PhSite site = { PH_WHERE_BOW, NULL, "" };
  ph_check_fields (PH_OBJECT_BOW, bow, bow->given, ~0u, &site, issues);
  double brace = bow->brace_height_mm, draw = rig->archer.draw_length_mm;
  if (isfinite (brace) && isfinite (draw) && draw > 0 && brace >= draw)
    {
      char own[PH_NUMBER_SIZE], its[PH_NUMBER_SIZE];
      ph_issues_add (issues, PH_WHERE_BOW, NULL, "brace_height_mm", false,
                     "is %s mm; it should be less than the draw length, %s mm",
                     ph_number_print (brace, own), ph_number_print (draw, its));
    }
  ph_check_sockets (bow->mounts, bow->n_mounts, "mounts", &site, issues);
  ph_check_sds (PH_OBJECT_BOW, ~0u, bow->sds, bow->n_sds, &site, issues);
}

static void
check_bubble_test (const PhCheck *check, size_t i, PhIssues *issues)
{
  char prefix[64], key[96];
  snprintf (prefix, sizeof prefix, "hand.bubble_tests[%zu].", i);
  PhSite site = { PH_WHERE_ARCHER, NULL, prefix };
  ph_check_fields (PH_OBJECT_CHECK, check, check->given, ~0u, &site, issues);
  snprintf (key, sizeof key, "%sdraws_deg", prefix);
  for (size_t k = 0; k < check->n_draws; k++)
    if (!(fabs (check->draws_deg[k]) <= 180))
      {
        ph_issues_add (issues, PH_WHERE_ARCHER, NULL, key, false,
                       "number %zu should be an angle from -180 to 180°", k + 1);
        break;
      }
}

void
ph_check_archer (const PhRig *rig, PhIssues *issues)
{
  const PhArcher *archer = &rig->archer;
  PhSite site = { PH_WHERE_ARCHER, NULL, "" };
  PhSite hand = { PH_WHERE_ARCHER, NULL, "hand." };
  ph_check_fields (PH_OBJECT_ARCHER, archer, archer->given, ~0u, &site, issues);
  ph_check_fields (PH_OBJECT_HAND, archer, archer->hand_given, ~0u, &hand, issues);
  for (size_t i = 0; i < archer->n_checks; i++)
    check_bubble_test (&archer->checks[i], i, issues);
}
