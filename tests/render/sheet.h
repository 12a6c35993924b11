/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A rig's three views on one sheet, painted in memory by the window's own code.
 */
#pragma once

#include <cairo.h>

#include "base/quantity.h"

typedef struct
{
  const char *path;      /* rig file */
  const char *reference; /* a second rig file, or null */
  const char *select;    /* id of the selected part, "bow", or null */
  int width, height;     /* [px] */
  double factor;         /* of the lean */
  bool dark, arrow, hand;
  PhUnits units;
} PhSheet;

/** 1200 × 760, light, five times, metric. */
PhSheet ph_sheet_default (const char *path);

/** Ground, ink, accent of the sheet's theme as 0xRRGGBB. */
void ph_sheet_colours (bool dark, unsigned colours[3]);

/** A new RGB surface, or null with the reasons printed when a file does not load. */
cairo_surface_t *ph_sheet_paint (const PhSheet *sheet);
