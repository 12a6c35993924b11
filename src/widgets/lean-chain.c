/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The chain from cause to bubble, whole sentences for each case so that each can be translated;
 * none takes more than two lines beside the views, so that nothing moves when one follows another.
 */
#include "widgets/lean-words.h"

#include <glib/gi18n.h>
#include <math.h>

#include "base/units.h"

/* Half of the last digit a tilt shows: nearer to plumb than this reads as plumb. */
#define PLUMB_DEG 0.05
/* No one reads a bubble finer (common practice, no source): to say which side is heavy for so
 * little sends an archer after nothing. */
#define NEARLY_DEG 0.25

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
    return settle->has_level ? _ ("Left side heavy, hand holds it → bow plumb → bubble centred.")
                             : _ ("Left side heavy, hand holds it → bow plumb.");
  return settle->has_level ? _ ("Right side heavy, hand holds it → bow plumb → bubble centred.")
                           : _ ("Right side heavy, hand holds it → bow plumb.");
}

static const char *
left_chain (const PhSettle *settle)
{
  if (settle->heavy_side < 0)
    return settle->has_level ? _ ("Left side heavy → bow leans left → bubble runs right.")
                             : _ ("Left side heavy → bow leans left.");
  if (settle->heavy_side > 0)
    return settle->has_level ? _ ("Right side heavy, hand twists left → leans left → bubble right.")
                             : _ ("Right side heavy, hand twists left → bow leans left.");
  return settle->has_level ? _ ("Sides even, hand twists left → bow leans left → bubble right.")
                           : _ ("Sides even, hand twists left → bow leans left.");
}

static const char *
right_chain (const PhSettle *settle)
{
  if (settle->heavy_side > 0)
    return settle->has_level ? _ ("Right side heavy → bow leans right → bubble runs left.")
                             : _ ("Right side heavy → bow leans right.");
  if (settle->heavy_side < 0)
    return settle->has_level ? _ ("Left side heavy, hand twists right → leans right → bubble left.")
                             : _ ("Left side heavy, hand twists right → bow leans right.");
  return settle->has_level ? _ ("Sides even, hand twists right → bow leans right → bubble left.")
                           : _ ("Sides even, hand twists right → bow leans right.");
}

const char *
ph_lean_chain (const PhSettle *settle)
{
  if (!settle->settles)
    return toppling_chain (settle->heavy_side);
  if (fabs (ph_deg_from_rad (settle->tilt_rad)) < PLUMB_DEG)
    return plumb_chain (settle);
  if (settle->hand_known && fabs (ph_deg_from_rad (settle->tilt_rad)) < NEARLY_DEG)
    return settle->has_level
               ? _ ("As good as even → bow as good as plumb → bubble as good as centred.")
               : _ ("As good as even → bow as good as plumb.");
  return settle->tilt_rad < 0.0 ? left_chain (settle) : right_chain (settle);
}
