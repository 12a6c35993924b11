/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The chain from cause to bubble, whole sentences for each case so that each can be translated.
 */
#include "widgets/lean-words.h"

#include <glib/gi18n.h>
#include <math.h>

#include "base/units.h"

/* Half of the last digit a tilt shows: nearer to plumb than this reads as plumb. */
#define PLUMB_DEG 0.05

static const char *
toppling_chain (int heavy_side)
{
  if (heavy_side == 0)
    return _ ("Sides even, but the weight stands high → the bow tips over.");
  return heavy_side < 0 ? _ ("Left side heavy → the bow tips over to the left.")
                        : _ ("Right side heavy → the bow tips over to the right.");
}

static const char *
plumb_chain (const PhSettle *settle)
{
  if (!settle->hand_known || settle->heavy_side == 0)
    return settle->has_level ? _ ("Sides even → bow stands plumb → bubble stays centred.")
                             : _ ("Sides even → bow stands plumb.");
  if (settle->heavy_side < 0)
    return settle->has_level ? _ (
               "Left side heavy, your hand holds it → bow stands plumb → bubble stays centred.")
                             : _ ("Left side heavy, your hand holds it → bow stands plumb.");
  return settle->has_level
             ? _ ("Right side heavy, your hand holds it → bow stands plumb → bubble stays centred.")
             : _ ("Right side heavy, your hand holds it → bow stands plumb.");
}

static const char *
left_chain (const PhSettle *settle)
{
  if (settle->heavy_side < 0)
    return settle->has_level ? _ ("Left side heavy → bow leans left → bubble runs right.")
                             : _ ("Left side heavy → bow leans left.");
  if (settle->heavy_side > 0)
    return settle->has_level
               ? _ ("Right side heavy, but your hand twists it left → bow leans left "
                    "→ bubble runs right.")
               : _ ("Right side heavy, but your hand twists it left → bow leans left.");
  return settle->has_level ? _ ("Sides even, your hand twists it left → bow leans left → bubble "
                                "runs right.")
                           : _ ("Sides even, your hand twists it left → bow leans left.");
}

static const char *
right_chain (const PhSettle *settle)
{
  if (settle->heavy_side > 0)
    return settle->has_level ? _ ("Right side heavy → bow leans right → bubble runs left.")
                             : _ ("Right side heavy → bow leans right.");
  if (settle->heavy_side < 0)
    return settle->has_level
               ? _ ("Left side heavy, but your hand twists it right → bow leans right "
                    "→ bubble runs left.")
               : _ ("Left side heavy, but your hand twists it right → bow leans right.");
  return settle->has_level ? _ ("Sides even, your hand twists it right → bow leans right → bubble "
                                "runs left.")
                           : _ ("Sides even, your hand twists it right → bow leans right.");
}

const char *
ph_lean_chain (const PhSettle *settle)
{
  if (!settle->settles)
    return toppling_chain (settle->heavy_side);
  if (fabs (ph_deg_from_rad (settle->tilt_rad)) < PLUMB_DEG)
    return plumb_chain (settle);
  return settle->tilt_rad < 0.0 ? left_chain (settle) : right_chain (settle);
}
