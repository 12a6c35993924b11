/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The drawing of the level's vial (or, for a bow without a level, of the lean's scale): where
 * things stand on it, and cairo. Knows no widget; colours and fonts are handed in.
 */
#pragma once

#include <gtk/gtk.h>

#include "model/settle.h"

G_BEGIN_DECLS

/** How far the vial is drawn to either side [rad]: 3°. */
#define PH_VIAL_RANGE_RAD 0.05235987755982989
/** The vial's own height and that of the numbers under it, at the default text size [px]. */
#define PH_VIAL_HEIGHT 72

typedef struct
{
  GdkRGBA ink, soft_ink, glass, liquid, bubble, on_bubble, warning;
} PhVialColors;

typedef struct
{
  PhSettle settle;
  double shown_rad;  /* where the bubble is drawn now: it may be on its way to settle.tilt_rad */
  double wanted_rad; /* 0: no mark */
} PhVial;

/** Where a tilt stands along a vial of that width [px from its left edge], cut at the ends of the
 * range. With a level a positive tilt stands on the left (the bubble runs to the high side);
 * without one on the right (that is where the top limb is). */
double ph_vial_place (double tilt_rad, gboolean level, double width);

/** Draws a vial of `width` × PH_VIAL_HEIGHT at the origin and its numbers below. `layout` carries
 * the font of the numbers. */
void ph_vial_draw (cairo_t *cr, const PhVial *vial, const PhVialColors *colors, PangoLayout *layout,
                   double width);

G_END_DECLS
