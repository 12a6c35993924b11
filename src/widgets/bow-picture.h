/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A whole view on paper: marks under the bow, the bow, the reference's outline, marks over
 * it. The ground is the caller's. The widget's fallback without OpenGL, print and the test pictures
 * are all this.
 */
#pragma once

#include "widgets/bow-marks.h"
#include "widgets/bow-palette.h"

#include <cairo.h>

G_BEGIN_DECLS

typedef struct
{
  const PhDrawList *list;
  const PhOutlines *outlines;
  const PhDrawList *reference; /* null: none */
  const PhOutlines *reference_outlines;
  const PhMarks *marks;
} PhBowPicture;

void ph_bow_picture_paint (cairo_t *cr, const PhPalette *palette, const PhBowPicture *picture);

G_END_DECLS
