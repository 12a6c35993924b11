/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The colours of the views: neutrals between the theme's own ground and ink, and one accent for
 * what is selected. No colour carries a meaning alone. Plain numbers, so that paper, tests and the
 * window share them.
 */
#pragma once

#include "scene/solid.h"

typedef struct
{
  double red, green, blue; /* 0 to 1 */
} PhShade;

typedef struct
{
  PhShade ground; /* behind everything */
  PhShade ink;    /* text and lines */
  PhShade accent; /* the selection alone; can be read as text on the ground */
  PhShade edge;   /* thin silhouettes */
  PhShade role[PH_ROLES];
} PhPalette;

/** From the theme's ground, ink and accent; an accent too near to the ground is moved toward the
 * ink until it can be read. Black rods stay visible on a dark ground. */
PhPalette ph_palette_of (PhShade ground, PhShade ink, PhShade accent);

/** (1 − t) a + t b. */
PhShade ph_shade_mix (PhShade a, PhShade b, double t);
/** A colour under a light of scene/light.h: 1 is the colour itself. */
PhShade ph_shade_lit (PhShade shade, double light);
/** Contrast of two colours, 1 to 21: WCAG 2.1, definition of contrast ratio. */
double ph_shade_contrast (PhShade a, PhShade b);
/** Least contrast of text with its ground: WCAG 2.1, success criterion 1.4.3 (level AA). */
#define PH_CONTRAST_TEXT 4.5
/** Luminance as the eye has it, 0 black to 1 white (Rec. 709 weights). */
double ph_shade_brightness (PhShade shade);
