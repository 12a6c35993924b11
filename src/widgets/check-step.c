/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "widgets/check-step.h"

#include <glib/gi18n.h>

#include "model/checks.h"

const char *
ph_check_step_name (PhCheckStep step)
{
  static const char *const names[] = { "choose", "safety", "draw", "end", "record" };
  return names[step];
}

const char *
ph_check_step_title (PhCheckStep step)
{
  switch (step)
    {
    case PH_STEP_CHOOSE:
      return _ ("Which rig is read");
    case PH_STEP_SAFETY:
      return _ ("Before you draw");
    case PH_STEP_END:
      return _ ("No reading: the bubble is at the vial’s end");
    case PH_STEP_RECORD:
      return _ ("The check");
    case PH_STEP_DRAW:
    default:
      return NULL;
    }
}

const char *
ph_check_step_next (PhCheckStep step, guint draw, gboolean editing)
{
  switch (step)
    {
    case PH_STEP_CHOOSE:
      return _ ("It Is Set So");
    case PH_STEP_SAFETY:
      return _ ("Understood");
    case PH_STEP_END:
      return _ ("It Is Set So: Draw Again");
    case PH_STEP_RECORD:
      return editing ? _ ("Keep the Change") : _ ("Record the Check");
    case PH_STEP_DRAW:
    default:
      return draw + 1 < PH_DRAWS_MOST ? _ ("Next Draw") : _ ("Done");
    }
}
